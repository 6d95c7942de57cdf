package baymist.airflow;

import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.scene.OpeningState;
import java.util.List;
import java.util.function.Function;

/** Open share of each opening by phase, [openings], 0..1. */
public final class OpenFractions {
    private OpenFractions() {}

    /**
     * While a pass runs: openings by their pass state; the wand's rod fills its section of the entry and leaves the gap round
     * it, {@code max(0, (A - A_rod) / A)}. An entry that is taped or plugged round the wand is shut. What the rod covers of
     * holes further in is neglected.
     *
     * @param entry index of the opening that the wand passes, or -1
     * @param rodDiameterM outside diameter of the wand, m
     */
    public static double[] pass(List<Opening> openings, int entry, double rodDiameterM) {
        double[] fraction = states(openings, o -> o.states().pass());
        if (entry >= 0 && fraction[entry] > 0) {
            double area = openings.get(entry).areaM2();
            double rod = Math.PI / 4 * rodDiameterM * rodDiameterM;
            fraction[entry] = Math.max(0, (area - rod) / area);
        }
        return fraction;
    }

    /** While the fog hangs: the wand is out, an entry is a vent again unless it is shut. */
    public static double[] hang(List<Opening> openings) {
        return states(openings, o -> o.states().hang());
    }

    /** After close-up. */
    public static double[] after(List<Opening> openings) {
        return states(openings, o -> o.states().after());
    }

    /** Exact areas of the openings, m², [openings]. */
    public static double[] areasM2(List<Opening> openings) {
        return openings.stream()
                .map(Opening::place)
                .map(p -> p.outline())
                .mapToDouble(Outline::areaM2)
                .toArray();
    }

    private static double[] states(List<Opening> openings, Function<Opening, OpeningState> state) {
        return openings.stream()
                .mapToDouble(o -> state.apply(o) == OpeningState.OPEN ? 1 : 0)
                .toArray();
    }
}
