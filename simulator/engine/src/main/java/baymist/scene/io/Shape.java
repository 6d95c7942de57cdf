package baymist.scene.io;

import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What may stand at a place of a scene or model file. The format is one tree of shapes ({@link SceneFormat},
 * {@link CavityFormat}, {@link ModelFormat}); the reader decodes files by it, the JSON Schema and the tables of docs/formats are
 * written from it, so that the three can't disagree.
 */
sealed interface Shape {
    /** A quantity with a unit, of the first dimension that fits. */
    record Measure(List<Dimension> dimensions, Interval range) implements Shape {
        static Measure of(Dimension dimension, String range) {
            return new Measure(List.of(dimension), Interval.of(dimension, range));
        }
    }

    /** A plain number without unit. */
    record Real(Interval range) implements Shape {
        static Real of(String range) {
            return new Real(Interval.of(Dimension.FRACTION, range));
        }
    }

    /** A whole number. */
    record Count(long low, long high) implements Shape {}

    /** Words of the author's own; {@code regex} for the whole text, {@code wanted} says it in words. */
    record Text(String regex, String wanted) implements Shape {
        static final Text NAME = new Text("\\S(?:[^\\n]{0,78}\\S)?", "a name of 1 to 80 characters on one line");
        static final Text PROSE = new Text("[\\s\\S]*\\S[\\s\\S]*", "a text");
    }

    /** One of a few words. */
    record Choice(List<String> words) implements Shape {
        static Choice of(String... words) {
            return new Choice(List.of(words));
        }
    }

    /** A list; three lengths make a point. */
    record ListOf(Shape item, int fewest, int most) implements Shape {}

    /** A mapping whose keys the author names. */
    record MapOf(Shape value, String keys) implements Shape {}

    /** A mapping with known keys. */
    record Group(String name, String doc, List<Field> fields, List<Pick> picks) implements Shape {
        public Group {
            fields = List.copyOf(fields);
            picks = List.copyOf(picks);
        }

        static Group of(String name, String doc, Field... fields) {
            return new Group(name, doc, List.of(fields), List.of());
        }

        /** The same group, of whose named keys one must be there. */
        Group oneOf(String... keys) {
            return picking(true, keys);
        }

        /** The same group, of whose named keys one at most may be there. */
        Group atMostOneOf(String... keys) {
            return picking(false, keys);
        }

        private Group picking(boolean required, String... keys) {
            List<Pick> more = new ArrayList<>(picks);
            more.add(new Pick(List.of(keys), required));
            return new Group(name, doc, fields, more);
        }

        List<String> keys() {
            return fields.stream().map(Field::key).toList();
        }
    }

    /** A mapping whose {@code key} names which of several groups it is; each group states that key too. */
    record Family(String name, String key, String doc, Map<String, Group> members) implements Shape {
        static Family of(String name, String key, String doc, Group... groups) {
            Map<String, Group> members = new LinkedHashMap<>();
            for (Group g : groups) {
                members.put(g.name(), g);
            }
            return new Family(name, key, doc, members);
        }
    }

    /** The first option that fits the kind of node (word, quantity, list, mapping). */
    record Either(List<Shape> options) implements Shape {
        static Either of(Shape... options) {
            return new Either(List.of(options));
        }
    }

    /** The content itself, or the name of a file that holds it, relative to the file that names it. */
    record FileOr(Shape content) implements Shape {}

    /**
     * A key of a group.
     *
     * @param defaultText what stands for a key that is left out, as a scalar of the shape; "" = none or worked out by the
     *     assembler, then {@code doc} says how
     */
    record Field(String key, Shape shape, boolean required, String defaultText, String doc) {
        static Field need(String key, Shape shape, String doc) {
            return new Field(key, shape, true, "", doc);
        }

        static Field may(String key, Shape shape, String defaultText, String doc) {
            return new Field(key, shape, false, defaultText, doc);
        }
    }

    /** Keys that stand for each other. */
    record Pick(List<String> keys, boolean required) {}
}
