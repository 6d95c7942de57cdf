package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.ClockAngle;
import baymist.access.Station;
import baymist.access.TestCavity;
import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SimulationException;
import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class SprayCasterTest {
    private static final double[] OPEN = {1, 1};
    private static final DropletSpec OIL = new DropletSpec.RosinRammler(30e-6, 2);
    private static final double LIQUID = 5e-4;
    private static final ProductSpec PRODUCT = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15);

    private final GridFixture box = new GridFixture();

    private static WandSpec wand(TipSpec.Jet... jets) {
        return new WandSpec("w", 1, 6e-3, 2e-3, new TipSpec("t", List.of(jets)));
    }

    private static TipSpec.Jet jet(double offAxis, double clock) {
        return new TipSpec.Jet(offAxis, clock, 0.8e-3, 1, 1);
    }

    private static WandSpec ring(int n) {
        TipSpec.Jet[] jets = new TipSpec.Jet[n];
        for (int i = 0; i < n; i++) {
            jets[i] = new TipSpec.Jet(Math.PI / 2, 2 * Math.PI * i / n, 0.4e-3, 1.0 / n, 1.0 / n);
        }
        return wand(jets);
    }

    private static Station at(double depth, double travel) {
        Vec3 tip = new Vec3(0.2, depth, 0.08);
        return new Station(0, new TipPose(tip, Vec3.Y, ClockAngle.pin(Vec3.Y, 0)), 0, 1, depth, travel);
    }

    private SprayCaster caster(DropletSpec drops, int rays) {
        SupplySpec supply = new SupplySpec.Pressure(551_581, 0.85, LIQUID, drops);
        return caster(box, supply, drops, rays);
    }

    private static SprayCaster caster(GridFixture box, SupplySpec supply, DropletSpec drops, int rays) {
        return new SprayCaster(
                box.cavity,
                box.grid,
                new BruteTracer(box.cavity.sheets()),
                box,
                supply,
                DropletBins.of(drops, 8),
                PRODUCT,
                Air.STANDARD,
                CastSettings.rays(rays));
    }

    private static double sum(double[] v) {
        return Arrays.stream(v).sum();
    }

    private double onPart(SprayHits hits, int part) {
        double m = 0;
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            m += box.grid.surfels().part()[hits.hitSurfel()[i]] == part ? hits.hitKgPerS()[i] : 0;
        }
        return m;
    }

    /** Share of a jet's liquid within a radius at a distance: speed times fog profile, both Gaussian. */
    private static double gaussianShare(double radiusM, double x) {
        double q = radiusM / (RoundJet.SPREAD * x);
        double width = 1 + 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH);
        return 1 - Math.exp(-Math.log(2) * q * q * width);
    }

    @Test
    void whatIsSprayedLandsFloatsOrLeaves() {
        for (WandSpec w : List.of(ring(8), wand(jet(0, 0)), wand(jet(1.0, 2.0)), wand(jet(Math.PI, 0)))) {
            for (double travel : new double[] {0, 0.025}) {
                SprayHits h = caster(OIL, 128).cast(at(0.2, travel), w, OPEN);
                double total = sum(h.hitKgPerS()) + sum(h.fogKgPerS()) + h.escapedKgPerS();
                assertEquals(LIQUID, h.sprayedKgPerS(), 1e-15 * LIQUID);
                assertEquals(h.sprayedKgPerS(), total, 1e-12 * LIQUID);
            }
        }
    }

    @Test
    void theShareThroughALighteningHoleIsTheGaussiansShare() {
        // Closed form: a jet square to a rib, centred on a hole of radius R at distance x, passes 1 - exp(-ln2 (R/b)^2
        // (1 + 1/k^2)).
        // Drops of 300 um all land: what lands beyond the rib went through the hole.
        DropletSpec coarse = new DropletSpec.Classes(new double[] {300e-6}, new double[] {1});
        double x = 0.25;
        SprayHits h = caster(coarse, 4096).cast(at(GridFixture.RIB_Y - x, 0), wand(jet(0, 0)), OPEN);
        double expected = gaussianShare(GridFixture.HOLE_R, x);
        double rib = onPart(h, 6) + fogIn(h, 0);
        assertEquals(expected, 1 - rib / LIQUID, 2e-3);
        assertTrue(onPart(h, 3) > 0.5 * expected * LIQUID, "the far wall is struck through the hole");
    }

    private double fogIn(SprayHits h, int bay) {
        int bins = h.fogKgPerS().length / Math.max(1, h.fogCell().length);
        double m = 0;
        for (int i = 0; i < h.fogCell().length; i++) {
            for (int b = 0; b < bins; b++) {
                m += box.grid.bayOfCell(h.fogCell()[i]) == bay ? h.fogKgPerS()[i * bins + b] : 0;
            }
        }
        return m;
    }

    @Test
    void aPluggedHoleCatchesTheSprayAsAClosure() {
        GridFixture shut = new GridFixture(TestCavity.PLUGGED);
        SupplySpec supply = new SupplySpec.Pressure(551_581, 0.85, LIQUID, OIL);
        SprayHits h = caster(shut, supply, OIL, 256).cast(at(0.2, 0), wand(jet(0, 0)), new double[] {1, 0});
        double caught = 0;
        for (int i = 0; i < h.hitSurfel().length; i++) {
            int s = h.hitSurfel()[i];
            caught += shut.grid.surfels().closure()[s] == 1 ? h.hitKgPerS()[i] : 0;
            assertEquals(0, shut.grid.bayOfCell(shut.grid.surfels().cell()[s]));
        }
        assertTrue(caught > 0.5 * LIQUID);
    }

    @Test
    void sprayAimedAtAnOpenPortLeavesThroughIt() {
        double x = 0.08;
        SprayHits h = caster(OIL, 2048).cast(at(x, 0), wand(jet(Math.PI, 0)), OPEN);
        assertEquals(gaussianShare(0.01, x), h.escapedKgPerS() / LIQUID, 5e-3);
        SprayHits shut = caster(OIL, 256).cast(at(x, 0), wand(jet(Math.PI, 0)), new double[] {0, 1});
        assertEquals(0, shut.escapedKgPerS());
    }

    @Test
    void aTracerBecomesFogAltogether() {
        SprayHits h = caster(new DropletSpec.Tracer(), 64).cast(at(0.2, 0), ring(8), OPEN);
        assertEquals(0, h.hitSurfel().length);
        assertEquals(LIQUID, sum(h.fogKgPerS()), 1e-12 * LIQUID);
        assertEquals(0, h.scourCell().length);
    }

    @Test
    void fogNeverCrossesTheRibBesideItsHole() {
        // Side jets 3 mm ahead of a rib that stands 5 mm off the lattice: their lattice cells belong to the other bay.
        SprayHits h = caster(OIL, 128).cast(at(0.302, 0), ring(4), OPEN);
        assertEquals(0, fogIn(h, 1) / LIQUID, 0.02);
        for (int i = 0; i < h.streamCell().length; i++) {
            if (box.grid.bayOfCell(h.streamCell()[i]) == 1) {
                assertTrue(Math.abs(h.streamX()[i]) + Math.abs(h.streamZ()[i]) < 1e-3, "stream beyond the rib");
            }
        }
    }

    @Test
    void aStretchThatStraddlesARibSpraysIntoBothBays() {
        SprayHits h = caster(OIL, 256).cast(at(GridFixture.RIB_Y, 0.05), ring(4), OPEN);
        double[] moved = new double[2];
        for (int i = 0; i < h.streamCell().length; i++) {
            moved[box.grid.bayOfCell(h.streamCell()[i])] += Math.abs(h.streamX()[i]) + Math.abs(h.streamZ()[i]);
        }
        assertEquals(0.5, moved[0] / (moved[0] + moved[1]), 0.06);
    }

    @Test
    void finerSprayMakesMoreFogAndCoarserMoreDirectFilm() {
        double last = 0;
        for (double dv50 : new double[] {5e-6, 15e-6, 40e-6, 100e-6}) {
            SprayHits h = caster(new DropletSpec.RosinRammler(dv50, 2), 128)
                    .cast(at(0.1, 0), wand(jet(Math.PI / 2, Math.PI / 2)), OPEN);
            double landed = sum(h.hitKgPerS());
            assertTrue(landed > last, "Dv50 " + dv50);
            last = landed;
        }
        assertTrue(last > 0.7 * LIQUID);
    }

    @Test
    void sharesSettleAsRaysAreAdded() {
        // Stated error: with n rays a jet the share on a part is within 2/n of a jet plus 0.5 % of a fine cast's.
        SprayHits fine = caster(OIL, 4096).cast(at(0.2, 0.025), ring(8), OPEN);
        for (int n : new int[] {64, 128, 256}) {
            SprayHits h = caster(OIL, n).cast(at(0.2, 0.025), ring(8), OPEN);
            for (int part = 0; part < 7; part++) {
                assertEquals(onPart(fine, part) / LIQUID, onPart(h, part) / LIQUID, 2.0 / n + 0.005);
            }
        }
    }

    @Test
    void filmOnSurfelsConvergesFasterThanChance() {
        // Film over single surfels against 8192 rays; random rays would halve the difference when their number grows
        // fourfold.
        SprayHits fine = caster(OIL, 8192).cast(at(0.2, 0.025), ring(8), OPEN);
        double last = Double.POSITIVE_INFINITY;
        for (int n : new int[] {32, 128, 512, 2048}) {
            double off = apart(fine, caster(OIL, n).cast(at(0.2, 0.025), ring(8), OPEN));
            assertTrue(off < last / 1.6, n + " rays: " + off + " after " + last);
            last = off;
        }
        assertTrue(last < 0.05, "2048 rays are off by " + last);
    }

    /** Sum of absolute differences over the sum. */
    private double apart(SprayHits a, SprayHits b) {
        double[] film = new double[box.grid.surfels().count()];
        for (int i = 0; i < a.hitSurfel().length; i++) {
            film[a.hitSurfel()[i]] += a.hitKgPerS()[i];
        }
        for (int i = 0; i < b.hitSurfel().length; i++) {
            film[b.hitSurfel()[i]] -= b.hitKgPerS()[i];
        }
        return Arrays.stream(film).map(Math::abs).sum() / sum(a.hitKgPerS());
    }

    @Test
    void detailAddsUpToTheFilm() {
        SprayCast cast = caster(OIL, 128).castWithDetail(at(0.2, 0.025), ring(8), OPEN);
        double[] hit = cast.hits().hitKgPerS();
        SprayDetail d = cast.detail();
        int bins = d.byBinKgPerS().length / hit.length;
        for (int i = 0; i < hit.length; i++) {
            double sum = 0;
            for (int b = 0; b < bins; b++) {
                sum += d.byBinKgPerS()[i * bins + b];
            }
            assertEquals(hit[i], sum, 1e-12 * hit[i]);
            assertTrue(d.halfKgPerS()[i] >= 0 && d.halfKgPerS()[i] <= hit[i] * (1 + 1e-12));
        }
        assertEquals(0.5, sum(d.halfKgPerS()) / sum(hit), 0.02);
        assertTrue(d.splashKgPerS() >= 0 && d.splashKgPerS() <= sum(hit));
        assertEquals(8, d.shearSurfel().length);
    }

    @Test
    void movedAirIsTheJetsFlowTimesItsLength() {
        // Sum over rays of Q(x) ds w along y: for the far half of a free jet, integral of (pi/2B) M x dx = (pi/4B) M
        // x^2.
        SupplySpec supply = new SupplySpec.ExitSpeed(100, LIQUID, OIL);
        WandSpec w = wand(new TipSpec.Jet(0, 0, 1e-3, 1, 1));
        SprayHits h = caster(box, supply, OIL, 512).cast(at(0.205, 0), w, new double[] {1, 0});
        double m = 100 * 1e-3;
        double x = 0.1;
        double exit = Math.PI / 4 * m * 1e-3 * 0.5 * 3.1e-3;
        double expected = Math.PI / (4 * RoundJet.DECAY) * m * x * x + exit;
        assertEquals(expected, sum(h.streamY()), 0.01 * expected);
        assertEquals(0, sum(h.streamX()), 0.01 * expected);
        assertEquals(Air.STANDARD.densityKgPerM3() * Math.PI / 4 * 1e-6 * 1e4, h.thrustN(), 1e-12);
        assertEquals(h.thrustN() * 5 / 3, h.turbulentPowerW(), 1e-12);
        assertEquals(0, h.powerBay());
        assertEquals(Math.PI / 4 * 1e-6 * 100, h.airM3PerS(), 1e-12);
    }

    @Test
    void aJetHandsOverItsMomentumWhereItHasSlowedToTheCap() {
        // Rajaratnam (1976): um = 6.2 U0 d/x, so 60 m/s from 1 mm falls to 5 m/s after 74 mm, before the rib at 100 mm.
        WandSpec w = wand(new TipSpec.Jet(0, 0, 1e-3, 1, 1));
        SprayHits h = caster(box, new SupplySpec.ExitSpeed(60, LIQUID, OIL), OIL, 512)
                .cast(at(0.205, 0), w, new double[] {1, 0});
        assertEquals(h.thrustN(), Math.abs(sum(h.push().y())), 0.02 * h.thrustN());
        assertEquals(0, sum(h.push().x()), 0.02 * h.thrustN());
        assertEquals(0, sum(h.push().z()), 0.02 * h.thrustN());
        assertEquals(h.thrustN() / 5, sum(h.push().flowKgPerS()), 1e-9 * h.thrustN());
        assertEquals(0.15 * h.thrustN() * 5, sum(h.push().powerW()), 1e-9);
        assertTrue(Arrays.stream(h.push().cell()).allMatch(c -> box.grid.bayOfCell(c) == 0));
    }

    @Test
    void aJetThatMeetsASheetPushesOutwardsAllRoundIt() {
        // Momentum square to the sheet stays with the sheet; what spreads along it has no resultant.
        WandSpec w = wand(new TipSpec.Jet(0, 0, 1e-3, 1, 1));
        SprayHits h = caster(box, new SupplySpec.ExitSpeed(150, LIQUID, OIL), OIL, 512)
                .cast(at(0.205, 0), w, new double[] {1, 0});
        double outwards = 0;
        for (int i = 0; i < h.push().cell().length; i++) {
            outwards += Math.hypot(h.push().x()[i], h.push().z()[i]);
        }
        assertTrue(outwards > 0.3 * h.thrustN() && outwards < 0.8 * h.thrustN(), "outwards " + outwards / h.thrustN());
        assertEquals(0, sum(h.push().x()), 0.03 * h.thrustN());
        assertEquals(0, sum(h.push().z()), 0.03 * h.thrustN());
        assertTrue(
                Math.abs(sum(h.push().y())) < 0.1 * h.thrustN(),
                "square " + sum(h.push().y()) / h.thrustN());
    }

    @Test
    void airDrawnInIsTheGrowthOfTheJetsFlow() {
        // all drops large: every ray's efficiency is above 0 near the axis; total = Q(x) - Q(exit) over rays that scour
        SupplySpec supply =
                new SupplySpec.ExitSpeed(100, LIQUID, new DropletSpec.Classes(new double[] {1e-3}, new double[] {1}));
        WandSpec w = wand(new TipSpec.Jet(0, 0, 1e-3, 1, 1));
        SprayHits h = caster(box, supply, new DropletSpec.Classes(new double[] {1e-3}, new double[] {1}), 512)
                .cast(at(0.205, 0), w, new double[] {1, 0});
        RoundJet jet = new RoundJet(h.thrustN(), 100, Air.STANDARD.densityKgPerM3());
        double grown = jet.flowM3PerS(0.1) - jet.flowM3PerS(0);
        assertEquals(grown, sum(h.scourM3PerS()), 1e-2 * grown);
        for (double e : h.scourEfficiency()) {
            assertTrue(e >= 0 && e <= 1);
        }
    }

    @Test
    void confinementIsCounted() {
        // Clearance 0.16 m between floor and ceiling: the free law ends at 0.16/(6 S) = 0.281 m.
        SprayHits near = caster(OIL, 64).cast(at(0.205, 0), wand(jet(0, 0)), new double[] {1, 0});
        assertEquals(0, near.beyondFreeJetKgPerS());
        SprayHits far = caster(OIL, 64).cast(at(0.005, 0), wand(jet(0, 0)), new double[] {1, 0});
        assertEquals(LIQUID, far.beyondFreeJetKgPerS(), 0.1 * LIQUID);
        SheetRays rays = new SheetRays(box.cavity, new BruteTracer(box.cavity.sheets()));
        ConfinedJet law = Confinement.of(
                new RoundJet(0.3, 470, 1.2), rays, new Vec3(0.2, 0.005, 0.08), Vec3.Y, 0.3, new double[] {1, 0});
        assertEquals(0.16 / (6 * RoundJet.SPREAD), law.flatFromM(), 1e-9);
        assertEquals(Double.POSITIVE_INFINITY, law.shutFromM());
    }

    @Test
    void sameBitsOnAnyNumberOfThreads() {
        SprayCaster caster = caster(OIL, 64);
        SprayHits[] one = castAll(caster, 1);
        for (int threads : new int[] {2, 3, 8}) {
            SprayHits[] many = castAll(caster, threads);
            for (int i = 0; i < one.length; i++) {
                assertArrayEquals(one[i].hitSurfel(), many[i].hitSurfel());
                assertArrayEquals(one[i].hitKgPerS(), many[i].hitKgPerS());
                assertArrayEquals(one[i].fogKgPerS(), many[i].fogKgPerS());
                assertArrayEquals(one[i].streamY(), many[i].streamY());
                assertArrayEquals(one[i].scourEfficiency(), many[i].scourEfficiency());
            }
        }
    }

    private static SprayHits[] castAll(SprayCaster caster, int threads) {
        SprayHits[] out = new SprayHits[8];
        try (Workers workers = new Workers(threads)) {
            workers.forEach(8, i -> out[i] = caster.cast(at(0.1 + 0.05 * i + 0.001, 0.02), ring(4), OPEN));
        }
        return out;
    }

    @Test
    void listsAscendAndNameEachPlaceOnce() {
        SprayHits h = caster(OIL, 128).cast(at(0.2, 0.02), ring(8), OPEN);
        for (int[] list : List.of(h.hitSurfel(), h.fogCell(), h.streamCell())) {
            for (int i = 1; i < list.length; i++) {
                assertTrue(list[i] > list[i - 1]);
            }
        }
        for (int i = 1; i < h.scourCell().length; i++) {
            assertTrue(h.scourCell()[i] > h.scourCell()[i - 1]
                    || (h.scourCell()[i] == h.scourCell()[i - 1] && h.scourSurfel()[i] > h.scourSurfel()[i - 1]));
        }
    }

    @Test
    void aTipWithoutAirDribblesFogWhereItIs() {
        SupplySpec none = new SupplySpec.Pressure(0, 0.85, LIQUID, OIL);
        SprayHits h = caster(box, none, OIL, 64).cast(at(0.2, 0), wand(jet(0, 0)), OPEN);
        assertEquals(1, h.fogCell().length);
        assertEquals(h.airCell(), h.fogCell()[0]);
        assertEquals(LIQUID, sum(h.fogKgPerS()), 1e-12 * LIQUID);
    }

    @Test
    void aTipOutsideTheCavityIsRefusedWithPlaceAndTime() {
        SurfelFinder nowhere = new SurfelFinder() {
            @Override
            public int surfelNear(Vec3 p, int part, Vec3 t) {
                return -1;
            }

            @Override
            public int closureNear(Vec3 p, int opening, Vec3 t) {
                return -1;
            }

            @Override
            public int cellNear(Vec3 p, Vec3 t) {
                return -1;
            }
        };
        SprayCaster caster = new SprayCaster(
                box.cavity,
                box.grid,
                new BruteTracer(box.cavity.sheets()),
                nowhere,
                new SupplySpec.Pressure(551_581, 0.85, LIQUID, OIL),
                DropletBins.of(OIL, 4),
                PRODUCT,
                Air.STANDARD,
                CastSettings.rays(16));
        SimulationException e =
                assertThrows(SimulationException.class, () -> caster.cast(at(-0.2, 0), wand(jet(0, 0)), OPEN));
        assertTrue(e.getMessage().contains("depth -0.2000 m"), e.getMessage());
    }

    @Test
    void jetsPointWhereTheTipSays() {
        TipPose pose = new TipPose(Vec3.ZERO, Vec3.Y, Vec3.Z);
        Vec3 aft = TipJets.direction(new TipSpec.Jet(Math.PI / 2, Math.PI / 2, 1e-3, 1, 1), pose);
        assertTrue(aft.distance(Vec3.X) < 1e-12);
        Vec3 pin = TipJets.direction(new TipSpec.Jet(Math.PI / 2, 0, 1e-3, 1, 1), pose);
        assertTrue(pin.distance(Vec3.Z) < 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new RaySet(0));
    }

    @Test
    void stationsFillEachOthersGaps() {
        // Directions on a plane at 1 m, 24 stations of 64 rays, in squares of a tenth of the half-width within two
        // half-widths.
        boolean[][] plain = new boolean[40][40];
        boolean[][] turned = new boolean[40][40];
        for (int k = 0; k < 24; k++) {
            mark(plain, new RaySet(64, 0));
            mark(turned, new RaySet(64, k));
        }
        assertTrue(count(turned) > 6 * count(plain), count(turned) + " squares met, " + count(plain) + " without");
        for (int k = 0; k < 200; k++) {
            RaySet set = new RaySet(16, k);
            double liquid = 0;
            double momentum = 0;
            for (int i = 0; i < 16; i++) {
                momentum += set.momentumShare(i);
                liquid += set.liquidShare(i);
                assertTrue(set.axialShare(i) > 0.9 && set.speedShare(i) > 0 && set.speedShare(i) < 1);
            }
            assertEquals(1, liquid, 1e-12);
            assertEquals(1, momentum, 1e-12);
        }
    }

    private static void mark(boolean[][] squares, RaySet set) {
        for (int i = 0; i < set.count(); i++) {
            Vec3 d = set.direction(i, Vec3.Z, Vec3.X, Vec3.Y);
            int x = (int) Math.floor(d.x() / d.z() / RoundJet.SPREAD * 10 + 20);
            int y = (int) Math.floor(d.y() / d.z() / RoundJet.SPREAD * 10 + 20);
            if (x >= 0 && y >= 0 && x < 40 && y < 40) {
                squares[x][y] = true;
            }
        }
    }

    private static int count(boolean[][] squares) {
        int n = 0;
        for (boolean[] row : squares) {
            for (boolean met : row) {
                n += met ? 1 : 0;
            }
        }
        return n;
    }

    @Test
    void raysShareTheGaussian() {
        RaySet set = new RaySet(1000);
        double within = 0;
        for (int i = 0; i < 1000; i++) {
            double tan = Math.sqrt(1 / Math.pow(set.axialShare(i), 2) - 1);
            within += tan < RoundJet.SPREAD ? set.liquidShare(i) : 0;
        }
        assertEquals(gaussianShare(RoundJet.SPREAD, 1), within, 2e-3);
    }
}
