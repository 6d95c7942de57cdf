package baymist.cavity;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Predicate;

/** Areas, volumes and edges of a cavity's sheets, for tests. */
final class MeshSums {
    private MeshSums() {}

    /** Area of the cut sheet of a part, m². */
    static double area(Cavity cavity, String part) {
        double sum = 0;
        for (int t = 0; t < cavity.cutSheets().triangleCount(); t++) {
            if (cavity.parts().get(cavity.partOfCut(t)).name().equals(part)) {
                sum += cavity.cutSheets().areaM2(t);
            }
        }
        return sum;
    }

    /** Area of a part before its openings are cut, m². */
    static double wholeArea(Cavity cavity, String part) {
        double sum = 0;
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            if (cavity.partOfSheet(t) >= 0
                    && cavity.parts().get(cavity.partOfSheet(t)).name().equals(part)) {
                sum += cavity.sheets().areaM2(t);
            }
        }
        return sum;
    }

    /**
     * Volume inside the whole sheets of the chosen parts (caps of gaps count with any), m³: sum of tetrahedra to a point
     * inside, so that the body must be seen as a star from there; winding does not matter.
     */
    static double starVolume(Cavity cavity, Vec3 inside, Predicate<String> use) {
        TriangleMesh mesh = cavity.sheets();
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int part = cavity.partOfSheet(t);
            if (part < 0 || use.test(cavity.parts().get(part).name())) {
                Vec3 p = mesh.point(t, 0).minus(inside);
                sum += Math.abs(mesh.doubleAreaVector(t).dot(p)) / 6;
            }
        }
        return sum;
    }

    /** Volume inside parts that are wound outward, and of which flat others close the ends, m³ (divergence theorem). */
    static double volume(Cavity cavity, Predicate<String> outward, Predicate<String> inward) {
        TriangleMesh mesh = cavity.sheets();
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int part = cavity.partOfSheet(t);
            String name = part < 0 ? "" : cavity.parts().get(part).name();
            double v = mesh.doubleAreaVector(t).dot(mesh.point(t, 0)) / 6;
            sum += outward.test(name) ? v : inward.test(name) ? -v : 0;
        }
        return sum;
    }

    /** How many triangles of the chosen parts use each edge. */
    static Map<String, Integer> edgeUses(Cavity cavity, Predicate<String> use) {
        TriangleMesh mesh = cavity.sheets();
        Map<String, Integer> uses = new HashMap<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (use.test(cavity.parts().get(cavity.partOfSheet(t)).name())) {
                for (int k = 0; k < 3; k++) {
                    int a = mesh.corner(t, k);
                    int b = mesh.corner(t, (k + 1) % 3);
                    uses.merge(Math.min(a, b) + "-" + Math.max(a, b), 1, Integer::sum);
                }
            }
        }
        return uses;
    }

    /** Complete elliptic integrals {K, E} of modulus k by the arithmetic-geometric mean (Abramowitz and Stegun 1964, 17.6). */
    static double[] elliptic(double k) {
        double a = 1;
        double g = Math.sqrt(1 - k * k);
        double c = k;
        double sum = 0.5 * c * c;
        double power = 0.5;
        while (Math.abs(c) > 1e-16) {
            c = 0.5 * (a - g);
            double next = 0.5 * (a + g);
            g = Math.sqrt(a * g);
            a = next;
            power *= 2;
            sum += power * c * c;
        }
        double first = Math.PI / (2 * a);
        return new double[] {first, first * (1 - sum)};
    }
}
