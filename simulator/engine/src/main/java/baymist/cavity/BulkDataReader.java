package baymist.cavity;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Shell finite-element bulk data: GRID, CQUAD4, CTRIA3 (CQUADR, CTRIAR, and the corners of CQUAD8 and CTRIA6 alike), PSHELL
 * for gauge and names. What stands before BEGIN BULK, if the file has that line, is skipped; ENDDATA ends the file. Other
 * entries are passed over; other elements are counted in a remark.
 */
final class BulkDataReader {
    private static final Pattern FEMAP_NAME = Pattern.compile("\\$\\s*Femap Property\\s+([0-9]{1,9})\\s*:\\s*(.+)");
    private static final Pattern REGION_NAME =
            Pattern.compile("\\$\\s*Elements and Element Properties for region\\s*:\\s*(.+)");
    /** Stands above the elements of a property. */
    private static final Pattern FAMILY_NAME = Pattern.compile("\\$\\s*Shell element data for family\\s+(\\S.*)");

    private static final Pattern LISTED_NAME =
            Pattern.compile("\\$ANSA_NAME_COMMENT;([0-9]{1,9});P[A-Z0-9]*;([^;]+);.*");
    private static final Pattern QUOTED_NAME = Pattern.compile("\\$HMNAME\\s+PROP\\s+([0-9]{1,9})\\s*\"([^\"]+)\".*");
    /** A comment right above a PSHELL that reads like a name. */
    private static final Pattern PLAIN_NAME = Pattern.compile("\\$+\\s*(\\p{L}[\\p{L}\\p{N} _./()-]{0,59})");

    /** The first so many grids are corners. A shear panel is a sheet, too. */
    private static final Map<String, Integer> CORNERS = Map.of(
            "CQUAD4", 4, "CQUADR", 4, "CQUAD8", 4, "CQUAD", 4, "CSHEAR", 4, "CTRIA3", 3, "CTRIAR", 3, "CTRIA6", 3);
    /** Entries that begin with C and are no elements. */
    private static final Pattern NO_ELEMENT = Pattern.compile(
            "CORD[0-9A-Z]*|CEND|CSET1?|CAERO[0-9]|CSUPER|CSUPEXT|CMETHOD|CREEP|CLOAD|CYAX|CYJOIN|CYSYM|CYSUP|CAMPBLL|COMPUDS");

    private static final Set<String> OTHER_ELEMENTS =
            Set.of("RBE1", "RBE2", "RBE3", "RBAR", "RBAR1", "RROD", "RSPLINE", "RTRPLT", "PLOTEL");

    /** An element: property, corner grid numbers, name with number and place for messages. */
    private record Shell(int property, int[] grids, String what, SourcePlace place) {}

    private final Map<Integer, double[]> grids = new HashMap<>();
    private final List<Shell> shells = new ArrayList<>();
    private final Map<Integer, String> names = new HashMap<>();
    private final Map<Integer, Double> gauges = new HashMap<>();
    private final Map<String, Integer> skipped = new TreeMap<>();
    private String lastComment = "";
    private String commentAbove = "";
    private String familyBelow = "";
    private String familyName = "";

    private BulkDataReader() {}

    static RawMesh read(Path file) throws IOException {
        boolean headed = hasBegin(file);
        BulkDataReader reader = new BulkDataReader();
        try (LineSource lines = new LineSource(file)) {
            reader.lines(lines, headed);
        }
        return reader.mesh();
    }

    private static boolean isBegin(String line) {
        return line.strip().toUpperCase(Locale.ROOT).matches("BEGIN\\s+BULK.*");
    }

    private static boolean hasBegin(Path file) throws IOException {
        try (LineSource lines = new LineSource(file)) {
            String line;
            while ((line = lines.next()) != null) {
                if (isBegin(line)) {
                    return true;
                }
            }
        }
        return false;
    }

    private void lines(LineSource lines, boolean headed) throws IOException {
        BulkCards cards = new BulkCards(this::card);
        boolean inBulk = !headed;
        String line;
        while ((line = lines.next()) != null) {
            if (!inBulk) {
                inBulk = isBegin(line);
                continue;
            }
            int dollar = line.indexOf('$');
            if (dollar == 0) {
                comment(line);
                continue;
            }
            String data = dollar > 0 ? line.substring(0, dollar) : line;
            if (data.strip().toUpperCase(Locale.ROOT).startsWith("ENDDATA")) {
                break;
            }
            if (!data.startsWith(" ") && !data.startsWith("+") && !data.startsWith("*") && !data.startsWith(",")) {
                cards.finish();
                commentAbove = lastComment;
                familyName = familyBelow.isEmpty() ? familyName : familyBelow;
                familyBelow = "";
                lastComment = "";
            }
            cards.line(data, lines.place());
        }
        cards.finish();
    }

    private void comment(String line) {
        Matcher femap = FEMAP_NAME.matcher(line.strip());
        Matcher quoted = QUOTED_NAME.matcher(line.strip());
        if (femap.matches()) {
            names.put(Integer.valueOf(femap.group(1)), femap.group(2).strip());
        } else if (quoted.matches()) {
            names.put(Integer.valueOf(quoted.group(1)), quoted.group(2).strip());
        }
        Matcher listed = LISTED_NAME.matcher(line.strip());
        if (listed.matches()) {
            names.put(Integer.valueOf(listed.group(1)), listed.group(2).strip());
            return;
        }
        Matcher family = FAMILY_NAME.matcher(line.strip());
        if (family.matches()) {
            familyBelow = family.group(1).strip();
            return;
        }
        Matcher region = REGION_NAME.matcher(line.strip());
        if (region.matches()) {
            lastComment = region.group(1).strip();
            return;
        }
        Matcher plain = PLAIN_NAME.matcher(line.strip());
        lastComment = plain.matches() && !femap.matches() && !quoted.matches()
                ? plain.group(1).strip()
                : "";
    }

    private void card(BulkCard card) {
        int most = Math.max(Math.max(shells.size(), grids.size()), Math.max(names.size(), gauges.size()));
        if (most > RawMesh.MOST_TRIANGLES) {
            throw new SceneException(
                    "MSH-009",
                    card.place(),
                    "more than " + RawMesh.MOST_TRIANGLES
                            + " entries of one kind; thin the mesh out before importing it");
        }
        String name = card.name();
        Integer corners = CORNERS.get(name);
        if (corners != null) {
            shell(card, corners);
        } else if (name.equals("GRID")) {
            grid(card);
        } else if (name.equals("GRDSET") && !card.isBlank(2) && !card.text(2).equals("0")) {
            throw new SceneException(
                    "MSH-011",
                    card.place(),
                    "GRDSET puts all grids into coordinate system " + card.text(2) + "; only the basic"
                            + " system (blank or 0) can be read");
        } else if (name.equals("PSHELL") || name.equals("PSHEAR")) {
            property(card, card.isBlank(3) ? Double.NaN : card.real(3));
        } else if (name.equals("PCOMP")) {
            property(card, plies(card));
        } else if (name.startsWith("INCLUDE")) {
            throw new SceneException("MSH-012", card.place(), "INCLUDE is not followed; join the files into one");
        } else if (OTHER_ELEMENTS.contains(name)
                || (name.matches("C[A-Z][A-Z0-9]{1,6}")
                        && !NO_ELEMENT.matcher(name).matches())) {
            skipped.merge(name, 1, Integer::sum);
        }
    }

    private void property(BulkCard card, double gauge) {
        int property = card.id(1);
        if (!Double.isNaN(gauge)) {
            gauges.put(property, gauge);
        }
        if (!commentAbove.isEmpty()) {
            names.putIfAbsent(property, commentAbove);
        }
    }

    /** Thickness of a laminate: the sum over its plies, each four fields from the ninth on; twice that if symmetric. */
    private static double plies(BulkCard card) {
        double sum = 0;
        double last = 0;
        for (int at = 9; at <= card.fields().size(); at += 4) {
            if (!card.isBlank(at) || !card.isBlank(at + 1)) {
                // a blank thickness is that of the ply before
                last = card.isBlank(at + 1) ? last : card.real(at + 1);
                sum += last;
            }
        }
        return card.text(8).equalsIgnoreCase("SYM") ? 2 * sum : sum;
    }

    private void grid(BulkCard card) {
        int id = card.id(1);
        if (!card.isBlank(2) && !card.text(2).equals("0")) {
            throw new SceneException(
                    "MSH-011",
                    card.place(),
                    "GRID " + id + " is given in coordinate system " + Names.printable(card.text(2))
                            + "; only the basic system (blank or 0) can be read");
        }
        double[] p = {card.real(3), card.real(4), card.real(5)};
        double[] before = grids.put(id, p);
        if (before != null && !Arrays.equals(before, p)) {
            throw new SceneException(
                    "MSH-013", card.place(), "GRID " + id + " is given twice with different coordinates");
        }
    }

    private void shell(BulkCard card, int corners) {
        int element = card.id(1);
        int property = card.isBlank(2) ? element : card.id(2);
        if (!familyName.isEmpty()) {
            names.putIfAbsent(property, familyName);
            familyName = "";
        }
        int[] corner = new int[corners];
        for (int k = 0; k < corners; k++) {
            corner[k] = card.id(3 + k);
        }
        shells.add(new Shell(property, corner, card.name() + " " + element, card.place()));
    }

    private RawMesh mesh() {
        RawMesh mesh = new RawMesh();
        Map<Integer, Integer> partOfProperty = new LinkedHashMap<>();
        for (Shell shell : shells) {
            int part = partOfProperty.computeIfAbsent(
                    shell.property(),
                    property -> mesh.addPart(
                            names.getOrDefault(property, "property " + property),
                            gauges.getOrDefault(property, Double.NaN),
                            shell.place()));
            double[][] p = new double[shell.grids().length][];
            for (int k = 0; k < p.length; k++) {
                double[] at = grids.get(shell.grids()[k]);
                if (at == null) {
                    throw new SceneException(
                            "MSH-014",
                            shell.place(),
                            shell.what() + " names GRID " + shell.grids()[k] + ", which the file does not give");
                }
                p[k] = at;
            }
            add(mesh, part, p, shell.place());
        }
        skipped.forEach((name, number) ->
                mesh.remarks.add(number + " " + name + " element(s) are no shells and were left out"));
        return mesh;
    }

    /** Quadrilaterals are split along their shorter diagonal, concave ones along the one inside. */
    private static void add(RawMesh mesh, int part, double[][] p, SourcePlace place) {
        List<Vec3> corners = new ArrayList<>();
        for (double[] at : p) {
            corners.add(new Vec3(at[0], at[1], at[2]));
        }
        List<int[]> split = PolygonSplitter.split(corners).triangles();
        for (int[] t : split) {
            mesh.add(part, nine(p[t[0]], p[t[1]], p[t[2]]), place);
        }
        if (split.isEmpty()) {
            // without area: kept, so that it is counted
            mesh.add(part, nine(p[0], p[1], p[0]), place);
        }
    }

    private static double[] nine(double[] a, double[] b, double[] c) {
        return new double[] {a[0], a[1], a[2], b[0], b[1], b[2], c[0], c[1], c[2]};
    }
}
