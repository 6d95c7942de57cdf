package baymist.viewer.model;

import baymist.units.Quantities;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One thing about a job that can be turned.
 *
 * @param id {@code what:pass}, or {@code what} for the whole job; the same from edit to edit
 * @param label what it is called beside its box
 * @param pass name of the pass, "" for the whole job
 * @param kind a number with a unit or one of a list
 * @param value number in {@code unit}; infinite for as deep as the wand goes; NaN for a choice
 * @param min,max bounds of the number in {@code unit}, for a slider or a handle
 * @param unit shown beside the box and taken where none is typed
 * @param choice the one chosen, "" for a number
 * @param choices all of them, empty for a number
 * @param tip one sentence for a tooltip
 */
public record Field(
        String id,
        String label,
        String pass,
        Kind kind,
        double value,
        double min,
        double max,
        String unit,
        String choice,
        List<String> choices,
        String tip) {
    /** What sort of box it has. */
    public enum Kind {
        NUMBER,
        CHOICE
    }

    public Field {
        choices = List.copyOf(choices);
    }

    static Field number(
            String id,
            String label,
            @Nullable String pass,
            double value,
            double min,
            double max,
            String unit,
            String tip) {
        return new Field(id, label, pass == null ? "" : pass, Kind.NUMBER, value, min, max, unit, "", List.of(), tip);
    }

    static Field choice(String id, String label, String pass, String choice, List<String> choices, String tip) {
        return new Field(id, label, pass, Kind.CHOICE, Double.NaN, Double.NaN, Double.NaN, "", choice, choices, tip);
    }

    /** The value as it stands in its box. */
    public String text() {
        if (kind == Kind.CHOICE) {
            return choice;
        }
        if (Double.isInfinite(value)) {
            return WhatIf.DEEPEST;
        }
        return Quantities.number(value, 4);
    }
}
