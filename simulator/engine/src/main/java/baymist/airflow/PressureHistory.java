package baymist.airflow;

import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Pressure of every group of bays over the whole timeline. When openings open or close, groups merge or split; the air mass of
 * each cell carries over (isothermal mixing). The flow field of a window belongs to one group: the tip's while the trigger is
 * held, else the one that vents most.
 */
final class PressureHistory {
    private final VoxelGrid grid;
    private final Air air;
    private final List<PressureWindow> active = new ArrayList<>();
    private final List<Integer> activeGroup = new ArrayList<>();
    private double peakGaugePa;
    private double peakTimeS;

    private PressureHistory(VoxelGrid grid, Air air) {
        this.grid = grid;
        this.air = air;
    }

    /** @param paths [windows] opening state of each window; the same object for equal states */
    static PressureHistory of(VoxelGrid grid, Air air, List<AirWindow> windows, List<AirPath> paths) {
        PressureHistory history = new PressureHistory(grid, air);
        double[] gauge = new double[0];
        for (int w = 0; w < windows.size(); w++) {
            AirPath path = paths.get(w);
            if (w == 0) {
                gauge = new double[path.groups().count()];
            } else if (path != paths.get(w - 1)) {
                gauge = history.regroup(gauge, paths.get(w - 1).groups(), path.groups());
            }
            history.advance(windows.get(w), path, gauge);
        }
        return history;
    }

    private void advance(AirWindow window, AirPath path, double[] gauge) {
        SprayHits hits = window.hits();
        int tip = hits != null && hits.airCell() >= 0 ? path.groups().groupOf(hits.airCell()) : -1;
        PressureWindow chosen = PressureWindow.calm(window.startS(), window.durationS());
        int chosenGroup = Math.max(tip, 0);
        for (int g = 0; g < gauge.length; g++) {
            if (g != tip && gauge[g] == 0) {
                continue;
            }
            double supply = g == tip && hits != null ? hits.airM3PerS() * ambientDensity() : 0;
            PressureWindow p =
                    CavityPressure.advance(air, path.load(g, window.startS(), window.durationS(), supply), gauge[g]);
            gauge[g] = p.endGaugePa();
            if (p.peakGaugePa() > peakGaugePa) {
                peakGaugePa = p.peakGaugePa();
                peakTimeS = p.peakTimeS();
            }
            boolean ventsMost = Math.abs(p.ventOutflowM3PerS()) > Math.abs(chosen.ventOutflowM3PerS());
            if (g == tip || (tip < 0 && ventsMost)) {
                chosen = p;
                chosenGroup = g;
            }
        }
        active.add(chosen);
        activeGroup.add(chosenGroup);
    }

    /** Ambient density from the gas law, so that supply at ambient density and volumes inside agree to rounding. */
    private double ambientDensity() {
        return air.pressurePa() / (Air.GAS_CONSTANT * air.temperatureK());
    }

    private double[] regroup(double[] gauge, Components before, Components after) {
        double[] next = new double[after.count()];
        if (Arrays.stream(gauge).allMatch(p -> p == 0)) {
            return next;
        }
        for (int c = 0; c < grid.cellCount(); c++) {
            next[after.groupOf(c)] += gauge[before.groupOf(c)] * grid.volumeM3(c);
        }
        for (int g = 0; g < next.length; g++) {
            next[g] /= after.volumeM3(g);
        }
        return next;
    }

    PressureWindow window(int w) {
        return active.get(w);
    }

    int group(int w) {
        return activeGroup.get(w);
    }

    double peakGaugePa() {
        return peakGaugePa;
    }

    double peakTimeS() {
        return peakTimeS;
    }
}
