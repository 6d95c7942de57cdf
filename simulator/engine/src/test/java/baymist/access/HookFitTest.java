package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.TipSpec;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HookFitTest {
    static final TipSpec TIP = new TipSpec("none", List.of());

    static WandSpec hook(double diameterM, double before, double radius, double angle, double after) {
        double length = before + radius * angle + after;
        return new WandSpec(
                "hook",
                length,
                diameterM,
                diameterM / 2,
                TIP,
                List.of(
                        new WandPiece.Straight(before),
                        new WandPiece.Bend(radius, angle, 0),
                        new WandPiece.Straight(after)),
                WandMaterial.STAINLESS,
                null,
                List.of(),
                diameterM,
                0);
    }

    // Closed form derived in docs/theory/access-flexible.md, (9); checked against brute force in the next test.
    @Test
    void longArcNeedsTheHoleOfTheClosedForm() {
        Random random = new Random(9);
        for (int i = 0; i < 200; i++) {
            double d = 0.002 + 0.01 * random.nextDouble();
            double rho = d * (1 + 6 * random.nextDouble());
            double t = Math.min(1.2 * (rho - d / 2), 0.004 * random.nextDouble());
            HookShape shape = new HookShape(hook(d, 0.1, rho, 2.5, 0.05));
            double middle = 0.1 + rho * 1.25;
            double hole = BendFit.leastHoleM(rho, d, t);
            HookFit fit = HookFit.of(shape, middle, hole / 2, t);
            assertEquals(0, fit.clearanceM(), 1e-9, "d " + d + " rho " + rho + " t " + t);
            assertEquals(rho, BendFit.leastRadiusM(hole, d, t), 1e-6 * rho);
        }
    }

    /** Points of a torus between the faces, by sampling: the smallest circle about them with its middle on the axis of symmetry. */
    @Test
    void closedFormHoldsEveryPointOfTheTorus() {
        Random random = new Random(10);
        for (int i = 0; i < 40; i++) {
            double r = 0.001 + 0.004 * random.nextDouble();
            double rho = 2 * r * (1 + 4 * random.nextDouble());
            double t = Math.min(1.5 * (rho - r), 0.004 * random.nextDouble());
            double hole = BendFit.leastHoleM(rho, 2 * r, t);
            double centre = rho + r - hole / 2;
            double farthest = 0;
            for (int a = 0; a <= 400; a++) {
                double theta = (a - 200) / 200.0 * Math.PI / 2;
                for (int b = 0; b < 720; b++) {
                    double phi = 2 * Math.PI * b / 720;
                    double radial = rho + r * Math.cos(phi);
                    double z = radial * Math.sin(theta);
                    if (Math.abs(z) <= t / 2) {
                        double x = radial * Math.cos(theta) - centre;
                        farthest = Math.max(farthest, Math.hypot(x, r * Math.sin(phi)));
                    }
                }
            }
            assertTrue(farthest <= hole / 2 + 1e-9, "a point sticks out by " + (farthest - hole / 2));
            assertEquals(hole / 2, farthest, 2e-3 * r);
        }
    }

    // ASME B94.11M: No. 30 drill 0.1285 in. The 1/8 in tube passes it; 3/16 in does not.
    @Test
    void eighthInchHookPassesNumber30HoleIfItsBendIsWideEnough() {
        double inch = 0.0254;
        double hole = 0.1285 * inch;
        double tube = inch / 8;
        double gauge = 0.040 * inch;
        double least = BendFit.leastRadiusM(hole, tube, gauge);
        assertEquals(0.1285 / 2 + 0.040 * 0.040 / (8 * 0.0035), least / inch, 1e-12);
        for (double factor : new double[] {0.97, 1.03}) {
            double rho = factor * least;
            HookShape shape = new HookShape(hook(tube, 0.1, rho, 1.5, 0.02));
            HookFit fit = HookFit.of(shape, 0.1 + 0.75 * rho, hole / 2, gauge);
            assertEquals(factor > 1, fit.clearanceM() >= 0);
        }
        assertTrue(BendFit.leastRadiusM(hole, 3 * inch / 16, gauge) == Double.POSITIVE_INFINITY);
    }

    @Test
    void endsOfABendNeedNoMoreRoomThanItsMiddle() {
        double d = 0.006;
        double rho = 0.02;
        double t = 0.003;
        HookShape shape = new HookShape(hook(d, 0.05, rho, 1.2, 0.03));
        double inMiddle = HookFit.of(shape, 0.05 + 0.6 * rho, 0.004, t).clearanceM();
        double straight = HookFit.of(shape, 0.02, 0.004, t).clearanceM();
        assertEquals(0.004 - d / 2, straight, 1e-12);
        for (double a = 0.03; a < 0.1; a += 0.0007) {
            double c = HookFit.of(shape, a, 0.004, t).clearanceM();
            assertTrue(c >= inMiddle - 1e-9 && c <= straight + 1e-12, "at " + a + ": " + c);
        }
    }
}
