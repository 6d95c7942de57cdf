package baymist.access;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.EntrySpec;
import baymist.scene.WandSpec;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * How far a straight rigid wand goes into an entry along the entry's direction, and what stops it.
 *
 * <p>Passing the hole: {@link HoleFit}. Depth: the wand's axis runs through the roomiest place of the opening; the swept
 * flat-nosed cylinder ends at its first contact with a cut sheet or a closed opening ({@link RodSweep}). Depth is counted along
 * the axis from the plane of the opening to the nose.
 */
public final class AccessFinder {
    /** What {@link Insertion#stoppedBy()} says when nothing but the wand itself ends the insertion. */
    public static final String WAND_LENGTH = "wand length";

    private AccessFinder() {}

    /**
     * The insertion of a wand through an entry.
     *
     * @param openInPass whether each opening stands open while spraying, [openings]
     * @return feasible or not, never null; an infeasible one has depth 0 and says why in {@code stoppedBy}
     * @throws SceneException if the entry names no opening or its direction does not lead in
     */
    public static Insertion find(Cavity cavity, WandSpec wand, EntrySpec entry, boolean[] openInPass) {
        int index = cavity.openingIndex(entry.opening());
        if (index < 0) {
            throw new SceneException(
                    "ACC-001",
                    entry.place(),
                    "entry '" + entry.name() + "' names the opening '" + entry.opening()
                            + "', which the cavity does not have;" + " it has " + names(cavity));
        }
        Opening opening = cavity.openings().get(index);
        Vec3 normal = opening.place().normal();
        Vec3 axis = entry.direction() == null ? normal : entry.direction().unit();
        if (axis.dot(normal) < 1e-3) {
            throw new SceneException(
                    "ACC-002",
                    entry.place(),
                    String.format(
                            Locale.ROOT,
                            "entry '%s' points along (%.3f, %.3f, %.3f), which does not lead in through '%s'; its inward normal is"
                                    + " (%.3f, %.3f, %.3f)",
                            entry.name(),
                            axis.x(),
                            axis.y(),
                            axis.z(),
                            opening.name(),
                            normal.x(),
                            normal.y(),
                            normal.z()));
        }
        double gauge = cavity.parts().get(opening.part()).gaugeM();
        HoleFit fit = HoleFit.of(opening.place(), axis, wand.outerM(), gauge);
        Vec3 origin = opening.place().point(fit.u(), fit.v());
        String refusal = refusal(opening, openInPass[index], fit, wand);
        if (refusal != null) {
            return new Insertion(entry.name(), wand.name(), index, origin, axis, 0, refusal, false, fit.clearanceM());
        }
        Stop stop = firstContact(cavity, index, openInPass, new RodSweep(origin, axis, wand.outerM() / 2), axis, wand);
        return new Insertion(
                entry.name(), wand.name(), index, origin, axis, stop.depthM, stop.by, true, fit.clearanceM());
    }

    private static @Nullable String refusal(Opening opening, boolean open, HoleFit fit, WandSpec wand) {
        if (!opening.exterior()) {
            return "'" + opening.name() + "' leads from bay to bay, not in from outside";
        }
        if (!open) {
            return "'" + opening.name() + "' is closed while spraying";
        }
        if (fit.clearanceM() < 0) {
            return String.format(
                    Locale.ROOT,
                    "'%s' is too small: a rod of %.3f mm lacks %.3f mm across",
                    opening.name(),
                    1e3 * wand.outerM(),
                    -2e3 * fit.clearanceM());
        }
        return null;
    }

    private record Stop(double depthM, String by) {}

    private static Stop firstContact(
            Cavity cavity, int entry, boolean[] openInPass, RodSweep rod, Vec3 axis, WandSpec wand) {
        Opening opening = cavity.openings().get(entry);
        double past = pastOwnSheet(cavity, opening, axis, wand);
        Stop best = new Stop(wand.lengthM(), WAND_LENGTH);
        TriangleMesh sheets = cavity.cutSheets();
        for (int t = 0; t < sheets.triangleCount(); t++) {
            int part = cavity.partOfCut(t);
            double h = rod.contactM(sheets, t, part == opening.part() ? past : 0);
            if (h < best.depthM) {
                best = new Stop(h, cavity.parts().get(part).name());
            }
        }
        TriangleMesh closures = cavity.closures();
        for (int t = 0; t < closures.triangleCount(); t++) {
            int closed = cavity.openingOfClosure(t);
            if (closed == entry || openInPass[closed]) {
                continue;
            }
            double h = rod.contactM(closures, t, 0);
            if (h < best.depthM) {
                best = new Stop(
                        h, "closed opening '" + cavity.openings().get(closed).name() + "'");
            }
        }
        return best;
    }

    /**
     * Depth at which the nose is past the entry's own sheet, m. The exact clearance has been checked; the polygon that stands for
     * the hole in the cut mesh, a twentieth of its reach for curved sheet and the gauge must not be met again.
     */
    private static double pastOwnSheet(Cavity cavity, Opening opening, Vec3 axis, WandSpec wand) {
        double cos = axis.dot(opening.place().normal());
        double tan = Math.sqrt(Math.max(0, 1 - cos * cos)) / cos;
        return 0.5 * wand.outerM() * tan
                + cavity.parts().get(opening.part()).gaugeM()
                + 0.05 * opening.place().outline().reachM();
    }

    private static String names(Cavity cavity) {
        return cavity.openings().isEmpty()
                ? "none"
                : cavity.openings().stream().map(Opening::name).collect(Collectors.joining(", "));
    }
}
