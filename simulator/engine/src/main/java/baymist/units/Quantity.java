package baymist.units;

/**
 * A parsed quantity.
 *
 * @param si value in the dimension's SI unit
 * @param dimension which of the allowed dimensions its unit measures
 */
public record Quantity(double si, Dimension dimension) {}
