package baymist.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.voxel.SurfelSet;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Laws of the drawn surface; the references are exact areas of surfels, closed forms and Euler's formula. */
class SurfaceLawTest {
    private static final SurfaceScenes ELEVATOR = SurfaceScenes.of("control-surface-pin-forward.yaml", 0.012);
    private static final SurfaceScenes BOX = SurfaceScenes.of("wing-box.yaml", 0.024);
    private static final SurfaceScenes TAIL = SurfaceScenes.of("tail-cone.yaml", 0.04);
    private static final Surface SURFACE = ELEVATOR.surface(SurfaceOptions.DEFAULT);
    private static final Surface BOX_SURFACE = BOX.surface(SurfaceOptions.DEFAULT);

    /** Exact areas of sheet that faces the cavity, by the voxeliser: resolved by surfels, or stated as unresolved. */
    @Test
    void sidesThatFaceTheCavityHaveTheAreaOfTheirSurfels() {
        Surface tail = TAIL.surface(SurfaceOptions.DEFAULT);
        agree(ELEVATOR, SURFACE, 0.002);
        agree(BOX, BOX_SURFACE, 0.002);
        // stringers there are narrower than a voxel
        agree(TAIL, tail, 0.02);
    }

    private static void agree(SurfaceScenes s, Surface surface, double tolerance) {
        SurfelSet surfels = s.grid().surfels();
        double[] off = new double[s.cavity().parts().size()];
        double total = 0;
        for (Patch p : surface.patches()) {
            off[p.part()] += p.side() == Patch.Side.CAVITY ? surface.areaM2(p) : 0;
        }
        for (int i = 0; i < surfels.count(); i++) {
            double area = surfels.closure()[i] < 0 ? surfels.areaM2()[i] : 0;
            off[surfels.part()[i]] -= area;
            total += area;
        }
        double sum = Arrays.stream(off).map(Math::abs).sum();
        assertTrue(sum <= tolerance * total, s.cavity().name() + " is off by " + sum + " of " + total + " m2");
    }

    @Test
    void everySheetHasTwoSides() {
        double sheets = 0;
        for (int t = 0; t < BOX.cavity().cutSheets().triangleCount(); t++) {
            sheets += BOX.cavity().cutSheets().areaM2(t);
        }
        double drawn =
                BOX_SURFACE.patches().stream().mapToDouble(BOX_SURFACE::areaM2).sum();
        assertEquals(2 * sheets, drawn, 1e-5 * sheets);
    }

    @Test
    void aConstantStaysConstantAndOutsideHasNoFilm() {
        double[] film = new double[SURFACE.surfelCount()];
        Arrays.fill(film, 20e-6);
        float[] on = SURFACE.onVertices(film);
        for (Patch p : SURFACE.patches()) {
            for (int v = p.firstVertex(); v < p.firstVertex() + p.vertexCount(); v++) {
                if (p.side() == Patch.Side.OUTSIDE) {
                    assertTrue(Float.isNaN(on[v]));
                } else {
                    assertEquals(20e-6, on[v], 1e-11);
                }
            }
        }
    }

    @Test
    void filmOnOneSideOfARibDoesNotShowOnTheOther() {
        SurfelSet surfels = BOX.grid().surfels();
        int rib = BOX.cavity().partIndex("rib 3");
        double[] film = new double[surfels.count()];
        for (int s = 0; s < film.length; s++) {
            film[s] = surfels.part()[s] == rib && surfels.normalY()[s] > 0 ? 1 : 0;
        }
        float[] on = BOX_SURFACE.onVertices(film);
        int wet = 0;
        int dry = 0;
        for (Patch p : BOX_SURFACE.patches()) {
            for (int v = p.firstVertex(); v < p.firstVertex() + p.vertexCount(); v++) {
                if (p.side() == Patch.Side.CAVITY) {
                    boolean there = p.part() == rib && BOX_SURFACE.normals()[3 * v + 1] > 0;
                    assertEquals(there ? 1 : 0, on[v], 1e-5);
                    wet += there ? 1 : 0;
                    dry += p.part() == rib && !there ? 1 : 0;
                }
            }
        }
        assertTrue(wet > 50 && dry > 50, wet + " and " + dry);
    }

    /** A mean over a tent of one voxel keeps the first moment but for its one-sided edges. */
    @Test
    void aSlopeIsFollowedWithinAVoxel() {
        SurfelSet surfels = ELEVATOR.grid().surfels();
        float[] on = SURFACE.onVertices(surfels.centreY());
        double sum = 0;
        int n = 0;
        for (Patch p : SURFACE.patches()) {
            for (int v = p.firstVertex(); p.side() == Patch.Side.CAVITY && v < p.firstVertex() + p.vertexCount(); v++) {
                double off = Math.abs(on[v] - SURFACE.xyz()[3 * v + 1]);
                assertTrue(off < 0.02, "off by " + off);
                sum += off;
                n++;
            }
        }
        assertTrue(sum / n < 0.003, "in the mean off by " + sum / n);
    }

    @Test
    void everySurfelShowsSomewhere() {
        for (Surface surface : new Surface[] {SURFACE, BOX_SURFACE}) {
            SurfelSet surfels = (surface == SURFACE ? ELEVATOR : BOX).grid().surfels();
            double hidden = 0;
            double all = 0;
            BitSet seen = surface.surfelsUsed();
            for (int s = 0; s < surfels.count(); s++) {
                all += surfels.closure()[s] < 0 ? surfels.areaM2()[s] : 0;
                hidden += surfels.closure()[s] < 0 && !seen.get(s) ? surfels.areaM2()[s] : 0;
            }
            assertTrue(hidden < 0.001 * all, hidden + " of " + all + " m2 show nowhere");
        }
    }

    @Test
    void edgesKeepTheirLimitAndTrianglesTheirs() {
        for (int most : new int[] {100_000, 20_000, 6_000}) {
            Surface s = BOX.surface(SurfaceOptions.DEFAULT.withMaxTriangles(most));
            assertTrue(s.triangleCount() <= most, s.triangleCount() + " triangles, " + most + " allowed");
            assertEquals(s.triangleCount(), s.detail().triangles());
            double longest = 0;
            for (Patch p : s.patches()) {
                for (int t = p.firstTriangle();
                        p.side() == Patch.Side.CAVITY && t < p.firstTriangle() + p.triangleCount();
                        t++) {
                    for (int k = 0; k < 3; k++) {
                        longest = Math.max(longest, edge(s, s.corners()[3 * t + k], s.corners()[3 * t + (k + 1) % 3]));
                    }
                }
            }
            assertTrue(longest <= 1.001 * s.detail().edgeM(), longest + " m, " + s.detail());
        }
        assertTrue(BOX_SURFACE.detail().sentence().contains("as fine as the voxels"));
        String coarse = BOX.surface(SurfaceOptions.DEFAULT.withMaxTriangles(6_000))
                .detail()
                .sentence();
        assertTrue(coarse.contains("coarser than computed") && coarse.contains("merged"), coarse);
    }

    private static double edge(Surface s, int a, int b) {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++) {
            double d = (double) s.xyz()[3 * a + axis] - s.xyz()[3 * b + axis];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    @Test
    void trianglesAreWoundToBeSeenFromTheirSide() {
        for (int t = 0; t < SURFACE.triangleCount(); t++) {
            int[] c = {SURFACE.corners()[3 * t], SURFACE.corners()[3 * t + 1], SURFACE.corners()[3 * t + 2]};
            double[] u = new double[3];
            double[] w = new double[3];
            for (int axis = 0; axis < 3; axis++) {
                u[axis] = (double) SURFACE.xyz()[3 * c[1] + axis] - SURFACE.xyz()[3 * c[0] + axis];
                w[axis] = (double) SURFACE.xyz()[3 * c[2] + axis] - SURFACE.xyz()[3 * c[0] + axis];
            }
            double facing = (u[1] * w[2] - u[2] * w[1]) * SURFACE.normals()[3 * c[0]]
                    + (u[2] * w[0] - u[0] * w[2]) * SURFACE.normals()[3 * c[0] + 1]
                    + (u[0] * w[1] - u[1] * w[0]) * SURFACE.normals()[3 * c[0] + 2];
            assertTrue(facing > 0, "triangle " + t);
        }
    }

    /** Euler's formula for a closed surface without handles: V - E + F = 2, each edge in two triangles. */
    @Test
    void splittingATetrahedronOpensNoCrack() {
        Pieces solid = new Pieces();
        double[][] p = {{0, 0, 0}, {0.3, 0, 0}, {0.05, 0.2, 0}, {0.1, 0.05, 0.07}};
        for (double[] q : p) {
            solid.addVertex(q[0], q[1], q[2]);
        }
        int[][] faces = {{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}};
        for (int[] f : faces) {
            solid.add(f[0], f[1], f[2], 0, -1);
        }
        FlatStretches.number(solid);
        Pieces split = SheetSplitter.split(solid, 0.02, 100_000);
        Map<Long, Integer> edges = new HashMap<>();
        BitSet used = new BitSet();
        for (int t = 0; t < split.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                int a = split.corner(t, k);
                int b = split.corner(t, (k + 1) % 3);
                used.set(a);
                edges.merge(((long) Math.min(a, b) << 32) | Math.max(a, b), 1, Integer::sum);
                assertTrue(split.length2(a, b) <= 1.001 * 0.02 * 0.02);
            }
        }
        assertTrue(edges.values().stream().allMatch(n -> n == 2), "an edge has not two triangles");
        assertEquals(2, used.cardinality() - edges.size() + split.triangles());
        assertTrue(split.triangles() > 200, split.triangles() + " triangles");
    }

    /** A level line of the distance from a point of a plane is a circle: 2 pi r. */
    @Test
    void aContourOfDistanceIsACircle() {
        int spar = ELEVATOR.cavity().partIndex("upper skin");
        float[] distance = new float[SURFACE.vertexCount()];
        Arrays.fill(distance, Float.NaN);
        Patch largest = null;
        for (Patch p : SURFACE.patches()) {
            boolean larger = largest == null || p.triangleCount() > largest.triangleCount();
            largest = p.part() == spar && p.side() == Patch.Side.CAVITY && larger ? p : largest;
        }
        assertTrue(largest != null);
        double[] middle = middle(largest);
        for (int v = largest.firstVertex(); v < largest.firstVertex() + largest.vertexCount(); v++) {
            distance[v] = (float) Math.hypot(
                    Math.hypot(SURFACE.xyz()[3 * v] - middle[0], SURFACE.xyz()[3 * v + 1] - middle[1]),
                    SURFACE.xyz()[3 * v + 2] - middle[2]);
        }
        float[] lines = Contour.of(SURFACE, distance, 0.06);
        double length = 0;
        for (int n = 0; n < lines.length; n += 6) {
            length += Math.hypot(
                    Math.hypot(lines[n + 3] - lines[n], lines[n + 4] - lines[n + 1]), lines[n + 5] - lines[n + 2]);
        }
        assertEquals(2 * Math.PI * 0.06, length, 0.02 * 2 * Math.PI * 0.06);
    }

    private static double[] middle(Patch p) {
        double[] sum = new double[3];
        for (int v = p.firstVertex(); v < p.firstVertex() + p.vertexCount(); v++) {
            for (int axis = 0; axis < 3; axis++) {
                sum[axis] += SURFACE.xyz()[3 * v + axis] / p.vertexCount();
            }
        }
        return sum;
    }

    @Test
    void theOutlineOfAllSurfelsOfAPartStaysOnItsBorder() {
        SurfelSet surfels = ELEVATOR.grid().surfels();
        int[] some = java.util.stream.IntStream.range(0, surfels.count())
                .filter(s -> surfels.centreY()[s] < 0.2)
                .toArray();
        float[] lines = Contour.region(SURFACE, some);
        assertFalse(lines.length == 0);
        for (int n = 0; n < lines.length; n += 3) {
            assertEquals(0.2, lines[n + 1], 0.02);
        }
    }
}
