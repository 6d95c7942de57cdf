package baymist.film;

import baymist.scene.ProductSpec;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;

/**
 * Wet film on each surfel by origin: thrown there by a jet, or settled from fog. Mutable; owned by the run, changed by
 * {@link #addDirect}, {@link #addFog} and {@link FilmRuns}. What lies on closures is on masks, not on the structure.
 */
public final class FilmState {
    private final SurfelSet surfels;
    private final ProductSpec product;
    /** Whether what lies on a surfel lies on a mask: closures, and protected items under one, [surfels]. */
    private final boolean[] masked;

    /** Wet mass, kg, [surfels]. */
    final double[] direct;

    final double[] fog;

    /** Deposit that the fog reported at the last call, kg, [surfels]. */
    private final double[] fogSeen;

    double drippedKg;
    double fallenKg;
    private double addedKg;

    /** Low-order part of {@link #addedKg} (Neumaier's sum). */
    private double addedLostKg;

    public FilmState(SurfelSet surfels, ProductSpec product) {
        this(surfels, product, new boolean[surfels.count()]);
    }

    /** @param maskedItem surfels of protected items that a mask covers, [surfels] */
    public FilmState(SurfelSet surfels, ProductSpec product, boolean[] maskedItem) {
        if (!(product.densityKgPerM3() > 0 && product.nonVolatile() >= 0 && product.nonVolatile() <= 1)) {
            throw new IllegalArgumentException("product " + product);
        }
        this.surfels = surfels;
        this.product = product;
        this.masked = maskedItem.clone();
        for (int s = 0; s < masked.length; s++) {
            masked[s] |= surfels.closure()[s] >= 0;
        }
        this.direct = new double[surfels.count()];
        this.fog = new double[surfels.count()];
        this.fogSeen = new double[surfels.count()];
    }

    /** Adds what the jets throw at the sheet over a time, s. */
    public void addDirect(SprayHits hits, double durationS) {
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            addDirect(hits.hitSurfel()[i], hits.hitKgPerS()[i] * durationS);
        }
    }

    /** Adds wet mass to one surfel, kg. */
    public void addDirect(int surfel, double massKg) {
        if (!(massKg >= 0) || Double.isInfinite(massKg)) {
            throw new IllegalArgumentException("film of " + massKg + " kg on surfel " + surfel);
        }
        direct[surfel] += massKg;
        note(massKg);
    }

    /**
     * Adds what fog left since the last call.
     *
     * @param depositedKg deposit since the start of the run, kg, [surfels]; never falls
     */
    public void addFog(double[] depositedKg) {
        if (depositedKg.length != fog.length) {
            throw new IllegalArgumentException(
                    "deposit has " + depositedKg.length + " entries, the grid has " + fog.length + " surfels");
        }
        for (int s = 0; s < fog.length; s++) {
            double massKg = depositedKg[s] - fogSeen[s];
            if (!(massKg >= 0)) {
                throw new IllegalArgumentException("the deposit on surfel " + s + " changes by " + massKg + " kg");
            }
            fog[s] += massKg;
            fogSeen[s] = depositedKg[s];
            note(massKg);
        }
    }

    private void note(double massKg) {
        double t = addedKg + massKg;
        addedLostKg += addedKg >= massKg ? addedKg - t + massKg : massKg - t + addedKg;
        addedKg = t;
    }

    /** A copy that goes its own way. */
    FilmState copy() {
        FilmState other = new FilmState(surfels, product);
        System.arraycopy(masked, 0, other.masked, 0, masked.length);
        System.arraycopy(direct, 0, other.direct, 0, direct.length);
        System.arraycopy(fog, 0, other.fog, 0, fog.length);
        System.arraycopy(fogSeen, 0, other.fogSeen, 0, fogSeen.length);
        other.drippedKg = drippedKg;
        other.fallenKg = fallenKg;
        other.addedKg = addedKg;
        other.addedLostKg = addedLostKg;
        return other;
    }

    /** A copy at close-up: masks, tape and plugs have come off and taken what was on them along. */
    public FilmState withMasksOff() {
        FilmState other = copy();
        for (int s = 0; s < masked.length; s++) {
            if (masked[s]) {
                other.direct[s] = 0;
                other.fog[s] = 0;
                other.masked[s] = surfels.closure()[s] >= 0;
            }
        }
        other.addedKg = addedKg - maskedKg();
        return other;
    }

    public int count() {
        return direct.length;
    }

    /** Wet mass, kg. */
    public double massKg(int surfel) {
        return direct[surfel] + fog[surfel];
    }

    /** The share of it that jets threw there, kg; film that ran keeps its origin. */
    public double directKg(int surfel) {
        return direct[surfel];
    }

    /** The share of it that fog left, kg. */
    public double fogKg(int surfel) {
        return fog[surfel];
    }

    /** Wet build m/(rho A), m. */
    public double wetBuildM(int surfel) {
        return massKg(surfel) / (product.densityKgPerM3() * surfels.areaM2()[surfel]);
    }

    /**
     * Build of what stays when all volatiles have left, m: wet build times the non-volatile mass fraction, with the
     * density of the liquid. ASSUMED: product sheets rarely give the density of what stays; a thinner's is a tenth lower.
     */
    public double dryBuildM(int surfel) {
        return wetBuildM(surfel) * product.nonVolatile();
    }

    /** Film on the structure and on bare protected items, kg. */
    public double filmKg() {
        return sum(false);
    }

    /** Film on closures (tape, plugs, covers) and on masks of protected items, kg. */
    public double maskedKg() {
        return sum(true);
    }

    private double sum(boolean onMasks) {
        double sum = 0;
        for (int s = 0; s < direct.length; s++) {
            if (masked[s] == onMasks) {
                sum += massKg(s);
            }
        }
        return sum;
    }

    /** Liquid that drained or dripped out through openings, kg. */
    public double drippedKg() {
        return drippedKg;
    }

    /** Liquid that fell from ceilings onto what lies below, kg; it is film again there. */
    public double fallenKg() {
        return fallenKg;
    }

    /** Whether what lies on a surfel goes with a mask, tape, plug or cover. */
    public boolean isMasked(int surfel) {
        return masked[surfel];
    }

    /** Mass that was ever added, kg = film + masked + dripped. */
    public double addedKg() {
        return addedKg + addedLostKg;
    }

    /** Moves mass between surfels, or out if {@code to} is -1; both origins in proportion. */
    void move(int from, int to, double massKg) {
        double total = massKg(from);
        double share = massKg >= total ? 1 : massKg / total;
        double d = share * direct[from];
        double f = share * fog[from];
        direct[from] -= d;
        fog[from] -= f;
        if (to < 0) {
            drippedKg += d + f;
        } else {
            direct[to] += d;
            fog[to] += f;
        }
    }
}
