package baymist.units;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.GIGA;
import static javax.measure.MetricPrefix.HECTO;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import org.jspecify.annotations.Nullable;
import systems.uom.common.USCustomary;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.Units;

/**
 * Trade spellings of units and the unit objects behind them. The objects and their factors come from the JSR 385 libraries
 * indriya and systems-common where those have them (inch, foot, pound, US gallon and fluid ounce, the SI); the pound-force
 * uses standard gravity 9.80665 m/s² (NIST SP 811, appendix B).
 */
final class UnitTable {
    /** Standard acceleration of free fall, CGPM 1901. */
    private static final Unit<?> STANDARD_GRAVITY =
            Units.METRE_PER_SQUARE_SECOND.multiply(RationalNumber.of(980_665, 100_000));

    /** Standard atmosphere, Pa: zero of gauge pressures (CGPM 1954). */
    static final long ATMOSPHERE_PA = 101_325;

    /**
     * One unit under its first spelling; {@code absolute} marks a pressure above vacuum. Its converter is made when it is asked for:
     * those of all units together would cost more than the units of a scene.
     */
    record Entry(String symbol, Unit<?> unit, Unit<?> si, boolean absolute) {
        UnitConverter toSi() {
            try {
                return unit.getConverterToAny(si);
            } catch (IncommensurableException e) {
                throw new IllegalStateException(unit + " does not measure the same as " + si, e);
            }
        }
    }

    private static final UnitTable INSTANCE = new UnitTable();

    private final Map<Dimension, Map<String, Entry>> bySpelling = new EnumMap<>(Dimension.class);
    private final Map<Dimension, Unit<?>> si = new EnumMap<>(Dimension.class);

    static UnitTable get() {
        return INSTANCE;
    }

    private UnitTable() {
        geometry();
        flows();
        fluids();
        pressures();
    }

    private void geometry() {
        si.put(Dimension.LENGTH, Units.METRE);
        add(Dimension.LENGTH, Units.METRE, "m");
        add(Dimension.LENGTH, MILLI(Units.METRE), "mm");
        add(Dimension.LENGTH, CENTI(Units.METRE), "cm");
        add(Dimension.LENGTH, MICRO(Units.METRE), "um", "micron", "microns");
        add(Dimension.LENGTH, USCustomary.INCH, "in", "inch", "inches");
        add(Dimension.LENGTH, USCustomary.FOOT, "ft", "foot", "feet");
        add(Dimension.LENGTH, USCustomary.YARD, "yd");
        add(Dimension.LENGTH, USCustomary.INCH.divide(1000), "mil", "mils", "thou");
        si.put(Dimension.TIME, Units.SECOND);
        add(Dimension.TIME, Units.SECOND, "s", "sec");
        add(Dimension.TIME, MILLI(Units.SECOND), "ms");
        add(Dimension.TIME, Units.MINUTE, "min");
        add(Dimension.TIME, Units.HOUR, "h", "hr");
        si.put(Dimension.ANGLE, Units.RADIAN);
        add(Dimension.ANGLE, USCustomary.DEGREE_ANGLE, "deg", "°");
        add(Dimension.ANGLE, Units.RADIAN, "rad");
        add(Dimension.ANGLE, USCustomary.REVOLUTION, "turn");
        si.put(Dimension.FRACTION, AbstractUnit.ONE);
        add(Dimension.FRACTION, AbstractUnit.ONE, "");
        add(Dimension.FRACTION, Units.PERCENT, "%", "percent");
        si.put(Dimension.ACCELERATION, Units.METRE_PER_SQUARE_SECOND);
        add(Dimension.ACCELERATION, Units.METRE_PER_SQUARE_SECOND, "m/s2");
        add(Dimension.ACCELERATION, USCustomary.FOOT.divide(Units.SECOND.pow(2)), "ft/s2");
        si.put(Dimension.SPEED, Units.METRE_PER_SECOND);
        for (Unit<?> time : List.of(Units.SECOND, Units.MINUTE)) {
            String per = time.equals(Units.SECOND) ? "/s" : "/min";
            add(Dimension.SPEED, Units.METRE.divide(time), "m" + per);
            add(Dimension.SPEED, CENTI(Units.METRE).divide(time), "cm" + per);
            add(Dimension.SPEED, MILLI(Units.METRE).divide(time), "mm" + per);
            add(Dimension.SPEED, USCustomary.INCH.divide(time), "in" + per);
            add(Dimension.SPEED, USCustomary.FOOT.divide(time), "ft" + per);
        }
    }

    private void flows() {
        Map<String, Unit<?>> volumes = new LinkedHashMap<>();
        volumes.put("mL", MILLI(Units.LITRE));
        volumes.put("L", Units.LITRE);
        volumes.put("m3", Units.CUBIC_METRE);
        volumes.put("fl oz", USCustomary.FLUID_OUNCE);
        volumes.put("gal", USCustomary.GALLON_LIQUID);
        Map<String, Unit<?>> masses = new LinkedHashMap<>();
        masses.put("g", Units.GRAM);
        masses.put("kg", Units.KILOGRAM);
        masses.put("mg", MILLI(Units.GRAM));
        masses.put("oz", USCustomary.OUNCE);
        masses.put("lb", USCustomary.POUND);
        Map<String, Unit<?>> times = new LinkedHashMap<>();
        times.put("s", Units.SECOND);
        times.put("min", Units.MINUTE);
        times.put("h", Units.HOUR);
        si.put(Dimension.VOLUME, Units.CUBIC_METRE);
        si.put(Dimension.MASS, Units.KILOGRAM);
        si.put(Dimension.VOLUME_FLOW, Units.CUBIC_METRE.divide(Units.SECOND));
        si.put(Dimension.MASS_FLOW, Units.KILOGRAM.divide(Units.SECOND));
        volumes.forEach((symbol, unit) -> add(Dimension.VOLUME, unit, symbol));
        masses.forEach((symbol, unit) -> add(Dimension.MASS, unit, symbol));
        alias(Dimension.VOLUME, "mL", "ml", "cc", "cm3");
        alias(Dimension.VOLUME, "L", "l");
        alias(Dimension.VOLUME, "fl oz", "oz fl", "floz");
        times.forEach((per, time) -> {
            volumes.forEach((symbol, unit) -> add(Dimension.VOLUME_FLOW, unit.divide(time), symbol + "/" + per));
            alias(Dimension.VOLUME_FLOW, "mL/" + per, "ml/" + per, "cc/" + per, "cm3/" + per);
            masses.forEach((symbol, unit) -> add(Dimension.MASS_FLOW, unit.divide(time), symbol + "/" + per));
        });
    }

    private void fluids() {
        Unit<?> perCubicMetre = Units.KILOGRAM.divide(Units.CUBIC_METRE);
        for (Dimension d : List.of(Dimension.DENSITY, Dimension.CONCENTRATION)) {
            si.put(d, perCubicMetre);
            add(d, perCubicMetre, "kg/m3");
            add(d, Units.GRAM.divide(Units.CUBIC_METRE), "g/m3");
            add(d, MILLI(Units.GRAM).divide(Units.CUBIC_METRE), "mg/m3");
            add(d, Units.GRAM.divide(Units.LITRE), "g/L", "mg/mL");
            add(d, Units.KILOGRAM.divide(Units.LITRE), "kg/L", "g/mL", "g/cm3");
            add(d, USCustomary.POUND.divide(USCustomary.GALLON_LIQUID), "lb/gal");
            add(d, USCustomary.POUND.divide(USCustomary.CUBIC_FOOT), "lb/ft3");
        }
        Unit<?> pascalSecond = Units.PASCAL.multiply(Units.SECOND);
        si.put(Dimension.DYNAMIC_VISCOSITY, pascalSecond);
        add(Dimension.DYNAMIC_VISCOSITY, pascalSecond, "Pa.s", "Pa s");
        add(Dimension.DYNAMIC_VISCOSITY, pascalSecond.divide(1000), "mPa.s", "mPa s", "cP");
        add(Dimension.DYNAMIC_VISCOSITY, pascalSecond.divide(10), "P");
        Unit<?> squareMetrePerSecond = Units.SQUARE_METRE.divide(Units.SECOND);
        for (Dimension d : List.of(Dimension.KINEMATIC_VISCOSITY, Dimension.DIFFUSIVITY)) {
            si.put(d, squareMetrePerSecond);
            add(d, squareMetrePerSecond, "m2/s");
            add(d, squareMetrePerSecond.divide(1_000_000), "mm2/s");
            add(d, squareMetrePerSecond.divide(10_000), "cm2/s");
        }
        add(Dimension.KINEMATIC_VISCOSITY, squareMetrePerSecond.divide(1_000_000), "cSt");
        add(Dimension.KINEMATIC_VISCOSITY, squareMetrePerSecond.divide(10_000), "St");
        Unit<?> newtonPerMetre = Units.NEWTON.divide(Units.METRE);
        si.put(Dimension.SURFACE_TENSION, newtonPerMetre);
        add(Dimension.SURFACE_TENSION, newtonPerMetre, "N/m");
        add(Dimension.SURFACE_TENSION, newtonPerMetre.divide(1000), "mN/m", "dyn/cm");
        si.put(Dimension.FORCE, Units.NEWTON);
        add(Dimension.FORCE, Units.NEWTON, "N");
        add(Dimension.FORCE, USCustomary.POUND.multiply(STANDARD_GRAVITY), "lbf");
        si.put(Dimension.TEMPERATURE, Units.KELVIN);
        add(Dimension.TEMPERATURE, Units.CELSIUS, "degC", "°C");
        add(Dimension.TEMPERATURE, USCustomary.FAHRENHEIT, "degF", "°F");
        add(Dimension.TEMPERATURE, Units.KELVIN, "K");
    }

    private void pressures() {
        Dimension d = Dimension.PRESSURE;
        Unit<?> psi = USCustomary.POUND.multiply(STANDARD_GRAVITY).divide(USCustomary.INCH.pow(2));
        Unit<?> bar = Units.PASCAL.multiply(100_000);
        si.put(d, Units.PASCAL);
        add(d, psi, "psi", "psig");
        add(d, bar, "bar", "barg");
        add(d, bar.divide(1000), "mbar");
        add(d, Units.PASCAL, "Pa");
        add(d, HECTO(Units.PASCAL), "hPa");
        add(d, KILO(Units.PASCAL), "kPa");
        add(d, MEGA(Units.PASCAL), "MPa");
        add(d, GIGA(Units.PASCAL), "GPa");
        add(d, psi.multiply(1000), "ksi");
        addAbsolute(psi, "psia");
        addAbsolute(bar, "bar_abs");
        addAbsolute(Units.PASCAL, "Pa_abs");
        addAbsolute(KILO(Units.PASCAL), "kPa_abs");
    }

    private void alias(Dimension d, String symbol, String... spellings) {
        Map<String, Entry> units = spellings(d);
        Entry entry = units.get(symbol);
        if (entry == null) {
            throw new IllegalStateException("no unit " + symbol + " of " + d.noun());
        }
        for (String spelling : spellings) {
            units.put(spelling, entry);
        }
    }

    private void add(Dimension d, Unit<?> unit, String... spellings) {
        put(d, unit, false, spellings);
    }

    private void addAbsolute(Unit<?> unit, String... spellings) {
        put(Dimension.PRESSURE, unit, true, spellings);
    }

    private void put(Dimension d, Unit<?> unit, boolean absolute, String... spellings) {
        Unit<?> target = si.get(d);
        if (target == null) {
            throw new IllegalStateException("no SI unit of " + d.noun());
        }
        Entry entry = new Entry(spellings[0], unit, target, absolute);
        Map<String, Entry> units = bySpelling.computeIfAbsent(d, k -> new LinkedHashMap<>());
        for (String spelling : spellings) {
            if (units.put(spelling, entry) != null) {
                throw new IllegalStateException("unit " + spelling + " stated twice for " + d.noun());
            }
        }
    }

    /** The unit of this spelling, or null. */
    @Nullable
    Entry find(Dimension d, String spelling) {
        return spellings(d).get(spelling);
    }

    /** All spellings of a dimension in the order of the table; the first of each unit is the preferred one. */
    Map<String, Entry> spellings(Dimension d) {
        Map<String, Entry> units = bySpelling.get(d);
        if (units == null) {
            throw new IllegalStateException("no units for " + d);
        }
        return units;
    }

    /** Preferred symbols of a dimension. */
    List<String> symbols(Dimension d) {
        return new ArrayList<>(new LinkedHashSet<>(
                spellings(d).values().stream().map(Entry::symbol).toList()));
    }
}
