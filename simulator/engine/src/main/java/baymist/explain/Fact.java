package baymist.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One thing that was found, with what it rests on.
 *
 * @param id short name, stable between versions
 * @param says a plain sentence with its numbers
 * @param numbers the same numbers for a program; the unit stands in the name, infinite and unknown ones are left out
 * @param facts what it rests on
 */
public record Fact(String id, String says, Map<String, Double> numbers, List<Fact> facts) {
    public Fact {
        numbers = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(numbers));
        facts = List.copyOf(facts);
    }

    static Fact of(String id, String says, Numbers numbers, Fact... facts) {
        return new Fact(id, says, numbers.map, List.of(facts));
    }

    /** Numbers in the order in which they are told. */
    static final class Numbers {
        private final Map<String, Double> map = new LinkedHashMap<>();

        static Numbers none() {
            return new Numbers();
        }

        static Numbers of(String name, double value) {
            return new Numbers().and(name, value);
        }

        Numbers and(String name, double value) {
            if (Double.isFinite(value)) {
                map.put(name, value);
            }
            return this;
        }
    }

    /** This fact and all that it rests on, in reading order. */
    public List<Fact> all() {
        List<Fact> all = new ArrayList<>();
        all.add(this);
        facts.forEach(f -> all.addAll(f.all()));
        return all;
    }
}
