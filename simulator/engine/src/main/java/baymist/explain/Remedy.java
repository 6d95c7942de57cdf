package baymist.explain;

import baymist.scene.Scene;
import java.util.List;

/**
 * A change that was run.
 *
 * @param kind what it touches
 * @param change what a technician would do, in words
 * @param sceneLines what to change in the scene file
 * @param scene the job with the change, at planning resolution
 * @param job the same at the resolution that the scene states, ready to be written
 * @param before film on the region as the job stands
 * @param after film on the region with the change alone
 * @param holds whether it multiplies the film by {@link PatchFilm#TIMES} and adds at least the scene's haze, or raises the reached share by
 *     {@link PatchFilm#POINTS}
 * @param caution what has to be heeded, whole sentences, or empty
 * @param single whether it is one change; false for changes that were run together
 * @param overLimit protected items that get more than their limit with the change and not without
 * @param wholeBefore reached share of the whole structure as the job stands, 0..1
 * @param wholeAfter the same with the change
 */
public record Remedy(
        ChangeKind kind,
        String change,
        List<String> sceneLines,
        Scene scene,
        Scene job,
        PatchFilm before,
        PatchFilm after,
        boolean holds,
        String caution,
        boolean single,
        List<String> overLimit,
        double wholeBefore,
        double wholeAfter) {
    /** Every remedy that takes metal away says this. */
    public static final String DRILLING =
            "Drilling changes the structure: only where its approved data allow it, and only by a person licensed to"
                    + " do it.";

    /** Loss of the whole structure's reached share from which a change counts as harmful. ASSUMED. */
    public static final double LOSS = 0.01;

    public Remedy {
        sceneLines = List.copyOf(sceneLines);
        overLimit = List.copyOf(overLimit);
    }

    /** Whether it is one change on which the film there depends, if only at a trace: enough to prove a cause, see {@link #holds} for a remedy. */
    public boolean speaks() {
        return single && before.dependsOn(after);
    }

    /** Whether it costs the rest: a protected item above its limit, or {@link #LOSS} of the whole structure's reached share. */
    public boolean harms() {
        return !overLimit.isEmpty() || wholeAfter < wholeBefore - LOSS;
    }

    /** How much more of the wanted film there is with it, 0..1. */
    public double gain() {
        return after.filled() - before.filled();
    }
}
