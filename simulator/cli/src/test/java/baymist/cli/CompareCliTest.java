package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareCliTest {
    private static final String SCENE = """
            baymist: 1
            title: small box, two ways in
            cavity:
              family: block
              name: box
              size: [240 mm, 120 mm, 100 mm]
              ports:
                - {name: side, part: left wall, shape: {circle: 12 mm}, at: [60 mm, 0, 30 mm]}
                - {name: end, part: aft wall, shape: {circle: 12 mm}, at: [240 mm, 60 mm, 50 mm], state: {pass: closed}}
                - {name: drain, part: floor, shape: {circle: 8 mm}, at: [20 mm, 100 mm, 0]}
            entries: [{name: side, opening: side}, {name: end, opening: end}]
            wands:
              - {name: fan, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
              - {name: thick, length: 300 mm, outer_diameter: 20 mm, bore: 2 mm, tip: {forward: {orifice: 0.6 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 40 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            hang: 10 s
            voxel: 15 mm
            compare: {clocks: [0 deg, 90 deg], to: 20 mm, draw_back: 80 mm/s}
            """;

    @TempDir
    Path folder;

    @Test
    void aComparisonRanksWritesAndDraws() throws IOException {
        Path scene = folder.resolve("box.yaml");
        Files.writeString(scene, SCENE);
        Path out = folder.resolve("out");
        StringWriter told = new StringWriter();
        int code = Cli.execute(
                new String[] {
                    "compare",
                    scene.toString(),
                    "--out",
                    out.toString(),
                    "--full",
                    "0",
                    "--difference",
                    "1,2",
                    "--quiet",
                    "--json"
                },
                new Console(new PrintWriter(told), new PrintWriter(new StringWriter()), false),
                Stages.ENGINE);
        assertEquals(Exit.DONE, code);
        JsonNode root = new ObjectMapper().readTree(told.toString());
        JsonNode all = root.get("candidates");
        // the thick wand is a plume on its axis: one clock angle, at either entry
        assertEquals(2 * (2 + 1), all.size());
        assertEquals(2, root.get("alikeClocks").asInt());
        double before = 2;
        for (int i = 0; i < 4; i++) {
            double score = all.get(i).get("reached").asDouble()
                    + all.get(i).get("protected").asDouble();
            assertTrue(score <= before + 4e-3, "best first: " + all);
            before = score;
            int panels = all.get(i).get("entry").asText().equals("end") ? 1 : 0;
            assertEquals(panels, all.get(i).get("panels").size());
        }
        assertEquals("thick", all.get(4).get("wand").asText());
        assertTrue(
                all.get(4).get("why").asText().contains("does not go in"),
                all.get(4).toString());
        String text = Files.readString(out.resolve("compare.txt"));
        assertTrue(text.lines().allMatch(l -> l.length() <= 100), text);
        for (String name : new String[] {"compare.json", "compare.png", "best.yaml", "difference-1-2.png"}) {
            assertTrue(Files.size(out.resolve(name)) > 100, name);
        }
        assertEquals(4, count(out.resolve("runs")));
    }

    @Test
    void everyRowSaysWhatItTakesInTextAndJson() throws IOException {
        Path scene = folder.resolve("hole.yaml");
        Files.writeString(
                scene,
                SCENE.replace(
                        "compare: {clocks: [0 deg, 90 deg]",
                        "protected: [{name: servo, limit: 0.1 um, sphere: {at: [100 mm, 60 mm, 50 mm], diameter: 30 mm}}]\n"
                                + "compare: {wands: [fan], clocks: [0 deg], holes: [{name: new port, part: left wall,"
                                + " shape: {circle: 12 mm}, at: [150 mm, 0, 50 mm]}]"));
        Path out = folder.resolve("out");
        StringWriter told = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Cli.execute(
                new String[] {"compare", scene.toString(), "--out", out.toString(), "--full", "1", "--json", "--quiet"},
                new Console(new PrintWriter(told), new PrintWriter(err), false),
                Stages.ENGINE);
        assertEquals(Exit.DONE, code, err.toString());
        JsonNode root = new ObjectMapper().readTree(told.toString());
        for (JsonNode row : root.get("candidates")) {
            for (String key : new String[] {
                "entry",
                "wand",
                "clockDeg",
                "holes",
                "reached",
                "protected",
                "seamsReached",
                "productMl",
                "triggerS",
                "pareto",
                "panels",
                "thin",
                "excess",
                "hangS",
                "oversprayKg",
                "bareRegions",
                "itemsHit"
            }) {
                assertTrue(row.hasNonNull(key), key + " of " + row);
            }
        }
        assertTrue(root.get("cautions").toString().contains("needs approved data and a licensed person"));
        String text = Files.readString(out.resolve("compare.txt"));
        for (String words : new String[] {"off: end", "drill: new port", "hit: servo", "Finalists in full"}) {
            assertTrue(text.contains(words), words + " missing:\n" + text);
        }
        assertTrue(text.replaceAll("\\s+", " ").contains("needs approved data and a licensed person"), text);
        boolean cut = !root.at("/candidates/0/holes").isEmpty();
        assertEquals(cut, Files.readString(out.resolve("best.yaml")).startsWith("# Drilling: no hole is approved"));
    }

    /** The demo of drilling on coarse voxels, with one place to find. */
    @Test
    void everyFileWithAHoleCarriesTheCaution() throws IOException {
        Path root = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(root.resolve("scenes"))) {
            root = java.util.Objects.requireNonNull(root.getParent());
        }
        Path scene = folder.resolve("drill.yaml");
        Files.writeString(
                scene,
                Files.readString(root.resolve("scenes/blind-bay-drill.yaml"))
                                .replace("../models", root.resolve("models").toString())
                                .replace("most: 2", "most: 1")
                                .replace("hang: 2 min", "hang: 20 s")
                        + "voxel: 12 mm\nnumerics: {size_bins: 3, rays_per_jet: 24}\n");
        Path out = folder.resolve("drill");
        StringWriter told = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Cli.execute(
                new String[] {"compare", scene.toString(), "--drill", "--out", out.toString(), "--quiet"},
                new Console(new PrintWriter(told), new PrintWriter(err), false),
                Stages.ENGINE);
        assertEquals(Exit.DONE, code, err.toString());
        for (String name : new String[] {"holes.txt", "holes.json", "drilled.yaml"}) {
            String words = Files.readString(out.resolve(name)).replaceAll("\\s+(# )?", " ");
            assertTrue(words.contains("needs approved data and a licensed person"), name + ": " + words);
        }
        assertTrue(Files.size(out.resolve("holes.png")) > 10_000);
        assertTrue(told.toString().contains("the scene allows no more than 1"), told.toString());
    }

    @Test
    void aJobThatNobodyCanDoSaysSoAndWhy() throws IOException {
        Path scene = folder.resolve("thick.yaml");
        Files.writeString(scene, SCENE.replace("compare: {", "compare: {wands: [thick], "));
        StringWriter told = new StringWriter();
        int code = Cli.execute(
                new String[] {
                    "compare", scene.toString(), "--out", folder.resolve("out").toString(), "--quiet"
                },
                new Console(new PrintWriter(told), new PrintWriter(new StringWriter()), false),
                Stages.ENGINE);
        assertEquals(Exit.NOT_ACCEPTABLE, code);
        assertTrue(told.toString().contains("None of the 2 candidates can be done"), told.toString());
        assertTrue(told.toString().contains("too small"), told.toString());
    }

    @Test
    void wrongCallsAreToldAtOnce() {
        for (String[] args : new String[][] {
            {"compare", "x.yaml", "--planning", "9"},
            {"compare", "x.yaml", "--difference", "1"},
            {"compare", "x.yaml", "--full", "-1"}
        }) {
            StringWriter err = new StringWriter();
            int code = Cli.execute(
                    args, new Console(new PrintWriter(new StringWriter()), new PrintWriter(err), false), Stages.ENGINE);
            assertEquals(Exit.BAD_INPUT, code);
            assertTrue(err.toString().contains("expected") || err.toString().contains("wants"), err.toString());
        }
    }

    private static long count(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.count();
        }
    }
}
