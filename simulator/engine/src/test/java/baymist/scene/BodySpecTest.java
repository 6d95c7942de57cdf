package baymist.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BodySpecTest {
    private static Vec3 random(Random r, double size) {
        return new Vec3(r.nextDouble() - 0.5, r.nextDouble() - 0.5, r.nextDouble() - 0.5).times(size);
    }

    private static BodySpec body(Random r, int sort) {
        Vec3 at = random(r, 1);
        Vec3 turn = random(r, 360);
        return switch (sort) {
            case 0 -> new BodySpec.Sphere(at, 0.1 + r.nextDouble());
            case 1 ->
                new BodySpec.Cuboid(
                        at,
                        new Vec3(0.2 + r.nextDouble(), 0.2, 0.3),
                        Turns.turned(Vec3.X, turn),
                        Turns.turned(Vec3.Y, turn),
                        Turns.turned(Vec3.Z, turn));
            default -> new BodySpec.Cylinder(at, at.plus(random(r, 2)).plus(0.01, Vec3.X), 0.2);
        };
    }

    @Test
    void distanceToALineIsTheLeastOverItsPoints() {
        Random r = new Random(5);
        for (int draw = 0; draw < 300; draw++) {
            BodySpec body = body(r, draw % 3);
            Vec3 a = random(r, 6);
            Vec3 b = random(r, 6);
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= 2000; i++) {
                least = Math.min(least, body.distanceM(a.plus(i / 2000.0, b.minus(a))));
            }
            double found = body.distanceM(a, b);
            assertTrue(found <= least + 1e-9, "search missed a nearer place");
            assertEquals(least, found, a.distance(b) / 2000);
        }
    }

    @Test
    void surfaceAndVolumeAreThoseOfTheTextbook() {
        // Bronshtein, Handbook of Mathematics, section 3.3: sphere, cylinder, cuboid
        assertEquals(Math.PI * 4, new BodySpec.Sphere(Vec3.ZERO, 1).areaM2(), 1e-14);
        assertEquals(Math.PI * 4 / 3, new BodySpec.Sphere(Vec3.ZERO, 1).volumeM3(), 1e-14);
        BodySpec rod = new BodySpec.Cylinder(Vec3.ZERO, new Vec3(0, 0, 3), 1);
        assertEquals(8 * Math.PI, rod.areaM2(), 1e-14);
        assertEquals(3 * Math.PI, rod.volumeM3(), 1e-14);
        BodySpec box = new BodySpec.Cuboid(Vec3.ZERO, new Vec3(1, 2, 3), Vec3.X, Vec3.Y, Vec3.Z);
        assertEquals(22, box.areaM2());
        assertEquals(6, box.volumeM3());
    }

    @Test
    void rightAnglesTurnExactlyAndTurnsKeepLengths() {
        assertEquals(new Vec3(0, 0, 1), Turns.turned(Vec3.Y, new Vec3(90, 0, 0)));
        assertEquals(new Vec3(0, 1, 0), Turns.turned(Vec3.X, new Vec3(0, 0, 90)).plus(Vec3.ZERO));
        assertEquals(1, Turns.turned(Vec3.X, new Vec3(12, 34, 56)).length(), 1e-15);
    }
}
