package baymist.viewer.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.recording.FogCells;
import baymist.scene.TargetSpec;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DrawLawsTest {
    private static final Box3 BOX = new Box3(new Vec3(-1, 0, -0.2), new Vec3(0.5, 4, 0.3));

    @Test
    void aRayThroughTheSpotOfAPointMeetsThePoint() {
        Random random = new Random(3);
        for (int n = 0; n < 300; n++) {
            Camera c = new Camera(random(random), random.nextDouble() * 6, random.nextDouble() * 3 - 1.5, 4);
            Vec3 p = random(random);
            Camera.Spot spot = c.project(p, 900, 600);
            assertNotNull(spot);
            Vec3 ray = c.throughPixel(spot.x(), spot.y(), 900, 600);
            Vec3 from = p.minus(c.eye());
            assertEquals(0, from.cross(ray).length(), 1e-9);
            assertEquals(spot.depthM(), from.dot(c.forward()), 1e-9);
        }
    }

    private static Vec3 random(Random r) {
        return new Vec3(r.nextDouble() - 0.5, r.nextDouble() - 0.5, r.nextDouble() - 0.5);
    }

    @Test
    void everyUsualSideShowsTheWholeAndRightStaysRight() {
        for (View view : View.values()) {
            for (double aspect : new double[] {0.7, 1, 2}) {
                Camera c = Camera.of(view, BOX, aspect);
                for (int corner = 0; corner < 8; corner++) {
                    Vec3 p = new Vec3(
                            (corner & 1) == 0 ? -1 : 0.5, (corner & 2) == 0 ? 0 : 4, (corner & 4) == 0 ? -0.2 : 0.3);
                    Camera.Spot s = c.project(p, 600 * aspect, 600);
                    assertNotNull(s);
                    assertTrue(s.x() > 0 && s.x() < 600 * aspect && s.y() > 0 && s.y() < 600, view + " " + s);
                }
            }
        }
        assertTrue(Camera.of(View.TOP, BOX, 1).right().dot(Vec3.Y) > 0.99, "from above the right side is right");
        assertTrue(Camera.of(View.TOP, BOX, 1).up().dot(Vec3.X) < -0.99, "and ahead is on top");
        assertTrue(Camera.of(View.SIDE, BOX, 1).right().dot(Vec3.X) > 0.99, "from the left aft is right");
        assertTrue(Camera.of(View.FRONT, BOX, 1).forward().dot(Vec3.X) > 0.99, "from ahead one looks aft");
    }

    @Test
    void drawingOrderIsFarthestFirstAlsoBehindZero() {
        float[] depth = {1, -2, 3, 0, -0.5f, 3, -0f};
        int[] order = DrawOrder.farthestFirst(depth);
        assertEquals(2, order[0]);
        assertEquals(5, order[1], "equals by number");
        for (int i = 1; i < order.length; i++) {
            assertTrue(depth[order[i - 1]] >= depth[order[i]], Arrays.toString(order));
        }
    }

    @Test
    void piecesHoldEveryTriangleOnceAndAreSmall() {
        float[] xyz = grid();
        int[] corners = triangles();
        BitSet seen = new BitSet();
        for (Piece p : new Pieces(xyz, corners, 50).of(7, 0, corners.length / 3)) {
            assertTrue(p.triangles().length <= 50);
            assertEquals(7, p.group());
            for (int t : p.triangles()) {
                assertFalse(seen.get(t));
                seen.set(t);
            }
        }
        assertEquals(corners.length / 3, seen.cardinality());
    }

    /** A sheet of 20 by 20 squares, bent. */
    private static float[] grid() {
        float[] xyz = new float[3 * 21 * 21];
        for (int v = 0; v < 21 * 21; v++) {
            xyz[3 * v] = v % 21 * 0.05f;
            xyz[3 * v + 1] = v / 21 * 0.05f;
            xyz[3 * v + 2] = (float) (0.1 * Math.sin(xyz[3 * v] * 3));
        }
        return xyz;
    }

    private static int[] triangles() {
        int[] t = new int[20 * 20 * 6];
        int n = 0;
        for (int i = 0; i < 20; i++) {
            for (int j = 0; j < 20; j++) {
                int a = 21 * i + j;
                for (int v : new int[] {a, a + 1, a + 21, a + 1, a + 22, a + 21}) {
                    t[n++] = v;
                }
            }
        }
        return t;
    }

    @Test
    void aPlaneLeavesOfAPieceWhatTheOtherSideTakesAway() {
        float[] xyz = grid();
        int[] corners = triangles();
        Piece whole = new Piece(
                0, java.util.stream.IntStream.range(0, corners.length / 3).toArray(), new float[3]);
        double all = area(CutPiece.of(whole, xyz, corners, null), xyz);
        Random random = new Random(11);
        for (int n = 0; n < 40; n++) {
            Vec3 normal = random(random).unit();
            double at = 0.5 * random.nextDouble();
            CutPiece here = CutPiece.of(whole, xyz, corners, new Cut(normal, at));
            CutPiece there = CutPiece.of(whole, xyz, corners, new Cut(normal.negate(), -at));
            assertEquals(all, area(here, xyz) + area(there, xyz), 1e-5 * all);
            for (int p = 0; p < here.points(); p++) {
                float[] q = point(here, p, xyz);
                assertTrue(new Cut(normal, at).beyondM(q[0], q[1], q[2]) < 1e-5);
            }
        }
    }

    private static float[] point(CutPiece c, int p, float[] xyz) {
        float[] q = new float[3];
        for (int a = 0; a < 3; a++) {
            q[a] = c.at(p, xyz[3 * c.from()[p] + a], xyz[3 * c.to()[p] + a]);
        }
        return q;
    }

    private static double area(CutPiece c, float[] xyz) {
        double sum = 0;
        for (int t = 0; t < c.triangles(); t++) {
            Vec3[] v = new Vec3[3];
            for (int k = 0; k < 3; k++) {
                float[] q = point(c, c.corners()[3 * t + k], xyz);
                v[k] = new Vec3(q[0], q[1], q[2]);
            }
            sum += 0.5 * v[1].minus(v[0]).cross(v[2].minus(v[0])).length();
        }
        return sum;
    }

    @Test
    void linesAreCutWhereThePlaneIs() {
        float[] left = CutLines.of(new float[] {0, 0, 0, 2, 0, 0, 3, 0, 0, 4, 0, 0}, new Cut(Vec3.X, 0.5));
        assertEquals(6, left.length);
        assertEquals(0.5f, Math.max(left[0], left[3]), 1e-6);
    }

    @Test
    void labelsNeverMeetAndStayOnThePicture() {
        Random random = new Random(5);
        for (int n = 0; n < 60; n++) {
            List<LabelPlaces.Wish> wishes = new ArrayList<>();
            for (int i = 0; i < 24; i++) {
                wishes.add(new LabelPlaces.Wish(
                        800 * random.nextDouble(), 500 * random.nextDouble(), 40 + 120 * random.nextDouble(), 18));
            }
            LabelPlaces.Box corner = new LabelPlaces.Box(0, 400, 150, 100);
            List<LabelPlaces.Box> placed = new ArrayList<>(List.of(corner));
            for (LabelPlaces.Box box : LabelPlaces.of(wishes, List.of(corner), 800, 500)) {
                if (box != null) {
                    placed.forEach(other -> assertFalse(box.meets(other, 0)));
                    assertTrue(box.x() >= 0 && box.x() + box.width() <= 800);
                    placed.add(box);
                }
            }
            assertTrue(placed.size() > 12, placed.size() + " of 24");
        }
    }

    @Test
    void moreFilmLiesFartherAlongTheColoursAndHazeIsTheirBorder() {
        FilmPlaces scale = new FilmPlaces(TargetSpec.DEFAULT);
        float last = -1;
        for (double m = 1e-8; m < 1e-3; m *= 1.1) {
            assertTrue(scale.place(m) >= last);
            last = scale.place(m);
        }
        assertTrue(scale.place(0.999e-6) * FilmPlaces.COLOURS < FilmPlaces.BARE + 1);
        assertTrue(scale.place(1.01e-6) * FilmPlaces.COLOURS >= FilmPlaces.BARE);
        assertEquals(scale.place(0), scale.place(Double.NaN));
    }

    @Test
    void dotsAreAsManyAsTheFogWeighs() {
        FogCells cells = new FogCells(
                1,
                2,
                new int[] {0, 1},
                new float[] {0, 0, 0, 1, 0, 0},
                new float[] {0.1f, 0.1f, 0.1f},
                new double[] {1e-3, 2e-3},
                new int[2]);
        FogDots dots = new FogDots(cells, 1e-9);
        float[] fog = {1e-3f, 1e-3f};
        int thin = dots.places(fog, null).length / 3;
        assertEquals(3000, thin, 2);
        assertEquals(6000, dots.places(new float[] {2e-3f, 2e-3f}, null).length / 3, 2);
        int cut = dots.places(fog, new Cut(Vec3.X, 0.5)).length / 3;
        assertEquals(1000, cut, 2);
    }

    @Test
    void timeGoesThereAndBack() {
        for (TimeScale s :
                List.of(new TimeScale(15, 315, 0.6), new TimeScale(0, 10, 0.6), new TimeScale(10, 10, 0.6))) {
            for (double t = 0; t <= s.endS(); t += s.endS() / 37) {
                assertEquals(t, s.timeS(s.place(t)), 1e-9 * s.endS());
            }
        }
    }

    @Test
    void changesAreEvenAboutZeroAndUnknownIsApart() {
        DifferencePlaces d = new DifferencePlaces(1e-6, 1e-4);
        assertEquals(d.place(0) - d.place(-1e-5), d.place(1e-5) - d.place(0), 1e-6);
        assertTrue(d.place(Double.NaN) < d.place(-1));
        assertTrue(d.place(1e-5) > d.place(1e-6));
    }

    @Test
    void roundNumbersAreOneTwoFive() {
        assertEquals(List.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0), RoundNumbers.between(1, 100));
        assertEquals("0.05", RoundNumbers.plain(0.05));
        assertEquals("860", RoundNumbers.plain(862));
    }

    @Test
    void aPointBehindTheEyeHasNoSpot() {
        Camera c = new Camera(Vec3.ZERO, 0, 0, 1);
        assertNull(c.project(new Vec3(-2, 0, 0), 100, 100));
    }
}
