package baymist.cavity;

import baymist.scene.CavitySpec.WingBox;
import baymist.scene.WingBoxDetail.FalseSpar;
import baymist.scene.WingBoxDetail.Station;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Chord fractions at which the skins of a wing box have their vertices. */
final class WingStations {
    /** Strips from spar to spar; half a metre of a 12 % section aft of 15 % chord then stays within 0.1 mm of the curve. */
    private static final int STRIPS = 24;

    private final WingBox spec;
    /** Feet of stringers and false spars: they stay where they are, and even spacing makes way. */
    private final Set<Double> fixed = new HashSet<>();

    WingStations(WingBox spec) {
        this.spec = spec;
        for (int n : new int[] {spec.stringersUpper(), spec.stringersLower()}) {
            for (int i = 1; i <= n; i++) {
                fixed.add(foot(i, n));
            }
        }
        for (FalseSpar spar : spec.detail().falseSpars()) {
            fixed.add(spar.at());
        }
    }

    /** Chord fraction of stringer i of n, evenly pitched between the spars. */
    double foot(int i, int n) {
        return between((double) i / (n + 1));
    }

    private double between(double s) {
        return s == 1 ? spec.rearSpar() : spec.frontSpar() + s * (spec.rearSpar() - spec.frontSpar());
    }

    double[] fractions() {
        TreeSet<Double> set = new TreeSet<>(fixed);
        for (int k = 0; k <= STRIPS; k++) {
            set.add(between((double) k / STRIPS));
        }
        addMeasured(set, spec.detail().root(), spec.rootChordM());
        addMeasured(set, spec.detail().tip(), spec.tipChordM());
        // evenly spaced stations that almost meet a stringer's foot would leave a sliver strip: the foot stays
        List<Double> kept = new ArrayList<>();
        double least = 0.1 * (spec.rearSpar() - spec.frontSpar()) / STRIPS;
        for (double f : set) {
            boolean stays = fixed.contains(f) || f == spec.frontSpar() || f == spec.rearSpar();
            double before = kept.isEmpty() ? -1 : kept.get(kept.size() - 1);
            if (f - before >= least || kept.isEmpty()) {
                kept.add(f);
            } else if (stays && (fixed.contains(before) || before == spec.frontSpar())) {
                kept.add(f);
            } else if (stays) {
                kept.set(kept.size() - 1, f);
            }
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void addMeasured(Set<Double> set, List<Station> stations, double chordM) {
        for (Station station : stations) {
            double f = station.aftM() / chordM;
            if (f > spec.frontSpar() && f < spec.rearSpar()) {
                set.add(f);
            }
        }
    }

    int indexOf(double[] fractions, double f) {
        int k = Arrays.binarySearch(fractions, f);
        if (k < 0) {
            throw new IllegalStateException("no station at " + f);
        }
        return k;
    }
}
