package baymist.run;

import baymist.scene.Scene;

/** Stand-in to be dropped at merge. */
public final class Simulation {
    private Simulation() {}

    /** Stand-in. */
    public static RunResult run(Scene scene, RunOptions options, RunObserver observer) {
        return absent("no simulation on this branch");
    }

    /** Stand-in. */
    public static CheckResult check(Scene scene, RunOptions options, RunObserver observer) {
        return absent("no simulation on this branch");
    }

    @SuppressWarnings("TypeParameterUnusedInFormals")
    private static <T> T absent(String what) {
        throw new UnsupportedOperationException(what);
    }
}
