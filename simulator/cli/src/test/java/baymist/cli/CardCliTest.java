package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardCliTest {
    private static final String SCENE = """
            baymist: 1
            title: small box, one pass
            cavity:
              family: block
              name: box
              size: [240 mm, 120 mm, 100 mm]
              ports:
                - {name: end, part: aft wall, shape: {circle: 12 mm}, at: [240 mm, 60 mm, 50 mm]}
                - {name: vent, part: forward wall, shape: {circle: 20 mm}, at: [0, 60 mm, 60 mm]}
                - {name: drain, part: floor, shape: {circle: 8 mm}, at: [20 mm, 100 mm, 0]}
            entries: [{name: end, opening: end}]
            wands:
              - {name: fan, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 40 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            passes: [{name: only, entry: end, wand: fan, from: 150 mm, to: 20 mm, draw_back: 50 mm/s}]
            hang: 10 s
            voxel: 15 mm
            air: projected
            numerics: {size_bins: 3, rays_per_jet: 32}
            """;

    private static final String FINDINGS = """
            baymist: 1
            title: first look
            findings:
              - {at: [20 mm, 60 mm, 0 mm], part: floor, seen: dry}
              - {at: [160 mm, 60 mm, 100 mm], seen: wet, film: 30 um}
            """;

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Cli.execute(args, new Console(new PrintWriter(out), new PrintWriter(err), false), Stages.ENGINE);
    }

    private String file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text);
        return file.toString();
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private JsonNode json() throws IOException {
        JsonNode root = new ObjectMapper().readTree(out.toString());
        out.getBuffer().setLength(0);
        return root;
    }

    @Test
    void aKeptRunGivesTheSameCardAsAFreshOne() throws IOException {
        // so few voxels that the run warns of it
        String scene = file("box.yaml", SCENE.replace("voxel: 15 mm", "voxel: 30 mm"));
        assertEquals(Exit.DONE, run("run", scene, "--out", at("kept"), "--quiet"), err.toString());
        out.getBuffer().setLength(0);
        String pdf = at("fresh.pdf");
        assertEquals(Exit.DONE, run("card", scene, "--output", pdf, "--json", "--quiet"), err.toString());
        JsonNode fresh = json();
        assertTrue(fresh.path("cautions").toString().contains("voxels across"), "a warning is not on the card");
        String html = at("card.html");
        assertEquals(
                Exit.DONE,
                run(
                        "card",
                        scene,
                        "--result",
                        at("kept"),
                        "--output",
                        at("kept.pdf"),
                        "--html",
                        html,
                        "--json",
                        "--quiet"),
                err.toString());
        assertEquals(fresh, json());
        assertEquals(-1, Files.mismatch(Path.of(pdf), folder.resolve("kept.pdf")));
        assertTrue(Files.readString(Path.of(html)).startsWith("<!DOCTYPE html>"));
        assertEquals("%PDF-", new String(Files.readAllBytes(Path.of(pdf)), 0, 5, StandardCharsets.ISO_8859_1));
        assertEquals(10, fresh.at("/passes/0/secondsPerHalfMetre").asDouble(), 1e-9);
    }

    @Test
    void aRunOfAnotherSceneIsRefusedAndNothingIsWritten() throws IOException {
        String scene = file("box.yaml", SCENE);
        assertEquals(Exit.DONE, run("run", scene, "--out", at("kept"), "--quiet"));
        file("box.yaml", SCENE.replace("one pass", "changed since"));
        assertEquals(Exit.BAD_INPUT, run("card", scene, "--result", at("kept"), "--output", at("card.pdf"), "--quiet"));
        assertTrue(err.toString().contains("[KPT-002]"), err.toString());
        assertFalse(Files.exists(folder.resolve("card.pdf")));
        assertEquals(Exit.BAD_INPUT, run("card", scene, "--result", at("nowhere"), "--quiet"));
        assertTrue(err.toString().contains("[KPT-001]"), err.toString());
    }

    @Test
    void wrongCallsAreTold() throws IOException {
        String scene = file("box.yaml", SCENE);
        assertEquals(Exit.BAD_INPUT, run("card", scene, "--paper", "A3"));
        assertEquals(Exit.BAD_INPUT, run("card", scene, "--interval", "soon"));
        assertEquals(Exit.BAD_INPUT, run("card", scene, "--date", "tomorrow"));
        assertTrue(err.toString().contains("A4 or letter") && err.toString().contains("24 months"), err.toString());
        String none = file("none.yaml", SCENE.replaceAll("passes:.*\n", ""));
        assertEquals(Exit.BAD_INPUT, run("card", none, "--quiet"));
        assertTrue(err.toString().contains("[CRD-001]"), err.toString());
    }

    @Test
    void findingsAreScoredFittedAndGiveATouchUpCard() throws IOException {
        String scene = file("box.yaml", SCENE);
        String findings = file("findings.yaml", FINDINGS);
        int code = run("findings", scene, findings, "--card", at("touch-up.pdf"), "--json", "--quiet");
        assertEquals(Exit.DONE, code, err.toString());
        JsonNode root = json();
        assertEquals(2, root.get("places").size());
        double brier = root.get("brier").asDouble();
        assertTrue(brier >= 0 && brier <= 2);
        assertTrue(root.at("/refit/liquid").asDouble() >= 0.5);
        assertTrue(root.at("/touchUp/passes").size() >= 1);
        assertTrue(Files.size(folder.resolve("touch-up.pdf")) > 1000);
        assertEquals(Exit.DONE, run("findings", scene, findings, "--no-fit", "--no-touch-up", "--quiet"));
        assertTrue(out.toString().contains("Brier score"), out.toString());
    }

    @Test
    void aWrongFindingsFileIsToldWithItsPlace() throws IOException {
        String scene = file("box.yaml", SCENE);
        String findings = file("findings.yaml", FINDINGS.replace("seen: dry", "seen: damp"));
        assertEquals(Exit.BAD_INPUT, run("findings", scene, findings, "--quiet"));
        assertTrue(err.toString().contains("findings.yaml:4 findings[1].seen"), err.toString());
    }
}
