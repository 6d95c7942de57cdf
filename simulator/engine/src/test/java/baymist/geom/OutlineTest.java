package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OutlineTest {
    private static final List<Outline> ALL = List.of(
            new Outline.Circle(0.03),
            new Outline.Slot(0.08, 0.02),
            new Outline.Slot(0.02, 0.02),
            new Outline.RoundedRectangle(0.1, 0.06, 0.01),
            new Outline.RoundedRectangle(0.1, 0.06, 0),
            new Outline.RoundedRectangle(0.06, 0.06, 0.03),
            new Outline.Polygon(List.of(
                    new double[] {0, 0},
                    new double[] {0.04, 0},
                    new double[] {0.04, 0.01},
                    new double[] {0.01, 0.01},
                    new double[] {0.01, 0.04},
                    new double[] {0, 0.04})));

    @Test
    void polygonsHaveTheOutlinesArea() {
        for (Outline o : ALL) {
            for (int n : new int[] {8, 12, 30, 96, 361}) {
                double area = OutlinePolygons.signedArea(o.polygon(n));
                assertEquals(o.areaM2(), area, 1e-12 * o.areaM2(), o + " in " + n);
            }
        }
    }

    @Test
    void polygonOfTooFewChordsIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Outline.Circle(1).polygon(7));
    }

    @Test
    void drilledHoleAreaIsThatOfTheDrillTable() {
        // check-values GE-01/GE-02, ASME B94.11M: No. 30 drill 0.1285 in = 3.2639 mm; area pi d^2 / 4 = 8.3669 mm^2
        double d = 0.1285 * 0.0254;
        assertEquals(3.2639e-3, d, 1e-7);
        assertEquals(8.3669e-6, new Outline.Circle(d / 2).areaM2(), 1e-10);
        // No. 11, 0.1910 in = 4.8514 mm
        assertEquals(4.8514e-3, 0.1910 * 0.0254, 1e-7);
    }

    @Test
    void slotIsRectanglePlusCircle() {
        // elementary: straight part (L - w) w plus a full circle of diameter w; stadium perimeter 2 (L - w) + pi w
        Outline slot = new Outline.Slot(0.08, 0.02);
        assertEquals(0.06 * 0.02 + Math.PI * 1e-4, slot.areaM2(), 1e-15);
        assertEquals(2 * 0.06 + Math.PI * 0.02, slot.perimeterM(), 1e-15);
        assertEquals(0.04, slot.reachM(), 1e-15);
        assertEquals(2 * Math.PI * 0.03, new Outline.Circle(0.03).perimeterM(), 1e-15);
    }

    @Test
    void clearanceIsDistanceToTheOutlineWithItsSign() {
        Outline circle = new Outline.Circle(0.03);
        assertEquals(0.01, circle.clearanceM(0, 0.02), 1e-15);
        assertEquals(-0.02, circle.clearanceM(0.03, 0.04), 1e-15);
        Outline rectangle = new Outline.RoundedRectangle(0.1, 0.06, 0.01);
        assertEquals(0.03, rectangle.clearanceM(0, 0), 1e-15);
        assertEquals(-0.01, rectangle.clearanceM(0.06, 0), 1e-15);
        // 3-4-5 triangle off a corner centre at (0.04, 0.02)
        assertEquals(0.01 - 0.05, rectangle.clearanceM(0.04 + 0.03, 0.02 + 0.04), 1e-15);
        assertEquals(0.01, new Outline.Slot(0.08, 0.02).clearanceM(0.02, 0), 1e-15);
    }

    @Test
    void clearanceSignAgreesWithMembershipAndPolygonDistance() {
        Random random = new Random(11);
        for (Outline o : ALL) {
            List<double[]> fine = o.polygon(2000);
            for (int i = 0; i < 300; i++) {
                double u = (random.nextDouble() - 0.5) * 0.2;
                double v = (random.nextDouble() - 0.5) * 0.2;
                double c = o.clearanceM(u, v);
                assertEquals(c > 0, o.contains(u, v));
                assertEquals(Math.abs(c), OutlinePolygons.distanceToBoundary(fine, u, v), 2e-6, o.toString());
            }
        }
    }

    @Test
    void everyPolygonPointIsWithinReach() {
        for (Outline o : ALL) {
            for (double[] p : o.polygon(96)) {
                assertTrue(Math.hypot(p[0], p[1]) <= o.reachM() * 1.002);
            }
        }
    }

    @Test
    void clockwisePolygonIsTurnedRound() {
        Outline.Polygon p = new Outline.Polygon(
                List.of(new double[] {0, 0}, new double[] {0, 1}, new double[] {1, 1}, new double[] {1, 0}));
        assertEquals(1, p.areaM2(), 1e-15);
        assertEquals(4, p.perimeterM(), 1e-15);
        assertEquals(Math.sqrt(2), p.reachM(), 1e-15);
        assertTrue(p.contains(0.5, 0.5));
        assertFalse(p.contains(1.5, 0.5));
    }

    @Test
    void placedOutlineMapsThereAndBack() {
        PlacedOutline place = PlacedOutline.of(
                new Outline.Slot(0.08, 0.02), new Vec3(1, 2, 3), new Vec3(1, 1, 0.3), new Vec3(0, 0, -2));
        assertEquals(0, place.normal().distance(place.uAxis().cross(place.vAxis())), 1e-15);
        Vec3 p = place.point(0.01, -0.02);
        assertEquals(0.01, place.u(p), 1e-15);
        assertEquals(-0.02, place.v(p), 1e-15);
        assertEquals(0, place.heightM(p), 1e-15);
        assertTrue(place.contains(place.point(0.035, 0)));
        assertFalse(place.contains(place.point(0.035, 0.009)));
        assertFalse(place.contains(place.point(0, 0).plus(0.05, place.normal())));
    }
}
