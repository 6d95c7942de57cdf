package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExportCliTest {
    private static final String SCENE = """
            baymist: 1
            title: small box, one pass
            cavity:
              family: block
              name: box
              size: [240 mm, 120 mm, 100 mm]
              ports:
                - {name: end, part: aft wall, shape: {circle: 12 mm}, at: [240 mm, 60 mm, 50 mm]}
            entries: [{name: end, opening: end}]
            wands:
              - {name: fan, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 40 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            passes: [{name: out, entry: end, wand: fan, from: 150 mm, to: 50 mm, draw_back: 100 mm/s, clock: 0 deg}]
            hang: 3 s
            voxel: 15 mm
            air: projected
            numerics: {size_bins: 2, rays_per_jet: 16}
            """;

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int call(String... args) {
        return Cli.execute(args, new Console(new PrintWriter(out), new PrintWriter(err), false), Stages.ENGINE);
    }

    private List<String> files(Path in) throws IOException {
        try (Stream<Path> all = Files.list(in)) {
            return all.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    private String scene() throws IOException {
        Path file = folder.resolve("box.yaml");
        Files.writeString(file, SCENE);
        return file.toString();
    }

    @Test
    void fogIsWrittenForTheTimesAskedFor() throws IOException {
        Path to = folder.resolve("files");
        assertEquals(
                Exit.DONE,
                call("export", scene(), "--out", to.toString(), "--vtk", "--json", "--at", "3 s", "--at", "500 ms"));
        assertEquals(
                List.of(
                        "film.csv.gz",
                        "film.vtp",
                        "fog-1.vti",
                        "fog-2.vti",
                        "fog.pvd",
                        "result.json",
                        "seams.vtp",
                        "stations.vtp",
                        "surfels.vtp",
                        "wand.vtp"),
                files(to));
        String times = Files.readString(to.resolve("fog.pvd"));
        double first = Double.parseDouble(times.replaceAll("(?s).*?timestep=\"([^\"]*)\".*", "$1"));
        assertTrue(first >= 0.5 - 1e-9 && first < 1, times);
        assertTrue(out.toString().contains("fog-2.vti"), out.toString());
        JsonNode result = new ObjectMapper().readTree(to.resolve("result.json").toFile());
        assertEquals("small box, one pass", result.get("scene").get("title").asText());
    }

    @Test
    void aTimeAfterTheJobIsRefusedAndNothingWritten() throws IOException {
        Path to = folder.resolve("files");
        assertEquals(Exit.BAD_INPUT, call("export", scene(), "--out", to.toString(), "--at", "1 h"));
        assertTrue(err.toString().contains("--at \"1 h\": the job is over after 4.0 s"), err.toString());
        assertFalse(Files.exists(to));
    }

    @Test
    void aTimeThatIsNoneIsRefusedBeforeTheRun() throws IOException {
        for (String at : Arrays.asList("5 mm", "-1 s", "soon")) {
            assertEquals(Exit.BAD_INPUT, call("export", scene(), "--at", at), at);
        }
        assertTrue(err.toString().contains("--at \"-1 s\": a time above 0 expected"), err.toString());
        assertTrue(out.toString().isEmpty(), out.toString());
    }

    @Test
    void aReportIsOnePage() throws IOException {
        Path page = folder.resolve("box.html");
        assertEquals(Exit.DONE, call("report", scene(), "--out", page.toString()));
        assertTrue(out.toString().contains("bare places: "), out.toString());
        String html = Files.readString(page);
        assertTrue(html.startsWith("<!DOCTYPE html>") && html.strip().endsWith("</html>"));
        assertTrue(html.contains("<h1>small box, one pass</h1>"));
        assertEquals(List.of("box.html", "box.yaml"), files(folder));
    }
}
