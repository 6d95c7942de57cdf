package baymist.run;

import baymist.access.Insertion;
import baymist.access.SagResult;
import baymist.access.SaggedPath;
import baymist.access.Surroundings;
import baymist.access.TubeSection;
import baymist.access.WandPath;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.util.List;
import java.util.Locale;

/**
 * Whether a pass's tip stands where its wand hangs: as the pass says, else if the wand states what it is made of. Where a sag is left out
 * that a hand would see, the run says so.
 */
final class PassSag {
    /** A tip off its line by more than this is worth a note, m (ASSUMED: the order of what a hand can hold). */
    static final double TOLD_M = 5e-3;

    private PassSag() {}

    /** The insertion on the way that the pass wants; adds what is to be said about its sag. */
    static Insertion hang(
            Scene scene, Surroundings around, PassSpec pass, WandSpec wand, Insertion in, List<Finding> findings) {
        boolean asked = Boolean.TRUE.equals(pass.sag());
        if (wand.kind() != WandSpec.Kind.STRAIGHT) {
            if (asked) {
                findings.add(new Finding(
                        "ACC-035",
                        Severity.WARNING,
                        pass.place(),
                        "pass '" + pass.name() + "' asks for sag, but wand '" + wand.name()
                                + "' is not straight; its tip stays where the search puts it"));
            }
            return in;
        }
        if (!in.feasible() || !(in.path() instanceof WandPath.Straight line) || Boolean.FALSE.equals(pass.sag())) {
            return in;
        }
        TubeSection tube = TubeSection.of(wand, scene.product().densityKgPerM3());
        SaggedPath path = new SaggedPath(around, in.openingIndex(), line, tube, scene.gravity(), scene.gravityMPerS2());
        double depth = Math.min(pass.fromDepthM(), in.maxDepthM());
        SagResult hung = path.at(depth);
        if (asked || !wand.material().isAssumed()) {
            ReachFindings.of(pass.place(), "pass '" + pass.name() + "': wand '" + wand.name() + "'", hung, findings);
            return in.withPath(path);
        }
        if (Math.abs(hung.dropM()) > TOLD_M) {
            findings.add(leftOut(pass, wand, hung));
        }
        return in;
    }

    private static Finding leftOut(PassSpec pass, WandSpec wand, SagResult hung) {
        return new Finding(
                "ACC-034",
                Severity.NOTE,
                pass.place(),
                String.format(
                        Locale.ROOT,
                        "pass '%s' keeps the tip on its straight line, though a stainless wand '%s' %.0f mm deep would hang %.0f mm off"
                                + " it; state its `material`, or `sag: on` or `off` in the pass",
                        pass.name(),
                        wand.name(),
                        1e3 * hung.depthM(),
                        1e3 * Math.abs(hung.dropM())));
    }
}
