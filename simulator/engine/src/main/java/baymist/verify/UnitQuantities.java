package baymist.verify;

import baymist.units.Air;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.ViscosityTemperature;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Reading of quantities, drills, and state of air and oil. */
final class UnitQuantities {
    private UnitQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put("length", in -> in.si("text", Dimension.LENGTH));
        all.put("mass", in -> in.si("text", Dimension.MASS));
        all.put("volume", in -> in.si("text", Dimension.VOLUME));
        all.put("gaugePressure", in -> in.si("text", Dimension.PRESSURE));
        all.put("temperature", in -> in.si("text", Dimension.TEMPERATURE));
        all.put("angle", in -> in.si("text", Dimension.ANGLE));
        all.put("speed", in -> in.si("text", Dimension.SPEED));
        all.put("density", in -> in.si("text", Dimension.DENSITY));
        all.put("volumeFlow", in -> in.si("text", Dimension.VOLUME_FLOW));
        all.put("acceleration", in -> in.si("text", Dimension.ACCELERATION));
        all.put("dynamicViscosity", in -> in.si("text", Dimension.DYNAMIC_VISCOSITY));
        all.put("kinematicViscosity", in -> in.si("text", Dimension.KINEMATIC_VISCOSITY));
        all.put("drillDiameter", in -> Quantities.drillDiameterM(in.whole("number")));
        all.put("oilViscosity", UnitQuantities::oilViscosity);
        all.put("airDensity", in -> airAt(in).densityKgPerM3());
        all.put("airViscosity", in -> airAt(in).viscosityPaS());
        all.put("airMeanFreePath", in -> airAt(in).meanFreePathM());
        return all;
    }

    private static double oilViscosity(Inputs in) {
        return ViscosityTemperature.through(
                        in.si("t1", Dimension.TEMPERATURE),
                        in.si("v1", Dimension.KINEMATIC_VISCOSITY),
                        in.si("t2", Dimension.TEMPERATURE),
                        in.si("v2", Dimension.KINEMATIC_VISCOSITY))
                .kinematicM2PerS(in.si("at", Dimension.TEMPERATURE));
    }

    private static Air airAt(Inputs in) {
        Air stated = in.air();
        return Air.at(stated.temperatureK(), stated.pressurePa());
    }
}
