package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TriangleDistanceTest {
    @Test
    void segmentDistanceIsTheSmallestOverDenseSamples() {
        Random random = new Random(31);
        int crossing = 0;
        for (int i = 0; i < 200; i++) {
            Vec3 a = Meshes.point(random);
            Vec3 b = Meshes.point(random);
            Vec3 c = Meshes.point(random);
            Vec3 p = Meshes.point(random);
            Vec3 q = Meshes.point(random);
            double exact = TriangleDistance.segmentTriangleM(p, q, a, b, c);
            double sampled = Double.POSITIVE_INFINITY;
            int n = 2000;
            for (int k = 0; k <= n; k++) {
                Vec3 s = p.plus((double) k / n, q.minus(p));
                sampled = Math.min(
                        sampled, TriangleDistance.closestPoint(s, a, b, c).distance(s));
            }
            crossing += exact == 0 ? 1 : 0;
            assertTrue(exact <= sampled + 1e-12);
            assertEquals(sampled, exact, p.distance(q) / n);
        }
        assertTrue(crossing > 5);
    }

    @Test
    void pointDistanceIsTheSmallestOverAGridOfTheTriangle() {
        Random random = new Random(32);
        for (int i = 0; i < 100; i++) {
            Vec3 a = Meshes.point(random);
            Vec3 b = Meshes.point(random);
            Vec3 c = Meshes.point(random);
            Vec3 p = Meshes.point(random).times(3).minus(new Vec3(1, 1, 1));
            double exact = TriangleDistance.closestPoint(p, a, b, c).distance(p);
            double sampled = Double.POSITIVE_INFINITY;
            int n = 100;
            for (int j = 0; j <= n; j++) {
                for (int k = 0; j + k <= n; k++) {
                    Vec3 s = a.plus((double) j / n, b.minus(a)).plus((double) k / n, c.minus(a));
                    sampled = Math.min(sampled, s.distance(p));
                }
            }
            assertTrue(exact <= sampled + 1e-12);
            assertEquals(sampled, exact, 0.03);
        }
    }

    @Test
    void closedFormsInPlainPositions() {
        // skew lines: common perpendicular of the x axis and a line along y at height 2 (textbook)
        assertEquals(
                2,
                TriangleDistance.segmentSegmentM(
                        new Vec3(-1, 0, 0), new Vec3(1, 0, 0), new Vec3(0.5, -1, 2), new Vec3(0.5, 1, 2)),
                1e-15);
        // parallel segments
        assertEquals(
                3, TriangleDistance.segmentSegmentM(Vec3.ZERO, Vec3.X, new Vec3(0, 3, 0), new Vec3(1, 3, 0)), 1e-15);
        // end to end, 3-4-5
        assertEquals(
                5,
                TriangleDistance.segmentSegmentM(Vec3.ZERO, Vec3.X.negate(), new Vec3(3, 4, 0), new Vec3(9, 9, 0)),
                1e-15);
        assertEquals(
                0,
                TriangleDistance.segmentTriangleM(
                        new Vec3(0.2, 0.2, -1), new Vec3(0.2, 0.2, 1), Vec3.ZERO, Vec3.X, Vec3.Y));
        assertEquals(
                0.5,
                TriangleDistance.segmentTriangleM(
                        new Vec3(0.2, 0.2, 0.5), new Vec3(0.2, 0.2, 1), Vec3.ZERO, Vec3.X, Vec3.Y),
                1e-15);
        // a triangle without area is its longest edge; a segment without length is a point
        assertEquals(
                1,
                TriangleDistance.closestPoint(new Vec3(1, 1, 0), Vec3.ZERO, Vec3.X, Vec3.X.times(2))
                        .distance(new Vec3(1, 1, 0)));
        assertEquals(Vec3.Y, TriangleDistance.closestOnSegment(Vec3.ZERO, Vec3.Y, Vec3.Y));
    }
}
