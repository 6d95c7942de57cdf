package baymist.verify;

import baymist.spray.Droplet;
import baymist.units.Air;
import baymist.units.Dimension;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Quantities that one formula of the engine gives. */
final class FormulaQuantities {
    private static final Map<String, ToDoubleFunction<Inputs>> ALL = new TreeMap<>();

    static {
        ALL.put("slip", in -> Droplet.slip(in.lengthM("diameter"), Air.STANDARD));
        ALL.put(
                "settlingSpeed",
                in -> Droplet.settlingSpeedMPerS(
                        in.lengthM("diameter"), in.si("density", Dimension.DENSITY), Air.STANDARD, Air.GRAVITY));
    }

    private FormulaQuantities() {}

    static double value(String quantity, Inputs inputs) {
        ToDoubleFunction<Inputs> formula = ALL.get(quantity);
        if (formula == null) {
            throw new IllegalArgumentException("quantity \"" + quantity + "\" is not known; known are " + ALL.keySet());
        }
        return formula.applyAsDouble(inputs);
    }
}
