package baymist.units;

import java.util.List;

/**
 * What a quantity measures. Each dimension has one SI unit inside the engine and a short list of units that a person would
 * write; {@link UnitTable} holds the full list.
 */
public enum Dimension {
    LENGTH("length", "m", "8 ft", "0.25 in", "12 mm", "10 um"),
    TIME("time", "s", "30 s", "5 min"),
    MASS("mass", "kg", "12 g", "0.5 oz"),
    VOLUME("volume", "m3", "12 mL", "1 fl oz"),
    /** Gauge pressure, Pa above the standard atmosphere. */
    PRESSURE("pressure", "Pa", "80 psi", "5.5 bar", "10 kPa"),
    FORCE("force", "N", "20 N", "5 lbf"),
    SPEED("speed", "m/s", "100 mm/s", "4 in/s", "0.1 m/s"),
    ACCELERATION("acceleration", "m/s2", "9.80665 m/s2"),
    MASS_FLOW("mass flow", "kg/s", "0.4 g/s", "24 g/min"),
    VOLUME_FLOW("volume flow", "m3/s", "25 mL/min", "1 fl oz/min"),
    DENSITY("density", "kg/m3", "880 kg/m3", "0.88 g/mL"),
    /** Mass of product suspended in a volume of air, kg/m³. */
    CONCENTRATION("concentration", "kg/m3", "12 mg/m3", "5 g/m3"),
    DYNAMIC_VISCOSITY("dynamic viscosity", "Pa.s", "40 cP", "40 mPa.s"),
    KINEMATIC_VISCOSITY("kinematic viscosity", "m2/s", "40 cSt", "40 mm2/s"),
    DIFFUSIVITY("diffusivity", "m2/s", "1e-4 m2/s", "1 cm2/s"),
    SURFACE_TENSION("surface tension", "N/m", "0.03 N/m", "30 mN/m"),
    /** Thermodynamic temperature, K. */
    TEMPERATURE("temperature", "K", "20 degC", "68 degF"),
    ANGLE("angle", "rad", "90 deg", "0.5 turn"),
    /** A share of one; may be written without a unit. */
    FRACTION("fraction", "1", "0.85", "85 %");

    private final String noun;
    private final String siSymbol;
    /** Separated by commas: a list would not be immutable by its type. */
    private final String examples;

    Dimension(String noun, String siSymbol, String... examples) {
        this.noun = noun;
        this.siSymbol = siSymbol;
        this.examples = String.join(",", examples);
    }

    /** What it is called in a message, e.g. "length". */
    public String noun() {
        return noun;
    }

    /** The noun with its article, e.g. "an angle". */
    public String nounWithArticle() {
        return ("aeiou".indexOf(noun.charAt(0)) >= 0 ? "an " : "a ") + noun;
    }

    /** Symbol of the unit that the engine computes in. */
    public String siSymbol() {
        return siSymbol;
    }

    /** Quantities as a person would write them, for messages. */
    public List<String> examples() {
        return List.of(examples.split(",", -1));
    }

    /**
     * Whether a bare {@code 0} has one meaning only. Not so for temperatures (0 K, 0 degC) and pressures (gauge or
     * absolute).
     */
    public boolean zeroNeedsNoUnit() {
        return this != TEMPERATURE && this != PRESSURE;
    }
}
