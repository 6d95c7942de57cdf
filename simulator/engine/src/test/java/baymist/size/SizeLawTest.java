package baymist.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.Scene;
import baymist.scene.WandMaterial;
import baymist.scene.io.SceneReader;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Honest runs whose answer is known in closed form: large drops in still air land where the jets point, and nowhere else. */
class SizeLawTest {
    private static final double RADIUS_M = 0.05;
    private static final double LONG_M = 1.0;
    private static final double MARK_M = 0.05;

    /** Half width of a jet where it lands, m: a round free jet of 11.8 degrees half angle at the radius (docs/theory/spray.md). */
    private static final double SPREAD_M = RADIUS_M * Math.tan(Math.toRadians(11.8));

    @TempDir
    Path folder;

    private Scene scene(String cavity) throws IOException {
        String text = """
                baymist: 1
                title: Known answer
                cavity:
                %s
                wands:
                  - {name: any, length: 300 mm, outer_diameter: 6 mm, bore: 3 mm, tip: {ring: {jets: 24, orifice: 0.2 mm}}}
                product: {name: heavy oil, density: 870 kg/m3, viscosity: 40 mPa.s, surface_tension: 0.03 N/m}
                supply: {pressure: 80 psi, liquid: 60 mL/min, droplets: {classes: [{diameter: 200 um, share: 1}]}}
                entries: [{name: in, opening: wand hole}]
                passes: [{name: only, entry: in, wand: any, from: deepest, to: 20 mm, draw_back: 50 mm/s}]
                hang: 1 s
                air: still
                voxel: 16 mm
                """;
        Path file = folder.resolve("scene.yaml");
        Files.writeString(file, String.format(text, cavity.indent(2).stripTrailing()));
        return SceneReader.read(file);
    }

    private static SizeResult sized(Scene scene, double reached, Tube... tubes) {
        SizeRequest request = new SizeRequest(
                reached,
                0,
                MARK_M,
                2,
                List.of(tubes),
                List.of(Pattern.ring(24, 0.0002)),
                List.of(),
                false,
                WandMaterial.STAINLESS);
        PlanningRun planning = new PlanningRun(new Planning(1, 1, 32, 1), StudyStore.none());
        return SizeStudy.run(scene, request, new PlanningRuns(planning, new RunOptions(2), false, RunObserver.NONE));
    }

    @Test
    void aTubeIsAsLongAsTheBandThatItMustSpray() throws IOException {
        Scene scene = scene("""
                family: round
                name: pipe
                length: 1 m
                radius: 50 mm
                gauge: 1 mm
                ports: [{name: wand hole, part: forward end, shape: {circle: 10 mm}, at: [0 mm, 0 mm, 0 mm]}]""");
        // The jets stand square to the axis: a wand that stops at x sprays the wall from its last station's band to x +
        // spread; the ends
        // stay bare. Share of area = 2 π r (x + spread - start) / (2 π r L + 2 π r²).
        double needed = 0.62;
        double start = 0.02 - SPREAD_M;
        double share = (needed + SPREAD_M - start) / (LONG_M + RADIUS_M);
        SizeResult result = sized(scene, share, new Tube(0.006, 0.003));
        Candidate shortest = result.shortest();
        assertNotNull(shortest, () -> result.designs().get(0).verdict());
        assertEquals(needed, shortest.lengthM(), MARK_M + 1e-9);
        neverLess(result);
    }

    @Test
    void aLineOfHolesIsPassedAsFarAsTheLastBayMustBeSprayed() throws IOException {
        Scene scene = scene("""
                family: box_section
                name: line
                gauge: 1 mm
                rectangle: {width: 80 mm, height: 80 mm}
                line: [{at: [0 mm, 0 mm, 0 mm]}, {at: [800 mm, 0 mm, 0 mm]}]
                start: {holes: [{name: wand hole, shape: {circle: 12 mm}, up: 0 mm}]}
                baffles:
                  - {along: 200 mm, holes: [{shape: {circle: 12 mm}, up: 0 mm}]}
                  - {along: 400 mm, holes: [{shape: {circle: 12 mm}, up: 0 mm}]}
                  - {along: 600 mm, holes: [{shape: {circle: 7 mm}, up: 0 mm}]}""");
        // Walls alone get film: to reach them up to x the tip must stand within the jets' spread of x; x lies in the
        // last bay. The
        // baffles and ends, 8 faces of 80 mm x 80 mm less their holes, stay bare.
        double faces = 8 * 0.08 * 0.08 - Math.PI / 4 * (5 * 0.012 * 0.012 + 2 * 0.007 * 0.007);
        double needed = 0.68;
        double share = 4 * 0.08 * needed / (4 * 0.08 * 0.8 + faces);
        Tube thin = new Tube(0.006, 0.003);
        Tube thick = new Tube(0.008, 0.003);
        SizeResult result = sized(scene, share, thick, thin);
        Candidate shortest = result.shortest();
        assertNotNull(shortest, () -> result.designs().get(0).verdict());
        assertEquals(thin, shortest.design().tube());
        assertEquals(needed, shortest.lengthM(), MARK_M + 1e-9);
        DesignResult stopped = result.designs().get(1);
        assertEquals(thick, stopped.design().tube());
        assertNull(stopped.shortest());
        assertEquals(0.6, stopped.deepestM(), 3e-3); // the sheet, less the stand-off
        assertTrue(stopped.verdict().contains("baffle 3"), stopped.verdict());
        neverLess(result);
    }

    private static void neverLess(SizeResult result) {
        for (DesignResult d : result.designs()) {
            for (int i = 1; i < d.sweep().size(); i++) {
                Candidate shorter = d.sweep().get(i - 1);
                Candidate longer = d.sweep().get(i);
                assertTrue(longer.lengthM() > shorter.lengthM());
                assertTrue(longer.at().reached() >= shorter.at().reached());
                assertTrue(longer.stopM() <= longer.lengthM() + 1e-12);
            }
        }
    }
}
