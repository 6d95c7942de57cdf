package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A comparison in a process of its own that is killed from outside, as a power cut would. */
class KilledStudyTest {
    private static final String SCENE = """
            baymist: 1
            title: small box, six ways to spray it
            cavity:
              family: block
              name: box
              size: [240 mm, 120 mm, 100 mm]
              ports:
                - {name: side, part: left wall, shape: {circle: 12 mm}, at: [60 mm, 0, 30 mm]}
                - {name: drain, part: floor, shape: {circle: 8 mm}, at: [20 mm, 100 mm, 0]}
            entries: [{name: side, opening: side}]
            wands:
              - {name: fan, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 40 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            hang: 20 s
            voxel: 11 mm
            compare: {clocks: [0 deg, 60 deg, 120 deg, 180 deg, 240 deg, 300 deg], to: 20 mm, draw_back: 40 mm/s}
            """;

    @TempDir
    Path folder;

    @Test
    void aComparisonKilledAgainAndAgainEndsLikeOneThatWasNot() throws IOException, InterruptedException {
        Path scene = folder.resolve("box.yaml");
        Files.writeString(scene, SCENE);
        Path out = folder.resolve("killed");
        killWhen(1, scene, out);
        assertTrue(!Files.exists(out.resolve("compare.json")), "it had ended before it was killed: no test");
        killWhen(3, scene, out);
        long before = kept(out);
        assertTrue(before >= 3 && before < 6, before + " of 6 runs were kept when it was killed");
        StringWriter err = new StringWriter();
        JsonNode after = compare(scene, out, err);
        assertTrue(err.toString().contains(before + " finished runs were taken up"), err.toString());
        assertEquals(6, kept(out));
        JsonNode whole = compare(scene, folder.resolve("whole"), new StringWriter());
        assertEquals(whole.get("candidates"), after.get("candidates"));
    }

    /** Starts a comparison with one thread and kills it as soon as this many runs are kept. */
    private static void killWhen(int runs, Path scene, Path out) throws IOException, InterruptedException {
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        classPath(),
                        Main.class.getName(),
                        "compare",
                        scene.toString(),
                        "--out",
                        out.toString(),
                        "--full",
                        "0",
                        "--threads",
                        "1",
                        "--quiet")
                .redirectErrorStream(true)
                .redirectOutput(out.resolveSibling("child.txt").toFile())
                .start();
        try {
            long giveUp = System.nanoTime() + TimeUnit.MINUTES.toNanos(3);
            while (kept(out) < runs && child.isAlive() && System.nanoTime() < giveUp) {
                Thread.sleep(5);
            }
            assertTrue(
                    kept(out) >= runs, "the child kept nothing: " + Files.readString(out.resolveSibling("child.txt")));
        } finally {
            child.destroyForcibly().waitFor();
        }
    }

    private static JsonNode compare(Path scene, Path out, StringWriter err) throws IOException {
        StringWriter told = new StringWriter();
        int code = Cli.execute(
                new String[] {"compare", scene.toString(), "--out", out.toString(), "--full", "0", "--json"},
                new Console(new PrintWriter(told), new PrintWriter(err), false),
                Stages.ENGINE);
        assertEquals(Exit.DONE, code, err.toString());
        return new ObjectMapper().readTree(told.toString());
    }

    private static long kept(Path out) throws IOException {
        Path runs = out.resolve("runs");
        if (!Files.isDirectory(runs)) {
            return 0;
        }
        try (Stream<Path> files = Files.list(runs)) {
            List<String> names = files.map(f -> f.getFileName().toString()).toList();
            return names.stream().filter(n -> n.endsWith(".study")).count();
        }
    }

    static String classPath() {
        return Main.class.getClassLoader() instanceof URLClassLoader loader
                ? Arrays.stream(loader.getURLs()).map(URL::getPath).collect(Collectors.joining(File.pathSeparator))
                : System.getProperty("java.class.path");
    }
}
