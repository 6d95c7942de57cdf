package baymist.report;

import baymist.access.Station;
import baymist.run.RunResult;
import baymist.run.TimePoint;
import baymist.scene.InitialFog;

/** Figures that reports derive from a result; SI. */
public final class RunFigures {
    private RunFigures() {}

    /** Product that left the tip, m³: what was sprayed less the fog that the scene started with. */
    public static double productM3(RunResult r) {
        return (r.ledger().sprayedKg() - initialFogKg(r)) / r.scene().product().densityKgPerM3();
    }

    /** Fog present at the start, kg. */
    public static double initialFogKg(RunResult r) {
        InitialFog fog = r.scene().initialFog();
        if (fog == null) {
            return 0;
        }
        return fog.pointM() != null
                ? fog.pointMassKg()
                : fog.concentrationKgPerM3() * r.grid().totalVolumeM3();
    }

    /** Time with the trigger held, all passes, s. */
    public static double triggerS(RunResult r) {
        return r.stations().stream().mapToDouble(Station::durationS).sum();
    }

    /** Highest mean concentration of fog over the cavity's volume in the recorded history, kg/m³. */
    public static double peakMeanConcentrationKgPerM3(RunResult r) {
        double peak =
                r.history().stream().mapToDouble(TimePoint::airborneKg).max().orElse(0);
        double volume = r.grid().totalVolumeM3();
        return volume > 0 ? peak / volume : 0;
    }

    /** Highest gauge pressure in the recorded history, Pa. */
    public static double peakGaugePa(RunResult r) {
        return r.history().stream().mapToDouble(TimePoint::peakGaugePa).max().orElse(0);
    }
}
