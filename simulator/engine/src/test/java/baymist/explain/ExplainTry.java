package baymist.explain;

import baymist.report.ExplainReport;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import java.nio.file.Files;

class ExplainTry {
    public static void main(String[] a) throws Exception {
        for (String which : a[0].split(",")) {
            for (int seed = Integer.parseInt(a[1]); seed < Integer.parseInt(a[2]); seed++) {
                long t = System.nanoTime();
                KnownCavities.Known k = KnownCavities.of(Cause.ACCESS, which, seed, Files.createTempDirectory("k"));
                Explanation e = Explain.of(k.scene(), ExplainOptions.DEFAULT.about(k.atM()), new RunOptions(2), RunObserver.NONE);
                System.out.printf("%-14s seed %d want %-14s got %-14s %s  %.1f s%n", which, seed, k.cause(), e.cause(), e.proved(), (System.nanoTime() - t) * 1e-9);
                if (a.length > 3) System.out.println(ExplainReport.text(e));
            }
        }
    }
}
