package baymist.viewer.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.WandPath;
import baymist.geom.Vec3;
import org.junit.jupiter.api.Test;

/** Handles on a straight wand, where plain geometry says what a drag must give. */
class PassHandleTest {
    private static final double W = 800;
    private static final double H = 600;
    private static final WandPath ROD = WandPath.straight(new Vec3(0.1, -0.2, 0.05), Vec3.Y, 0.004, 1.5);
    private static final PassHandle HANDLE = new PassHandle(ROD, 1.5, 1.2, 0.3, Math.toRadians(90), 0.1);
    private static final Camera SLANTED = new Camera(new Vec3(0.1, 0.5, 0), 2.1, 0.5, 4);

    private static PassHandle dragged(PassHandle.Grip grip, Camera camera, Vec3 place) {
        Camera.Spot spot = camera.project(place, W, H);
        assertNotNull(spot);
        return HANDLE.dragged(grip, camera, spot.x(), spot.y(), W, H);
    }

    @Test
    void handlesStandAtTheTipsAndThePin() {
        assertEquals(0, HANDLE.fromPlace().distance(new Vec3(0.1, 1.0, 0.05)), 1e-12);
        assertEquals(0, HANDLE.toPlace().distance(new Vec3(0.1, 0.1, 0.05)), 1e-12);
        // going in along +y a quarter turn clockwise from up is aft, +x
        assertEquals(0, HANDLE.pinPlace().distance(new Vec3(0.2, 1.0, 0.05)), 1e-12);
        for (Vec3 p : HANDLE.ring()) {
            assertEquals(0.1, p.distance(HANDLE.fromPlace()), 1e-12);
        }
    }

    @Test
    void aPointerTakesWhatIsUnderIt() {
        Vec3[] places = {HANDLE.fromPlace(), HANDLE.toPlace(), HANDLE.pinPlace()};
        PassHandle.Grip[] grips = PassHandle.Grip.values();
        for (int g = 0; g < 3; g++) {
            Camera.Spot s = SLANTED.project(places[g], W, H);
            assertNotNull(s);
            assertEquals(grips[g], HANDLE.gripAt(SLANTED, s.x() + 3, s.y() - 2, W, H));
        }
        assertNull(HANDLE.gripAt(SLANTED, 3, 3, W, H));
    }

    /** A place d metres past the opening on the axis is depth d. */
    @Test
    void draggingATipAlongTheWayGivesTheDepthThere() {
        for (double depth : new double[] {0.35, 0.6, 0.913, 1.4}) {
            PassHandle h = dragged(PassHandle.Grip.FROM, SLANTED, new Vec3(0.1, depth - 0.2, 0.05));
            assertEquals(depth, h.fromM(), 1.01e-3);
            assertEquals(Math.round(1e3 * h.fromM()), 1e3 * h.fromM(), 1e-9, "whole millimetres");
            assertEquals(0.3, h.toM());
            assertEquals(HANDLE.clockRad(), h.clockRad());
        }
        assertEquals(
                0.75,
                dragged(PassHandle.Grip.TO, SLANTED, new Vec3(0.1, 0.55, 0.05)).toM(),
                1.01e-3);
    }

    @Test
    void aDragStaysOnTheWayAndInOrder() {
        assertEquals(
                1.5,
                dragged(PassHandle.Grip.FROM, SLANTED, new Vec3(0.1, 1.9, 0.05)).fromM(),
                1e-9);
        assertEquals(
                0.3,
                dragged(PassHandle.Grip.FROM, SLANTED, new Vec3(0.1, -0.2, 0.05))
                        .fromM(),
                1e-9);
        assertEquals(
                1.2,
                dragged(PassHandle.Grip.TO, SLANTED, new Vec3(0.1, 1.3, 0.05)).toM(),
                1e-9);
        assertEquals(
                0,
                dragged(PassHandle.Grip.TO, SLANTED, new Vec3(0.1, -0.6, 0.05)).toM(),
                1e-9);
    }

    /** On +y the pin at clock c points to (sin c, 0, cos c); looked along the wand and at a slant alike. */
    @Test
    void draggingThePinGivesTheClockAngle() {
        Camera along = new Camera(HANDLE.fromPlace(), Math.PI / 2, 0.05, 3);
        for (Camera camera : new Camera[] {SLANTED, along}) {
            for (int deg = 0; deg < 360; deg += 15) {
                double c = Math.toRadians(deg);
                // wherever along the pin's direction the pointer is
                for (double out : new double[] {0.05, 0.1, 0.17}) {
                    Vec3 p = HANDLE.fromPlace().plus(out, new Vec3(Math.sin(c), 0, Math.cos(c)));
                    double got = Math.toDegrees(
                            dragged(PassHandle.Grip.CLOCK, camera, p).clockRad());
                    assertEquals(0, Math.IEEEremainder(got - deg, 360), 1.01, deg + " deg");
                }
            }
        }
    }

    /** Seen edge-on a ring is a line: the pin still follows the pointer up and down. */
    @Test
    void aRingSeenFromItsEdgeCanBeDragged() {
        Camera edge = new Camera(HANDLE.fromPlace(), 0, 0, 3);
        double up = dragged(PassHandle.Grip.CLOCK, edge, HANDLE.fromPlace().plus(0.1, Vec3.Z))
                .clockRad();
        double down = dragged(PassHandle.Grip.CLOCK, edge, HANDLE.fromPlace().plus(-0.1, Vec3.Z))
                .clockRad();
        assertEquals(1, Math.cos(up), 0.01);
        assertEquals(-1, Math.cos(down), 0.01);
    }

    @Test
    void asDeepAsItGoesIsTheDeepest() {
        PassHandle h = new PassHandle(ROD, 1.5, Double.POSITIVE_INFINITY, 0.2, 0, 0.1);
        assertEquals(1.5, h.fromM());
        assertTrue(h.fromPlace().distance(new Vec3(0.1, 1.3, 0.05)) < 1e-9);
    }
}
