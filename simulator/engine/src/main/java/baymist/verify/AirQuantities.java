package baymist.verify;

import baymist.airflow.BulkTurbulence;
import baymist.airflow.CavityPressure;
import baymist.airflow.Orifice;
import baymist.airflow.PressureWindow;
import baymist.airflow.ResidualConvection;
import baymist.airflow.WallLaw;
import baymist.units.Air;
import baymist.units.Dimension;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Pressure, vents, turbulence and wall friction of the air. */
final class AirQuantities {
    private AirQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put(
                "ventPressure",
                in -> Orifice.pressureDifferencePa(
                        ventArea(in),
                        in.si("flow", Dimension.VOLUME_FLOW),
                        in.air().densityKgPerM3()));
        all.put(
                "ventFlow",
                in -> Orifice.volumeFlowM3PerS(
                        ventArea(in),
                        in.si("pressure", Dimension.PRESSURE),
                        in.air().densityKgPerM3()));
        all.put("ventMassFlowOverChoked", AirQuantities::massFlowOverChoked);
        all.put("steadyCavityPressure", in -> pressure(in, 3600).endGaugePa());
        all.put("cavityPressureAfter", in -> pressure(in, in.timeS("time")).endGaugePa());
        all.put("turbulentEnergyLeft", in -> decay(in).endM2PerS2());
        all.put("turbulentEnergySteady", in -> BulkTurbulence.steadyK(powerPerMass(in), in.lengthM("scale")));
        all.put(
                "eddyViscosity",
                in -> BulkTurbulence.eddyViscosityM2PerS(
                        BulkTurbulence.steadyK(powerPerMass(in), in.lengthM("scale")), in.lengthM("scale")));
        all.put("eddyViscosityConstant", in -> BulkTurbulence.VISCOSITY_FACTOR);
        all.put("dissipationConstant", in -> BulkTurbulence.DISSIPATION_FACTOR);
        all.put(
                "roomDiffusivity",
                in -> ResidualConvection.roomDiffusivityM2PerS(
                        in.si("volume", Dimension.VOLUME), in.number("changesPerHour")));
        all.put(
                "residualSpeed",
                in -> ResidualConvection.speedMPerS(in.gravityMPerS2(), in.air().temperatureK(), in.lengthM("height")));
        all.put(
                "frictionSpeed",
                in -> WallLaw.frictionSpeedMPerS(
                        in.si("speed", Dimension.SPEED),
                        in.lengthM("distance"),
                        in.air().kinematicViscosityM2PerS()));
        all.put("wallDistanceAtSpeed", in -> WallLaw.yPlus(in.number("uPlus")));
        return all;
    }

    /** Area of equal round holes, m². */
    private static double ventArea(Inputs in) {
        double d = in.lengthM("hole");
        return Math.PI / 4 * d * d * in.si("holes", Dimension.FRACTION, 1);
    }

    /** Isentropic flow at a pressure ratio over the choked flow: 1/(A/A*) of the gas tables. */
    private static double massFlowOverChoked(Inputs in) {
        double total = 1e5;
        double flow = Orifice.massFlowKgPerS(1e-4, total, total * in.number("pressureRatio"), 300);
        double choked = Orifice.massFlowKgPerS(1e-4, total, total * 0.1, 300);
        return flow / choked;
    }

    private static PressureWindow pressure(Inputs in, double timeS) {
        double area = in.has("hole") ? ventArea(in) : 0;
        return CavityPressure.advance(
                in.air(),
                new CavityPressure.Load(
                        0, timeS, in.si("supply", Dimension.MASS_FLOW), area, in.si("volume", Dimension.VOLUME)),
                0);
    }

    private static double powerPerMass(Inputs in) {
        Air air = in.air();
        return in.number("powerW") / (air.densityKgPerM3() * in.si("volume", Dimension.VOLUME));
    }

    private static BulkTurbulence.State decay(Inputs in) {
        return BulkTurbulence.advance(in.number("start"), 0, in.lengthM("scale"), in.timeS("time"));
    }
}
