package baymist.verify;

import baymist.fog.Coagulation;
import baymist.fog.Exposure;
import baymist.spray.Droplet;
import baymist.units.Dimension;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Droplets that meet, and mist that people breathe. */
final class MistQuantities {
    private MistQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put("brownianCoefficient", MistQuantities::brownian);
        all.put("brownianNumberLeft", in -> Coagulation.numberLeft(brownian(in) * number(in) * in.timeS("time")));
        all.put("turbulentHalfLife", in -> 1 / (turbulent(in) * number(in)));
        all.put(
                "shearKernelConstant",
                in -> 2
                        * turbulent(in)
                        / Math.pow(in.lengthM("diameter"), 3)
                        / Math.sqrt(in.number("dissipation") / in.air().kinematicViscosityM2PerS()));
        all.put("nearFieldFlow", in -> Exposure.nearFieldM3PerS());
        all.put("roomAirFlow", in -> Exposure.roomM3(in.number("litresPerS") * 1e-3 * concentration(in)));
        all.put("mistLimit", in -> Exposure.LIMIT_KG_PER_M3);
        return all;
    }

    private static double brownian(Inputs in) {
        return Coagulation.brownianM3PerS(Droplet.slip(in.lengthM("diameter"), in.air()), in.air());
    }

    private static double turbulent(Inputs in) {
        return Coagulation.turbulentM3PerS(in.lengthM("diameter"), in.number("dissipation"), in.air());
    }

    private static double concentration(Inputs in) {
        return in.si("concentration", Dimension.CONCENTRATION);
    }

    private static double number(Inputs in) {
        return Coagulation.numberPerM3(concentration(in), in.lengthM("diameter"), FogQuantities.density(in));
    }
}
