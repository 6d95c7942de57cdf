package baymist.verify;

import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Quantities that one formula of the engine gives, by name; one class a stage holds them. */
final class FormulaQuantities {
    private final Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();

    FormulaQuantities() {
        add(UnitQuantities.all());
        add(GeometryQuantities.all());
        add(AccessQuantities.all());
        add(DropletQuantities.all());
        add(NozzleQuantities.all());
        add(AirQuantities.all());
        add(FogQuantities.all());
        add(DuctQuantities.all());
        add(MistQuantities.all());
        add(FilmQuantities.all());
    }

    private void add(Map<String, ToDoubleFunction<Inputs>> some) {
        some.forEach((name, formula) -> {
            if (all.put(name, formula) != null) {
                throw new IllegalStateException("quantity \"" + name + "\" stands twice");
            }
        });
    }

    Set<String> names() {
        return Collections.unmodifiableSet(all.keySet());
    }

    /** @throws IllegalArgumentException if the quantity is not known or its inputs will not do */
    double value(String quantity, Inputs inputs) {
        ToDoubleFunction<Inputs> formula = all.get(quantity);
        if (formula == null) {
            throw new IllegalArgumentException("quantity \"" + quantity + "\" is not known");
        }
        return formula.applyAsDouble(inputs);
    }
}
