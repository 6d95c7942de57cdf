package baymist.access;

import baymist.cavity.Cavity;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import java.util.List;
import java.util.Random;

/** Small random cavities for tests: a box with a port in its left wall and one to three slanted ribs with a hole each. */
public final class RandomCavity {
    private RandomCavity() {}

    /** The opening to enter by is called "port". */
    public static Cavity of(Random random) {
        double lx = 0.15 + 0.25 * random.nextDouble();
        double ly = 0.3 + 0.5 * random.nextDouble();
        double lz = 0.08 + 0.15 * random.nextDouble();
        double port = 0.012 + 0.03 * random.nextDouble();
        TestCavity c = TestCavity.box(
                lx,
                ly,
                lz,
                new TestCavity.Hole(
                        "port",
                        outline(random, port),
                        new Vec3(lx * within(random), 0, lz * within(random)),
                        Vec3.Y,
                        true,
                        TestCavity.OPEN));
        int ribs = 1 + random.nextInt(3);
        for (int i = 0; i < ribs; i++) {
            double y = ly * (i + 1 + 0.4 * (random.nextDouble() - 0.5)) / (ribs + 1);
            double slant = 0.1 * (random.nextDouble() - 0.5);
            Vec3 corner = new Vec3(0, y - 0.5 * slant * lx, 0);
            Vec3 u = new Vec3(lx, slant * lx, 0);
            Vec3 v = new Vec3(0, 0, lz);
            double a = within(random);
            Vec3 centre = corner.plus(a, u).plus(within(random), v);
            Vec3 normal = v.cross(u).unit();
            c.sheet(
                    "rib " + (i + 1),
                    corner,
                    u,
                    v,
                    new TestCavity.Hole(
                            "hole " + (i + 1),
                            outline(random, 0.02 + 0.03 * random.nextDouble()),
                            centre,
                            normal,
                            false,
                            random.nextInt(8) == 0 ? TestCavity.PLUGGED : TestCavity.OPEN));
        }
        return c.build();
    }

    private static double within(Random random) {
        return 0.4 + 0.2 * random.nextDouble();
    }

    private static Outline outline(Random random, double size) {
        return switch (random.nextInt(4)) {
            case 0 -> new Outline.Slot(size, 0.7 * size);
            case 1 -> new Outline.RoundedRectangle(size, 0.8 * size, 0.1 * size);
            case 2 ->
                new Outline.Polygon(List.of(
                        new double[] {-0.5 * size, -0.4 * size},
                        new double[] {0.5 * size, -0.4 * size},
                        new double[] {0.4 * size, 0.4 * size},
                        new double[] {-0.4 * size, 0.4 * size}));
            default -> new Outline.Circle(0.5 * size);
        };
    }
}
