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
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans as their user asks for them: exit codes, the plan as a scene, the page of proofs. */
class PlanCliTest {
    private static final String SCENE = """
            baymist: 1
            title: small box
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
                 tip: {ring: {jets: 8, orifice: 0.4 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 40 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            hang: 2 s
            voxel: 20 mm
            numerics: {size_bins: 2}
            plan: {product: 1 mL, passes: 3}
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private final StringWriter told = new StringWriter();
    private final StringWriter complaints = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(scene(), SCENE);
    }

    private Path scene() {
        return folder.resolve("box.yaml");
    }

    private int execute(String... args) {
        told.getBuffer().setLength(0);
        return Cli.execute(args, new Console(new PrintWriter(told), new PrintWriter(complaints), false), Stages.ENGINE);
    }

    private int plan(String... more) {
        String[] args = {"plan", scene().toString(), "--coarse", "--voxel", "30 mm", "--runs", "4", "--quiet", "--json"
        };
        String[] all = Arrays.copyOf(args, args.length + more.length);
        System.arraycopy(more, 0, all, args.length, more.length);
        return execute(all);
    }

    @Test
    void tooLittleReachedIsNotAcceptableAndEnoughIsDone() throws IOException {
        Path planned = folder.resolve("plan.yaml");
        assertEquals(Exit.DONE, plan("--output", planned.toString()), complaints.toString());
        JsonNode found = new ObjectMapper().readTree(told.toString());
        double reached = found.get("checked").get("reached").asDouble();
        assertTrue(reached > 0.02 && reached < 0.98, told.toString());
        assertTrue(found.get("checked").get("productMl").asDouble() <= 1.001, told.toString());
        assertEquals(Exit.NOT_ACCEPTABLE, plan("--must-reach", (100 * reached + 1) + "%"));
        assertEquals(Exit.DONE, plan("--must-reach", Double.toString(reached - 0.01)));
        assertEquals(Exit.BAD_INPUT, plan("--must-reach", "110%"));
        // the plan is a scene that runs
        assertEquals(Exit.DONE, execute("run", planned.toString(), "--quiet"), complaints.toString());
    }

    @Test
    void theProofOfAPlanIsARowOfThePageAndReplacesTheOldOne() throws IOException {
        Path page = folder.resolve("plans.md");
        Files.writeString(page, "| box | old | row |\n| other | kept | row |\n");
        int code = execute("verify", "--write", folder.toString(), "--plans", scene().toString(), "--quiet");
        List<String> rows = Files.readAllLines(page).stream()
                .filter(l -> l.startsWith("| box") || l.startsWith("| other"))
                .toList();
        assertEquals(2, rows.size(), rows.toString());
        String[] cells = rows.get(0).split("\\|");
        assertTrue(Integer.parseInt(cells[2].strip()) >= 100, rows.get(0));
        double best = Double.parseDouble(cells[3].replaceAll("%.*", "").strip());
        double plan = Double.parseDouble(cells[5].replaceAll("%.*", "").strip());
        // the code says what the row says
        assertEquals(plan > best || rows.get(0).contains("(all)") ? Exit.DONE : Exit.NOT_ACCEPTABLE, code, rows.get(0));
        assertTrue(plan >= best, rows.get(0));
        assertEquals("| other | kept | row |", rows.get(1));
    }
}
