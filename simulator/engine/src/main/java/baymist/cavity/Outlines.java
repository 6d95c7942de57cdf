package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** Turns outlines over. */
final class Outlines {
    private Outlines() {}

    /**
     * The outline as it must be stated where the sheet's normal points against its first axis (u x v would point down): v
     * turned round. All outlines but polygons look the same from either side.
     */
    static Outline seenAgainst(Outline outline, Vec3 normal) {
        boolean against = normal.x() < 0;
        return against ? turnedOver(outline) : outline;
    }

    /** The outline with v turned round. */
    static Outline turnedOver(Outline outline) {
        if (!(outline instanceof Outline.Polygon p)) {
            return outline;
        }
        List<double[]> points = new ArrayList<>();
        p.points().forEach(q -> points.add(new double[] {q[0], -q[1]}));
        return new Outline.Polygon(points);
    }
}
