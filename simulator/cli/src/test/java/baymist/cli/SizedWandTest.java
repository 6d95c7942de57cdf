package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What `size` writes, taken up by the next call as a maker and a technician would. */
class SizedWandTest {
    private static final String SCENE = """
            baymist: 1
            title: A pipe and a wand for it
            cavity:
              family: round
              name: pipe
              length: 600 mm
              radius: 50 mm
              ports: [{name: wand hole, part: forward end, shape: {circle: 10 mm}, at: [0 mm, 0 mm, 0 mm]}]
            wands: [%s]
            product: {name: heavy oil, density: 870 kg/m3, viscosity: 40 mPa.s, surface_tension: 0.03 N/m}
            supply: {pressure: 80 psi, liquid: 60 mL/min, droplets: {classes: [{diameter: 200 um, share: 1}]}}
            entries: [{name: in, opening: wand hole}]
            passes: [{name: only, entry: in, wand: %s, from: deepest, to: 20 mm, draw_back: 50 mm/s}]
            hang: 1 s
            air: still
            voxel: 16 mm
            numerics: {size_bins: 1, rays_per_jet: 32}
            """;

    private static final String STUB =
            "{name: stub, length: 200 mm, outer_diameter: 6 mm, bore: 3 mm, tip: {ring: {jets: 24, orifice: 0.2 mm}}}";

    @TempDir
    Path folder;

    @Test
    void theWandFileIsUsableAtOnce() throws IOException {
        Path asked = folder.resolve("asked.yaml");
        Files.writeString(asked, String.format(SCENE, STUB, "stub"));
        Path wandFile = folder.resolve("wand.yaml");
        String size = baymist(
                Exit.DONE,
                "size",
                asked.toString(),
                "--outer",
                "6 mm / 3 mm",
                "--target",
                "60",
                "--no-verify",
                "--quiet",
                "--wand",
                wandFile.toString());
        assertTrue(size.contains("Make: "), size);
        WandSpec wand = SceneReader.readWand(wandFile);
        assertTrue(wand.lengthM() > 0.2, "the stub would have done: no test");
        Path job = folder.resolve("job.yaml");
        Files.writeString(job, String.format(SCENE, "wand.yaml", '"' + wand.name() + '"'));
        String run = baymist(
                Exit.DONE,
                "run",
                job.toString(),
                "--quiet",
                "--out",
                folder.resolve("out").toString(),
                "--json");
        double reached = new com.fasterxml.jackson.databind.ObjectMapper()
                .readTree(run)
                .at("/coverage/reached")
                .asDouble(-1);
        assertTrue(reached >= 0.58, "the wand that was sized for 60 % reaches " + reached);
    }

    private static String baymist(int expected, String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Cli.execute(args, new Console(new PrintWriter(out), new PrintWriter(err), false), Stages.ENGINE);
        assertEquals(expected, code, err.toString());
        return out.toString();
    }
}
