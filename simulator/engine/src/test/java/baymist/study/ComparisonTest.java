package baymist.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunCancelledException;
import baymist.run.Structures;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComparisonTest {
    private static final Planning COARSE = new Planning(1.5, 6, 64, 2);

    private static final String WANDS = """
            wands:
              - {name: plume, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm, tip: {forward: {orifice: 0.6 mm}}}
              - {name: fan, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
              - {name: ring, length: 300 mm, outer_diameter: 4 mm, bore: 2 mm, tip: {ring: {jets: 4, orifice: 0.4 mm}}}
            """;

    private static final String BOX = """
            cavity:
              family: block
              name: box
              size: [240 mm, 120 mm, 100 mm]
              ports:
                - {name: side, part: left wall, shape: {circle: 12 mm}, at: [60 mm, 0, 30 mm]}
                - {name: end, part: aft wall, shape: {circle: 12 mm}, at: [240 mm, 60 mm, 50 mm]}
                - {name: drain, part: floor, shape: {circle: 8 mm}, at: [20 mm, 100 mm, 0]}
            entries: [{name: side, opening: side}, {name: end, opening: end}]
            """;

    private static final String TWO_BAYS = """
            cavity:
              family: box_section
              name: two bays
              rectangle: {width: 100 mm, height: 80 mm}
              line: [{at: [0, 0, 0]}, {at: [260 mm, 0, 0]}]
              baffles: [{along: 150 mm, holes: [{shape: {circle: 30 mm}, up: 0 mm}]}]
              holes:
                - {name: side, wall: left wall, shape: {circle: 12 mm}, along: 60 mm}
                - {name: end, wall: top, shape: {circle: 12 mm}, along: 200 mm}
                - {name: drain, wall: bottom, shape: {circle: 8 mm}, along: 30 mm}
            entries: [{name: side, opening: side}, {name: end, opening: end}]
            """;

    private static final String ROUND = """
            cavity:
              family: round
              name: can
              length: 240 mm
              radius: 55 mm
              ports:
                - {name: side, part: shell, shape: {circle: 12 mm}, at: [30 mm, -55 mm, 0]}
                - {name: end, part: aft end, shape: {circle: 12 mm}, at: [120 mm, 10 mm, 10 mm]}
            entries: [{name: side, opening: side}, {name: end, opening: end}]
            """;

    /** What the program runs in full unless asked for otherwise. */
    private static final int FINALISTS = 5;

    @TempDir
    Path folder;

    /**
     * Truth by exhaustion: every combination is run at the scene's own resolution, outside of the comparison. What the comparison
     * puts first from
     * coarse runs must be the best of them or lie within one point of coverage.
     */
    @Test
    void theBestOfThreeSmallCavitiesIsFound() throws IOException {
        for (String cavity : List.of(BOX, TWO_BAYS, ROUND)) {
            Scene scene =
                    scene(cavity, cavity.equals(BOX) ? "" : "compare: {clocks: [0 deg, 90 deg, 180 deg, 270 deg]}\n");
            List<Candidate> list = Candidates.of(scene).list();
            assertTrue(list.size() >= 10 && list.size() <= 200, list.size() + " combinations");
            List<StudyResult> truth = new PlanningRun(Planning.FULL, StudyStore.none())
                    .runAll(list.stream().map(Candidate::scene).toList(), 2, PlanningRun.Watch.NONE);
            double most = truth.stream().mapToDouble(Compared::score).max().orElseThrow();
            long good =
                    truth.stream().filter(r -> Compared.score(r) >= most - 0.01).count();
            assertTrue(2 * good <= list.size(), good + " of " + list.size() + " are as good as the best: no choice");
            StudyStore store = StudyStore.in(folder.resolve("truth"));
            Comparison comparison = new Comparison(new PlanningRun(COARSE, store), 2);
            Compared compared =
                    comparison.runOff(comparison.run(scene, Comparison.Watch.NONE), FINALISTS, Comparison.Watch.NONE);
            CompareRow best = compared.best();
            assertNotNull(best);
            double found = Compared.score(truth.get(best.candidate().number() - 1));
            assertTrue(
                    found >= most - 0.01,
                    "found " + found + ", best " + most + ": "
                            + best.candidate().words());
        }
    }

    @Test
    void theSameBitsForOneTwoAndThreeAtOnce() throws IOException {
        Scene scene = scene(BOX, "compare: {entries: [side], wands: [fan], clocks: [0 deg, 90 deg, 180 deg]}\n");
        Compared one = compare(scene, StudyStore.none(), 1);
        for (int atOnce : new int[] {2, 3}) {
            Compared more = compare(scene, StudyStore.none(), atOnce);
            assertEquals(rank(one), rank(more));
            for (int row = 1; row <= one.rows().size(); row++) {
                assertArrayEquals(
                        one.row(row).outcome().filmM(),
                        more.row(row).outcome().filmM(),
                        "film of row " + row + ", " + atOnce + " at once");
            }
        }
    }

    /** Jobs that differ in their passes alone share one structure; its results are those of structures made for each. */
    @Test
    void aSharedStructureGivesTheSameBits() throws IOException {
        Scene scene = scene(BOX, "compare: {entries: [side], wands: [fan], clocks: [0 deg, 90 deg, 180 deg]}\n");
        Structures shared = Structures.shared();
        Structures fresh = Structures.fresh();
        Compared once = compared(scene, shared);
        Compared anew = compared(scene, fresh);
        assertEquals(rank(anew), rank(once));
        assertArrayEquals(anew.row(1).outcome().filmM(), once.row(1).outcome().filmM());
        assertEquals(2, shared.made(), "the sheets, and the planning voxels on them");
        assertTrue(fresh.made() > 3, "nothing was saved");
    }

    private static Compared compared(Scene scene, Structures structures) {
        PlanningRun runs = new PlanningRun(COARSE, StudyStore.none(), structures);
        return new Comparison(runs, 2).run(scene, Comparison.Watch.NONE);
    }

    @Test
    void aComparisonThatWasKilledGoesOnFromWhatItHad() throws IOException {
        Scene scene = scene(BOX, "compare: {entries: [side], wands: [fan], clocks: [0 deg, 90 deg, 180 deg]}\n");
        StudyStore store = StudyStore.in(folder.resolve("runs"));
        AtomicInteger ended = new AtomicInteger();
        Comparison.Watch killing = new Comparison.Watch() {
            @Override
            public void progress(double done, String latest) {
                ended.incrementAndGet();
            }

            @Override
            public boolean cancelled() {
                return ended.get() >= 2;
            }
        };
        Comparison killed = new Comparison(new PlanningRun(COARSE, store), 1);
        assertThrows(RunCancelledException.class, () -> killed.run(scene, killing));
        Path torn = files().get(0);
        Files.write(torn, new byte[] {1, 2, 3}); // as a full disk would leave it
        assertEquals(2, files().size());
        Compared after = compare(scene, store, 1);
        assertEquals(3, files().size());
        assertEquals(rank(compare(scene, StudyStore.none(), 1)), rank(after));
    }

    @Test
    void whatCannotGoInIsToldWithItsReasonAndNeverWins() throws IOException {
        String wand = WANDS.replace(
                "name: fan, length: 300 mm, outer_diameter: 4 mm", "name: fan, length: 300 mm, outer_diameter: 20 mm");
        Scene scene = scene(BOX, "compare: {entries: [side], wands: [fan, plume], clocks: [0 deg]}\n", wand);
        Compared c = compare(scene, StudyStore.none(), 1);
        assertEquals("plume", c.row(1).candidate().wand());
        assertFalse(c.row(2).ran());
        assertTrue(c.row(2).why().contains("does not go in"), c.row(2).why());
    }

    @Test
    void paretoRowsAreNotDominatedAndTheOthersAre() throws IOException {
        Scene scene = scene(BOX, "compare: {entries: [side], clocks: [0 deg, 90 deg, 180 deg, 270 deg]}\n");
        Compared c = compare(scene, StudyStore.none(), 2);
        List<CompareRow> ran = c.rows().stream().filter(CompareRow::ran).toList();
        assertTrue(ran.get(0).pareto());
        for (CompareRow row : ran) {
            boolean beaten = ran.stream().anyMatch(o -> better(o.outcome(), row.outcome()));
            assertFalse(row.pareto() && beaten, row.candidate().words());
        }
        assertTrue(ran.stream().anyMatch(r -> !r.pareto()), "every row is efficient: the mark tells nothing");
    }

    /** Clearly better in all that these candidates differ in. */
    private static boolean better(StudyResult a, StudyResult b) {
        return a.reached() > b.reached() + 0.002
                && a.protectedShare() > b.protectedShare() + 0.002
                && a.seamsReached() > b.seamsReached() + 0.002
                && a.productM3() <= b.productM3()
                && a.triggerS() <= b.triggerS();
    }

    @Test
    void clockAnglesThatATipCannotTellApartAreOneCandidate() throws IOException {
        Scene scene = scene(BOX, "");
        Candidates.All all = Candidates.of(scene);
        // two entries; of eight clock angles a fan keeps 8, a ring of four 2 (0 and 45 deg), a plume on the axis 1
        assertEquals(2 * (8 + 2 + 1), all.list().size());
        assertEquals(2 * (6 + 7), all.alike());
    }

    @Test
    void aSceneWithoutWandsSaysSo() throws IOException {
        Scene scene = scene(BOX, "", "");
        assertEquals(
                "CMP-001",
                assertThrows(SceneException.class, () -> Candidates.of(scene))
                        .findings()
                        .get(0)
                        .id());
    }

    private static Compared compare(Scene scene, StudyStore store, int atOnce) {
        return new Comparison(new PlanningRun(COARSE, store), atOnce).run(scene, Comparison.Watch.NONE);
    }

    private static List<String> rank(Compared c) {
        return c.rows().stream()
                .map(r -> r.candidate().words() + " " + r.outcome().reached() + " " + r.pareto())
                .toList();
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> all = Files.list(folder.resolve("runs"))) {
            return all.sorted().toList();
        }
    }

    private Scene scene(String cavity, String more) throws IOException {
        return scene(cavity, more, WANDS);
    }

    private Scene scene(String cavity, String more, String wands) throws IOException {
        Path file = Files.createTempFile(folder, "scene", ".yaml");
        Files.writeString(
                file,
                "baymist: 1\ntitle: small\n" + cavity + wands
                        + "product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}\n"
                        + "supply: {pressure: 40 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}\n"
                        + "hang: 20 s\nvoxel: 12 mm\nnumerics: {size_bins: 6, rays_per_jet: 64}\n"
                        + (more.isEmpty()
                                ? "compare: {to: 20 mm, draw_back: 50 mm/s}\n"
                                : more.replace("}\n", ", to: 20 mm, draw_back: 50 mm/s}\n")));
        return SceneReader.read(file);
    }
}
