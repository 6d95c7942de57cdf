package baymist.verify;

import baymist.fog.DepositionLaw;
import baymist.spray.Droplet;
import baymist.units.Air;
import baymist.units.Dimension;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Deposition of fog, and fog in a plain box with a given air. */
final class FogQuantities {
    private FogQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put("layerIntegral", FogQuantities::layerIntegral);
        all.put("depositionSpeed", FogQuantities::depositionSpeed);
        all.put("woodPlus", in -> DepositionLaw.woodPlusSpeed(in.number("schmidt"), in.number("relaxationPlus")));
        all.put(
                "mcCoyHanrattyPlus",
                in -> DepositionLaw.mcCoyHanrattyPlusSpeed(in.number("schmidt"), in.number("relaxationPlus")));
        all.put("relaxationPlus", in -> law(in).plusRelaxation(friction(in)));
        all.put("schmidtNumber", in -> law(in).schmidt());
        all.put("boxConcentration", in -> FogBox.of(in).concentrationOverMean());
        all.put("frontConcentration", FogFront::of);
        all.put("boxMassDrift", in -> FogBox.of(in).massDrift());
        all.put("boxLossRate", in -> FogBox.of(in).lossRatePerS());
        all.put("boxLateDecay", in -> FogBox.of(in).lateDecay());
        return all;
    }

    static double density(Inputs in) {
        return in.si("density", Dimension.DENSITY);
    }

    private static double friction(Inputs in) {
        return in.si("friction", Dimension.SPEED);
    }

    private static DepositionLaw law(Inputs in) {
        double d = in.lengthM("diameter");
        Air air = in.air();
        return new DepositionLaw(
                d,
                Droplet.slip(d, air),
                Droplet.relaxationTimeS(d, density(in), air),
                Droplet.stokesSettlingMPerS(d, density(in), air, in.gravityMPerS2()),
                air);
    }

    private static double layerIntegral(Inputs in) {
        DepositionLaw law = law(in);
        return DepositionLaw.layerIntegral(law.schmidt(), law.plusRadius(friction(in)));
    }

    private static double depositionSpeed(Inputs in) {
        double up = switch (in.word("wall")) {
            case "floor" -> 1;
            case "upright" -> 0;
            case "ceiling" -> -1;
            default -> throw new IllegalArgumentException("wall \"" + in.word("wall") + "\" is not known");
        };
        return law(in).speedMPerS(friction(in), up);
    }
}
