package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.PhaseStates;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlateHoleTest {
    private static final double INCH = 0.0254;

    private static final List<Outline> OUTLINES = List.of(
            new Outline.Circle(0.010),
            new Outline.Slot(0.040, 0.018),
            new Outline.RoundedRectangle(0.030, 0.022, 0.004),
            new Outline.RoundedRectangle(0.030, 0.022, 0),
            new Outline.Polygon(List.of(
                    new double[] {-0.012, -0.010},
                    new double[] {0.014, -0.011},
                    new double[] {0.010, 0.012},
                    new double[] {-0.013, 0.010})));

    /**
     * Brute force without the ellipse's formula: from where the axis meets a face, along 8 000 rays in the face, the point whose
     * distance from the axis is r is found from the vector product (distance of a point from a line), and its room is measured.
     */
    private static double bruteForce(Outline outline, double t, double u, double v, double tu, double tv, double r) {
        Vec3 axis = new Vec3(tu, tv, 1).unit();
        double least = Double.POSITIVE_INFINITY;
        for (int face = -1; face <= 1; face += 2) {
            double z = face * t / 2;
            for (int i = 0; i < 8_000; i++) {
                double psi = 2 * Math.PI * i / 8_000;
                Vec3 way = new Vec3(Math.cos(psi), Math.sin(psi), 0);
                double reach = r / way.cross(axis).length();
                least = Math.min(
                        least,
                        outline.clearanceM(u + z * tu + reach * Math.cos(psi), v + z * tv + reach * Math.sin(psi)));
            }
        }
        return least;
    }

    @Test
    void clearanceInEveryOutlineIsThatOfBruteForceToAMicrometre() {
        Random random = new Random(21);
        for (Outline outline : OUTLINES) {
            for (int i = 0; i < 40; i++) {
                double u = 0.006 * (random.nextDouble() - 0.5);
                double v = 0.006 * (random.nextDouble() - 0.5);
                double tu = 1.2 * (random.nextDouble() - 0.5);
                double tv = 1.2 * (random.nextDouble() - 0.5);
                double r = 0.001 + 0.004 * random.nextDouble();
                double t = 0.005 * random.nextDouble();
                PlateHole hole = new PlateHole(outline, t);
                double exact = hole.clearanceM(u, v, tu, tv, 2 * r);
                String at = outline + " draw " + i + ", seed 21";
                assertEquals(bruteForce(outline, t, u, v, tu, tv, r), exact, 1e-6, at);
                assertTrue(exact <= hole.upperM(u, v, tu, tv, 2 * r) + 1e-12, at);
                assertTrue(exact >= hole.lowerM(u, v, tu, tv, 2 * r) - 1e-12, at);
            }
        }
    }

    @Test
    void largestTiltIsWhereTheRodJustTouchesBothEdges() {
        // In the plane of the tilt a rod is a strip of width d between the edges (-D/2, -t/2) and (D/2, t/2) of the
        // hole:
        // the strip through the middle touches both when the distance between the parallels through them is d, i.e.
        // D cos(theta) - t sin(theta) = d; solved here by bisection.
        for (double[] c :
                new double[][] {{0.1285 * INCH, 0.125 * INCH, 0.8e-3}, {0.01, 0.006, 0.002}, {0.05, 0.008, 0}}) {
            double low = 0;
            double high = Math.PI / 2;
            for (int i = 0; i < 80; i++) {
                double mid = 0.5 * (low + high);
                if (c[0] * Math.cos(mid) - c[2] * Math.sin(mid) > c[1]) {
                    low = mid;
                } else {
                    high = mid;
                }
            }
            double limit = PlateHole.largestTiltRad(c[0], c[1], c[2]);
            assertEquals(low, limit, 1e-9);
            PlateHole hole = new PlateHole(new Outline.Circle(c[0] / 2), c[2]);
            assertEquals(0, hole.clearanceM(0, 0, Math.tan(limit), 0, c[1]), 1e-12);
            assertTrue(hole.clearanceM(0, 0, Math.tan(limit + 1e-4), 0, c[1]) < 0);
        }
        assertEquals(-1, PlateHole.largestTiltRad(0.003, 0.004, 0.001));
        assertEquals(0, PlateHole.largestTiltRad(0.004, 0.004, 0.001), 1e-9);
    }

    @Test
    void largestOffsetIsWhatTheTiltLeaves() {
        PlateHole hole = new PlateHole(new Outline.Circle(0.006), 0.002);
        for (double tilt : new double[] {0, 0.2, 0.5}) {
            double most = PlateHole.largestOffsetM(0.012, 0.005, 0.002, tilt);
            assertEquals(0, hole.clearanceM(most, 0, Math.tan(tilt), 0, 0.005), 1e-12);
        }
        // across the tilt there is more room in a thin plate: A² + x² A² / (A² - B²) = R² for the ellipse's farthest
        // point
        // while x B / (A² - B²) < 1 (elementary calculus), here for t = 0
        double tilt = 1.0;
        double b = 0.0025;
        double a = b / Math.cos(tilt);
        double x = Math.sqrt((0.006 * 0.006 - a * a) * (a * a - b * b)) / a;
        assertTrue(x * b / (a * a - b * b) < 1);
        PlateHole thin = new PlateHole(new Outline.Circle(0.006), 0);
        assertEquals(0, thin.clearanceM(0, x, Math.tan(tilt), 0, 0.005), 1e-9);
    }

    @Test
    void anEighthInchTubePassesANumberThirtyHoleOnlyNearlySquare() {
        // ASME B94.11M: No. 30 = 0.1285 in. In 0.032 in sheet the tube may lean by 5.29 degrees, no more:
        // acos(0.125 / sqrt(0.1285^2 + 0.032^2)) = 19.29 degrees less atan(0.032 / 0.1285) = 13.98 degrees.
        double limit = PlateHole.largestTiltRad(0.1285 * INCH, 0.125 * INCH, 0.032 * INCH);
        assertEquals(Math.toRadians(5.29), limit, Math.toRadians(0.01));
        PlateHole no30 = new PlateHole(new Outline.Circle(0.1285 * INCH / 2), 0.032 * INCH);
        assertTrue(no30.clearanceM(0, 0, 0, 0, 0.125 * INCH) > 0);
        assertFalse(no30.clearanceM(0, 0, 0, 0, 3.0 / 16 * INCH) > 0);
    }

    @Test
    void clearanceNeverChangesFasterThanTheStatedBound() {
        Random random = new Random(5);
        for (Outline outline : OUTLINES) {
            PlateHole hole = new PlateHole(outline, 0.003);
            double d = 0.006;
            for (int i = 0; i < 60; i++) {
                double u = 0.01 * (random.nextDouble() - 0.5);
                double v = 0.01 * (random.nextDouble() - 0.5);
                double tu = 2 * (random.nextDouble() - 0.5);
                double tv = 2 * (random.nextDouble() - 0.5);
                double du = 0.002 * random.nextGaussian();
                double dv = 0.002 * random.nextGaussian();
                double dtu = 0.1 * random.nextGaussian();
                double dtv = 0.1 * random.nextGaussian();
                double change =
                        hole.clearanceM(u + du, v + dv, tu + dtu, tv + dtv, d) - hole.clearanceM(u, v, tu, tv, d);
                double bound = Math.hypot(du, dv) + 0.5 * (0.003 + d) * Math.hypot(dtu, dtv);
                assertTrue(Math.abs(change) <= bound + 1e-7, outline + " draw " + i + ", seed 5");
            }
        }
    }

    @Test
    void twoPlatesLeaveTheTiltThatTheirDistanceAllows() {
        // Two equal thin holes a distance s apart, one straight above the other: in the plane of the tilt the strip of
        // width d
        // runs between opposite edges, D cos(theta) - s sin(theta) = d: a thick plate of gauge s.
        double d = 0.006;
        double hole = 0.010;
        double s = 0.020;
        EntryRoom two = room(new EntrySpec.SecondPlate(s, 0, new Outline.Circle(hole / 2)), null, hole, 0);
        double tan = Math.tan(PlateHole.largestTiltRad(hole, d, s));
        assertEquals(0, two.clearanceM(-0.5 * s * tan, 0, tan, 0, d), 1e-12);
        assertTrue(two.passes(-0.5 * s * tan, 0, 0.999 * tan, 0, d));
        assertFalse(two.passes(-0.5 * s * tan, 0, 1.001 * tan, 0, d));
    }

    @Test
    void aGrommetNarrowsAndThickens() {
        EntryRoom lined = room(null, new EntrySpec.Grommet(0.008, 0.006), 0.012, 0.001);
        assertEquals(0.5 * (0.008 - 0.005), lined.clearanceM(0, 0, 0, 0, 0.005), 1e-15);
        double limit = PlateHole.largestTiltRad(0.008, 0.005, 0.006);
        assertEquals(0, lined.clearanceM(0, 0, Math.tan(limit), 0, 0.005), 1e-12);
        EntryRoom bare = room(null, null, 0.012, 0.001);
        assertTrue(bare.clearanceM(0, 0, Math.tan(limit), 0, 0.005) > 0.001);
    }

    private static EntryRoom room(
            EntrySpec.SecondPlate second, EntrySpec.Grommet grommet, double holeM, double gaugeM) {
        SourcePlace here = new SourcePlace("job.yaml", 1, "entries[1]");
        PlacedOutline place = PlacedOutline.of(new Outline.Circle(holeM / 2), Vec3.ZERO, Vec3.X, Vec3.Z);
        Opening opening = new Opening("port", 0, Opening.Kind.PORT, place, PhaseStates.ALWAYS_OPEN, true);
        return EntryRoom.of(opening, new EntrySpec("e", "port", null, grommet, second, here), gaugeM);
    }
}
