package baymist.verify;

import baymist.run.RunResult;
import baymist.run.TimePoint;
import baymist.voxel.SurfelSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;

/** Where the product is at the end of a run. */
final class RunReadings {
    private RunReadings() {}

    static Map<String, ToDoubleBiFunction<RunResult, Inputs>> all() {
        Map<String, ToDoubleBiFunction<RunResult, Inputs>> all = new TreeMap<>();
        all.put("airborneShare", (r, in) -> r.ledger().airborneKg() / r.ledger().sprayedKg());
        all.put("airborneMass", (r, in) -> r.ledger().airborneKg());
        all.put(
                "oversprayShare",
                (r, in) -> r.ledger().oversprayKg() / r.ledger().sprayedKg());
        all.put("ledgerClosure", (r, in) -> Math.abs(r.ledger().closure()));
        all.put("sprayedMass", (r, in) -> r.ledger().sprayedKg());
        all.put("settledPerArea", RunReadings::settledPerArea);
        all.put("meanFilmOnPart", RunReadings::meanFilmOnPart);
        all.put("lateDecayRate", RunReadings::lateDecayRate);
        all.put(
                "peakGaugePressure",
                (r, in) -> r.history().get(r.history().size() - 1).peakGaugePa());
        return all;
    }

    /** Fog deposited on a part over its area, kg/m². */
    private static double settledPerArea(RunResult r, Inputs in) {
        return onPart(r, in, r.fogKg()) / areaM2(r, in);
    }

    private static double meanFilmOnPart(RunResult r, Inputs in) {
        SurfelSet f = r.grid().surfels();
        double[] volume = new double[f.count()];
        for (int s = 0; s < volume.length; s++) {
            volume[s] = r.filmM()[s] * f.areaM2()[s];
        }
        return onPart(r, in, volume) / areaM2(r, in);
    }

    private static double onPart(RunResult r, Inputs in, double[] amount) {
        SurfelSet f = r.grid().surfels();
        String part = in.word("part");
        double sum = 0;
        for (int s = 0; s < amount.length; s++) {
            boolean there = f.closure()[s] < 0
                    && r.cavity().parts().get(f.part()[s]).name().equals(part);
            sum += there ? amount[s] : 0;
        }
        return sum;
    }

    private static double areaM2(RunResult r, Inputs in) {
        return onPart(r, in, r.grid().surfels().areaM2());
    }

    /** Relative rate of loss of airborne mass between the last two points in time, 1/s. */
    private static double lateDecayRate(RunResult r, Inputs in) {
        List<TimePoint> h = r.history();
        TimePoint a = h.get(h.size() - 2);
        TimePoint b = h.get(h.size() - 1);
        return Math.log(a.airborneKg() / b.airborneKg()) / (b.timeS() - a.timeS());
    }
}
