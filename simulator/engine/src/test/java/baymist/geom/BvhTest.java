package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class BvhTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    /** Slow oracle: Moeller and Trumbore (1997) against every triangle. */
    private static double oracle(TriangleMesh mesh, Vec3 o, Vec3 d) {
        double best = INF;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            Vec3 e1 = mesh.point(t, 1).minus(mesh.point(t, 0));
            Vec3 e2 = mesh.point(t, 2).minus(mesh.point(t, 0));
            Vec3 p = d.cross(e2);
            double det = e1.dot(p);
            Vec3 s = o.minus(mesh.point(t, 0));
            double u = s.dot(p) / det;
            Vec3 q = s.cross(e1);
            double v = d.dot(q) / det;
            double w = e2.dot(q) / det;
            if (u >= 0 && v >= 0 && u + v <= 1 && w >= 0) {
                best = Math.min(best, w);
            }
        }
        return best;
    }

    @Test
    void closestHitAgreesWithTestingEveryTriangle() {
        Random random = new Random(5);
        TriangleMesh mesh = Meshes.soup(400, 0.15, random);
        Bvh bvh = Bvh.of(mesh);
        int hits = 0;
        for (int i = 0; i < 2000; i++) {
            Vec3 o = Meshes.point(random);
            Vec3 d = Meshes.direction(random);
            double expected = oracle(mesh, o, d);
            RayHit hit = bvh.closestHit(o, d, 0, INF, TriangleFilter.ALL);
            if (hit == null) {
                assertEquals(INF, expected);
            } else {
                hits++;
                assertEquals(expected, hit.t(), 1e-12 * (1 + expected));
                assertEquals(0, hit.point().distance(o.plus(hit.t(), d)), 1e-14);
            }
        }
        assertTrue(hits > 200 && hits < 1900, hits + " hits");
    }

    @Test
    void distanceToASphereIsThatOfTheQuadratic() {
        // ray and sphere: t = -b + sqrt(b^2 - c) with b = o.d, c = o.o - r^2 (from inside); facets are chords, so t may
        // fall
        // short by the sagitta r (1 - cos(pi / n)) and its secant, second order in the facet size
        Random random = new Random(6);
        int n = 128;
        TriangleMesh mesh = Meshes.sphere(1, n);
        Bvh bvh = Bvh.of(mesh);
        for (int i = 0; i < 500; i++) {
            Vec3 o = Meshes.direction(random).times(0.5 * random.nextDouble());
            Vec3 d = Meshes.direction(random);
            double b = o.dot(d);
            double exact = -b + Math.sqrt(b * b - (o.dot(o) - 1));
            RayHit hit = bvh.closestHit(o, d, 0, INF, TriangleFilter.ALL);
            assertNotNull(hit);
            assertTrue(hit.t() <= exact + 1e-12);
            assertEquals(exact, hit.t(), 3 * (1 - Math.cos(Math.PI / n)));
        }
    }

    @Test
    void noRayLeavesAClosedBodyThroughEdgesOrCorners() {
        TriangleMesh mesh = Meshes.sphere(1, 40);
        Bvh bvh = Bvh.of(mesh);
        Random random = new Random(7);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                Vec3 a = mesh.point(t, k);
                Vec3 b = mesh.point(t, (k + 1) % 3);
                Vec3 onEdge = a.plus(random.nextDouble(), b.minus(a));
                for (Vec3 target : List.of(a, onEdge)) {
                    Vec3 o = Meshes.direction(random).times(0.3);
                    assertNotNull(bvh.closestHit(o, target.minus(o), 0, INF, TriangleFilter.ALL));
                }
            }
        }
        // along the axes, through poles and the seam
        for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z, Vec3.X.negate(), Vec3.Y.negate(), Vec3.Z.negate())) {
            assertNotNull(bvh.closestHit(Vec3.ZERO, axis, 0, INF, TriangleFilter.ALL));
        }
    }

    @Test
    void rejectedHitsLetTheRayGoOn() {
        TriangleMesh mesh = stack(5);
        Bvh bvh = Bvh.of(mesh);
        Vec3 o = new Vec3(0.2, 0.2, -1);
        RayHit all = bvh.closestHit(o, Vec3.Z, 0, INF, TriangleFilter.ALL);
        assertNotNull(all);
        assertEquals(0, all.triangle());
        RayHit beyond = bvh.closestHit(o, Vec3.Z, 0, INF, (t, d, x, y, z) -> {
            assertEquals(z + 1, d, 1e-12);
            assertEquals(0.2, x, 1e-12);
            assertEquals(0.2, y, 1e-12);
            return t >= 3;
        });
        assertNotNull(beyond);
        assertEquals(3, beyond.triangle());
        assertEquals(4, beyond.t(), 1e-12);
        assertNull(bvh.closestHit(o, Vec3.Z, 0, INF, (t, d, x, y, z) -> false));
        assertNull(bvh.closestHit(o, Vec3.Z, 1.5, 1.9, TriangleFilter.ALL));
        RayHit inclusive = bvh.closestHit(o, Vec3.Z, 2, 2, TriangleFilter.ALL);
        assertNotNull(inclusive);
        assertEquals(1, inclusive.triangle());
    }

    /** Parallel triangles at z = 0, 1, 2 ... */
    private static TriangleMesh stack(int n) {
        Vec3[] c = new Vec3[3 * n];
        for (int i = 0; i < n; i++) {
            c[3 * i] = new Vec3(0, 0, i);
            c[3 * i + 1] = new Vec3(1, 0, i);
            c[3 * i + 2] = new Vec3(0, 1, i);
        }
        return Meshes.of(c);
    }

    @Test
    void reusedRayGivesTheSameAsAFreshOne() {
        Random random = new Random(8);
        TriangleMesh mesh = Meshes.soup(300, 0.2, random);
        Bvh bvh = Bvh.of(mesh);
        Ray ray = new Ray();
        for (int i = 0; i < 300; i++) {
            Vec3 o = Meshes.point(random);
            Vec3 d = Meshes.direction(random);
            RayHit fresh = bvh.closestHit(o, d, 0, INF, TriangleFilter.ALL);
            boolean hit = bvh.closestHit(ray.set(o, d, 0, INF), TriangleFilter.ALL);
            assertEquals(fresh != null, hit);
            if (fresh != null) {
                assertEquals(fresh.triangle(), ray.triangle());
                assertEquals(fresh.point(), new Vec3(ray.hitX(), ray.hitY(), ray.hitZ()));
            }
        }
        assertThrows(IllegalArgumentException.class, () -> ray.set(Vec3.ZERO, Vec3.ZERO, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> ray.set(new Vec3(Double.NaN, 0, 0), Vec3.X, 0, 1));
    }

    @Test
    void boxQueryFindsWhatEveryBoxTestFinds() {
        Random random = new Random(9);
        TriangleMesh mesh = Meshes.soup(500, 0.1, random);
        Bvh bvh = Bvh.of(mesh);
        for (int i = 0; i < 50; i++) {
            Box3 box = Box3.EMPTY.including(Meshes.point(random)).including(Meshes.point(random));
            TreeSet<Integer> expected = new TreeSet<>();
            for (int t = 0; t < mesh.triangleCount(); t++) {
                Box3 own = Box3.EMPTY
                        .including(mesh.point(t, 0))
                        .including(mesh.point(t, 1))
                        .including(mesh.point(t, 2));
                boolean apart = false;
                for (int axis = 0; axis < 3; axis++) {
                    apart |= own.min().get(axis) > box.max().get(axis)
                            || own.max().get(axis) < box.min().get(axis);
                }
                if (!apart) {
                    expected.add(t);
                }
            }
            List<Integer> found = new ArrayList<>();
            bvh.forEachNear(box, found::add);
            assertEquals(expected.size(), found.size());
            assertEquals(expected, new TreeSet<>(found));
        }
        bvh.forEachNear(Box3.EMPTY, t -> assertFalse(true));
    }

    @Test
    void nearestPointAgreesWithTestingEveryTriangle() {
        Random random = new Random(10);
        TriangleMesh mesh = Meshes.soup(300, 0.1, random);
        Bvh bvh = Bvh.of(mesh);
        for (int i = 0; i < 300; i++) {
            Vec3 p = Meshes.point(random).times(2).minus(new Vec3(0.5, 0.5, 0.5));
            double expected = INF;
            for (int t = 0; t < mesh.triangleCount(); t++) {
                Vec3 q = TriangleDistance.closestPoint(p, mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
                expected = Math.min(expected, q.distance(p));
            }
            assertEquals(expected, bvh.distanceToPoint(p), 1e-15);
        }
        // distance to a unit sphere from outside is |p| - 1, to the sagitta
        Bvh sphere = Bvh.of(Meshes.sphere(1, 128));
        assertEquals(2, sphere.distanceToPoint(new Vec3(1, 2, 2)), 4e-4);
    }

    @Test
    void sameMeshGivesTheSameTreeAndEmptyMeshNothing() {
        TriangleMesh mesh = Meshes.soup(200, 0.1, new Random(4));
        List<Integer> a = new ArrayList<>();
        List<Integer> b = new ArrayList<>();
        Bvh.of(mesh).forEachNear(mesh.bounds(), a::add);
        Bvh.of(mesh).forEachNear(mesh.bounds(), b::add);
        assertArrayEquals(a.toArray(), b.toArray());
        assertEquals(Bvh.of(mesh).nodeCount(), Bvh.of(mesh).nodeCount());
        Bvh empty = Bvh.of(new TriangleMesh(new double[0], new int[0]));
        assertNull(empty.closestHit(Vec3.ZERO, Vec3.X, 0, INF, TriangleFilter.ALL));
        assertEquals(INF, empty.distanceToPoint(Vec3.ZERO));
        empty.forEachNear(new Box3(Vec3.ZERO, Vec3.X), t -> assertFalse(true));
        empty.forEachNearSegment(Vec3.ZERO, Vec3.X, 1, t -> assertFalse(true));
    }

    @Test
    void hundredsOfEqualTrianglesStillMakeATree() {
        Vec3[] c = new Vec3[3 * 500];
        for (int i = 0; i < 500; i++) {
            c[3 * i] = Vec3.ZERO;
            c[3 * i + 1] = Vec3.X;
            c[3 * i + 2] = Vec3.Y;
        }
        RayHit hit = Bvh.of(Meshes.of(c)).closestHit(new Vec3(0.2, 0.2, 1), Vec3.Z.negate(), 0, 5, TriangleFilter.ALL);
        assertNotNull(hit);
        assertEquals(0, hit.triangle());
        assertEquals(1, hit.t(), 1e-15);
    }
}
