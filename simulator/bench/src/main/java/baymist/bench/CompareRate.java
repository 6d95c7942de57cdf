package baymist.bench;

import baymist.numeric.StateHash;
import baymist.run.Structures;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.study.CompareRow;
import baymist.study.Compared;
import baymist.study.Comparison;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
import java.nio.file.Path;

/**
 * A whole comparison of candidates at planning resolution: with one thread and with two, with and without work shared between candidates, all in one
 * process after one comparison that nobody counts. Nothing is kept on disk.
 *
 * <p>{@code java -cp benchmarks.jar baymist.bench.CompareRate [scene] [repeats]}, from the project's folder.
 */
public final class CompareRate {
    private CompareRate() {}

    /** Best of the repeats, seconds by the clock and of the processor. */
    private record Time(double wallS, double processorS, Compared compared, int made) {}

    public static void main(String[] args) {
        Path file = args.length > 0 ? Path.of(args[0]) : Path.of("scenes", "wing-box-choose.yaml");
        int repeats = args.length > 1 ? Integer.parseInt(args[1]) : 2;
        Scene scene = SceneReader.read(file);
        compare(scene, 2, true);
        Time one = best(scene, 1, true, repeats);
        Time two = best(scene, 2, true, repeats);
        Time three = best(scene, 3, true, 1);
        Time apart = best(scene, 2, false, repeats);
        long ran = one.compared().rows().stream().filter(CompareRow::ran).count();
        System.out.printf(
                "%s: %d candidates, %d of them run, the others cut or refused; best of %d%n",
                file.getFileName(), one.compared().rows().size(), ran, repeats);
        System.out.println(
                "| threads | work shared | structures made | s by the clock | s of processor (user + system) | hash of all films |");
        System.out.println("|---|---|---|---|---|---|");
        row("1", "yes", one);
        row("2", "yes", two);
        row("3", "yes", three);
        row("2", "no", apart);
        System.out.printf(
                "two threads over one: %.2f; sharing saves %.1f %% of the processor's time%n",
                one.wallS() / two.wallS(), 100 * (1 - two.processorS() / apart.processorS()));
        String hash = hash(one.compared());
        for (Time t : new Time[] {two, three, apart}) {
            if (!hash(t.compared()).equals(hash)) {
                System.out.println("the films differ between rows: not the same bits");
                System.exit(1);
            }
        }
    }

    /** Time of a whole comparison with one thread over that with {@code threads}, best of the repeats. */
    static double gain(Scene scene, int threads, int repeats) {
        compare(scene, threads, true);
        return best(scene, 1, true, repeats).wallS()
                / best(scene, threads, true, repeats).wallS();
    }

    private static void row(String threads, String shared, Time t) {
        System.out.printf(
                "| %s | %s | %d | %.1f | %.1f | %s |%n",
                threads,
                shared,
                t.made(),
                t.wallS(),
                t.processorS(),
                hash(t.compared()).substring(0, 12));
    }

    private static Time best(Scene scene, int threads, boolean shared, int repeats) {
        Time best = compare(scene, threads, shared);
        for (int i = 1; i < repeats; i++) {
            Time t = compare(scene, threads, shared);
            best = t.wallS() < best.wallS() ? t : best;
        }
        return best;
    }

    private static Time compare(Scene scene, int threads, boolean shared) {
        Structures structures = shared ? Structures.shared() : Structures.fresh();
        PlanningRun runs = new PlanningRun(Planning.DEFAULT, StudyStore.none(), structures);
        long start = System.nanoTime();
        long processor = Triad.processorNs();
        Compared compared = new Comparison(runs, threads).run(scene, Comparison.Watch.NONE);
        return new Time(
                1e-9 * (System.nanoTime() - start),
                1e-9 * (Triad.processorNs() - processor),
                compared,
                structures.made());
    }

    private static String hash(Compared compared) {
        StateHash hash = new StateHash();
        for (CompareRow row : compared.rows()) {
            hash.add(row.ran() ? row.outcome().filmM() : new double[0]);
        }
        return hash.hex();
    }
}
