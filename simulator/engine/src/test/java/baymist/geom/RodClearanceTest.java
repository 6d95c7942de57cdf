package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RodClearanceTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    /** Plate z = 0 from the rim of a round hole (inscribed n-gon) out to a large square ring. */
    private static TriangleMesh plateWithHole(double radius, int n) {
        List<Vec3> c = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            Vec3 a = new Vec3(Math.cos(2 * Math.PI * k / n), Math.sin(2 * Math.PI * k / n), 0);
            Vec3 b = new Vec3(Math.cos(2 * Math.PI * (k + 1) / n), Math.sin(2 * Math.PI * (k + 1) / n), 0);
            c.addAll(List.of(a.times(radius), a.times(1), b.times(1)));
            c.addAll(List.of(a.times(radius), b.times(1), b.times(radius)));
        }
        return Meshes.of(c.toArray(new Vec3[0]));
    }

    @Test
    void tiltOfARodInAHoleStopsAtTheClosedForm() {
        // a rod of radius r tilted by theta cuts a thin plate in an ellipse of half axes r and r / cos(theta): it
        // passes a
        // hole of radius R while cos(theta) > r / R (elementary conic section; inscribed 1440-gon: 2.4e-6 smaller)
        double hole = 0.010;
        TriangleMesh mesh = plateWithHole(hole, 1440);
        Bvh bvh = Bvh.of(mesh);
        for (double rod : new double[] {0.003, 0.006, 0.0095}) {
            double limit = Math.acos(rod / hole);
            for (double around = 0; around < 6; around += 0.7) {
                assertNull(push(mesh, bvh, rod, limit - 0.002, around), rod + " must pass");
                assertNotNull(push(mesh, bvh, rod, limit + 0.002, around), rod + " must stop");
            }
        }
        assertNotNull(push(mesh, bvh, 0.0101, 0, 0));
    }

    private static RodClearance.Contact push(TriangleMesh mesh, Bvh bvh, double rod, double tilt, double around) {
        Vec3 axis = new Vec3(Math.sin(tilt) * Math.cos(around), Math.sin(tilt) * Math.sin(around), -Math.cos(tilt));
        return RodClearance.firstContact(axis.times(-0.2), axis, rod, 0, 0.4, mesh, bvh);
    }

    @Test
    void noseMeetsATiltedWallWithItsLeadingRim() {
        // plane at distance D along the axis, its normal tilted by theta: the rim touches first, at D - r tan(theta)
        double r = 0.02;
        double distance = 0.5;
        for (double theta : new double[] {0, 0.2, 0.7, 1.2}) {
            Vec3 n = new Vec3(Math.sin(theta), 0, Math.cos(theta));
            Vec3 at = new Vec3(0, 0, distance);
            Vec3 u = n.anyPerpendicular().times(3);
            Vec3 v = n.cross(u);
            TriangleMesh wall =
                    Meshes.of(at.plus(u), at.minus(u).plus(v), at.minus(u).minus(v));
            double depth = RodClearance.firstContact(Vec3.ZERO, Vec3.Z, r, 2, wall, Bvh.of(wall));
            assertEquals(distance - r * Math.tan(theta), depth, 1e-12);
        }
    }

    @Test
    void cornersAndEdgesTouchWhereTheyStand() {
        TriangleMesh spike = Meshes.of(new Vec3(0.005, 0, 0.3), new Vec3(1, 0.1, 0.9), new Vec3(1, -0.1, 0.9));
        Bvh bvh = Bvh.of(spike);
        assertEquals(0.3, RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.01, 1, spike, bvh), 1e-15);
        assertEquals(INF, RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.005, 1, spike, bvh));
        // an edge along y at x = 0.003, z = 0.2, sheet rising forward: the edge is met as such
        TriangleMesh sheet = Meshes.of(new Vec3(0.003, -1, 0.2), new Vec3(0.003, 1, 0.2), new Vec3(2, 0, 5));
        assertEquals(0.2, RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.004, 1, sheet, Bvh.of(sheet)), 1e-15);
        // a sheet seen edge-on beside the axis, running along it from z = 0.4
        TriangleMesh blade = Meshes.of(new Vec3(0.002, 0, 0.4), new Vec3(0.002, 0.5, 0.4), new Vec3(0.002, 0.2, 2));
        assertEquals(0.4, RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.004, 1, blade, Bvh.of(blade)), 1e-15);
        // an edge along the axis itself, inside the rod
        TriangleMesh along = Meshes.of(new Vec3(0.001, 0, 0.4), new Vec3(0.001, 0, 0.6), new Vec3(1, 0, 0.9));
        assertEquals(0.4, RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.004, 1, along, Bvh.of(along)), 1e-15);
    }

    @Test
    void contactIsTheSmallestDepthOverSamplesOfTheTriangle() {
        Random random = new Random(41);
        int touched = 0;
        for (int i = 0; i < 300; i++) {
            TriangleMesh mesh = Meshes.soup(1, 0.8, random);
            Vec3 origin = Meshes.point(random);
            Vec3 axis = mesh.centroid(0)
                    .plus(0.3, Meshes.direction(random))
                    .minus(origin)
                    .unit();
            double r = 0.05 + 0.2 * random.nextDouble();
            double start = 0.1;
            RodClearance.Contact contact = RodClearance.firstContact(origin, axis, r, start, 3, mesh, Bvh.of(mesh));
            double sampled = sampledContact(mesh, origin, axis, r, start);
            if (contact == null) {
                assertTrue(sampled == INF || sampled >= 3);
                continue;
            }
            touched++;
            assertTrue(contact.depthM() <= sampled + 1e-9);
            if (sampled < INF) {
                assertEquals(sampled, contact.depthM(), 0.08);
            }
        }
        assertTrue(touched > 100);
    }

    private static double sampledContact(TriangleMesh mesh, Vec3 origin, Vec3 axis, double r, double start) {
        double best = INF;
        int n = 300;
        for (int j = 0; j <= n; j++) {
            for (int k = 0; j + k <= n; k++) {
                Vec3 s = mesh.point(0, 0)
                        .plus((double) j / n, mesh.point(0, 1).minus(mesh.point(0, 0)))
                        .plus((double) k / n, mesh.point(0, 2).minus(mesh.point(0, 0)))
                        .minus(origin);
                double t = s.dot(axis);
                if (t >= start && s.minus(axis.times(t)).length() < r) {
                    best = Math.min(best, t);
                }
            }
        }
        return best;
    }

    @Test
    void startDepthHidesWhatLiesBehindAndCutsWhatReachesAcross() {
        TriangleMesh two = Meshes.of(
                new Vec3(-1, -1, 0.2),
                new Vec3(1, -1, 0.2),
                new Vec3(0, 2, 0.2),
                new Vec3(0, 0, 0.1),
                new Vec3(0, 0, 0.9),
                new Vec3(0.5, 0, 0.5));
        Bvh bvh = Bvh.of(two);
        RodClearance.Contact first = RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.01, 0, 1, two, bvh);
        assertNotNull(first);
        assertEquals(0.1, first.depthM(), 1e-15);
        assertEquals(1, first.triangle());
        RodClearance.Contact later = RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.01, 0.5, 1, two, bvh);
        assertNotNull(later);
        assertEquals(0.5, later.depthM(), 0);
        assertNull(RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0.01, 0.95, 1, two, bvh));
        assertThrows(
                IllegalArgumentException.class, () -> RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 0, 1, two, bvh));
        assertThrows(
                IllegalArgumentException.class,
                () -> RodClearance.firstContact(Vec3.ZERO, Vec3.Z, 1, 1, Meshes.sphere(1, 8), bvh));
    }

    @Test
    void clearanceOfARodInATubeIsTheRestOfTheRadius() {
        TriangleMesh sphere = Meshes.sphere(1, 200);
        Bvh bvh = Bvh.of(sphere);
        double c = RodClearance.clearanceM(new Vec3(0.3, 0, 0), new Vec3(-0.1, 0, 0), 5, sphere, bvh);
        assertEquals(0.7, c, 3e-4);
        assertEquals(0.1, RodClearance.clearanceM(Vec3.ZERO, Vec3.X.times(0.1), 0.1, sphere, bvh));
    }
}
