package baymist.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.coverage.Fractions;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A run of some bays says what the whole says of them, and says what it leaves out. */
class ComputedPartTest {
    private static final Scene UP = BoxOfBays.upwards(6, 3);
    private static final RunResult WHOLE = run(UP, PartRule.WHOLE, Long.MAX_VALUE);

    private static RunResult run(Scene scene, PartRule rule, long bytes) {
        return Simulation.run(scene, new RunOptions(2, new MemoryBudget(bytes), rule), RunObserver.NONE);
    }

    private static Fractions bay(RunResult r, String name) {
        return r.coverage().byBay().stream()
                .filter(f -> f.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Optional<Finding> finding(RunResult r, String id) {
        return r.findings().stream().filter(f -> f.id().equals(id)).findFirst();
    }

    private static long needed(Scene scene, PartRule rule) {
        RunEstimate e = Simulation.check(
                        scene, new RunOptions(1, new MemoryBudget(Long.MAX_VALUE), rule), RunObserver.NONE)
                .estimate();
        assertNotNull(e);
        return e.memory().totalBytes();
    }

    @Test
    void ringsThatHoldEveryBayGiveTheWholeToTheBit() {
        RunResult all = run(UP, PartRule.rings(9), Long.MAX_VALUE);
        assertNull(all.grid().part());
        assertEquals(WHOLE.record().stateHash(), all.record().stateHash());
        assertArrayEquals(WHOLE.filmM(), all.filmM());
        assertArrayEquals(WHOLE.directKg(), all.directKg());
        assertEquals(WHOLE.ledger(), all.ledger());
        assertEquals(WHOLE.coverage().total(), all.coverage().total());
    }

    @Test
    void withTwoRingsTheSprayedBayIsAsInTheWhole() {
        RunResult part = run(UP, PartRule.rings(2), Long.MAX_VALUE);
        assertEquals(5, part.coverage().byBay().size());
        assertEquals("bays 1 to 5 of 6", ComputedBays.of(part.grid()).words());
        for (String name : List.of("bay 2", "bay 3", "bay 4")) {
            Fractions a = bay(WHOLE, name);
            Fractions b = bay(part, name);
            assertEquals(a.areaM2(), b.areaM2(), 1e-12 * a.areaM2());
            assertEquals(a.reached(), b.reached(), 0.002, name);
            assertEquals(
                    a.meanFilmM(), b.meanFilmM(), 0.005 * bay(WHOLE, "bay 3").meanFilmM(), name);
        }
        assertTrue(bay(part, "bay 3").reached() > 0.002, "the bay is not sprayed at all");
        assertEquals(0, part.ledger().closure(), 1e-9);
        assertEquals(
                WHOLE.ledger().sprayedKg(),
                part.ledger().sprayedKg(),
                1e-12 * part.ledger().sprayedKg());
        assertTrue(finding(part, "PART-001").orElseThrow().text().contains("bays 1 to 5 of 6"));
        assertFalse(finding(part, "PART-002").isPresent());
    }

    @Test
    void bayNamesAndPlacesAreThoseOfTheWhole() {
        RunResult part = run(UP, PartRule.rings(1), Long.MAX_VALUE);
        assertEquals(
                List.of("bay 2", "bay 3", "bay 4"),
                part.coverage().byBay().stream().map(Fractions::name).toList());
        List<String> whole =
                WHOLE.coverage().unreached().stream().map(u -> u.label()).toList();
        String beside = part.coverage().unreached().stream()
                .filter(u -> u.bays().equals(List.of("bay 4")))
                .findFirst()
                .orElseThrow()
                .label();
        assertTrue(whole.contains(beside), beside + " of " + whole);
        // seams too are those of the computed bays, none of them unresolved for want of a bay
        double seams = WHOLE.coverage().seams().byBay().stream()
                .filter(s -> List.of("bay 2", "bay 3", "bay 4").contains(s.name()))
                .mapToDouble(s -> s.lengthM())
                .sum();
        assertEquals(seams, part.coverage().seams().lengthM(), 0.01 * seams);
    }

    @Test
    void whatIsCarriedBeyondIsALineOfTheLedgerAndWarnedOf() {
        RunResult part = run(BoxOfBays.alongHoles(6), PartRule.rings(1), Long.MAX_VALUE);
        assertEquals("bays 1 and 2 of 6", ComputedBays.of(part.grid()).words());
        double share = part.ledger().beyondKg() / part.ledger().sprayedKg();
        assertTrue(share > 0.01, "only " + share + " goes through the holes");
        assertEquals(0, part.ledger().closure(), 1e-9);
        Finding warned = finding(part, "PART-002").orElseThrow();
        assertTrue(warned.text().contains(String.format(java.util.Locale.ROOT, "%.2f %%", 100 * share)), warned.text());
        assertEquals(
                part.ledger().beyondKg(), beyondInWhole(), 0.1 * part.ledger().beyondKg());
    }

    /** What the whole run has in the bays that the part leaves out: film, fog in the air, and fog that left by their openings; what dripped out is in none. */
    private static double beyondInWhole() {
        double[] airborneKg = {0};
        RunObserver last = new ForwardingObserver(RunObserver.NONE) {
            @Override
            public void moment(RunMoment now) {
                airborneKg[0] = 0;
                for (int c = 0; c < now.grid().cellCount(); c++) {
                    airborneKg[0] += now.grid().bayOfCell(c) > 1
                            ? now.concentrationKgPerM3(c) * now.grid().volumeM3(c)
                            : 0;
                }
            }
        };
        RunResult whole = Simulation.run(BoxOfBays.alongHoles(6), new RunOptions(2), last);
        double sum = airborneKg[0];
        for (int s = 0; s < whole.grid().surfels().count(); s++) {
            int bay = whole.grid().bayOfCell(whole.grid().surfels().cell()[s]);
            sum += bay > 1 ? whole.directKg()[s] + whole.fogKg()[s] : 0;
        }
        for (Outlook.Release out : whole.outlook().releases()) {
            sum += out.opening().matches("bay [3-6] port|rib 7 hole") ? out.fogKg() : 0;
        }
        return sum;
    }

    @Test
    void oneRingMoreIsComputedWhereTooMuchGoesBeyond() {
        Scene along = BoxOfBays.alongHoles(6);
        long enough = needed(along, PartRule.rings(4));
        assertTrue(enough < needed(along, PartRule.WHOLE));
        List<String> notes = new ArrayList<>();
        List<Double> done = new ArrayList<>();
        int[] begunAnew = {0};
        RunObserver listening = new ForwardingObserver(RunObserver.NONE) {
            @Override
            public void note(String text) {
                notes.add(text);
            }

            @Override
            public void progress(double share, double jobTimeS) {
                done.add(share);
            }

            @Override
            public void again() {
                begunAnew[0]++;
            }
        };
        RunOptions options = new RunOptions(2, new MemoryBudget(enough), PartRule.BY_MEMORY);
        RunResult r = Simulation.run(along, options, listening);
        String words = ComputedBays.of(r.grid()).words();
        boolean warned = finding(r, "PART-002").isPresent();
        assertTrue(warned ? words.equals("bays 1 to 5 of 6") : words.matches("bays 1 to [45] of 6"), words);
        long said =
                notes.stream().filter(n -> n.contains("one ring of bays more")).count();
        assertTrue(said > 0, notes.toString());
        assertEquals(said, begunAnew[0]);
        for (int i = 1; i < done.size(); i++) {
            assertTrue(done.get(i) >= done.get(i - 1), done.toString());
        }
        RunResult one = Simulation.run(along, options.withThreads(1), RunObserver.NONE);
        assertEquals(r.record().stateHash(), one.record().stateHash());
        assertEquals(r.ledger(), one.ledger());
    }

    @Test
    void memoryDecidesAndTheRefusalStaysWhereNotEvenOneRingFits() {
        long whole = needed(UP, PartRule.WHOLE);
        long one = needed(UP, PartRule.rings(1));
        assertTrue(one < 0.6 * whole);
        RunResult part = run(UP, PartRule.BY_MEMORY, one);
        assertEquals("bays 2 to 4 of 6", ComputedBays.of(part.grid()).words());
        assertNull(run(UP, PartRule.BY_MEMORY, whole).grid().part());
        for (PartRule rule : List.of(PartRule.BY_MEMORY, PartRule.rings(1))) {
            SceneException e = assertThrows(SceneException.class, () -> run(UP, rule, one - 1));
            assertEquals("RUN-008", e.findings().get(0).id());
        }
        SceneException refused = assertThrows(SceneException.class, () -> run(UP, PartRule.WHOLE, one));
        assertEquals("RUN-008", refused.findings().get(0).id());
    }

    @Test
    void checkSaysWhatARunWouldCompute() {
        long one = needed(UP, PartRule.rings(1));
        CheckResult check =
                Simulation.check(UP, new RunOptions(1, new MemoryBudget(one), PartRule.BY_MEMORY), RunObserver.NONE);
        Finding said = check.findings().stream()
                .filter(f -> f.id().equals("PART-001"))
                .findFirst()
                .orElseThrow();
        assertTrue(said.text().contains("bays 2 to 4 of 6 would be computed"), said.text());
        assertTrue(check.findings().stream().noneMatch(f -> f.id().equals("RUN-008")));
        assertEquals(6, check.grid().bays().size());
    }
}
