package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Block;
import baymist.scene.CavitySpec.Round;
import baymist.scene.Turns;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Closed plain bodies: boxes, cylinders, spheres. Their own axes are turned about x, then y, then z (fixed axes), and then
 * moved to the origin of the spec: the low corner of a block, the middle of a cylinder's forward end, the centre of a sphere.
 */
final class SolidFamilies {
    private static final String[] WALLS = {"forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling"};

    private SolidFamilies() {}

    static SheetModel block(Block spec) {
        SpecCheck check = new SpecCheck(spec.place());
        check.positive("length", spec.sizeM().x());
        check.positive("width", spec.sizeM().y());
        check.positive("height", spec.sizeM().z());
        check.positive("gauge", spec.gaugeM());
        checkPose(check, spec.rotationDeg(), spec.originM());
        check.orThrow();
        SheetModel model = new SheetModel();
        UnaryOperator<Vec3> pose = pose(spec.rotationDeg(), spec.originM());
        Vec3[] c = new Vec3[8];
        for (int i = 0; i < 8; i++) {
            c[i] = pose.apply(new Vec3(
                    (i & 1) * spec.sizeM().x(),
                    (i >> 1 & 1) * spec.sizeM().y(),
                    (i >> 2 & 1) * spec.sizeM().z()));
        }
        // corners by bits x, y, z; each side counter-clockwise from outside
        int[][] sides = {{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
        for (int s = 0; s < 6; s++) {
            int part = model.part(WALLS[s], PartKind.WALL, spec.gaugeM());
            model.quad(part, c[sides[s][0]], c[sides[s][1]], c[sides[s][2]], c[sides[s][3]]);
        }
        return model;
    }

    static SheetModel round(Round spec) {
        SpecCheck check = new SpecCheck(spec.place());
        check.notNegative("length", spec.lengthM());
        check.positive("radius", spec.radiusM());
        check.positive("gauge", spec.gaugeM());
        checkPose(check, spec.rotationDeg(), spec.originM());
        if (spec.segments() < 8 || spec.segments() > 720) {
            check.error("CAV-011", "segments is " + spec.segments() + "; 8 to 720 expected");
        }
        check.orThrow();
        SheetModel model = new SheetModel();
        UnaryOperator<Vec3> pose = pose(spec.rotationDeg(), spec.originM());
        int shell = model.part("shell", PartKind.SKIN, spec.gaugeM());
        if (spec.lengthM() > 0) {
            cylinder(model, shell, spec, pose);
        } else {
            sphere(model, shell, spec, pose);
        }
        return model;
    }

    private static void checkPose(SpecCheck check, Vec3 rotation, Vec3 origin) {
        for (int axis = 0; axis < 3; axis++) {
            check.finite("origin", origin.get(axis));
            if (!(Math.abs(rotation.get(axis)) <= 360)) {
                check.error("CAV-012", "rotation is " + rotation.get(axis) + " degrees; -360 to 360 expected");
            }
        }
    }

    private static void cylinder(SheetModel model, int shell, Round spec, UnaryOperator<Vec3> pose) {
        int forward = model.part("forward end", PartKind.WALL, spec.gaugeM());
        int aft = model.part("aft end", PartKind.WALL, spec.gaugeM());
        List<Vec3> near = ring(spec, 0, spec.radiusM(), pose);
        List<Vec3> far = ring(spec, spec.lengthM(), spec.radiusM(), pose);
        Vec3 nearCentre = pose.apply(Vec3.ZERO);
        Vec3 farCentre = pose.apply(new Vec3(spec.lengthM(), 0, 0));
        int n = spec.segments();
        for (int k = 0; k < n; k++) {
            int next = (k + 1) % n;
            model.quad(shell, near.get(k), near.get(next), far.get(next), far.get(k));
            model.triangle(forward, nearCentre, near.get(next), near.get(k));
            model.triangle(aft, farCentre, far.get(k), far.get(next));
        }
    }

    private static void sphere(SheetModel model, int shell, Round spec, UnaryOperator<Vec3> pose) {
        int rows = Math.max(4, spec.segments() / 2);
        List<List<Vec3>> rings = new ArrayList<>();
        for (int j = 1; j < rows; j++) {
            double angle = Math.PI * j / rows;
            rings.add(ring(spec, -spec.radiusM() * Math.cos(angle), spec.radiusM() * Math.sin(angle), pose));
        }
        Vec3 first = pose.apply(new Vec3(-spec.radiusM(), 0, 0));
        Vec3 last = pose.apply(new Vec3(spec.radiusM(), 0, 0));
        int n = spec.segments();
        for (int k = 0; k < n; k++) {
            int next = (k + 1) % n;
            model.triangle(shell, first, rings.get(0).get(next), rings.get(0).get(k));
            for (int j = 0; j + 1 < rings.size(); j++) {
                model.quad(
                        shell,
                        rings.get(j).get(k),
                        rings.get(j).get(next),
                        rings.get(j + 1).get(next),
                        rings.get(j + 1).get(k));
            }
            List<Vec3> end = rings.get(rings.size() - 1);
            model.triangle(shell, last, end.get(k), end.get(next));
        }
    }

    private static List<Vec3> ring(Round spec, double x, double radius, UnaryOperator<Vec3> pose) {
        List<Vec3> points = new ArrayList<>();
        for (int k = 0; k < spec.segments(); k++) {
            double angle = 2 * Math.PI * k / spec.segments();
            points.add(pose.apply(new Vec3(x, radius * Math.cos(angle), radius * Math.sin(angle))));
        }
        return points;
    }

    /** Turns about x, then y, then z, then moves. Whole right angles turn without rounding. */
    static UnaryOperator<Vec3> pose(Vec3 rotationDeg, Vec3 originM) {
        return p -> Turns.turned(p, rotationDeg).plus(originM);
    }
}
