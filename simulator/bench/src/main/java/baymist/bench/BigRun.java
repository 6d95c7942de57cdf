package baymist.bench;

import baymist.run.ComputedBays;
import baymist.run.MemoryBudget;
import baymist.run.PartRule;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A run as anyone would start it, air and fog as by default, of a structure that has no room as a whole: stage by stage, with the memory it takes. */
final class BigRun implements RunObserver {
    private static final int BAYS = 36;

    /** Bay that is sprayed: the middle one. */
    private static final int SPRAYED = 18;

    private final List<String> rows = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final PeakMemory peak = new PeakMemory();
    private String stage = "";
    private double since = processorS();

    private BigRun() {}

    /**
     * @param drawMmPerS speed at which the needle is drawn back 35 mm, mm/s
     * @param hangS how long the fog hangs after the pass, s
     */
    static void measure(Page page, double cells, double drawMmPerS, double hangS) {
        Scene scene = ManyBays.one(
                BAYS,
                SPRAYED,
                drawMmPerS,
                ManyBays.voxelM(BAYS, cells),
                String.format(Locale.ROOT, "hang: %.1f s", hangS));
        BigRun seen = new BigRun();
        RunOptions options = new RunOptions(2).withPart(PartRule.BY_MEMORY);
        RunResult r = Simulation.run(scene, options, seen);
        seen.lap();
        page.say(
                "## %,d cells, run%n%n%d bays, %,d lattice cells; %s: %,d cells, %,d face entries, %,d surfels. Bay %d is sprayed for %.2f s, then 1 s and %.1f s of hang; two threads, %.1f GB for runs.",
                r.grid().part() == null ? r.grid().cellCount() : r.grid().part().wholeCells(),
                BAYS,
                (long) r.grid().nx() * r.grid().ny() * r.grid().nz(),
                ComputedBays.of(r.grid()).words() + " computed",
                r.grid().cellCount(),
                r.grid().faces().count(),
                r.grid().surfels().count(),
                SPRAYED,
                35 / drawMmPerS,
                hangS,
                1e-9 * MemoryBudget.ofHeap().bytes());
        page.table(
                "| stage | processor s | held after it GB | heap in use at most so far GB |\n|---|---|---|---|\n",
                seen.rows);
        page.say(
                "Carried into bays not computed: %.2e of the product; the ledger closes to %.1e. Air %s, fog %s, %s sizes, %s rays a jet.",
                r.ledger().beyondKg() / r.ledger().sprayedKg(),
                Math.abs(r.ledger().closure()),
                set(r, "air"),
                set(r, "fog transport"),
                set(r, "size bins"),
                set(r, "rays per jet"));
        for (String note : seen.notes) {
            page.say("Said on the way: %s.", note);
        }
    }

    private static String set(RunResult r, String name) {
        return r.record().settings().getOrDefault(name, "?");
    }

    private static double processorS() {
        return 1e-9 * Triad.processorNs();
    }

    private void lap() {
        if (!stage.isEmpty()) {
            double seconds = processorS() - since;
            double held = 1e-9 * PeakMemory.heldNowBytes();
            rows.add(String.format(
                    Locale.ROOT, "| %s | %.1f | %.2f | %.2f |%n", stage, seconds, held, 1e-9 * peak.usedBytes()));
            System.err.print(rows.get(rows.size() - 1));
        }
        since = processorS();
    }

    @Override
    public void stage(String name) {
        lap();
        stage = name;
    }

    @Override
    public void note(String text) {
        notes.add(text);
        System.err.println(text);
    }

    @Override
    public void progress(double done, double jobTimeS) {
        System.err.printf(Locale.ROOT, "%.2f s%n", jobTimeS);
    }

    @Override
    public boolean cancelled() {
        return false;
    }
}
