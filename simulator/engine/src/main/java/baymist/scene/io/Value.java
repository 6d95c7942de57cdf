package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A decoded piece of a file with its place. What could not be decoded is {@link Broken}: its problem is on the list, and the
 * assemblers see NaN, "" or nothing there, which no later check trips over.
 */
sealed interface Value {
    SourcePlace place();

    /** A number or quantity, SI. {@code written} is the text in the file. */
    record Num(SourcePlace place, double si, String unitOf, String written) implements Value {}

    /** A text or word. */
    record Word(SourcePlace place, String text) implements Value {}

    /** A list in order. */
    record Items(SourcePlace place, List<Value> values) implements Value {
        /** Coordinates of a list of three numbers; NaN where one is broken. */
        Vec3 vector() {
            return new Vec3(number(0), number(1), number(2));
        }

        double number(int i) {
            return i < values.size() && values.get(i) instanceof Num n ? n.si() : Double.NaN;
        }
    }

    /** Something is wrong here, and the problem is on the list. */
    record Broken(SourcePlace place) implements Value {}

    /**
     * A mapping.
     *
     * @param group name of the group of the format that it was decoded by
     */
    record Fields(SourcePlace place, String group, Map<String, Value> values) implements Value {
        /** Whether the key is there, broken or not. */
        boolean has(String key) {
            return values.containsKey(key);
        }

        @Nullable
        Value get(String key) {
            return values.get(key);
        }

        /** SI value; NaN when absent or broken. */
        double si(String key) {
            return values.get(key) instanceof Num n ? n.si() : Double.NaN;
        }

        /** SI value; the fallback when the key is absent, NaN when it is broken. */
        double si(String key, double fallback) {
            return has(key) ? si(key) : fallback;
        }

        int whole(String key) {
            return values.get(key) instanceof Num n ? (int) n.si() : 0;
        }

        /** Text; "" when absent or broken. */
        String text(String key) {
            return values.get(key) instanceof Word w ? w.text() : "";
        }

        /** What the file says at a scalar key, for messages. */
        String written(String key) {
            Value v = values.get(key);
            return v instanceof Num n ? n.written() : v instanceof Word w ? w.text() : "";
        }

        @Nullable
        Fields fields(String key) {
            return values.get(key) instanceof Fields f ? f : null;
        }

        /** The mappings of a list; broken ones are left out. */
        List<Fields> list(String key) {
            List<Fields> found = new ArrayList<>();
            if (values.get(key) instanceof Items items) {
                for (Value v : items.values()) {
                    if (v instanceof Fields f) {
                        found.add(f);
                    }
                }
            }
            return found;
        }

        /** The texts of a list; broken ones are left out. */
        List<String> texts(String key) {
            List<String> found = new ArrayList<>();
            if (values.get(key) instanceof Items items) {
                items.values().forEach(v -> {
                    if (v instanceof Word w) {
                        found.add(w.text());
                    }
                });
            }
            return found;
        }

        @Nullable
        Vec3 vector(String key) {
            return values.get(key) instanceof Items items ? items.vector() : null;
        }

        /** Place of a key, or of the mapping where it is absent. */
        SourcePlace at(String key) {
            Value v = values.get(key);
            return v == null ? place : v.place();
        }
    }
}
