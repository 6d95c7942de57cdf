package baymist.picture;

import baymist.report.AtomicFile;
import baymist.run.CheckResult;
import baymist.run.ReachResult;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Plan, side and section views with the places of the tips, the wands at their deepest, their sag and what stops them. */
public final class ReachDrawing {
    private ReachDrawing() {}

    /** Writes the drawing as a PNG, whole or not at all. */
    public static void write(ReachResult reach, Path png) throws IOException {
        Canvas canvas = draw(reach, Lettering.load());
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    static Canvas draw(ReachResult reach, Lettering lettering) throws IOException {
        CheckResult structure =
                new CheckResult(reach.scene(), reach.cavity(), reach.grid(), List.of(), reach.findings());
        String words = String.format(
                Locale.ROOT,
                "Reach: %d of %d insertions go in.  Within %.0f mm of a tip and in its sight: %.0f %% of the surface, %.0f %% of"
                        + " the air.",
                reach.lines().stream().filter(l -> l.reach().feasible()).count(),
                reach.lines().size(),
                1e3 * reach.withinM(),
                100 * reach.together().surface(),
                100 * reach.together().volume());
        return StructureDrawing.draw(structure, new ReachLayer(reach), words, lettering);
    }
}
