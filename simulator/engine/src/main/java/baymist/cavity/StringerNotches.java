package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.WingBox;
import baymist.scene.WingBoxDetail.Notch;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Rectangular cut-outs in ribs where blade stringers pass: a rectangle on the skin, wider and higher than the blade by the
 * clearance, less the blade's own cross-section (gauge times height), which stays closed. So the opening is a U round the
 * blade; its area is (2 c + t)(h + c) - t h on straight skin, c = clearance, t = gauge, h = height of the blade.
 */
final class StringerNotches {
    private final SheetModel model;
    private final WingBox spec;
    private final int[] ribs;
    private final @Nullable Notch notch;

    StringerNotches(SheetModel model, WingBox spec, int[] ribs) {
        this.model = model;
        this.spec = spec;
        this.ribs = ribs;
        this.notch = spec.detail().notch();
    }

    /**
     * Opens rib r for one blade.
     *
     * @param skin the section's side that the blade stands on, front to rear
     */
    void cut(int r, String name, List<Vec3> skin, Vec3 foot, Vec3 top) {
        if (notch == null) {
            return;
        }
        double c = notch.clearanceM();
        double half = spec.gaugeM() / 2;
        Vec3 up = top.minus(foot).unit();
        // along the skin towards the rear
        Vec3 aft = new Vec3(Math.abs(up.z()), 0, up.z() > 0 ? -up.x() : up.x());
        double height = top.distance(foot);
        List<Vec3> loop = new ArrayList<>();
        alongSkin(loop, skin, foot, aft, -(c + half), -half);
        loop.add(foot.plus(-half, aft).plus(height, up));
        loop.add(foot.plus(half, aft).plus(height, up));
        alongSkin(loop, skin, foot, aft, half, c + half);
        loop.add(foot.plus(c + half, aft).plus(height + c, up));
        loop.add(foot.plus(-(c + half), aft).plus(height + c, up));
        String ribName = model.parts.get(ribs[r]).name();
        model.placed.add(new SheetModel.Placed(
                ribName + " " + name,
                ribs[r],
                Opening.Kind.HOLE,
                RibSheets.polygon(loop, Vec3.X, Vec3.Y),
                notch.states(),
                spec.place()));
    }

    /** Points of the skin between two lines that run parallel to the blade, at the given distances from it. */
    private void alongSkin(List<Vec3> loop, List<Vec3> skin, Vec3 foot, Vec3 aft, double from, double to) {
        for (int k = 0; k + 1 < skin.size(); k++) {
            Vec3 a = skin.get(k);
            Vec3 b = skin.get(k + 1);
            double ta = a.minus(foot).dot(aft);
            double tb = b.minus(foot).dot(aft);
            if (ta <= from && from < tb) {
                loop.add(a.plus((from - ta) / (tb - ta), b.minus(a)));
            }
            if (from < ta && ta < to) {
                loop.add(a);
            }
            if (ta < to && to <= tb) {
                loop.add(a.plus((to - ta) / (tb - ta), b.minus(a)));
            }
        }
    }
}
