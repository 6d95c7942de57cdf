package baymist.access;

/**
 * Whether the bend of a round tube passes a round hole in a plate, in closed form.
 *
 * <p>Stand an arc of centreline radius ρ, tube radius r = d/2, symmetrically in a plate of gauge t. Its outermost points lie at half of the gauge, {@code ρ + r}
 * from the centre of the arc; its inner side is nearest to that centre's side at the faces, {@code sqrt((ρ - r)² - t²/4)}. So it needs a hole of
 *
 * <pre>D = ρ + r - sqrt((ρ - r)² - t²/4)                                        (docs/theory/access-flexible.md, 9)</pre>
 *
 * and, solved for the radius, a bend passes a given hole D (in the plane of the bend; for thick plates to first order in t²) if
 *
 * <pre>ρ >= D/2 + t² / (8 (D - d))                                                                            (10)</pre>
 *
 * The circle on these two points as a diameter holds the whole tube between the faces where ρ is at least d (docs, 9). Own derivation.
 */
final class BendFit {
    private BendFit() {}

    /** Smallest hole that a long arc passes when it stands symmetrically, m; infinite where the gauge is too much for any. */
    static double leastHoleM(double bendRadiusM, double tubeM, double gaugeM) {
        double inner = bendRadiusM - tubeM / 2;
        double square = inner * inner - gaugeM * gaugeM / 4;
        return inner > 0 && square >= 0 ? bendRadiusM + tubeM / 2 - Math.sqrt(square) : Double.POSITIVE_INFINITY;
    }

    /** Smallest radius of a centreline whose arc passes a hole, m; infinite where the tube does not pass straight, or only just. */
    static double leastRadiusM(double holeM, double tubeM, double gaugeM) {
        double play = holeM - tubeM;
        if (play < 0) {
            return Double.POSITIVE_INFINITY;
        }
        if (gaugeM == 0) {
            return tubeM / 2;
        }
        return holeM / 2 + gaugeM * gaugeM / (8 * play);
    }
}
