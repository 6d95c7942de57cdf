package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ValuesTest {
    @Test
    void vectorAlgebraHoldsLagrangesIdentity() {
        // Lagrange: |a x b|^2 + (a . b)^2 = |a|^2 |b|^2
        Random random = new Random(3);
        for (int i = 0; i < 100; i++) {
            Vec3 a = Meshes.direction(random).times(random.nextDouble() * 5);
            Vec3 b = Meshes.direction(random);
            Vec3 c = a.cross(b);
            double right = a.dot(a) * b.dot(b);
            assertEquals(right, c.dot(c) + a.dot(b) * a.dot(b), 1e-12 * Math.max(1, right));
            assertEquals(0, c.dot(a), 1e-12);
            Vec3 p = a.anyPerpendicular();
            assertEquals(0, p.dot(a), 1e-12);
            assertEquals(1, p.length(), 1e-12);
        }
        assertThrows(ArithmeticException.class, Vec3.ZERO::unit);
        assertFalse(new Vec3(0, Double.NaN, 0).isFinite());
        assertEquals(new Vec3(-1, 2, -3), new Vec3(1, -2, 3).negate());
        assertEquals(3, new Vec3(1, 2, 3).get(2));
    }

    @Test
    void boxGrowsAroundPoints() {
        assertTrue(Box3.EMPTY.isEmpty());
        Box3 box = Box3.EMPTY.including(new Vec3(1, 2, 3)).including(new Vec3(-1, 5, 0));
        assertEquals(new Vec3(2, 3, 3), box.size());
        assertEquals(new Vec3(0, 3.5, 1.5), box.centre());
        assertEquals(new Vec3(3, 4, 4), box.grown(0.5).size());
        assertEquals(box, box.including(new Box3(Vec3.X.plus(new Vec3(0, 2, 0)), new Vec3(1, 3, 1))));
    }

    @Test
    void triangleAreaAgreesWithHeron() {
        // Heron: area = sqrt(s (s-a)(s-b)(s-c)); the 13-14-15 triangle has area 84
        TriangleMesh mesh = Meshes.of(new Vec3(0, 0, 1), new Vec3(14, 0, 1), new Vec3(5, 12, 1));
        assertEquals(84, mesh.areaM2(0), 1e-12);
        assertEquals(Vec3.Z, mesh.normal(0));
        assertEquals(0, mesh.centroid(0).distance(new Vec3(19 / 3.0, 4, 1)), 1e-14);
        assertEquals(new Vec3(14, 12, 0), mesh.bounds().size());
        assertEquals(3, mesh.vertexCount());
        TriangleMesh flat = Meshes.of(Vec3.ZERO, Vec3.X, Vec3.X.times(2));
        assertEquals(Vec3.ZERO, flat.normal(0));
        assertThrows(IllegalArgumentException.class, () -> new TriangleMesh(new double[9], new int[] {0, 1, 3}));
    }

    @Test
    void sphereAreaConvergesToFourPiRSquared() {
        // Archimedes: 4 pi r^2; error falls with the square of the facet size
        double e1 = error(48);
        double e2 = error(96);
        assertTrue(e1 < 4e-3);
        assertEquals(4, e1 / e2, 0.05);
    }

    private static double error(int around) {
        TriangleMesh mesh = Meshes.sphere(0.5, around);
        double area = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            area += mesh.areaM2(t);
        }
        return 1 - area / Math.PI;
    }
}
