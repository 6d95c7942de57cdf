package baymist.picture;

import baymist.coverage.BayDescriber;
import baymist.coverage.Compass;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.voxel.Bay;
import java.util.ArrayList;
import java.util.List;

/** Chooses the sections: through the middle along the two shorter axes, and through the middle of each bay along the longest. */
final class SectionFinder {
    /** Most sections along the longest axis; of more bays some are chosen evenly. */
    private static final int MOST = 6;

    /** What is drawn beyond the cavity's cells, share of its length (ASSUMED: room for sheets and a neighbour's edge). */
    private static final double BEYOND = 0.012;

    /** A section through the exact middle may run along a sheet: it is moved by this share of the cavity's length. */
    private static final double OFF_MIDDLE = 1.7e-4;

    private final CheckResult check;
    private final Box3 box;
    private final Compass compass;
    private final int longest;

    SectionFinder(CheckResult check) {
        this.check = check;
        Box3 cells = Box3.EMPTY;
        for (Bay b : check.grid().bays()) {
            cells = b.bounds().isEmpty() ? cells : cells.including(b.bounds());
        }
        Box3 inside = cells.isEmpty() ? check.cavity().sheets().bounds() : cells;
        Vec3 size = inside.size();
        double margin = BEYOND * Math.max(size.x(), Math.max(size.y(), size.z()));
        this.box = inside.grown(margin);
        this.compass = Compass.of(check.cavity(), inside.min().y(), inside.max().y());
        this.longest = size.x() >= size.y() && size.x() >= size.z() ? 0 : size.y() >= size.z() ? 1 : 2;
    }

    List<SectionView> find() {
        List<SectionView> views = new ArrayList<>();
        for (int axis : new int[] {2, 1, 0}) {
            if (axis != longest) {
                double middle = box.centre().get(axis) + OFF_MIDDLE * box.size().get(axis);
                views.add(view(name(axis), axis, middle, box.min(), box.max(), true));
            }
        }
        List<String> where = BayDescriber.describe(check.cavity(), check.grid());
        List<Bay> bays = check.grid().bays();
        int shown = Math.min(MOST, bays.size());
        for (int i = 0; i < shown; i++) {
            int b = shown == bays.size() ? i : (int) Math.round(i * (bays.size() - 1) / (double) (shown - 1));
            Box3 bay = bays.get(b).bounds();
            double middle = bay.centre().get(longest) + OFF_MIDDLE * bay.size().get(longest);
            String title = bays.get(b).name() + (where.get(b).isEmpty() ? "" : ", " + where.get(b));
            views.add(view(title, longest, middle, bay.min(), bay.max(), false));
        }
        return views;
    }

    /** Sections through a point, square to each axis; the one along the longest axis shows the structure behind it as far as that goes. */
    List<SectionView> through(Vec3 point) {
        List<SectionView> views = new ArrayList<>();
        for (int axis : new int[] {2, 1, 0}) {
            Vec3 low = box.min();
            Vec3 high = box.max();
            double at = point.get(axis) + OFF_MIDDLE * box.size().get(axis);
            String what = axis == 2 ? "Plan" : axis == 1 ? "Seen along y" : "Seen along x";
            views.add(view(what, axis, at, low, high, axis != longest));
        }
        return views;
    }

    private static String name(int axis) {
        return axis == 2 ? "Plan" : axis == 1 ? "Side view" : "View along x";
    }

    private SectionView view(String what, int axis, double at, Vec3 low, Vec3 high, boolean whole) {
        Vec3[] page = page(axis);
        Vec3 right = page[0];
        Vec3 up = page[1];
        double[] u = range(right);
        double[] v = range(up);
        boolean fromHigh = right.cross(up).get(axis) > 0;
        // a sheet at the far end may stand up to a voxel beyond the cells
        double slack = 1.5 * check.grid().sizeM().get(axis);
        double far = fromHigh ? low.get(axis) - slack : high.get(axis) + slack;
        String title = what + ": section at " + "xyz".charAt(axis) + " = " + Math.round(1e3 * at) + " mm";
        String words =
                "seen from " + from(axis, fromHigh) + ";  " + arrow(up, "\u2191") + "  " + arrow(right, "\u2192");
        return new SectionView(title, words, axis, at, far, right, up, u[0], u[1], v[0], v[1], whole);
    }

    /** Right and up on the page: z up where it can be, the longer axis across. */
    private Vec3[] page(int axis) {
        Vec3 size = box.size();
        if (axis == 2) {
            return size.y() >= size.x() ? new Vec3[] {Vec3.Y, Vec3.X.negate()} : new Vec3[] {Vec3.X, Vec3.Y};
        }
        Vec3 level = axis == 1 ? Vec3.X : Vec3.Y;
        boolean upright = size.z() <= 1.5 * size.get(1 - axis);
        return upright ? new Vec3[] {level, Vec3.Z} : new Vec3[] {Vec3.Z, axis == 1 ? Vec3.X : Vec3.Y};
    }

    private double[] range(Vec3 along) {
        double a = box.min().dot(along);
        double b = box.max().dot(along);
        return new double[] {Math.min(a, b), Math.max(a, b)};
    }

    private String from(int axis, boolean high) {
        if (axis == 2) {
            return high ? "above" : "below";
        }
        String word = compass.word(axis, high);
        return word.equals("left") || word.equals("right") ? "the " + word : word;
    }

    private String arrow(Vec3 way, String sign) {
        int axis = way.x() != 0 ? 0 : way.y() != 0 ? 1 : 2;
        boolean high = way.get(axis) > 0;
        String word = axis == 2 ? (high ? "up" : "down") : compass.word(axis, high);
        return word + " " + sign;
    }
}
