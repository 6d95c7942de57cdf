package baymist.spray;

import java.util.ArrayList;
import java.util.List;

/** Sums of one station, filled jet after jet and ray after ray by a single thread. */
final class SprayTally {
    private final int bins;
    private final int surfels;
    /** All, one half of the rays, then by bin. */
    private final SparseSum hits;

    private final SparseSum fog;
    private final SparseSum streams = new SparseSum(3);
    private final SparseSum pushes = new SparseSum(5);
    private final SparseSum scours;
    private double escapedKgPerS;
    private double beyondKgPerS;
    private double airKgPerS;
    private double thrustN;
    private double powerW;
    private double sprayedKgPerS;
    private final double[] powerOfBayW;
    private double splashKgPerS;
    private final List<double[]> shear = new ArrayList<>();

    SprayTally(int bins, int surfels, int bays) {
        this.bins = bins;
        this.surfels = surfels;
        hits = new SparseSum(2 + bins);
        fog = new SparseSum(bins);
        scours = new SparseSum(1 + bins);
        powerOfBayW = new double[Math.max(1, bays)];
    }

    void jet(JetSource jet, double power, int bay) {
        airKgPerS += jet.airKgPerS();
        thrustN += jet.momentumN();
        sprayedKgPerS += jet.liquidKgPerS();
        powerW += power;
        powerOfBayW[Math.max(0, bay)] += power;
    }

    /** Place of a surfel's sums; it stays good. */
    int hitSlot(int surfel) {
        return hits.slot(surfel);
    }

    /**
     * Adds what lands.
     *
     * @param slot of {@link #hitSlot}
     * @param half whether the ray belongs to the half that is told apart
     */
    void hit(int slot, int bin, double kgPerS, boolean half) {
        hits.add(slot, kgPerS);
        if (half) {
            hits.add(slot + 1, kgPerS);
        }
        hits.add(slot + 2 + bin, kgPerS);
    }

    /** Liquid that strikes above the splash limit, counted as staying. */
    void splash(double kgPerS) {
        splashKgPerS += kgPerS;
    }

    /** Shear where the centre of a jet strikes. */
    void shear(int surfel, double paPerM, double radiusM) {
        shear.add(new double[] {surfel, paPerM, radiusM});
    }

    void fog(int cell, int bin, double kgPerS) {
        fog.add(fog.slot(cell) + bin, kgPerS);
    }

    void escaped(double kgPerS) {
        escapedKgPerS += kgPerS;
    }

    void beyondFreeJet(double kgPerS) {
        beyondKgPerS += kgPerS;
    }

    void stream(int cell, double x, double y, double z) {
        int at = streams.slot(cell);
        streams.add(at, x);
        streams.add(at + 1, y);
        streams.add(at + 2, z);
    }

    void push(int cell, double x, double y, double z, double kgPerS, double powerW) {
        int at = pushes.slot(cell);
        pushes.add(at, x);
        pushes.add(at + 1, y);
        pushes.add(at + 2, z);
        pushes.add(at + 3, kgPerS);
        pushes.add(at + 4, powerW);
    }

    void scour(int cell, int surfel, double m3PerS, double[] efficiency) {
        int at = scours.slot((long) cell * surfels + surfel);
        scours.add(at, m3PerS);
        for (int b = 0; b < bins; b++) {
            scours.add(at + 1 + b, m3PerS * efficiency[b]);
        }
    }

    SprayHits close(int airCell, double airDensityKgPerM3) {
        long[] scourKeys = scours.keys();
        int[] scourCell = new int[scourKeys.length];
        int[] scourSurfel = new int[scourKeys.length];
        double[] flow = scours.column(0);
        double[] sums = scours.all();
        double[] efficiency = new double[scourKeys.length * bins];
        for (int n = 0; n < scourKeys.length; n++) {
            scourCell[n] = (int) (scourKeys[n] / surfels);
            scourSurfel[n] = (int) (scourKeys[n] % surfels);
            for (int b = 0; b < bins; b++) {
                efficiency[n * bins + b] = Math.min(1, sums[n * (1 + bins) + 1 + b] / flow[n]);
            }
        }
        return new SprayHits(
                ints(hits.keys()),
                hits.column(0),
                ints(fog.keys()),
                fog.all(),
                escapedKgPerS,
                ints(streams.keys()),
                streams.column(0),
                streams.column(1),
                streams.column(2),
                scourCell,
                scourSurfel,
                flow,
                efficiency,
                airKgPerS / airDensityKgPerM3,
                airCell,
                thrustN,
                powerW,
                strongestBay(),
                beyondKgPerS,
                sprayedKgPerS,
                new JetPush(
                        ints(pushes.keys()),
                        pushes.column(0),
                        pushes.column(1),
                        pushes.column(2),
                        pushes.column(3),
                        pushes.column(4)));
    }

    SprayDetail detail() {
        double[] all = hits.all();
        int width = 2 + bins;
        int n = all.length / width;
        double[] byBin = new double[n * bins];
        for (int i = 0; i < n; i++) {
            System.arraycopy(all, i * width + 2, byBin, i * bins, bins);
        }
        return new SprayDetail(
                hits.column(1),
                byBin,
                splashKgPerS,
                shear.stream().mapToInt(s -> (int) s[0]).toArray(),
                shear.stream().mapToDouble(s -> s[1]).toArray(),
                shear.stream().mapToDouble(s -> s[2]).toArray());
    }

    private int strongestBay() {
        int best = 0;
        for (int b = 1; b < powerOfBayW.length; b++) {
            if (powerOfBayW[b] > powerOfBayW[best]) {
                best = b;
            }
        }
        return best;
    }

    private static int[] ints(long[] keys) {
        int[] out = new int[keys.length];
        for (int i = 0; i < keys.length; i++) {
            out[i] = (int) keys[i];
        }
        return out;
    }
}
