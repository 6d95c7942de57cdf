package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.units.Air;
import org.junit.jupiter.api.Test;

class DropletFallTest {
    private static final Air AIR = Air.STANDARD;
    private static final double G = 9.80665;

    /** Speed of fall and distance sunk after a time in equal steps. */
    private static double[] fall(double d, double density, double along, double timeS, int steps) {
        double tau = Droplet.relaxationTimeS(d, density, AIR);
        double[] state = {0, 0};
        for (int n = 0; n < steps; n++) {
            state = DropletFall.step(state[0], state[1], timeS / steps, along, G, tau, d, AIR);
        }
        return state;
    }

    @Test
    void aFineDropFollowsTheTrajectoryOfStokes() {
        // Hinds (1999), ch. 5 (Stokes range): w = vs (1 - exp(-t/tau)), y = vs (t - tau (1 - exp(-t/tau))). 5 um: Re
        // below 1e-3.
        double d = 5e-6;
        double tau = Droplet.relaxationTimeS(d, 880, AIR);
        for (double t : new double[] {0.3 * tau, tau, 3 * tau, 40 * tau}) {
            for (int steps : new int[] {1, 7}) {
                double[] got = fall(d, 880, 0, t, steps);
                double kept = Math.exp(-t / tau);
                assertEquals(tau * G * (1 - kept), got[0], 2e-3 * got[0]);
                assertEquals(tau * G * (t - tau * (1 - kept)), got[1], 2e-3 * got[1]);
            }
        }
    }

    @Test
    void aDropEndsAtTheFallSpeedOfTheTable() {
        // Hinds (1999), table A11, unit density (from memory, recomputed): rows VT-03 and VT-04
        assertEquals(3.058e-3, fall(10e-6, 1000, 0, 0.1, 100)[0], 0.01 * 3.058e-3);
        assertEquals(2.488e-1, fall(100e-6, 1000, 0, 2, 400)[0], 0.01 * 2.488e-1);
    }

    @Test
    void anEarlyFallIsThatOfAStone() {
        // Galileo: y = g t^2/2 while drag is small, t far below tau
        double tau = Droplet.relaxationTimeS(200e-6, 880, AIR);
        double t = 0.01 * tau;
        assertEquals(0.5 * G * t * t, fall(200e-6, 880, 0, t, 3)[1], 0.01 * 0.5 * G * t * t);
    }

    @Test
    void fallAtFiniteReynoldsNumberAgreesWithSmallStepsOfRungeKutta() {
        // the same drag law (Schiller and Naumann 1935) marched by the fourth-order scheme of DropletMotion
        for (double d : new double[] {50e-6, 100e-6, 200e-6}) {
            double slip = Droplet.slip(d, AIR);
            DropletMotion.State s = DropletMotion.fly(d, 880, AIR, DragLaw.SCHILLER_NAUMANN, slip, G, 1e-9, 0.2);
            double[] got = fall(d, 880, 0, 0.2, 60);
            assertEquals(s.speedMPerS(), got[0], 0.01 * s.speedMPerS());
            assertEquals(s.distanceM(), got[1], 0.01 * s.distanceM());
        }
    }

    @Test
    void aDropThatFliesFastFallsMoreSlowly() {
        // cross-coupling of drag at finite Reynolds number: the whole speed sets the drag of the fall (Clift, Grace and
        // Weber 1978, ch. 11, from memory): terminal w = tau g/f(Re)
        double d = 100e-6;
        double tau = Droplet.relaxationTimeS(d, 880, AIR);
        double along = 20;
        double[] got = fall(d, 880, along, 2, 200);
        double f = Droplet.dragFactor(Droplet.reynolds(d, Math.hypot(along, got[0]), AIR));
        assertEquals(tau * G / f, got[0], 1e-6);
        assertTrue(got[0] < 0.5 * fall(d, 880, 0, 2, 200)[0]);
    }

    @Test
    void inAJetAHeavyDropSinksByItsTimeOfFlight() {
        // A drop that keeps its speed sinks by g (x/v)^2/2: drops of 1 mm from a jet of constant speed at first.
        RoundJet free = new RoundJet(0.3, 300, 1.2);
        SizeBins bins = new SizeBins(new double[] {20e-6}, new double[] {1});
        DropSpeeds drops = new DropSpeeds(ConfinedJet.unconfined(free), bins, 880, AIR, 2, 0.5, G);
        double y = 0;
        double w = 0;
        double x = 1e-3;
        double tau = Droplet.relaxationTimeS(20e-6, 880, AIR);
        int steps = 200_000;
        for (int n = 0; n < steps; n++) {
            double dx = (1.5 - 1e-3) / steps;
            double v = drops.at(0, x + 0.5 * dx);
            double dt = dx / v;
            double f = Droplet.dragFactor(Droplet.reynolds(20e-6, Math.hypot(free.centreSpeedMPerS(x) - v, w), AIR));
            w += dt * (G - w * f / tau);
            y += w * dt;
            x += dx;
        }
        assertEquals(y, drops.sunkM(0, drops.place(1.5), 1), 0.03 * y);
        assertEquals(w, drops.fallMPerS(0, drops.place(1.5), 1), 0.03 * w);
        assertTrue(drops.sunkM(0, drops.place(1.5), 0.5) > 1.8 * y);
    }
}
