package baymist.spray;

/**
 * Free round turbulent jet driven by its momentum, with matched constants.
 *
 * <p>Centre speed {@code um = B √(4J/(πρ))/x}, Gaussian profile {@code u = um exp(-ln2 r²/b²)}, half-width {@code b = S x}.
 * Conservation of momentum ties the constants, {@code B² S² · 4/(2 ln2) = 1}; with B = 6.2 this gives S = 0.09495, a flow of
 * 0.3226 Q0 x/d and a kinetic energy flux of 4.133 E0 d/x, against printed values of 0.1, 0.32 and 4.1 (Rajaratnam 1976;
 * Ricou and Spalding 1961). B from a set and S from another would create or destroy momentum (docs/theory/spray.md, 2).
 *
 * <p>Valid beyond some 6 to 10 diameters of the expanded jet, Re above 1e4, free surroundings. Nearer, the centre speed is
 * capped at the exit speed, the half-width is at least half the expanded diameter, and the flow at least that at the exit.
 *
 * @param thrustN J, N, above 0
 * @param exitSpeedMPerS cap of the centre speed, m/s, above 0
 * @param airDensityKgPerM3 density of the air that it mixes with
 */
public record RoundJet(double thrustN, double exitSpeedMPerS, double airDensityKgPerM3) {
    /** Decay constant of the centre speed (Rajaratnam 1976; measured band 5.8 to 6.3). */
    public static final double DECAY = 6.2;

    /** Slope of the half-width: {@code √(ln2/2)/B} = 0.09495. */
    public static final double SPREAD = Math.sqrt(Math.log(2) / 2) / DECAY;

    /**
     * Width of the fog's profile over that of the speed: the scalar falls as {@code (u/um)^Sct}; a turbulent Schmidt number of
     * 0.7 to 0.73 gives 1.17 to 1.195 (range quoted in reviews of round jets, from memory).
     */
    public static final double FOG_WIDTH = 1.18;

    /** {@code √(4J/(πρ))}: exit speed times the diameter of the fully expanded jet, m²/s. */
    public double strengthM2PerS() {
        return Math.sqrt(4 * thrustN / (Math.PI * airDensityKgPerM3));
    }

    /** Diameter of the jet once it has expanded to ambient density at its exit speed, m. */
    public double expandedDiameterM() {
        return strengthM2PerS() / exitSpeedMPerS;
    }

    /** Length over which the core keeps the exit speed, m: {@code B d}. */
    public double coreM() {
        return DECAY * expandedDiameterM();
    }

    /** Centre speed at distance x (m) from the nozzle, m/s. */
    public double centreSpeedMPerS(double x) {
        return x <= coreM() ? exitSpeedMPerS : DECAY * strengthM2PerS() / x;
    }

    /** Radius at which the speed is half that of the centre, m. */
    public double halfWidthM(double x) {
        return Math.max(SPREAD * x, 0.5 * expandedDiameterM());
    }

    /** Volume flow in the jet, m³/s: {@code (π/2B) √(4J/(πρ)) x}, at least that of the expanded exit. */
    public double flowM3PerS(double x) {
        double s = strengthM2PerS();
        return Math.max(Math.PI / 4 * s * expandedDiameterM(), Math.PI / (2 * DECAY) * s * x);
    }

    /** Flux of kinetic energy of the mean flow, W: {@code J um / 3}, the same closure (at the exit J U/2). */
    public double energyFluxW(double x) {
        return Math.min(0.5 * thrustN * exitSpeedMPerS, thrustN * DECAY * strengthM2PerS() / Math.max(x, 1e-12) / 3);
    }
}
