package baymist.picture;

import baymist.cavity.Opening;
import baymist.geom.Vec3;
import java.util.List;

/**
 * One face of one part, laid out flat: a plane square to the face's mean normal.
 *
 * @param title name of the part, and of the face where both faces are inside
 * @param view from where it is seen and which way is which
 * @param surfels surfels shown, ascending
 * @param openings openings in this part that lie on this face
 * @param right,up unit vectors of the page in structure axes
 * @param normal mean unit normal, into the air
 * @param lowU,highU,lowV,highV extent on the plane, m, along right and up
 * @param cellU,cellV spacing of surfels on the plane, m
 * @param offsetM mean height of the surfels along the normal, m
 */
record Panel(
        String title,
        String view,
        int part,
        int[] surfels,
        List<Opening> openings,
        Vec3 right,
        Vec3 up,
        Vec3 normal,
        double lowU,
        double highU,
        double lowV,
        double highV,
        double cellU,
        double cellV,
        double offsetM) {
    double widthM() {
        return highU - lowU;
    }

    double heightM() {
        return highV - lowV;
    }

    double u(Vec3 p) {
        return p.dot(right);
    }

    double v(Vec3 p) {
        return p.dot(up);
    }
}
