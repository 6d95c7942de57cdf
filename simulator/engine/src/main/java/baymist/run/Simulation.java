package baymist.run;

import baymist.scene.Scene;

/** Stand-in to be dropped at merge. */
public final class Simulation {
    private Simulation() {}

    /** Stand-in. */
    public static RunResult run(Scene scene, RunOptions options, RunObserver observer) {
        throw new UnsupportedOperationException("no simulation on this branch");
    }

    /** Stand-in. */
    public static CheckResult check(Scene scene, RunOptions options, RunObserver observer) {
        throw new UnsupportedOperationException("no simulation on this branch");
    }
}
