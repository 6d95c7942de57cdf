package baymist.verify;

import baymist.spray.DragLaw;
import baymist.spray.Droplet;
import baymist.spray.DropletMotion;
import baymist.units.Air;
import baymist.units.Dimension;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** What one droplet does. */
final class DropletQuantities {
    private DropletQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put("slip", in -> Droplet.slip(in.lengthM("diameter"), in.air()));
        all.put("dragCoefficient", in -> law(in).coefficient(in.number("reynolds")));
        all.put(
                "settlingSpeed",
                in -> Droplet.settlingSpeedMPerS(in.lengthM("diameter"), density(in), in.air(), in.gravityMPerS2()));
        all.put(
                "stokesSettlingSpeed",
                in -> Droplet.stokesSettlingMPerS(in.lengthM("diameter"), density(in), in.air(), in.gravityMPerS2()));
        all.put("relaxationTime", in -> Droplet.relaxationTimeS(in.lengthM("diameter"), density(in), in.air()));
        all.put(
                "stoppingDistance",
                in -> Droplet.stoppingDistanceM(
                        in.lengthM("diameter"), density(in), in.air(), in.si("speed", Dimension.SPEED)));
        all.put(
                "throwDistance",
                in -> DropletMotion.stoppingDistanceM(
                        in.lengthM("diameter"),
                        density(in),
                        in.air(),
                        DragLaw.SCHILLER_NAUMANN,
                        in.si("speed", Dimension.SPEED)));
        all.put("flightSpeed", in -> flight(in).speedMPerS());
        all.put("flightDistance", in -> flight(in).distanceM());
        all.put(
                "splashNumber",
                in -> Droplet.splashNumber(
                        in.lengthM("diameter"),
                        in.si("speed", Dimension.SPEED),
                        density(in),
                        in.si("viscosity", Dimension.DYNAMIC_VISCOSITY),
                        in.si("tension", Dimension.SURFACE_TENSION)));
        return all;
    }

    private static double density(Inputs in) {
        return in.si("density", Dimension.DENSITY);
    }

    private static DragLaw law(Inputs in) {
        return switch (in.word("law")) {
            case "Stokes" -> DragLaw.STOKES;
            case "Schiller-Naumann" -> DragLaw.SCHILLER_NAUMANN;
            case "Clift-Gauvin 1970" -> DragLaw.CLIFT_GAUVIN_1970;
            case "constant" -> DragLaw.constant(in.number("coefficient"));
            default -> throw new IllegalArgumentException("drag law \"" + in.word("law") + "\" is not known");
        };
    }

    private static DropletMotion.State flight(Inputs in) {
        Air air = in.air();
        return DropletMotion.fly(
                in.lengthM("diameter"),
                density(in),
                air,
                law(in),
                1,
                in.si("gravity", Dimension.ACCELERATION),
                in.si("speed", Dimension.SPEED),
                in.timeS("time"));
    }
}
