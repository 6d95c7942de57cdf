package baymist.explain;

import baymist.coverage.ItemAssessor;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import baymist.scene.Scene;
import baymist.spray.Droplet;
import baymist.spray.SizeBins;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * Did fog arrive, and could it stick?
 *
 * @param arrivalS job time at which the fog at the region passes 5 % of its peak, s; infinite if there was none
 * @param peakKgPerM3 peak of the mean over the cells at the region
 * @param aboveS time above 5 % of that peak, s
 * @param exposure fog over time at the region over that in the whole cavity, 1 = like everywhere
 * @param endShare fog at the region at the end over its peak, 0..1
 * @param through inner opening that most of the bay's fog came through, or empty
 * @param throughShare share of what came in that it let in, 0..1
 * @param throughM2 its area, m²
 * @param throughOfSheet its area over that of the sheet that it is in, 0..1
 * @param facing mean of the normal's upward component: 1 floor, 0 upright, -1 ceiling
 * @param facingSpread root mean square of the same: large with a small mean for a region that looks all ways
 * @param settlingMPerS settling speed of the median droplet
 * @param depositionMPerS what stuck per area over fog times time, m/s; 0 if no fog came
 * @param frictionMPerS mean friction speed at the region while spraying, m/s
 * @param ventM2 open area of all other ways of the region's bay while spraying: to the outside and to other bays, m²
 * @param masked share of the region under a mask, 0..1
 */
record FogFacts(
        double arrivalS,
        double peakKgPerM3,
        double aboveS,
        double exposure,
        double endShare,
        String through,
        double throughShare,
        double throughM2,
        double throughOfSheet,
        double facing,
        double facingSpread,
        double settlingMPerS,
        double depositionMPerS,
        double frictionMPerS,
        double ventM2,
        double masked) {
    /** What counts as arrival, of the peak. */
    private static final double ARRIVED = 0.05;

    static FogFacts find(RunResult base, RunHistory history, Patch patch) {
        VoxelGrid grid = history.grid();
        int[] cells = patch.cells();
        double peak = 0;
        double near = 0;
        double everywhere = 0;
        double last = 0;
        for (RunHistory.Kept k : history.moments()) {
            double c = mean(grid, k.fogKgPerM3(), cells);
            peak = Math.max(peak, c);
            near += c * k.durationS();
            everywhere += mean(grid, k.fogKgPerM3(), null) * k.durationS();
            last = c;
        }
        double arrival = Double.POSITIVE_INFINITY;
        double above = 0;
        for (RunHistory.Kept k : history.moments()) {
            if (peak > 0 && mean(grid, k.fogKgPerM3(), cells) >= ARRIVED * peak) {
                arrival = Math.min(arrival, k.endS());
                above += k.durationS();
            }
        }
        Ways ways = Ways.find(base, history, patch.bay());
        double fogKg = 0;
        for (int s : patch.surfels()) {
            fogKg += base.fogKg()[s];
        }
        Scene scene = base.scene();
        return new FogFacts(
                arrival,
                peak,
                above,
                everywhere > 0 ? near / everywhere : 0,
                peak > 0 ? last / peak : 0,
                ways.name,
                ways.share,
                ways.areaM2,
                ways.ofSheet,
                facing(scene.gravity(), patch),
                spread(scene.gravity(), patch),
                Droplet.settlingSpeedMPerS(
                        medianM(history.bins()),
                        scene.product().densityKgPerM3(),
                        scene.ambient(),
                        scene.gravityMPerS2()),
                near > 0 ? fogKg / patch.areaM2() / near : 0,
                friction(history, patch),
                ways.ventM2,
                masked(base, patch));
    }

    /** Median of the droplets' volume over size bins, m. */
    static double medianM(SizeBins bins) {
        double sum = 0;
        for (int b = 0; b < bins.count(); b++) {
            sum += bins.share()[b];
            if (sum >= 0.5) {
                return bins.diameterM()[b];
            }
        }
        return bins.diameterM()[bins.count() - 1];
    }

    private static double mean(VoxelGrid grid, float[] fog, int @org.jspecify.annotations.Nullable [] cells) {
        double mass = 0;
        double volume = 0;
        int n = cells == null ? fog.length : cells.length;
        for (int i = 0; i < n; i++) {
            int c = cells == null ? i : cells[i];
            mass += fog[c] * grid.volumeM3(c);
            volume += grid.volumeM3(c);
        }
        return volume > 0 ? mass / volume : 0;
    }

    private static double facing(Vec3 down, Patch patch) {
        double sum = 0;
        for (int s : patch.surfels()) {
            sum -= patch.areaM2(s) * patch.normal(s).dot(down);
        }
        return sum / patch.areaM2();
    }

    private static double spread(Vec3 down, Patch patch) {
        double sum = 0;
        for (int s : patch.surfels()) {
            double up = patch.normal(s).dot(down);
            sum += patch.areaM2(s) * up * up;
        }
        return Math.sqrt(sum / patch.areaM2());
    }

    private static double friction(RunHistory history, Patch patch) {
        double sum = 0;
        double time = 0;
        for (RunHistory.Kept k : history.moments()) {
            if (k.station() != null) {
                time += k.durationS();
                for (int s : patch.surfels()) {
                    sum += k.durationS() * patch.areaM2(s) * k.frictionMPerS()[s];
                }
            }
        }
        return time > 0 ? sum / time / patch.areaM2() : 0;
    }

    private static double masked(RunResult base, Patch patch) {
        boolean[] under = ItemAssessor.masked(base.scene(), base.cavity(), base.grid());
        SurfelSet surfels = base.grid().surfels();
        double sum = 0;
        for (int s : patch.surfels()) {
            sum += under[s] || surfels.closure()[s] >= 0 ? patch.areaM2(s) : 0;
        }
        return sum / patch.areaM2();
    }

    /** By what openings fog comes into a bay and air leaves it. */
    private record Ways(String name, double share, double areaM2, double ofSheet, double ventM2) {
        static Ways find(RunResult base, RunHistory history, int bay) {
            FaceSet faces = base.grid().faces();
            int n = base.cavity().openings().size();
            double[] in = new double[n];
            int[] side = new int[n]; // +1: the bay lies on the high side of its faces
            for (int e = 0; e < faces.count(); e++) {
                int o = faces.opening()[e];
                if (o >= 0) {
                    boolean high = base.grid().bayOfCell(faces.high()[e]) == bay;
                    boolean low = base.grid().bayOfCell(faces.low()[e]) == bay;
                    side[o] = high == low ? side[o] : high ? 1 : -1;
                }
            }
            for (RunHistory.Kept k : history.moments()) {
                for (int o = 0; o < n; o++) {
                    in[o] += Math.max(0, side[o] * k.throughKgPerS()[o]) * k.durationS();
                }
            }
            double all = 0;
            int most = -1;
            for (int o = 0; o < n; o++) {
                all += in[o];
                most = in[o] > 0 && (most < 0 || in[o] > in[most]) ? o : most;
            }
            double vent = 0;
            double[] open = SightFacts.openAt(history);
            for (int o = 0; o < n; o++) {
                vent += o != most && side[o] != 0
                        ? base.cavity().openings().get(o).areaM2() * open[o]
                        : 0;
            }
            for (int v = 0; v < faces.vents(); v++) {
                if (base.grid().bayOfCell(faces.ventCell()[v]) == bay) {
                    vent += faces.ventAreaM2()[v] * open[faces.ventOpening()[v]];
                }
            }
            return most < 0
                    ? new Ways("", 0, 0, 1, vent)
                    : new Ways(
                            base.cavity().openings().get(most).name(),
                            in[most] / all,
                            base.cavity().openings().get(most).areaM2(),
                            ofSheet(base, most),
                            vent);
        }

        private static double ofSheet(RunResult base, int opening) {
            SurfelSet surfels = base.grid().surfels();
            int part = base.cavity().openings().get(opening).part();
            double hole = base.cavity().openings().get(opening).areaM2();
            double bothSides = 0;
            for (int s = 0; s < surfels.count(); s++) {
                bothSides += surfels.part()[s] == part ? surfels.areaM2()[s] : 0;
            }
            return hole / (hole + 0.5 * bothSides);
        }
    }

    String facingWords() {
        if (facing > 0.7) {
            return "faces up";
        }
        if (facing < -0.7) {
            return "faces down";
        }
        if (facingSpread > 0.4 && Math.abs(facing) < 0.5) {
            return "looks all ways";
        }
        return facing > 0.25 ? "leans up" : facing < -0.25 ? "leans down" : "stands upright";
    }

    Fact arrived() {
        Fact.Numbers numbers = Fact.Numbers.of("arrivalS", arrivalS)
                .and("peakKgPerM3", peakKgPerM3)
                .and("aboveFivePercentS", aboveS)
                .and("exposureOverCavity", exposure)
                .and("atEndOverPeak", endShare)
                .and("throughShare", throughShare)
                .and("throughM2", throughM2)
                .and("throughOverSheet", throughOfSheet)
                .and("ventM2", ventM2);
        if (!(peakKgPerM3 > 0)) {
            return Fact.of("fog", "No fog came there.", numbers);
        }
        String when = Words.say(
                "Fog came after %s, peaked at %s and stayed above a twentieth of that for %s;"
                        + " over time that is %s of what the cavity had on average.",
                Words.time(arrivalS), Words.fog(peakKgPerM3), Words.time(aboveS), Words.share(exposure));
        String way = through.isEmpty()
                ? ""
                : Words.say(
                        " Of what came into the bay, %s came through '%s' (%.0f cm2).",
                        Words.share(throughShare), through, 1e4 * throughM2);
        return Fact.of("fog", when + way, numbers);
    }

    Fact stick() {
        String text = Words.say(
                        "The region %s. The median droplet of the spray sinks at %.1f mm/s",
                        facingWords(), 1e3 * settlingMPerS)
                + (depositionMPerS > 0
                        ? Words.say(
                                "; what hung there, mostly finer, stuck as if it came at %.2f mm/s, with air brushing past at"
                                        + " a friction speed of %.3f m/s.",
                                1e3 * depositionMPerS, frictionMPerS)
                        : ".");
        return Fact.of(
                "stick",
                text,
                Fact.Numbers.of("facingUp", facing)
                        .and("settlingMPerS", settlingMPerS)
                        .and("depositionMPerS", depositionMPerS)
                        .and("frictionMPerS", frictionMPerS));
    }

    List<Fact> facts() {
        return List.of(arrived(), stick());
    }
}
