package baymist.run;

import baymist.access.SagResult;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a hand has to look out for: a nose that catches, a wand that would stay bent. */
final class ReachFindings {
    private ReachFindings() {}

    static List<Finding> of(Scene scene, List<ReachLine> lines) {
        List<Finding> findings = new ArrayList<>();
        for (ReachLine l : lines) {
            if (l.sag() != null) {
                of(
                        l.entry().place(),
                        "wand '" + l.wand().name() + "' at '" + l.entry().name() + "'",
                        l.sag(),
                        findings);
            }
        }
        return findings;
    }

    static void of(SourcePlace place, String who, SagResult sag, List<Finding> into) {
        SagResult.Catch c = sag.catchesOn();
        if (c != null) {
            into.add(new Finding(
                    "ACC-032",
                    Severity.WARNING,
                    place,
                    String.format(
                            Locale.ROOT,
                            "%s sags: at a depth of %.0f mm its nose comes %.1f mm too low to pass the %s; raise the nose there",
                            who,
                            1e3 * c.depthM(),
                            1e3 * c.liftM(),
                            c.on())));
        }
        if (sag.yields()) {
            into.add(new Finding(
                    "ACC-033",
                    Severity.WARNING,
                    place,
                    String.format(
                            Locale.ROOT,
                            "%s bends under its own weight with a stress of %.0f MPa at a depth of %.0f mm, and its metal gives from"
                                    + " %.0f MPa on: it would stay bent; support it or take a stiffer one",
                            who,
                            1e-6 * sag.stressPa(),
                            1e3 * sag.depthM(),
                            1e-6 * sag.yieldPa())));
        }
    }
}
