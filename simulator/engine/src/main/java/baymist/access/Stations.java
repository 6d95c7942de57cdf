package baymist.access;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Turns passes into stations: a hold at the start depth, then the draw-back in equal stretches, each represented by its middle.
 */
public final class Stations {
    /** Spacing where the scene states none, m. */
    static final double SPACING_M = 0.025;

    /** Most stations that a draw-back is cut into where the scene states no spacing. */
    static final int MOST = 60;

    /** Most stations that a draw-back is ever cut into. */
    static final int LIMIT = 80;

    /**
     * Distance that the nose stands off from whatever stops it, m: jets leave behind the nose, and a hand that feels the stop draws
     * back a little (ASSUMED). Without it the jets would begin on the sheet.
     */
    public static final double STAND_OFF_M = 0.002;

    private Stations() {}

    /** The stations of all passes, see {@link #plan}. */
    public static List<Station> of(Scene scene, List<Insertion> perPass) {
        return plan(scene, perPass).stations();
    }

    /**
     * Lays out the job.
     *
     * @param perPass insertion of each pass, in the order of the scene's passes
     * @throws SceneException if a pass can't be made, with every such pass named, see {@link #refusals}
     */
    public static PassPlan plan(Scene scene, List<Insertion> perPass) {
        if (perPass.size() != scene.passes().size()) {
            throw new IllegalArgumentException(
                    perPass.size() + " insertions for " + scene.passes().size() + " passes");
        }
        List<Finding> refused = refusals(scene, perPass);
        if (!refused.isEmpty()) {
            throw new SceneException(refused);
        }
        List<Station> stations = new ArrayList<>();
        List<Finding> findings = new ArrayList<>(OutsideCheck.findings(scene, perPass));
        double[] on = new double[perPass.size()];
        double[] off = new double[perPass.size()];
        double time = 0;
        for (int p = 0; p < perPass.size(); p++) {
            PassSpec pass = scene.passes().get(p);
            on[p] = time;
            time = addPass(p, pass, perPass.get(p), scene.stationSpacingM(), time, stations, findings);
            off[p] = time;
            time += pass.hangS();
        }
        return new PassPlan(stations, findings, on, off, time + scene.hangS());
    }

    /**
     * Why passes can't be made: the wand does not go in, or the trigger would never be held because the pass ends deeper than the wand gets.
     *
     * @param perPass insertion of each pass, in the order of the scene's passes
     */
    public static List<Finding> refusals(Scene scene, List<Insertion> perPass) {
        List<Finding> errors = new ArrayList<>();
        for (int p = 0; p < perPass.size(); p++) {
            PassSpec pass = scene.passes().get(p);
            Insertion in = perPass.get(p);
            if (!in.feasible()) {
                errors.add(new Finding(
                        "ACC-003",
                        Severity.ERROR,
                        pass.place(),
                        "pass '" + pass.name() + "': wand '" + in.wand() + "' does not go in at '" + in.entry() + "': "
                                + in.stoppedBy()));
            } else if (!(pass.holdS() > 0) && pass.fromDepthM() > pass.toDepthM() && deepestM(in) <= pass.toDepthM()) {
                errors.add(endsTooDeep(pass, in));
            }
        }
        return errors;
    }

    private static Finding endsTooDeep(PassSpec pass, Insertion in) {
        return new Finding(
                "ACC-012",
                Severity.ERROR,
                pass.place(),
                String.format(
                        Locale.ROOT,
                        "pass '%s' is to end at a depth of %.1f mm, but wand '%s' at '%s' goes only to %.1f mm, where %s ends it: nothing"
                                + " would be sprayed; state 'to' below %.1f mm",
                        pass.name(),
                        1e3 * pass.toDepthM(),
                        in.wand(),
                        in.entry(),
                        1e3 * deepestM(in),
                        in.stoppedBy(),
                        1e3 * deepestM(in)));
    }

    private static double addPass(
            int index,
            PassSpec pass,
            Insertion in,
            double spacingM,
            double startS,
            List<Station> stations,
            List<Finding> findings) {
        double deepest = deepestM(in);
        double from = Math.min(pass.fromDepthM(), deepest);
        double to = Math.min(pass.toDepthM(), from);
        if (Double.isFinite(pass.fromDepthM()) && pass.fromDepthM() > deepest) {
            findings.add(clipped(pass, in, deepest));
        }
        if (in.resolutionM() > ReachSettings.DEFAULT.resolutionM()) {
            findings.add(unsure(pass, in));
        }
        double stroke = from - to;
        double time = startS;
        if (pass.holdS() > 0) {
            stations.add(new Station(index, pose(pass, in, from), time, pass.holdS(), from));
            time += pass.holdS();
        }
        if (stroke > 0) {
            if (!(pass.drawBackMPerS() > 0)) {
                throw new IllegalArgumentException("draw-back rate " + pass.drawBackMPerS() + " m/s, above 0 expected");
            }
            int n = pieces(stroke, spacingM);
            double begin = time;
            double whole = stroke / pass.drawBackMPerS();
            for (int i = 0; i < n; i++) {
                double depth = from - stroke * (i + 0.5) / n;
                double at = begin + whole * i / n;
                stations.add(new Station(index, pose(pass, in, depth), at, whole / n, depth, stroke / n));
            }
            time = begin + whole;
        }
        return time;
    }

    /** Number of stretches of a stroke. */
    static int pieces(double strokeM, double spacingM) {
        double spacing = spacingM > 0 ? spacingM : Math.max(SPACING_M, strokeM / MOST);
        return (int) Math.max(1, Math.min(LIMIT, Math.ceil(strokeM / spacing - 1e-9)));
    }

    /** Deepest tip position, m: the insertion's depth, less the stand-off where a sheet ends it. */
    public static double deepestM(Insertion in) {
        return in.stoppedBy().equals(AccessFinder.WAND_LENGTH)
                ? in.maxDepthM()
                : Math.max(0.5 * in.maxDepthM(), in.maxDepthM() - STAND_OFF_M);
    }

    private static TipPose pose(PassSpec pass, Insertion in, double depthM) {
        return in.path().tip(depthM, pass.clockRad());
    }

    private static Finding clipped(PassSpec pass, Insertion in, double deepestM) {
        return new Finding(
                "ACC-010",
                Severity.WARNING,
                pass.place(),
                String.format(
                        Locale.ROOT,
                        "pass '%s' asks for a depth of %.1f mm; wand '%s' at '%s' goes to %.1f mm, where %s ends it",
                        pass.name(),
                        1e3 * pass.fromDepthM(),
                        in.wand(),
                        in.entry(),
                        1e3 * deepestM,
                        in.stoppedBy()));
    }

    private static Finding unsure(PassSpec pass, Insertion in) {
        return new Finding(
                "ACC-011",
                Severity.WARNING,
                pass.place(),
                String.format(
                        Locale.ROOT,
                        "pass '%s': the search for the best line of wand '%s' at '%s' ended before all were judged; a better one may"
                                + " stray from those tried by less than %.0f mm",
                        pass.name(),
                        in.wand(),
                        in.entry(),
                        1e3 * in.resolutionM()));
    }
}
