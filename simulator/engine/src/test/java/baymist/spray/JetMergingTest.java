package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.ClockAngle;
import baymist.access.Station;
import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class JetMergingTest {
    private static final RaySet RAYS = new RaySet(2048);

    private static JetSource jet(double angle, double thrust) {
        Vec3 way = new Vec3(Math.sin(angle), Math.cos(angle), 0);
        return new JetSource(Vec3.ZERO, way, thrust, 1e-4, 1e-4, 300);
    }

    private static double halfWidths(double n) {
        return Math.atan(n * RoundJet.SPREAD);
    }

    @Test
    void jetsInOneDirectionAreOneJetOfTheirThrust() {
        // Exact limit of superposed momentum (Reichardt 1942): n equal jets on one axis have √n times the speed.
        double[] m = JetMerging.factors(List.of(jet(0, 0.3), jet(0, 0.3), jet(0, 0.3)), 1, RAYS);
        for (double f : m) {
            assertEquals(Math.sqrt(3), f, 1e-9);
        }
    }

    @Test
    void jetsFarApartDoNotFeelEachOther() {
        assertEquals(0, JetMerging.factors(List.of(jet(0, 0.3), jet(Math.PI / 4, 0.3)), 0, RAYS).length);
        assertEquals(0, JetMerging.factors(List.of(jet(0, 0.3), jet(0.05, 0)), 0, RAYS).length);
    }

    @Test
    void flowAndMomentumOverTheRaysAreThoseOfTheMergedField() {
        // Two jets two half-widths apart. Quadrature of u = √(u1² + u2²) over the plane at unit distance, independent
        // of rays.
        double c = 2;
        double flow = 0;
        double momentum = 0;
        double h = 0.01;
        for (double y = -5; y < c + 5; y += h) {
            for (double z = -5; z < 5; z += h) {
                double u1 = Math.exp(-Math.log(2) * (y * y + z * z));
                double u2 = Math.exp(-Math.log(2) * ((y - c) * (y - c) + z * z));
                flow += Math.hypot(u1, u2) * h * h;
                momentum += (u1 * u1 + u2 * u2) * h * h;
            }
        }
        double single = Math.PI / Math.log(2);
        List<JetSource> jets = List.of(jet(0, 0.3), jet(halfWidths(c), 0.3));
        double rayFlow = 0;
        double rayMomentum = 0;
        for (int j = 0; j < 2; j++) {
            double[] m = JetMerging.factors(jets, j, RAYS);
            for (int i = 0; i < m.length; i++) {
                assertTrue(m[i] >= 1);
                rayFlow += single / m.length / m[i];
                rayMomentum += single / m.length / m[i] * RAYS.speedShare(i) * m[i];
            }
        }
        // the angle between the jets tilts the planes: 0.19 rad, 2 % of the flow; 1.3 % lies beyond the edge
        assertEquals(flow, rayFlow, 0.03 * flow);
        assertEquals(momentum, rayMomentum, 0.02 * momentum);
        assertTrue(rayFlow < 2 * single * 0.97, "merged jets draw in less air than two alone");
    }

    @Test
    void fourJetsInOneDirectionSprayAsOneOfFourTimesTheOrificeArea() {
        GridFixture box = new GridFixture();
        DropletSpec oil = new DropletSpec.RosinRammler(20e-6, 2);
        SprayHits four = cast(box, oil, 0.4e-3, 4);
        SprayHits one = cast(box, oil, 0.8e-3, 1);
        assertEquals(sum(one.hitKgPerS()), sum(four.hitKgPerS()), 0.03 * sum(one.hitKgPerS()));
        assertEquals(sum(one.streamY()), sum(four.streamY()), 0.01 * sum(one.streamY()));
        assertEquals(sum(one.scourM3PerS()), sum(four.scourM3PerS()), 0.03 * sum(one.scourM3PerS()));
        double total = sum(four.hitKgPerS()) + sum(four.fogKgPerS()) + four.escapedKgPerS();
        assertEquals(four.sprayedKgPerS(), total, 1e-12 * total);
    }

    private static double sum(double[] v) {
        return Arrays.stream(v).sum();
    }

    private static SprayHits cast(GridFixture box, DropletSpec oil, double orificeM, int jets) {
        List<TipSpec.Jet> list = new ArrayList<>();
        for (int i = 0; i < jets; i++) {
            list.add(new TipSpec.Jet(0, 0, orificeM, 1.0 / jets, 1.0 / jets));
        }
        SprayCaster caster = new SprayCaster(
                box.cavity,
                box.grid,
                new BruteTracer(box.cavity.sheets()),
                box,
                new SupplySpec.Pressure(300_000, 0.85, 5e-4, oil),
                DropletBins.of(oil, 8),
                new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15),
                Air.STANDARD,
                CastSettings.rays(256));
        TipPose pose = new TipPose(new Vec3(0.2, 0.15, 0.08), Vec3.Y, ClockAngle.pin(Vec3.Y, 0));
        return caster.cast(
                new Station(0, pose, 0, 1, 0.15, 0),
                new WandSpec("w", 1, 6e-3, 2e-3, new TipSpec("t", list)),
                new double[] {1, 0});
    }

    @Test
    void halvesOfTheRaysInterleave() {
        int first = 0;
        double[] liquid = new double[2];
        for (int i = 0; i < 256; i++) {
            first += RAYS.firstHalf(i) ? 1 : 0;
        }
        for (int i = 0; i < RAYS.count(); i++) {
            liquid[RAYS.firstHalf(i) ? 0 : 1] += RAYS.liquidShare(i);
            assertTrue(i % 2 == 1 || RAYS.firstHalf(i) != RAYS.firstHalf(i + 1), "one of each pair");
        }
        assertEquals(128, first);
        assertArrayEquals(new double[] {0.5, 0.5}, liquid, 1e-3);
    }
}
