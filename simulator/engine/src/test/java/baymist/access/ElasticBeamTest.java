package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Handbook formulas for beams. "Roark" is Young and Budynas (2002), Roark's Formulas for Stress and Strain, 7th edition, table 8.1;
 * its formulas are given from memory and were derived again by integration.
 */
class ElasticBeamTest {
    private static final double EI = 36.9;
    private static final double W = 3.4;
    private static final double L = 1.5;
    private static final double PERCENT = 0.01;

    /** Stations at uneven distances, so that nothing depends on an even mesh. */
    private static double[] stations(int n, double length) {
        double[] s = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            double t = (double) i / n;
            s[i] = length * (t + 0.05 * Math.sin(2 * Math.PI * t));
        }
        s[0] = 0;
        s[n] = length;
        return s;
    }

    private static BeamShape rest(double[] s, double w, double tipN, boolean clamped, double[] low, double[] high) {
        double[] point = new double[s.length];
        point[s.length - 1] = tipN;
        return new BeamContact(new ElasticBeam(s, EI, w, point, clamped), low, high).solve();
    }

    private static double[] all(int n, double value) {
        double[] a = new double[n];
        Arrays.fill(a, value);
        return a;
    }

    private static double[] free(double[] s, double sign) {
        return all(s.length, sign * Double.POSITIVE_INFINITY);
    }

    private static double[] pinned(double[] s, double sign, int... nodes) {
        double[] bound = free(s, sign);
        for (int node : nodes) {
            bound[node] = 0;
        }
        return bound;
    }

    @Test
    void cantileverUnderAnEndLoadIsRoarks1a() {
        double[] s = stations(17, L);
        BeamShape b = rest(s, 0, 5, true, free(s, -1), free(s, 1));
        assertEquals(5 * Math.pow(L, 3) / (3 * EI), b.tipDropM(), 1e-9 * b.tipDropM());
        assertEquals(5 * L * L / (2 * EI), b.tipSlopeRad(), 1e-9 * b.tipSlopeRad());
        assertEquals(5 * L, b.peakMomentNm(), 1e-8);
        assertEquals(0, b.peakAtM(), 1e-12);
    }

    @Test
    void cantileverUnderItsWeightIsRoarks2a() {
        double[] s = stations(17, L);
        BeamShape b = rest(s, W, 0, true, free(s, -1), free(s, 1));
        assertEquals(W * Math.pow(L, 4) / (8 * EI), b.tipDropM(), 1e-9 * b.tipDropM());
        assertEquals(W * Math.pow(L, 3) / (6 * EI), b.tipSlopeRad(), 1e-9 * b.tipSlopeRad());
        assertEquals(W * L * L / 2, b.peakMomentNm(), 1e-8);
        assertEquals(-W * L, b.reactionN()[0], 1e-8);
    }

    @Test
    void proppedCantileverIsRoarks2c() {
        double[] s = stations(240, L);
        double[] high = free(s, 1);
        high[s.length - 1] = 0;
        BeamShape b = rest(s, W, 0, true, free(s, -1), high);
        assertEquals(-3 * W * L / 8, b.reactionN()[s.length - 1], 1e-6 * W * L);
        assertEquals(W * L * L / 8, b.peakMomentNm(), 1e-6 * W * L * L);
        double most = Arrays.stream(b.deflectionM()).max().orElseThrow();
        assertEquals(0.0054 * W * Math.pow(L, 4) / EI, most, PERCENT * most);
    }

    @Test
    void beamOnTwoSupportsIsRoarks2e() {
        double[] s = stations(40, L);
        BeamShape b = rest(s, W, 0, false, pinned(s, -1, 0, 40), pinned(s, 1, 0, 40));
        assertEquals(5 * W * Math.pow(L, 4) / (384 * EI), b.deflectionM()[20], 1e-7);
        assertEquals(W * L * L / 8, b.peakMomentNm(), 1e-7);
        assertEquals(-W * L / 2, b.reactionN()[0], 1e-7);
        assertEquals(W * Math.pow(L, 3) / (24 * EI), b.slopeRad()[0], 1e-7);
    }

    /** Two equal spans under an even load: reactions 3/8, 5/4, 3/8 of w l, moment over the middle w l²/8 (beam tables of structural codes). */
    @Test
    void twoSpansShareTheLoadAsTheTablesSay() {
        double[] s = stations(40, L);
        BeamShape b = rest(s, W, 0, false, pinned(s, -1, 0, 20, 40), pinned(s, 1, 0, 20, 40));
        double l = L / 2;
        assertEquals(-0.375 * W * l, b.reactionN()[0], 1e-6);
        assertEquals(-1.25 * W * l, b.reactionN()[20], 1e-6);
        assertEquals(-0.375 * W * l, b.reactionN()[40], 1e-6);
        assertEquals(W * l * l / 8, b.peakMomentNm(), 1e-6);
        assertEquals(L / 2, b.peakAtM(), 1e-9);
    }

    /** A tip that touches a floor d below: superposition of Roark's 1a and 2a gives R = 3 w l/8 - 3 E I d/l³. */
    @Test
    void tipOnAFloorPressesWithWhatTheCantileverLacks() {
        double[] s = stations(30, L);
        double d = 0.03;
        double[] high = free(s, 1);
        high[30] = d;
        BeamShape b = rest(s, W, 0, true, free(s, -1), high);
        assertEquals(-(3 * W * L / 8 - 3 * EI * d / Math.pow(L, 3)), b.reactionN()[30], 1e-7);
        high[30] = 0.06; // deeper than w l⁴/(8 E I) = 58.3 mm
        assertEquals(0, rest(s, W, 0, true, free(s, -1), high).reactionN()[30]);
    }

    /**
     * A heavy rod held level d above a floor lies flat from a on with w a⁴ = 72 E I d: integrate E I v'''' = w with v = v' = 0 at the hand
     * and v = d, v' = v'' = 0 at a.
     */
    @Test
    void longRodLiesOnTheFloorFromTheLiftOffLengthOn() {
        double d = 0.02;
        double a = Math.pow(72 * EI * d / W, 0.25);
        double[] s = stations(400, 3 * a);
        BeamShape b = rest(s, W, 0, true, free(s, -1), all(s.length, d));
        int first = 0;
        while (b.deflectionM()[first] < d) {
            first++;
        }
        assertEquals(a, s[first], PERCENT * a);
        assertEquals(d, b.tipDropM());
        // moment at the hand: E I v''(0) = w a²/6
        assertEquals(W * a * a / 6, b.peakMomentNm(), PERCENT * W * a * a);
    }

    /** With E I -> 0 the lift-off length goes as (E I)^(1/4): in the limit the rod lies on its supports like a chain. */
    @Test
    void softRodLiesOnItsSupports() {
        double[] s = stations(150, L);
        double[] high = new double[s.length];
        for (int i = 0; i < high.length; i++) {
            high[i] = 0.03 + 0.01 * Math.sin(6 * s[i]);
        }
        double soft = 1e-7;
        ElasticBeam beam = new ElasticBeam(s, soft, W, new double[s.length], true);
        BeamShape b = new BeamContact(beam, free(s, -1), high).solve();
        double liftOff = Math.pow(72 * soft * 0.04 / W, 0.25);
        for (int i = 0; i < s.length; i++) {
            if (s[i] > 1.5 * liftOff + 0.02) {
                assertEquals(high[i], b.deflectionM()[i], 1e-3 * 0.03, "at " + s[i]);
            }
        }
    }

    /** The answer is the one that keeps the bounds, hangs free where it is not touched and is never pulled: random corridors. */
    @Test
    void supportsPushAndNeverPullInAnyCorridor() {
        int mostRounds = 0;
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            int n = 4 + random.nextInt(120);
            double[] s = stations(n, 0.3 + 3 * random.nextDouble());
            double[] low = new double[n + 1];
            double[] high = new double[n + 1];
            double tight = random.nextDouble();
            for (int i = 0; i <= n; i++) {
                low[i] = random.nextDouble() < tight ? -0.02 * random.nextDouble() : Double.NEGATIVE_INFINITY;
                high[i] = random.nextDouble() < tight ? 0.05 * random.nextDouble() : Double.POSITIVE_INFINITY;
            }
            double stiffness = Math.pow(10, -3 + 6 * random.nextDouble());
            ElasticBeam beam = new ElasticBeam(s, stiffness, W, new double[n + 1], true);
            BeamShape b = new BeamContact(beam, low, high).solve();
            mostRounds = Math.max(mostRounds, b.rounds());
            double sum = 0;
            for (int i = 0; i <= n; i++) {
                double v = b.deflectionM()[i];
                double r = b.reactionN()[i];
                assertTrue(v >= low[i] - 1e-9 && v <= high[i] + 1e-9, "seed " + seed);
                sum += r;
                if (i > 0) {
                    boolean pushedUp = v == high[i];
                    boolean pushedDown = v == low[i];
                    double slack = 1e-8 * W * s[n];
                    assertTrue(r <= slack || pushedDown, "seed " + seed + " node " + i);
                    assertTrue(r >= -slack || pushedUp, "seed " + seed + " node " + i);
                }
            }
            assertEquals(-W * s[n], sum, 1e-4 * W * s[n], "seed " + seed); // equilibrium
        }
        assertTrue(mostRounds < 3000, mostRounds + " rounds");
    }

    @Test
    void theSameCorridorGivesTheSameBits() {
        double[] s = stations(100, L);
        double[] high = all(s.length, 0.01);
        BeamShape a = rest(s, W, 0, true, free(s, -1), high);
        BeamShape b = rest(s, W, 0, true, free(s, -1), high);
        assertTrue(Arrays.equals(a.deflectionM(), b.deflectionM()));
    }

    @Test
    void whatCannotStandIsRefused() {
        double[] s = stations(3, L);
        assertThrows(IllegalArgumentException.class, () -> rest(s, W, 0, false, free(s, -1), free(s, 1)));
        assertThrows(IllegalArgumentException.class, () -> rest(s, W, 0, true, free(s, -1), all(4, -0.01)));
        assertThrows(
                IllegalArgumentException.class, () -> new ElasticBeam(new double[] {0}, EI, W, new double[1], true));
        assertThrows(
                IllegalArgumentException.class, () -> new ElasticBeam(new double[] {0, 0}, EI, W, new double[2], true));
    }

    /** Roark's table A.1 for a ring; 304 stainless steel 193 GPa, 8000 kg/m³ (handbook values from memory). */
    @Test
    void tubeIsARingFullOfOil() {
        TubeSection t = new TubeSection(8e-3, 4e-3, 193e9, 8000, 205e6, 870);
        assertEquals(193e9 * Math.PI / 64 * (4096e-12 - 256e-12), t.stiffnessNm2(), 1e-9);
        assertEquals(Math.PI * 12e-6 * 8000 + Math.PI * 4e-6 * 870, t.massKgPerM(), 1e-12);
        assertEquals(10 * 4e-3 / (Math.PI / 64 * 3840e-12), t.stressPa(-10), 1); // M c / I, whichever way it is bent
        assertThrows(IllegalArgumentException.class, () -> new TubeSection(8e-3, 8e-3, 193e9, 8000, 205e6, 0));
        assertThrows(IllegalArgumentException.class, () -> new TubeSection(8e-3, 4e-3, 0, 8000, 205e6, 0));
    }
}
