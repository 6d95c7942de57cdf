package baymist.verify;

import baymist.geom.Vec3;
import baymist.units.Air;
import baymist.units.Dimension;
import baymist.units.Quantities;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Named inputs of a case, written {@code name=value; name=value}; values are quantities with units, bare numbers or words.
 */
public final class Inputs {
    /** Standard atmosphere, from which pressures are counted, Pa. */
    private static final double ATMOSPHERE_PA = 101_325;

    private final Map<String, String> values;
    private final Path table;

    private Inputs(Map<String, String> values, Path table) {
        this.values = values;
        this.table = table;
    }

    /**
     * Reads inputs.
     *
     * @param table file that the inputs stand in; files named by an input are looked for beside it
     * @throws IllegalArgumentException when an item is no {@code name=value}
     */
    public static Inputs parse(String text, Path table) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String item : text.split(";", -1)) {
            if (item.isBlank()) {
                continue;
            }
            int equals = item.indexOf('=');
            if (equals < 1) {
                throw new IllegalArgumentException("input \"" + item.trim() + "\" is not written name=value");
            }
            values.put(
                    item.substring(0, equals).trim(), item.substring(equals + 1).trim());
        }
        return new Inputs(values, table);
    }

    /** A word; {@link IllegalArgumentException} when it is missing. */
    public String word(String name) {
        String value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("input \"" + name + "\" is missing; there are " + values.keySet());
        }
        return value;
    }

    /** Whether an input is stated. */
    public boolean has(String name) {
        return values.containsKey(name);
    }

    /** A word, or another when it is missing. */
    public String word(String name, String otherwise) {
        return values.getOrDefault(name, otherwise);
    }

    /** A quantity in SI units. */
    public double si(String name, Dimension dimension) {
        return Quantities.parse(word(name), dimension);
    }

    /** A quantity in SI units, or another value when it is missing. */
    public double si(String name, Dimension dimension, double otherwise) {
        return values.containsKey(name) ? si(name, dimension) : otherwise;
    }

    /** A bare number. */
    public double number(String name) {
        try {
            return Double.parseDouble(word(name));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "input \"" + name + "\" reads \"" + word(name) + "\", a number expected", e);
        }
    }

    /** A bare whole number. */
    public int whole(String name) {
        double value = number(name);
        if (value != Math.rint(value)) {
            throw new IllegalArgumentException("input \"" + name + "\" reads " + value + ", a whole number expected");
        }
        return (int) value;
    }

    /** Three bare numbers with blanks between. */
    public Vec3 vector(String name) {
        String[] parts = word(name).split("\\s+", -1);
        if (parts.length != 3) {
            throw new IllegalArgumentException(
                    "input \"" + name + "\" reads \"" + word(name) + "\", three numbers expected");
        }
        try {
            return new Vec3(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "input \"" + name + "\" reads \"" + word(name) + "\", three numbers expected", e);
        }
    }

    /** The standard air with what the inputs say otherwise. */
    public Air air() {
        Air std = Air.STANDARD;
        double gauge = si("airPressure", Dimension.PRESSURE, std.pressurePa() - ATMOSPHERE_PA);
        return new Air(
                si("airDensity", Dimension.DENSITY, std.densityKgPerM3()),
                si("airViscosity", Dimension.DYNAMIC_VISCOSITY, std.viscosityPaS()),
                si("meanFreePath", Dimension.LENGTH, std.meanFreePathM()),
                si("airTemperature", Dimension.TEMPERATURE, std.temperatureK()),
                ATMOSPHERE_PA + gauge);
    }

    /** Gravity, m/s²; standard where the inputs say nothing. */
    public double gravityMPerS2() {
        return si("gravity", Dimension.ACCELERATION, Air.GRAVITY);
    }

    public double lengthM(String name) {
        return si(name, Dimension.LENGTH);
    }

    public double timeS(String name) {
        return si(name, Dimension.TIME);
    }

    /** A file beside the table. */
    public Path file(String name) {
        return table.resolveSibling(word(name));
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        values.forEach((k, v) ->
                text.append(text.isEmpty() ? "" : "; ").append(k).append('=').append(v));
        return text.toString();
    }
}
