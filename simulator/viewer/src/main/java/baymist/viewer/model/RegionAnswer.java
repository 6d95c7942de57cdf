package baymist.viewer.model;

import baymist.access.TipPose;
import baymist.explain.Explain;
import baymist.explain.ExplainOptions;
import baymist.explain.Explanation;
import baymist.explain.Fact;
import baymist.explain.Remedy;
import baymist.field.FieldOptions;
import baymist.field.PoseShare;
import baymist.field.ReachField;
import baymist.field.ReachFields;
import baymist.field.RegionChoice;
import baymist.geom.Vec3;
import baymist.run.Approach;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.scene.Scene;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Answers about a bare place that take seconds to minutes: work for a {@link JobRunner}. */
public final class RegionAnswer {
    /** A time for trying changes that people wait for, s. */
    public static final double PATIENCE_S = 120;

    /** Farthest that a place reaches for the search of a pose, m. */
    private static final double WITHIN_M = 0.25;

    private RegionAnswer() {}

    /**
     * Why a place stays bare.
     *
     * @param sentences cause, what speaks for it, what to begin with
     */
    public record Why(Explanation explanation, List<String> sentences) {
        public Why {
            sentences = List.copyOf(sentences);
        }
    }

    /**
     * Where a tip would do most for a place.
     *
     * @param bodyM centre line of the wand then, from the entry to the tip, m
     * @param radiusM radius of the wand, m
     * @param sentence how to get there and what it brings
     */
    public record GhostPose(TipPose tip, List<Vec3> bodyM, double radiusM, PoseShare share, String sentence) {
        public GhostPose {
            bodyM = List.copyOf(bodyM);
        }
    }

    /** Explains a place of a run with {@link #PATIENCE_S} for trying changes. */
    public static Why why(Scene scene, RegionList.Row row, RunOptions options, RunObserver observer) {
        return why(scene, row, PATIENCE_S, options, observer);
    }

    /**
     * Explains a place of a run; at planning resolution, a run for each change that is tried.
     *
     * @param seconds time after which no further change is tried, s, above 0
     */
    public static Why why(Scene scene, RegionList.Row row, double seconds, RunOptions options, RunObserver observer) {
        ExplainOptions usual = ExplainOptions.DEFAULT;
        ExplainOptions asked =
                new ExplainOptions("", row.centreM(), usual.hand(), usual.runs(), seconds, usual.all(), usual.cells());
        Explanation e = Explain.of(scene, asked, options, observer);
        List<String> says = new ArrayList<>();
        says.add(sentence(e.cause().sentence()) + (e.proved() ? "" : " No run proved it."));
        if (!e.because().isBlank()) {
            says.add(sentence(e.because()));
        }
        e.facts().stream().map(Fact::says).map(RegionAnswer::sentence).forEach(says::add);
        Remedy first = e.recommended();
        says.add(
                first == null
                        ? e.remedies().isEmpty()
                                ? "No change was tried."
                                : "None of the changes that were run helps enough."
                        : "Begin with this: " + sentence(first.change())
                                + (first.caution().isBlank() ? "" : " " + sentence(first.caution())));
        return new Why(e, says);
    }

    private static String sentence(String words) {
        String text = words.strip();
        if (text.isEmpty()) {
            return text;
        }
        String begun = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }

    /** The best pose that the scene's wands reach, or null where none goes in or none brings anything. */
    public static @Nullable GhostPose bestPose(
            RunResult result, RegionList.Row row, RunOptions options, RunObserver observer) {
        Scene scene = result.scene();
        double within = Math.min(
                WITHIN_M, Math.max(0.02, 0.5 * row.region().extentM().size().length()));
        RegionChoice place = new RegionChoice.At(onSheet(result, row), within);
        ReachField field = ReachFields.of(scene, new FieldOptions(place, false), options, observer);
        if (field.poses().isEmpty() || !(field.poses().get(0).share() > 0)) {
            return null;
        }
        PoseShare best = field.poses().get(0);
        String words = String.format(
                Locale.ROOT,
                "Best pose: '%s' through '%s', %.0f mm deep, pin at %.0f deg; %.1f %% of what it sprays lands here and"
                        + " %.1f %% settles here as fog (in quiet air).",
                best.hold().wand(),
                best.hold().entry(),
                1e3 * best.hold().fromDepthM(),
                Math.toDegrees(best.hold().clockRad()),
                100 * best.direct(),
                100 * best.fog());
        double radius = Approach.wand(scene, best.hold()).outerM() / 2;
        return new GhostPose(best.pose(), best.bodyM(), radius, best, words);
    }

    /** A point just off the sheet on the region's side, at the surfel of it nearest to its middle. */
    private static Vec3 onSheet(RunResult result, RegionList.Row row) {
        SurfelSet s = result.grid().surfels();
        Vec3 at = row.centreM();
        double least = Double.POSITIVE_INFINITY;
        for (int n : row.surfels()) {
            Vec3 c = new Vec3(s.centreX()[n], s.centreY()[n], s.centreZ()[n]);
            if (c.distance(row.centreM()) < least) {
                least = c.distance(row.centreM());
                at = c.plus(1e-3, new Vec3(s.normalX()[n], s.normalY()[n], s.normalZ()[n]));
            }
        }
        return at;
    }
}
