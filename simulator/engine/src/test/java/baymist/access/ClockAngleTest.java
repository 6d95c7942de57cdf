package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ClockAngleTest {
    private static void same(Vec3 expected, Vec3 found) {
        assertTrue(expected.distance(found) < 1e-12, expected + " expected, found " + found);
    }

    @Test
    void goingOutboardClockRunsUpAftDownForward() {
        // Convention of docs/theory/access.md, 3: seen from outside looking in along +y, aft (+x) lies at three
        // o'clock.
        same(Vec3.Z, ClockAngle.pin(Vec3.Y, 0));
        same(Vec3.X, ClockAngle.pin(Vec3.Y, Math.PI / 2));
        same(Vec3.Z.negate(), ClockAngle.pin(Vec3.Y, Math.PI));
        same(Vec3.X.negate(), ClockAngle.pin(Vec3.Y, 1.5 * Math.PI));
    }

    @Test
    void goingTheOtherWaySwapsForwardAndAft() {
        same(Vec3.X.negate(), ClockAngle.pin(Vec3.Y.negate(), Math.PI / 2));
        same(Vec3.Y, ClockAngle.pin(Vec3.X.negate(), Math.PI / 2));
    }

    @Test
    void aVerticalWandTakesForwardForTwelve() {
        same(Vec3.X.negate(), ClockAngle.pin(Vec3.Z, 0));
        // Up through the floor, head towards forward: the right hand points to +y x ... clockwise looking up is -y.
        same(Vec3.Z.cross(Vec3.X.negate()), ClockAngle.pin(Vec3.Z, Math.PI / 2));
    }

    @Test
    void theSwitchToForwardLiesAtTwentyDegreesFromVertical() {
        double in = Math.toRadians(19.9);
        double out = Math.toRadians(20.1);
        Vec3 steep = new Vec3(0, Math.sin(in), Math.cos(in));
        Vec3 less = new Vec3(0, Math.sin(out), Math.cos(out));
        assertTrue(ClockAngle.pin(steep, 0).x() < -0.99);
        assertTrue(ClockAngle.pin(less, 0).z() > 0.3);
    }

    @Test
    void thePinIsSquareToTheWandAndReadsBack() {
        Random random = new Random(7);
        for (int i = 0; i < 200; i++) {
            Vec3 axis = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
            double clock = 2 * Math.PI * random.nextDouble();
            Vec3 pin = ClockAngle.pin(axis, clock);
            assertEquals(0, pin.dot(axis), 1e-12);
            assertEquals(1, pin.length(), 1e-12);
            assertEquals(clock, ClockAngle.of(axis, pin), 1e-9);
        }
    }
}
