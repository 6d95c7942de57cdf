package baymist.picture;

import baymist.field.PoseShare;
import baymist.field.ReachField;
import baymist.geom.Vec3;
import baymist.report.AtomicFile;
import baymist.run.CheckResult;
import baymist.scene.PassSpec;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A reach field in sections through its best pose: for each plane what a jet and what fog from there would bring to the region. */
public final class FieldDrawing {
    private FieldDrawing() {}

    /** Writes the drawing as a PNG, whole or not at all. */
    public static void write(ReachField field, Path png) throws IOException {
        Canvas canvas = draw(field, Lettering.load());
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    static Canvas draw(ReachField f, Lettering lettering) throws IOException {
        CheckResult structure = new CheckResult(f.scene(), f.cavity(), f.grid(), List.of(), List.of());
        Vec3 at = f.poses().isEmpty()
                ? f.region().centroidM()
                : f.poses().get(0).pose().positionM();
        List<SectionView> views = new ArrayList<>();
        for (SectionView v : new SectionFinder(structure).through(at)) {
            views.add(titled(v, FieldLayer.JET));
            views.add(titled(v, FieldLayer.FOG));
        }
        return StructureDrawing.draw(structure, views, new FieldLayer(f), words(f), lettering);
    }

    private static SectionView titled(SectionView v, String lead) {
        return new SectionView(
                lead + v.title(),
                v.view(),
                v.axis(),
                v.atM(),
                v.farM(),
                v.right(),
                v.up(),
                v.lowU(),
                v.highU(),
                v.lowV(),
                v.highV(),
                v.whole());
    }

    private static String words(ReachField f) {
        String to = "To reach: " + f.region().where() + ".  ";
        if (f.poses().isEmpty()) {
            return to + "No wand of the scene goes in.";
        }
        PoseShare best = f.poses().get(0);
        PassSpec hold = best.hold();
        return to
                + String.format(
                        Locale.ROOT,
                        "Best pose: '%s' at '%s', %.0f mm deep, clock %.0f°: %.0f %% lands there.",
                        hold.wand(),
                        hold.entry(),
                        1e3 * hold.fromDepthM(),
                        Math.toDegrees(hold.clockRad()),
                        100 * best.share());
    }
}
