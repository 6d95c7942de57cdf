package baymist.scene.io;

import baymist.problem.SourcePlace;
import baymist.units.Quantities;
import baymist.units.Quantity;
import baymist.units.QuantityException;
import java.util.Optional;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** Decodes single values: quantities, numbers, texts and words. */
final class ScalarDecoder {
    private final Problems problems;

    ScalarDecoder(Problems problems) {
        this.problems = problems;
    }

    static boolean isScalar(Shape shape) {
        return shape instanceof Shape.Measure
                || shape instanceof Shape.Real
                || shape instanceof Shape.Count
                || shape instanceof Shape.Text
                || shape instanceof Shape.Choice;
    }

    Value decode(ScalarNode node, Shape shape, SourcePlace place) {
        String text = node.getValue();
        if (shape instanceof Shape.Measure measure) {
            return measure(text, measure, place);
        }
        if (shape instanceof Shape.Real real) {
            boolean number = node.getTag().equals(Tag.INT) || node.getTag().equals(Tag.FLOAT);
            return number(text, number, real, place);
        }
        if (shape instanceof Shape.Count count) {
            return count(text, node.getTag().equals(Tag.INT), count, place);
        }
        if (shape instanceof Shape.Choice choice) {
            return word(text, choice, place);
        }
        return text(text, (Shape.Text) shape, place);
    }

    /** The default of a field that is left out; it stands at the mapping that misses it. */
    Value decodeDefault(Shape.Field field, SourcePlace mapping) {
        String key = mapping.field().isEmpty() ? field.key() : mapping.field() + "." + field.key();
        SourcePlace place = new SourcePlace(mapping.file(), mapping.line(), key);
        Shape shape = field.shape();
        if (shape instanceof Shape.Either either) {
            shape = either.options().stream()
                    .filter(o -> o instanceof Shape.Choice c && c.words().contains(field.defaultText()))
                    .findFirst()
                    .orElse(either.options().stream()
                            .filter(ScalarDecoder::isScalar)
                            .findFirst()
                            .orElseThrow());
        }
        Tag tag = shape instanceof Shape.Count ? Tag.INT : shape instanceof Shape.Real ? Tag.FLOAT : Tag.STR;
        ScalarNode node =
                new ScalarNode(tag, true, field.defaultText(), ScalarStyle.PLAIN, Optional.empty(), Optional.empty());
        return decode(node, shape, place);
    }

    private Value measure(String text, Shape.Measure measure, SourcePlace place) {
        Quantity quantity;
        try {
            quantity = Quantities.parse(text, measure.dimensions());
        } catch (QuantityException e) {
            SceneProblem problem = switch (e.kind()) {
                case MISSING_UNIT -> SceneProblem.MISSING_UNIT;
                case UNKNOWN_UNIT -> SceneProblem.UNKNOWN_UNIT;
                case WRONG_UNIT -> SceneProblem.WRONG_UNIT;
                case BAD_NUMBER -> SceneProblem.BAD_QUANTITY;
            };
            problems.add(problem, place, SourceFiles.oneLine(e.getMessage()));
            return new Value.Broken(place);
        }
        return ranged(text, quantity.si(), quantity.dimension().name(), measure.range(), place);
    }

    private Value number(String text, boolean number, Shape.Real real, SourcePlace place) {
        double value;
        try {
            value = number ? Double.parseDouble(text) : Double.NaN;
        } catch (NumberFormatException e) {
            value = Double.NaN; // 0x1F, .inf
        }
        if (!Double.isFinite(value)) {
            return notANumber(text, ShapeWords.of(real), place);
        }
        return ranged(text, value, "", real.range(), place);
    }

    private Value ranged(String text, double si, String unitOf, Interval range, SourcePlace place) {
        if (!range.holds(si)) {
            problems.add(
                    SceneProblem.OUT_OF_RANGE,
                    place,
                    "`" + SourceFiles.printable(text) + "` is out of range; it must be " + range.words());
            return new Value.Broken(place);
        }
        return new Value.Num(place, si, unitOf, text);
    }

    private Value count(String text, boolean whole, Shape.Count count, SourcePlace place) {
        if (!whole || !text.matches("[+-]?\\d{1,15}")) {
            return notANumber(text, ShapeWords.of(count), place);
        }
        long value = Long.parseLong(text);
        boolean inside = value >= count.low() && value <= count.high();
        if (!inside && count.low() == count.high()) {
            problems.add(
                    SceneProblem.VERSION,
                    place,
                    "format version `" + text + "` is not known; this reader takes version `" + count.low() + "`");
            return new Value.Broken(place);
        }
        if (!inside) {
            problems.add(
                    SceneProblem.OUT_OF_RANGE,
                    place,
                    "`" + text + "` is out of range; " + ShapeWords.of(count) + " is wanted");
            return new Value.Broken(place);
        }
        return new Value.Num(place, value, "", text);
    }

    private Value notANumber(String text, String wanted, SourcePlace place) {
        problems.add(
                SceneProblem.NOT_A_NUMBER,
                place,
                "`" + SourceFiles.printable(text) + "` is no plain number; " + wanted
                        + " is wanted, without unit and quotes");
        return new Value.Broken(place);
    }

    private Value word(String text, Shape.Choice choice, SourcePlace place) {
        if (!choice.words().contains(text)) {
            problems.add(
                    SceneProblem.UNKNOWN_WORD,
                    place,
                    "`" + SourceFiles.printable(text) + "` is not known here" + Suggestion.of(text, choice.words()));
            return new Value.Broken(place);
        }
        return new Value.Word(place, text);
    }

    private Value text(String text, Shape.Text shape, SourcePlace place) {
        if (!text.matches(shape.regex())) {
            problems.add(
                    SceneProblem.TEXT_FORM,
                    place,
                    "found `" + SourceFiles.printable(text) + "`; wanted: " + shape.wanted());
            return new Value.Broken(place);
        }
        return new Value.Word(place, text);
    }
}
