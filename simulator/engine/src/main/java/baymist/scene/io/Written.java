package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Numbers and texts as a person would write them into a scene file: quantities in a usual unit that read back to the same bits (angles to the last four). */
final class Written {
    /** Significant digits that a person puts up with. */
    private static final int FEW_DIGITS = 7;

    private static final Map<Dimension, List<String>> USUAL = Map.ofEntries(
            Map.entry(Dimension.LENGTH, List.of("mm", "um", "in", "m")),
            Map.entry(Dimension.TIME, List.of("s", "min", "h")),
            Map.entry(Dimension.MASS, List.of("g", "kg")),
            Map.entry(Dimension.VOLUME, List.of("mL", "m3")),
            Map.entry(Dimension.PRESSURE, List.of("psi", "bar", "kPa", "Pa")),
            Map.entry(Dimension.SPEED, List.of("mm/s", "m/s")),
            Map.entry(Dimension.MASS_FLOW, List.of("g/min", "kg/s")),
            Map.entry(Dimension.VOLUME_FLOW, List.of("mL/min", "m3/s")),
            Map.entry(Dimension.DYNAMIC_VISCOSITY, List.of("mPa.s", "Pa.s")),
            Map.entry(Dimension.SURFACE_TENSION, List.of("mN/m", "N/m")),
            Map.entry(Dimension.TEMPERATURE, List.of("degC", "K")),
            Map.entry(Dimension.ANGLE, List.of("deg", "rad")));

    private Written() {}

    /** A quantity with its unit. */
    static String of(double si, Dimension dimension) {
        if (!Double.isFinite(si)) {
            return Double.toString(si); // no file holds it; callers leave such keys out
        }
        for (String unit : usual(si, dimension)) {
            String text = shortly(Quantities.inUnit(si, dimension, unit)) + " " + unit;
            if (reads(text, dimension, si)) {
                return text;
            }
        }
        String unit = dimension.siSymbol().equals("1") ? "" : " " + dimension.siSymbol();
        return Double.toString(si) + unit;
    }

    private static List<String> usual(double si, Dimension dimension) {
        return dimension == Dimension.LENGTH && Math.abs(si) < 1e-4 && si != 0
                ? List.of("um", "m")
                : USUAL.getOrDefault(dimension, List.of());
    }

    private static String shortly(double value) {
        return Quantities.number(value, FEW_DIGITS);
    }

    private static boolean reads(String text, Dimension dimension, double si) {
        try {
            double slack = dimension == Dimension.ANGLE ? 4 * Math.ulp(si) : 0; // degrees rather than the last bits
            return Math.abs(Quantities.parse(text, dimension) - si) <= slack;
        } catch (QuantityException e) {
            return false;
        }
    }

    static String length(double m) {
        return of(m, Dimension.LENGTH);
    }

    static String time(double s) {
        return of(s, Dimension.TIME);
    }

    static String angle(double rad) {
        return of(rad, Dimension.ANGLE);
    }

    /** Three lengths. */
    static List<Object> point(Vec3 p) {
        return List.of(length(p.x()), length(p.y()), length(p.z()));
    }

    /** Three plain numbers whose unit vector is this one to the last bit, where any are found. */
    static List<Object> direction(Vec3 d) {
        Vec3 best = d;
        for (int k = 1; k < 64; k++) {
            Vec3 scaled = d.times(k);
            if (scaled.unit().equals(d)) {
                best = scaled;
                break;
            }
        }
        return List.of(best.x(), best.y(), best.z());
    }

    /** A mapping in the order of its entries; entries without a value are left out. */
    static final class Group {
        private final Map<String, Object> entries = new LinkedHashMap<>();

        Group put(String key, @Nullable Object value) {
            if (value != null) {
                entries.put(key, value);
            }
            return this;
        }

        /** Puts a value unless the condition is false. */
        Group put(String key, @Nullable Object value, boolean when) {
            return when ? put(key, value) : this;
        }

        Map<String, Object> map() {
            return entries;
        }
    }

    static Group group() {
        return new Group();
    }

    static <T> List<Object> list(List<T> items, java.util.function.Function<T, Object> each) {
        List<Object> all = new ArrayList<>();
        items.forEach(i -> all.add(each.apply(i)));
        return all;
    }
}
