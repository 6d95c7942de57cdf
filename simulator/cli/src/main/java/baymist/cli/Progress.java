package baymist.cli;

import baymist.run.RunObserver;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Shows how a run gets on: a bar on a terminal, a few lines elsewhere, nothing when quiet. Always on standard error. */
interface Progress extends RunObserver, AutoCloseable {
    @Override
    default boolean cancelled() {
        return false;
    }

    @Override
    void close();

    static Progress of(Console console, boolean quiet) {
        if (quiet) {
            return new None();
        }
        return console.terminal() ? new Bar() : new Lines(console.err());
    }

    /** The simulated time in words; nothing for work in which no job runs (not a number). */
    private static String jobTime(double s) {
        return Double.isNaN(s) ? "" : String.format(Locale.ROOT, ", job time %.1f s", s);
    }

    /** Nothing at all. */
    final class None implements Progress {
        @Override
        public void stage(String name) {}

        @Override
        public void progress(double done, double jobTimeS) {}

        @Override
        public void close() {}
    }

    /** A bar with the time left; opened with the first share of work, since the first stages take no time to speak of. */
    final class Bar implements Progress {
        private static final int STEPS = 1000;
        private static final int WIDTH = 100;

        private Optional<ProgressBar> bar = Optional.empty();
        private String stage = "";

        @Override
        public void note(String text) {
            System.err.println("  " + text);
        }

        @Override
        public void stage(String name) {
            stage = name;
            bar.ifPresent(b -> b.setExtraMessage(" " + name));
        }

        @Override
        public void progress(double done, double jobTimeS) {
            if (bar.isEmpty()) {
                bar = Optional.of(new ProgressBarBuilder()
                        .setTaskName("run")
                        .setInitialMax(STEPS)
                        .setUpdateIntervalMillis(250)
                        .setStyle(ProgressBarStyle.ASCII)
                        .setConsumer(new ConsoleProgressBarConsumer(System.err, WIDTH))
                        .build());
            }
            bar.get().stepTo(Math.round(STEPS * Math.min(1, Math.max(0, done))));
            bar.get().setExtraMessage(" " + stage + jobTime(jobTimeS));
        }

        @Override
        public void close() {
            bar.ifPresent(ProgressBar::close);
        }
    }

    /** A line for each stage and each tenth of the work. */
    final class Lines implements Progress {
        private final PrintWriter err;
        private final long startNs = System.nanoTime();
        private int tenths;

        Lines(PrintWriter err) {
            this.err = err;
        }

        @Override
        public void stage(String name) {
            err.println("  " + name);
        }

        @Override
        public void note(String text) {
            err.println("    " + text);
        }

        @Override
        public void progress(double done, double jobTimeS) {
            int reached = (int) Math.floor(10 * done + 1e-9);
            if (reached <= tenths) {
                return;
            }
            tenths = reached;
            double spentS = (System.nanoTime() - startNs) * 1e-9;
            String left = done < 1 ? String.format(Locale.ROOT, ", about %.0f s left", spentS * (1 - done) / done) : "";
            err.println(String.format(
                    Locale.ROOT, "  %3.0f %%%s, %.0f s spent%s", 100 * done, jobTime(jobTimeS), spentS, left));
        }

        @Override
        public void close() {}
    }
}
