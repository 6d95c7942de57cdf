package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RodContactTest {
    private static TriangleMesh triangle(Vec3 a, Vec3 b, Vec3 c) {
        return new TriangleMesh(
                new double[] {a.x(), a.y(), a.z(), b.x(), b.y(), b.z(), c.x(), c.y(), c.z()}, new int[] {0, 1, 2});
    }

    private static double contact(TriangleMesh mesh, double radius) {
        return from(mesh, radius, 0);
    }

    private static double from(TriangleMesh mesh, double radius, double start) {
        RodClearance.Contact c = RodClearance.firstContact(Vec3.ZERO, Vec3.Y, radius, start, 100, mesh, Bvh.of(mesh));
        return c == null ? Double.POSITIVE_INFINITY : c.depthM();
    }

    @Test
    void aSquareWallStopsTheNoseAtItsDistance() {
        assertEquals(
                0.3, contact(triangle(new Vec3(-1, 0.3, -1), new Vec3(3, 0.3, -1), new Vec3(-1, 0.3, 3)), 0.01), 1e-15);
    }

    @Test
    void aTiltedWallStopsTheEdgeOfTheNoseEarlierByRadiusTimesSlope() {
        // Plane y = 0.3 + x tan(40 deg): the nose's rim at x = -r meets it first, r tan(40 deg) short of the axis.
        double slope = Math.tan(Math.toRadians(40));
        TriangleMesh wall =
                triangle(new Vec3(-1, 0.3 - slope, -1), new Vec3(3, 0.3 + 3 * slope, -1), new Vec3(-1, 0.3 - slope, 3));
        assertEquals(0.3 - 0.01 * slope, contact(wall, 0.01), 1e-14);
    }

    @Test
    void anEdgeOffTheAxisIsTouchedOnlyWithinTheRadius() {
        TriangleMesh shelf = triangle(new Vec3(0.008, 0.2, -1), new Vec3(0.008, 0.2, 1), new Vec3(1, 0.2, 0));
        assertEquals(0.2, contact(shelf, 0.009), 1e-15);
        assertEquals(Double.POSITIVE_INFINITY, contact(shelf, 0.008));
    }

    @Test
    void aRodSlidesAlongAWallAtItsOwnRadius() {
        TriangleMesh along = triangle(new Vec3(0.005, 0, -1), new Vec3(0.005, 0, 1), new Vec3(0.005, 5, 0));
        assertEquals(Double.POSITIVE_INFINITY, contact(along, 0.005));
        assertEquals(0, contact(along, 0.0051), 1e-15);
    }

    @Test
    void whatLiesBehindTheNoseDoesNotCount() {
        TriangleMesh wall = triangle(new Vec3(-1, 0.3, -1), new Vec3(3, 0.3, -1), new Vec3(-1, 0.3, 3));
        assertEquals(Double.POSITIVE_INFINITY, from(wall, 0.01, 0.31));
    }

    @Test
    void contactAgreesWithDenselySampledTriangles() {
        Random random = new Random(11);
        int met = 0;
        for (int n = 0; n < 200; n++) {
            Vec3[] p = new Vec3[3];
            for (int k = 0; k < 3; k++) {
                p[k] = new Vec3(random.nextDouble() - 0.5, 0.2 + random.nextDouble(), random.nextDouble() - 0.5);
            }
            double radius = 0.05 + 0.2 * random.nextDouble();
            double least = Double.POSITIVE_INFINITY;
            int steps = 400;
            for (int i = 0; i <= steps; i++) {
                for (int j = 0; j <= steps - i; j++) {
                    double a = (double) i / steps;
                    double b = (double) j / steps;
                    Vec3 q = p[0].times(1 - a - b).plus(a, p[1]).plus(b, p[2]);
                    if (Math.hypot(q.x(), q.z()) <= radius) {
                        least = Math.min(least, q.y());
                    }
                }
            }
            double exact = contact(triangle(p[0], p[1], p[2]), radius);
            assertTrue(exact <= least + 1e-12, "seed 11, triangle " + n);
            if (least < Double.POSITIVE_INFINITY) {
                met++;
                assertEquals(least, exact, 0.03, "seed 11, triangle " + n);
            }
        }
        assertTrue(met > 50);
    }
}
