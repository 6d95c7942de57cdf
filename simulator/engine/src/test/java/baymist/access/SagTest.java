package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Outline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SagTest {
    private static final double G = 9.80665;
    private static final Vec3 LEVEL = new Vec3(0, 0, -1);
    private static final TubeSection STEEL = new TubeSection(6e-3, 3e-3, 193e9, 8000, 205e6, 870);

    private static Cavity box(double lengthM, TestCavity.Hole... ribHole) {
        TestCavity c = TestCavity.box(0.4, lengthM, 0.15, TestCavity.port("port", 0.2, 0.075, 20e-3, TestCavity.OPEN));
        for (TestCavity.Hole h : ribHole) {
            Vec3 corner = new Vec3(0, h.centre().y(), 0);
            c.sheet("rib at " + h.centre().y(), corner, new Vec3(0.4, 0, 0), new Vec3(0, 0, 0.15), h);
        }
        return c.build();
    }

    private static TestCavity.Hole hole(String name, double y, double diameterM) {
        return new TestCavity.Hole(
                name, new Outline.Circle(diameterM / 2), new Vec3(0.2, y, 0.075), Vec3.Y, false, TestCavity.OPEN);
    }

    private static Sag sag(Cavity cavity, TubeSection tube, double depthM, Vec3 gravity) {
        boolean[] open = new boolean[cavity.openings().size()];
        java.util.Arrays.fill(open, true);
        Surroundings around = Surroundings.of(cavity, open, java.util.List.of());
        WandPath.Straight line = new WandPath.Straight(new Vec3(0.2, 0, 0.075), Vec3.Y, tube.outerM() / 2, depthM);
        return new Sag(around, 0, line, tube, gravity, G);
    }

    @Test
    void freeRodIsACantilever() {
        double depth = 0.9;
        SagResult r = sag(box(2), STEEL, 1.9, LEVEL).at(depth);
        double w = STEEL.massKgPerM() * G;
        // Roark's Formulas for Stress and Strain, table 8.1, 2a: w l⁴/(8 E I), w l³/(6 E I), w l²/2
        double drop = w * Math.pow(depth, 4) / (8 * STEEL.stiffnessNm2());
        assertTrue(drop > 0.009 && drop < 0.07, "free, and worth speaking of: " + drop);
        assertEquals(drop, r.dropM(), 1e-8);
        assertEquals(Math.PI, r.dropClockRad(), 1e-12); // six o'clock
        assertEquals(0.075 - drop, r.tipM().z(), 1e-8);
        assertEquals(
                w * Math.pow(depth, 3) / (6 * STEEL.stiffnessNm2()),
                -Math.asin(r.tipAxis().z()),
                1e-6);
        assertEquals(STEEL.stressPa(w * depth * depth / 2), r.stressPa(), 1e-6 * r.stressPa());
        assertTrue(r.rests().isEmpty());
        assertFalse(r.yields());
        assertNull(r.catchesOn());
    }

    /** The play of a rod in a round hole is R - r; the hole's polygon is matched in area to half a percent of R. */
    @Test
    void rodRestsOnTheEdgeOfAHoleAndTheRestHangsOverIt() {
        Cavity cavity = box(2, hole("window", 1.0, 20e-3));
        SagResult r = sag(cavity, STEEL, 1.9, LEVEL).at(1.3);
        assertEquals(1, r.rests().size());
        SagResult.Rest rest = r.rests().get(0);
        assertEquals("edge of 'window'", rest.on());
        assertEquals(1.0, rest.depthM(), 1e-9);
        assertEquals(0.075 - 0.010, rest.placeM().z(), 1e-4);
        // compatibility at the support: w a²(6 l² - 4 a l + a²)/(24 E I) - F a³/(3 E I) = R - r, Roark table 8.1, 1a
        // and 2a
        double w = STEEL.massKgPerM() * G;
        double free = w * (6 * 1.69 - 4 * 1.3 + 1) / (24 * STEEL.stiffnessNm2());
        double force = (free - 7e-3) * 3 * STEEL.stiffnessNm2();
        assertEquals(force, rest.forceN(), 0.01 * force);
        assertTrue(r.dropM() > 7e-3);
    }

    @Test
    void noseThatHangsBelowTheNextHoleIsToldOf() {
        // a cantilever of 1 m drops 16 mm: more than the 7 mm of play in the hole
        SagResult r = sag(box(2, hole("window", 1.0, 20e-3)), STEEL, 1.9, LEVEL).at(1.3);
        SagResult.Catch c = r.catchesOn();
        assertNotNull(c);
        assertEquals("edge of 'window'", c.on());
        assertEquals(1.0, c.depthM(), 1e-6);
        double w = STEEL.massKgPerM() * G;
        double drop = w / (8 * STEEL.stiffnessNm2());
        assertEquals(drop - 7e-3, c.liftM(), 0.01 * drop + 1e-4);
        // with room enough nothing is said
        assertNull(sag(box(2, hole("window", 1.0, 60e-3)), STEEL, 1.9, LEVEL)
                .at(1.3)
                .catchesOn());
    }

    @Test
    void softRodLiesOnTheFloor() {
        TubeSection soft = new TubeSection(6e-3, 3e-3, 2e3, 1000, 1e6, 870);
        SagResult r = sag(box(2), soft, 1.9, LEVEL).at(1.5);
        assertEquals(0.075 - 3e-3, r.dropM(), 1e-9);
        assertTrue(r.rests().stream().allMatch(x -> x.on().equals("floor")));
        // all of its weight lies on the floor but what the hand holds
        double on = r.rests().stream().mapToDouble(SagResult.Rest::forceN).sum();
        assertEquals(soft.massKgPerM() * G * 1.5, on, 0.07 * on);
    }

    /** A rod that leans against an end wall is not carried by it: its nose slides down. */
    @Test
    void endWallBeforeTheNoseDoesNotCarryIt() {
        Cavity cavity = box(0.9);
        boolean[] open = {true};
        Surroundings around = Surroundings.of(cavity, open, java.util.List.of());
        for (double tilt : new double[] {0, 0.02, -0.02}) {
            Vec3 axis = new Vec3(0, 1, tilt).unit();
            double depth = 0.9 / axis.y() - 3e-3 * Math.abs(tilt);
            WandPath.Straight line = new WandPath.Straight(new Vec3(0.2, 0, 0.075), axis, 3e-3, depth);
            SagResult r = new Sag(around, 0, line, STEEL, LEVEL, G).at(depth);
            double w = STEEL.massKgPerM() * G * axis.y();
            assertEquals(w * Math.pow(depth, 4) / (8 * STEEL.stiffnessNm2()), r.dropM(), 1e-6, "tilt " + tilt);
            assertNull(r.catchesOn(), "tilt " + tilt);
        }
    }

    @Test
    void gravityTurnsWithTheStructure() {
        Cavity cavity = box(2);
        double level = sag(cavity, STEEL, 1.9, LEVEL).at(0.8).dropM();
        SagResult rolled = sag(cavity, STEEL, 1.9, new Vec3(1, 0, 0)).at(0.8);
        assertEquals(level, rolled.dropM(), 1e-9);
        assertEquals(Math.PI / 2, rolled.dropClockRad(), 1e-9); // aft is three o'clock going in to the right
        assertEquals(0.2 + level, rolled.tipM().x(), 1e-9);
        SagResult upright = sag(cavity, STEEL, 1.9, new Vec3(0, 1, 0)).at(0.8);
        assertEquals(0, upright.dropM(), 0);
        double half = Math.sqrt(0.5);
        SagResult slanted = sag(cavity, STEEL, 1.9, new Vec3(0, half, -half)).at(0.8);
        assertEquals(level * half, slanted.dropM(), 1e-9);
    }

    @Test
    void thinRodOfSoftMetalYields() {
        TubeSection solder = new TubeSection(4e-3, 1e-3, 70e9, 8000, 20e6, 870);
        SagResult r = sag(box(4), solder, 3.9, LEVEL).at(1.0);
        assertTrue(r.stressPa() > 20e6 && r.yields(), "stress " + r.stressPa());
        assertEquals(0, r.stressAtM(), 1e-9);
    }

    /** Least drop of a rod onto a random triangle, against points spread densely over the triangle. */
    @Test
    void dropOntoAnyTriangleIsThatOfItsHighestPoint() {
        double r = 0.004;
        for (int seed = 0; seed < 400; seed++) {
            Random random = new Random(seed);
            double[] xyz = new double[9];
            for (int k = 0; k < 9; k++) {
                xyz[k] = k % 3 == 2 ? -0.005 - 0.02 * random.nextDouble() : 0.02 * (random.nextDouble() - 0.5);
            }
            TriangleMesh mesh = new TriangleMesh(xyz, new int[] {0, 1, 2});
            SagCorridor c = new SagCorridor(new Vec3(0, -0.01, 0), Vec3.Y, LEVEL, r);
            c.add(mesh, 0, 0, 0.02, "t", 0);
            double from = 0.004;
            double to = 0.012;
            double least = Double.POSITIVE_INFINITY;
            int n = 300;
            for (int i = 0; i <= n; i++) {
                for (int j = 0; i + j <= n; j++) {
                    Vec3 p = mesh.point(0, 0)
                            .times(i / (double) n)
                            .plus(j / (double) n, mesh.point(0, 1))
                            .plus((n - i - j) / (double) n, mesh.point(0, 2));
                    double s = p.y() + 0.01;
                    if (Math.abs(p.x()) < r && s >= from && s <= to) {
                        least = Math.min(least, -p.z() - Math.sqrt(r * r - p.x() * p.x()));
                    }
                }
            }
            SagCorridor.Limit limit = c.limit(from, to, 1, true);
            assertNull(c.limit(from, to, 1, false), "seed " + seed);
            if (Double.isInfinite(least)) {
                assertTrue(limit == null || limit.moveM() > 0, "seed " + seed);
            } else {
                assertNotNull(limit, "seed " + seed);
                assertTrue(limit.moveM() <= least + 1e-12, "seed " + seed);
                assertEquals(least, limit.moveM(), 1.5e-3, "seed " + seed);
            }
        }
    }
}
