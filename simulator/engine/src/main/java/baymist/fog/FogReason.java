package baymist.fog;

import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.Locale;

/** What empties the cell that limits the steps, in words. */
final class FogReason {
    private FogReason() {}

    static String of(
            VoxelGrid grid,
            FogLinks links,
            FogCommon common,
            FogWindow window,
            FogSinks sinks,
            double settling,
            int cell) {
        if (cell < 0) {
            return "nothing moves";
        }
        double air = common.airOutRate[cell] + airLoss(grid, window, sinks, cell);
        double own = own(links, window, settling, cell) * common.perM3[cell];
        double wall = 0;
        for (int s = 0; s < sinks.wallRate.length; s++) {
            wall += grid.surfels().cell()[s] == cell ? sinks.wallRate[s] : 0;
        }
        String main = air >= own && air >= wall ? "air flow" : own >= wall ? "settling and eddies" : "deposition";
        return String.format(
                Locale.ROOT,
                "%s in cell %d at %s: air %.3g, settling and eddies %.3g, walls %.3g per second",
                main,
                cell,
                grid.centre(cell),
                air,
                own,
                wall);
    }

    /** What leaves by vents and beams, 1/s. */
    private static double airLoss(VoxelGrid grid, FogWindow window, FogSinks sinks, int cell) {
        double sum = 0;
        for (int v = 0; v < sinks.ventRate.length; v++) {
            sum += grid.faces().ventCell()[v] == cell ? sinks.ventRate[v] : 0;
        }
        SprayHits spray = window.spray;
        for (int i = 0; spray != null && i < sinks.scourRate.length; i++) {
            sum += spray.scourCell()[i] == cell ? sinks.scourRate[i] : 0;
        }
        return sum;
    }

    /** Volume that settling and eddies alone let out, m³/s. */
    private static double own(FogLinks links, FogWindow window, double settling, int cell) {
        double sum = 0;
        for (int j = links.cellStart[cell]; j < links.cellStart[cell + 1]; j++) {
            int l = links.ofCell[j] >> 1;
            boolean high = (links.ofCell[j] & 1) != 0;
            for (int e = links.entryStart[l]; e < links.entryStart[l + 1]; e++) {
                double fall = settling * window.fallArea[e];
                sum += ExponentialFlux.againstDrift(fall, window.conductance[e]) + Math.max(0, high ? -fall : fall);
            }
        }
        return sum;
    }
}
