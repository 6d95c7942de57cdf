package baymist.airflow;

import baymist.units.Air;
import java.util.ArrayList;
import java.util.List;

/**
 * Pressure in a vented group of bays: one isothermal mass balance,
 *
 * <pre>  dp/dt = (R T / V) (m_in - m_out(p))</pre>
 *
 * with the isentropic orifice as outflow law (inflow likewise when the cavity is below ambient). Isothermal because sheet
 * metal holds the air's temperature over seconds (ASSUMED; an adiabatic cavity would fill 1.4 times as fast). Resistance of
 * holes inside the group is neglected: the group has one pressure.
 */
public final class CavityPressure {
    /** Allowed error of one integration step, as a share of the gauge pressure and in Pa; smaller = slower, no other effect. */
    private static final double RELATIVE_TOLERANCE = 2e-4;

    private static final double ABSOLUTE_TOLERANCE_PA = 0.01;

    /** Gauge pressure below which a cavity without supply counts as ambient, Pa (flows of micrograms per second). */
    private static final double AMBIENT_WITHIN_PA = 1e-6;

    private CavityPressure() {}

    /**
     * What acts on the group over one window.
     *
     * @param startS job time, s
     * @param durationS length, s, at least 0
     * @param supplyKgPerS air supplied, kg/s
     * @param ventAreaM2 open area to the outside, annular gaps included, m² (without the discharge coefficient)
     * @param volumeM3 air volume of the group, m³
     */
    public record Load(double startS, double durationS, double supplyKgPerS, double ventAreaM2, double volumeM3) {}

    /** Integrates a list of windows that follow one another, from {@code startGaugePa}. */
    public static List<PressureWindow> integrate(Air air, List<Load> loads, double startGaugePa) {
        List<PressureWindow> windows = new ArrayList<>();
        double gauge = startGaugePa;
        for (Load load : loads) {
            PressureWindow w = advance(air, load, gauge);
            windows.add(w);
            gauge = w.endGaugePa();
        }
        return windows;
    }

    /** Advances one group over one window. */
    public static PressureWindow advance(Air air, Load load, double startGaugePa) {
        if (!(load.durationS() >= 0) || !(load.volumeM3() > 0) || !(load.supplyKgPerS() >= 0)) {
            throw new IllegalArgumentException("bad load " + load);
        }
        double ambient = air.pressurePa();
        double gasEnergy = Air.GAS_CONSTANT * air.temperatureK();
        double effective = Orifice.DISCHARGE * load.ventAreaM2();
        double stiffness = gasEnergy / load.volumeM3();
        Relaxation balance = new Relaxation(
                gauge -> stiffness
                        * (load.supplyKgPerS() - Orifice.massFlow(effective, gauge, ambient, air.temperatureK())),
                -0.999 * ambient,
                RELATIVE_TOLERANCE,
                ABSOLUTE_TOLERANCE_PA);
        double start = load.supplyKgPerS() == 0 && Math.abs(startGaugePa) < AMBIENT_WITHIN_PA ? 0 : startGaugePa;
        double dt = load.durationS();
        if (dt == 0) {
            return instant(load, start, ambient, gasEnergy, effective, air.temperatureK());
        }
        double[] specificVolumeTime = new double[1];
        double end = balance.advance(
                start,
                dt,
                (h, before, after) -> specificVolumeTime[0] +=
                        0.5 * h * gasEnergy * (1 / (ambient + before) + 1 / (ambient + after)));
        double supply = load.supplyKgPerS() * specificVolumeTime[0] / dt;
        double expansion = Math.log1p((end - start) / (ambient + start)) / dt;
        double outflow = effective == 0 ? 0 : supply - load.volumeM3() * expansion;
        if (effective == 0) {
            // A sealed group: the two sides agree up to the integration error; the balance wins.
            supply = load.volumeM3() * expansion;
        }
        double outKgPerS = effective == 0 ? 0 : load.supplyKgPerS() - (end - start) / (stiffness * dt);
        double outAmbient = outKgPerS * gasEnergy / ambient;
        return new PressureWindow(load.startS(), dt, supply, outflow, outAmbient, expansion, start, end);
    }

    private static PressureWindow instant(
            Load load, double gauge, double ambient, double gasEnergy, double effective, double temperatureK) {
        double out = Orifice.massFlow(effective, gauge, ambient, temperatureK);
        double specific = gasEnergy / (ambient + gauge);
        double supply = load.supplyKgPerS() * specific;
        double outflow = out * specific;
        double expansion = (supply - outflow) / load.volumeM3();
        return new PressureWindow(
                load.startS(), 0, supply, outflow, out * gasEnergy / ambient, expansion, gauge, gauge);
    }
}
