package baymist.airflow;

/**
 * Pressure of one vented group of bays over one window of time. Volume flows are at the cavity's own pressure, so that
 * {@code supply - outflow = volume * expansion} holds to rounding.
 *
 * @param startS job time at which the window begins, s
 * @param durationS length of the window, s
 * @param supplyM3PerS mean air supplied, m³/s at cavity pressure
 * @param ventOutflowM3PerS mean outflow through all vents, m³/s at cavity pressure; negative = drawn in
 * @param ventOutflowAmbientM3PerS the same mass flow at ambient density, m³/s
 * @param expansionPerS mean of (dp/dt)/p, 1/s; positive while the cavity is pumped up
 * @param startGaugePa,endGaugePa gauge pressure at both ends, Pa; it is monotone between them
 */
public record PressureWindow(
        double startS,
        double durationS,
        double supplyM3PerS,
        double ventOutflowM3PerS,
        double ventOutflowAmbientM3PerS,
        double expansionPerS,
        double startGaugePa,
        double endGaugePa) {
    /** Nothing supplied, nothing vented, ambient pressure. */
    public static PressureWindow calm(double startS, double durationS) {
        return new PressureWindow(startS, durationS, 0, 0, 0, 0, 0, 0);
    }

    /** Highest gauge pressure in the window, Pa. */
    public double peakGaugePa() {
        return Math.max(startGaugePa, endGaugePa);
    }

    /** Job time of {@link #peakGaugePa()}, s. */
    public double peakTimeS() {
        return endGaugePa > startGaugePa ? startS + durationS : startS;
    }
}
