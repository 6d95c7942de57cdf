package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

class HoleFitTest {
    private static final double INCH = 0.0254;

    private static PlacedOutline hole(Outline outline) {
        return PlacedOutline.of(outline, Vec3.ZERO, Vec3.X, Vec3.Y);
    }

    private static Vec3 tilted(double degrees) {
        double a = Math.toRadians(degrees);
        return new Vec3(Math.sin(a), Math.cos(a), 0);
    }

    @Test
    void numberThirtyHolePassesAnEighthInchTubeAndRefusesThreeSixteenths() {
        // ASME B94.11M: drill No. 30 is 0.1285 in = 3.2639 mm.
        PlacedOutline no30 = hole(new Outline.Circle(0.1285 * INCH / 2));
        assertEquals(
                0.5 * 0.0035 * INCH,
                HoleFit.of(no30, Vec3.Y, 0.125 * INCH, 0.6e-3).clearanceM(),
                1e-12);
        assertTrue(HoleFit.of(no30, Vec3.Y, 3.0 / 16 * INCH, 0.6e-3).clearanceM() < 0);
    }

    @Test
    void drillsPassTheRivetSizesTheyBelongTo() {
        // ASME B94.11M: No. 40, 30, 21, 11 = 0.0980, 0.1285, 0.1590, 0.1910 in, for rivets 3/32, 1/8, 5/32, 3/16 in.
        double[] drill = {0.0980, 0.1285, 0.1590, 0.1910};
        for (int i = 0; i < 4; i++) {
            PlacedOutline h = hole(new Outline.Circle(drill[i] * INCH / 2));
            assertTrue(HoleFit.of(h, Vec3.Y, (3 + i) / 32.0 * INCH, 1e-3).clearanceM() > 0);
            assertTrue(HoleFit.of(h, Vec3.Y, (4 + i) / 32.0 * INCH, 1e-3).clearanceM() < 0);
        }
    }

    @Test
    void tiltAndGaugeCostWhatTheEllipseSays() {
        double d = 3e-3;
        double t = 2e-3;
        double big = 6e-3;
        double theta = Math.toRadians(30);
        double closed = 0.5 * (big - d / Math.cos(theta) - t * Math.tan(theta));
        assertEquals(
                closed,
                HoleFit.of(hole(new Outline.Circle(big / 2)), tilted(30), d, t).clearanceM(),
                1e-15);
        // A slot as wide as the circle, sampled: across its width the same closed form holds, along it there is room.
        Vec3 acrossSlot = new Vec3(0, Math.cos(theta), Math.sin(theta));
        PlacedOutline slot = hole(new Outline.Slot(20e-3, big));
        assertEquals(closed, HoleFit.of(slot, acrossSlot, d, t).clearanceM(), 2e-6);
        assertEquals(0.5 * (big - d), HoleFit.of(slot, tilted(30), d, t).clearanceM(), 2e-6);
    }

    @Test
    void theClosedFormForCirclesAgreesWithAFineSampledEllipse() {
        double d = 4e-3;
        double t = 1.5e-3;
        double radius = 5e-3;
        for (double degrees : new double[] {0, 10, 25, 40, 55}) {
            double theta = Math.toRadians(degrees);
            double farthest = 0;
            for (int face = -1; face <= 1; face += 2) {
                for (int i = 0; i < 100000; i++) {
                    double phi = 2 * Math.PI * i / 100000;
                    double a = face * 0.5 * t * Math.tan(theta) + d / 2 / Math.cos(theta) * Math.cos(phi);
                    farthest = Math.max(farthest, Math.hypot(a, d / 2 * Math.sin(phi)));
                }
            }
            double fit = HoleFit.of(hole(new Outline.Circle(radius)), tilted(degrees), d, t)
                    .clearanceM();
            assertEquals(radius - farthest, fit, 1e-12);
        }
    }

    @Test
    void aPolygonIsSearchedForItsRoomiestPlace() {
        // Right triangle 3-4-5 cm, incircle radius 1 cm at (1, 1) cm from the right angle (Euclid IV.4).
        Outline triangle =
                new Outline.Polygon(List.of(new double[] {0, 0}, new double[] {0.04, 0}, new double[] {0, 0.03}));
        HoleFit fit = HoleFit.of(hole(triangle), Vec3.Y, 0.004, 0);
        assertEquals(0.008, fit.clearanceM(), 2e-5);
        assertEquals(0.01, fit.u(), 1e-4);
        assertEquals(0.01, fit.v(), 1e-4);
    }

    @Test
    void aRodThatDoesNotGoInIsAProgrammersError() {
        PlacedOutline h = hole(new Outline.Circle(0.01));
        assertThrows(IllegalArgumentException.class, () -> HoleFit.of(h, Vec3.Y.negate(), 0.001, 0));
    }
}
