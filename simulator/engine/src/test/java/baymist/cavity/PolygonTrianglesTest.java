package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PolygonTrianglesTest {
    /** Star-shaped loop about a centre, counter-clockwise. */
    private static List<double[]> star(Random r, double x, double y, double radius, int n) {
        List<double[]> loop = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double a = 2 * Math.PI * i / n;
            double rho = radius * (0.5 + 0.5 * r.nextDouble());
            loop.add(new double[] {x + rho * Math.cos(a), y + rho * Math.sin(a)});
        }
        return loop;
    }

    private static double area(double[] a, double[] b, double[] c) {
        return 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
    }

    @Test
    void trianglesFillThePolygonVertexForVertex() {
        Random r = new Random(71);
        for (int trial = 0; trial < 200; trial++) {
            List<double[]> rim = star(r, 0, 0, 10, 8 + r.nextInt(40));
            List<List<double[]>> holes = new ArrayList<>();
            // within the circle of radius 5 that every star contains, on a grid so that they keep clear
            for (int k = 0; k < 4; k++) {
                if (r.nextBoolean()) {
                    holes.add(star(r, (k % 2) * 4 - 2, (k / 2) * 4 - 2, 1, 3 + r.nextInt(30)));
                }
            }
            double want = new Outline.Polygon(rim).areaM2();
            List<double[]> all = new ArrayList<>(rim);
            int corners = rim.size();
            for (List<double[]> hole : holes) {
                want -= new Outline.Polygon(hole).areaM2();
                all.addAll(hole);
                corners += hole.size() + 2;
            }
            List<int[]> triangles = PolygonTriangles.of(rim, holes);
            assertNotNull(triangles, "trial " + trial);
            // a polygon of n corners with h holes has n + 2 h - 2 triangles (Euler)
            assertEquals(corners - 2, triangles.size());
            double sum = 0;
            Map<Long, Integer> edges = new HashMap<>();
            for (int[] t : triangles) {
                double a = area(all.get(t[0]), all.get(t[1]), all.get(t[2]));
                assertTrue(a > 0, "trial " + trial);
                sum += a;
                for (int k = 0; k < 3; k++) {
                    long low = Math.min(t[k], t[(k + 1) % 3]);
                    long high = Math.max(t[k], t[(k + 1) % 3]);
                    edges.merge(low << 32 | high, 1, Integer::sum);
                }
            }
            assertEquals(want, sum, 1e-10 * want, "trial " + trial);
            long free = edges.values().stream().filter(u -> u == 1).count();
            assertEquals(all.size(), free, "only the loops' own sides are free");
            assertTrue(edges.values().stream().allMatch(u -> u <= 2));
        }
    }

    @Test
    void cornersOnStraightSidesAreKept() {
        List<double[]> rim = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            rim.add(new double[] {i, 0});
        }
        for (int i = 3; i >= 0; i--) {
            rim.add(new double[] {i, 2});
        }
        List<double[]> hole =
                List.of(new double[] {1, 0.5}, new double[] {2, 0.5}, new double[] {2, 1.5}, new double[] {1, 1.5});
        List<int[]> triangles = PolygonTriangles.of(rim, List.of(hole));
        assertNotNull(triangles);
        assertEquals(12, triangles.size());
    }

    @Test
    void loopsThatMeetAreRefused() {
        List<double[]> rim =
                List.of(new double[] {0, 0}, new double[] {4, 0}, new double[] {4, 4}, new double[] {0, 4});
        assertNull(PolygonTriangles.of(rim, List.of(square(3.5, 2, 1))), "over the rim");
        assertNull(PolygonTriangles.of(rim, List.of(square(3, 2, 1))), "touching the rim");
        assertNull(PolygonTriangles.of(rim, List.of(square(7, 2, 1))), "beyond the rim");
        assertNull(PolygonTriangles.of(rim, List.of(square(1.5, 2, 0.8), square(2.5, 2, 0.8))), "into each other");
        assertNull(PolygonTriangles.of(rim, List.of(square(2, 2, 1), square(2, 2, 0.5))), "one in the other");
        List<double[]> bow =
                List.of(new double[] {1, 1}, new double[] {3, 3}, new double[] {3, 1}, new double[] {1, 3});
        assertNull(PolygonTriangles.of(rim, List.of(bow)), "crossing itself");
    }

    private static List<double[]> square(double x, double y, double half) {
        return List.of(
                new double[] {x - half, y - half},
                new double[] {x + half, y - half},
                new double[] {x + half, y + half},
                new double[] {x - half, y + half});
    }
}
