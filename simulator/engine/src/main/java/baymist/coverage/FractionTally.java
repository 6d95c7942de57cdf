package baymist.coverage;

/** Sums area and film of one group of surfels, in the order in which they are added. */
final class FractionTally {
    private final String name;
    private double areaM2;
    private double reachedM2;
    private double protectedM2;
    private double excessM2;
    private double filmM3;

    FractionTally(String name) {
        this.name = name;
    }

    void add(double surfelAreaM2, double filmM, Verdict verdict) {
        areaM2 += surfelAreaM2;
        filmM3 += surfelAreaM2 * filmM;
        if (verdict != Verdict.UNREACHED) {
            reachedM2 += surfelAreaM2;
        }
        if (verdict == Verdict.PROTECTED || verdict == Verdict.EXCESS) {
            protectedM2 += surfelAreaM2;
        }
        if (verdict == Verdict.EXCESS) {
            excessM2 += surfelAreaM2;
        }
    }

    boolean isEmpty() {
        return areaM2 <= 0;
    }

    /** Shares of the group's area; all zero for a group without area. */
    Fractions toFractions() {
        if (isEmpty()) {
            return new Fractions(name, 0, 0, 0, 0, 0, 0);
        }
        return new Fractions(
                name,
                areaM2,
                reachedM2 / areaM2,
                protectedM2 / areaM2,
                (reachedM2 - protectedM2) / areaM2,
                excessM2 / areaM2,
                filmM3 / areaM2);
    }
}
