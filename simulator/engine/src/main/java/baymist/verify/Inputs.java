package baymist.verify;

import baymist.units.Dimension;
import baymist.units.Quantities;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Named inputs of a case, written {@code name=value; name=value}; values are quantities with units, bare numbers or words.
 */
public final class Inputs {
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
