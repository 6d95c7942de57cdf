package baymist.report;

import baymist.run.RunResult;
import baymist.voxel.SurfelSet;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * Film on every surfel as a table beside the result: comma-separated text, packed with gzip, that any table program opens. Areas and films
 * are written to the last bit, places to a hundredth of a millimetre.
 *
 * @param part name of the part, [rows]
 * @param xyzM middles, m, [3 * rows]
 * @param normal unit normals into the air, [3 * rows]
 * @param areaM2 true areas, m², [rows]
 * @param filmM wet build, m, [rows]
 */
public record FilmTable(List<String> part, double[] xyzM, double[] normal, double[] areaM2, double[] filmM) {
    /** Name of the file beside result.json. */
    public static final String FILE = "film.csv.gz";

    static final String HEADER = "part,bay,x_mm,y_mm,z_mm,nx,ny,nz,area_m2,film_m,jets_kg,fog_kg";

    public FilmTable {
        part = List.copyOf(part);
    }

    int rows() {
        return filmM.length;
    }

    /** Writes the structure's surfels; closures and protected items are left out. */
    public static void write(RunResult r, Path file) throws IOException {
        AtomicFile.writeBytes(file, bytes -> {
            OutputStream packed = new GZIPOutputStream(bytes);
            Writer out = new OutputStreamWriter(packed, StandardCharsets.UTF_8);
            text(r, out);
            out.flush();
            ((GZIPOutputStream) packed).finish();
        });
    }

    /** SHA-256 (hex) of the unpacked text. */
    static String hash(RunResult r) {
        StringWriter out = new StringWriter();
        try {
            text(r, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return sha256(out.toString());
    }

    static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static void text(RunResult r, Writer out) throws IOException {
        SurfelSet q = r.grid().surfels();
        out.write(HEADER + "\n");
        for (int s = 0; s < q.count(); s++) {
            if (q.isStructure(s)) {
                out.write(quoted(r.cavity().parts().get(q.part()[s]).name()) + ","
                        + quoted(r.grid()
                                .bays()
                                .get(r.grid().bayOfCell(q.cell()[s]))
                                .name()));
                out.write(String.format(
                        Locale.ROOT,
                        ",%.2f,%.2f,%.2f,%.4f,%.4f,%.4f",
                        1e3 * q.centreX()[s],
                        1e3 * q.centreY()[s],
                        1e3 * q.centreZ()[s],
                        q.normalX()[s],
                        q.normalY()[s],
                        q.normalZ()[s]));
                out.write("," + q.areaM2()[s] + "," + r.filmM()[s] + "," + r.directKg()[s] + "," + r.fogKg()[s] + "\n");
            }
        }
    }

    private static String quoted(String name) {
        return name.contains(",") || name.contains("\"") ? '"' + name.replace("\"", "\"\"") + '"' : name;
    }

    /** Unpacks a file. */
    static String unpack(Path file) throws IOException {
        try (BufferedReader in = new BufferedReader(
                new InputStreamReader(new GZIPInputStream(Files.newInputStream(file)), StandardCharsets.UTF_8))) {
            StringWriter out = new StringWriter();
            in.transferTo(out);
            return out.toString();
        }
    }

    /**
     * Reads the text of a table.
     *
     * @throws IllegalArgumentException if it is none
     */
    static FilmTable parse(String text) {
        List<String> lines = text.lines().toList();
        if (lines.isEmpty() || !lines.get(0).equals(HEADER)) {
            throw new IllegalArgumentException("the first line is not " + HEADER);
        }
        int n = lines.size() - 1;
        List<String> parts = new ArrayList<>(n);
        double[] xyz = new double[3 * n];
        double[] normal = new double[3 * n];
        double[] area = new double[n];
        double[] film = new double[n];
        for (int i = 0; i < n; i++) {
            List<String> cells = cells(lines.get(i + 1));
            if (cells.size() != 12) {
                throw new IllegalArgumentException("line " + (i + 2) + " has " + cells.size() + " columns, not 12");
            }
            parts.add(cells.get(0));
            for (int k = 0; k < 3; k++) {
                xyz[3 * i + k] = Double.parseDouble(cells.get(2 + k)) / 1e3;
                normal[3 * i + k] = Double.parseDouble(cells.get(5 + k));
            }
            area[i] = Double.parseDouble(cells.get(8));
            film[i] = Double.parseDouble(cells.get(9));
        }
        return new FilmTable(parts, xyz, normal, area, film);
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean inside = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && inside && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                inside = !inside;
            } else if (c == ',' && !inside) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
