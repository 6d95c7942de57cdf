package baymist.viewer.model;

import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.study.Change;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Turns what was typed into a field into a change of the job, or into a sentence that says what would be right. */
final class FieldEdits {
    private FieldEdits() {}

    /** A change, or why there is none. */
    record Outcome(@Nullable Change change, String sentence) {}

    static Outcome of(Scene scene, Field field, String typed) {
        String text = typed.strip();
        if (field.kind() == Field.Kind.CHOICE) {
            return choice(field, text);
        }
        if (what(field).equals("from") && text.equalsIgnoreCase(WhatIf.DEEPEST)) {
            return depth(scene, field, Double.POSITIVE_INFINITY);
        }
        double si;
        try {
            si = Quantities.parse(isNumber(text) ? text + " " + field.unit() : text, dimension(field));
        } catch (QuantityException e) {
            return refused(field.label() + ": " + e.getMessage());
        }
        double value = Quantities.inUnit(si, dimension(field), field.unit());
        boolean turns = what(field).equals("clock");
        if (!turns && !(value >= field.min() - 1e-9 && value <= field.max() * (1 + 1e-9))) {
            return refused(String.format(
                    Locale.ROOT,
                    "%s: %s %s found; %s to %s %s would do.",
                    field.label(),
                    Quantities.number(value, 4),
                    field.unit(),
                    Quantities.number(field.min(), 4),
                    Quantities.number(field.max(), 4),
                    field.unit()));
        }
        return number(scene, field, si);
    }

    private static Outcome choice(Field field, String text) {
        if (!field.choices().contains(text)) {
            return refused(field.label() + ": '" + text + "' found; one of " + field.choices() + " would do.");
        }
        return what(field).equals("entry")
                ? done(new Change.Entry(field.pass(), text))
                : done(new Change.Wand(field.pass(), text));
    }

    private static Outcome number(Scene scene, Field field, double si) {
        @Nullable String pass = field.pass().isEmpty() ? null : field.pass();
        return switch (what(field)) {
            case "from", "to" -> depth(scene, field, si);
            case "clock" -> done(new Change.Clock(pass, si));
            case "rate" -> done(new Change.DrawBack(pass, si));
            case "hold" -> done(new Change.Hold(pass, si));
            case "hang" -> done(new Change.Hang(pass, si));
            case "liquid" ->
                done(new Change.Liquid(
                        si * scene.product().densityKgPerM3() / scene.supply().liquidKgPerS()));
            default -> throw new IllegalArgumentException(field.id());
        };
    }

    private static Outcome depth(Scene scene, Field field, double si) {
        PassSpec pass = scene.passes().stream()
                .filter(p -> p.name().equals(field.pass()))
                .findFirst()
                .orElseThrow();
        boolean from = what(field).equals("from");
        double start = from ? si : pass.fromDepthM();
        double end = from ? pass.toDepthM() : si;
        if (end > start) {
            return refused(String.format(
                    Locale.ROOT,
                    "%s: %s found; a wand is drawn back, so it ends (%s) no deeper than it begins (%s).",
                    field.label(),
                    Quantities.length(si),
                    Quantities.length(end),
                    Quantities.length(start)));
        }
        return done(new Change.Depth(field.pass(), start, end));
    }

    private static boolean isNumber(String text) {
        return text.matches("[+-]?\\d*\\.?\\d+(?:[eE][+-]?\\d+)?");
    }

    private static String what(Field field) {
        int colon = field.id().indexOf(':');
        return colon < 0 ? field.id() : field.id().substring(0, colon);
    }

    private static Dimension dimension(Field field) {
        return switch (field.unit()) {
            case PassFields.MM -> Dimension.LENGTH;
            case PassFields.MM_PER_S -> Dimension.SPEED;
            case PassFields.DEG -> Dimension.ANGLE;
            case PassFields.SECONDS -> Dimension.TIME;
            case PassFields.ML_PER_MIN -> Dimension.VOLUME_FLOW;
            default -> throw new IllegalArgumentException(field.unit());
        };
    }

    private static Outcome done(Change change) {
        return new Outcome(change, "");
    }

    private static Outcome refused(String sentence) {
        return new Outcome(null, sentence);
    }
}
