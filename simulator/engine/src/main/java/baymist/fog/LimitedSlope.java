package baymist.fog;

/**
 * How much further than the donor cell's own value the value at a link lies: equations (4c) to (4e) of docs/theory/fog.md.
 *
 * <p>Koren (1993), "A robust upwind discretization method for advection, diffusion and source terms", in Vreugdenhil and Koren, Numerical
 * Methods for Advection-Diffusion Problems (from memory): upwind-biased parabola through three cells, kept within Sweby's (1984, SIAM J. Numer. Anal.
 * 21, 995) region. Here the bound on the side of the donor shrinks with its Courant number, so that no step can take more from a cell than it holds.
 */
final class LimitedSlope {
    /**
     * ASSUMED: twice the numerical diffusion below this share of the drift is left alone. The exponential flux then has a cell Péclet number of 0.6 at
     * most and diffuses 3 % more than the eddies do, whose own diffusivity is not known to 3 %; it is of second order there by itself.
     */
    static final double NEGLIGIBLE = 0.1;

    /** Keeps a value that should be the receiver's own from falling below it by rounding: a receiver without fog must not get less than none. */
    static final double ROUNDING = 1 - 1e-14;

    /** A donor may give all but a trillionth of itself where a sharp edge leaves it: rounding must not take the rest. */
    private static final double SPARED = 1 - 1e-12;

    /** The same two in single precision. */
    static final float ROUNDING_SINGLE = 1 - 1e-5f;

    private static final float SPARED_SINGLE = 1 - 1e-4f;

    private LimitedSlope() {}

    /**
     * Part of the difference behind that may be added to a donor which gives the share {@code courant} in its step, {@code sloped} of it with a drift.
     *
     * <p>Then the additions take at most {@code sloped * room <= 1 - courant}: what the donor cell's own fluxes leave.
     *
     * @param courant 0..1
     * @param sloped 0..courant
     */
    static double room(double courant, double sloped) {
        double left = SPARED * (1 - courant);
        return sloped > left ? left / sloped : 1;
    }

    /**
     * What is added to the donor cell's value.
     *
     * @param held the donor's value, 0 or more
     * @param behind donor less the cell behind it
     * @param ahead receiving cell less donor
     * @param along how far the drift carries until the middle of the link's step, twice that share of a cell
     * @param across change of the donor's value until then by all but the drift along the link
     * @param room see {@link #room}
     * @return slope part between 0 and {@code ahead} and between 0 and {@code room * behind}, plus {@code across}; together no less than
     *     {@code -held} and no more than {@code room * held}
     */
    static double beyond(double held, double behind, double ahead, double along, double across, double room) {
        // Comparisons by hand: the library's minimum also minds signed zeros and costs more than the rest.
        double total = slope(behind, ahead, along, room) + across;
        double highest = room * held;
        double least = -ROUNDING * held;
        total = highest < total ? highest : total;
        return total < least ? least : total;
    }

    /** {@link #room(double, double)} in single precision. */
    static float room(float courant, float sloped) {
        float left = SPARED_SINGLE * (1 - courant);
        return sloped > left ? left / sloped : 1;
    }

    /** {@link #beyond(double, double, double, double, double, double)} in single precision. */
    static float beyond(float held, float behind, float ahead, float along, float across, float room) {
        float total = across;
        if (behind * ahead > 0) {
            float wanted = Math.abs((behind + (ahead + ahead)) * ((1 - along) * (1f / 6)));
            float most = room * Math.abs(behind);
            float other = ROUNDING_SINGLE * Math.abs(ahead);
            float size = most < wanted ? most : wanted;
            size = other < size ? other : size;
            total += ahead < 0 ? -size : size;
        }
        float highest = room * held;
        float least = -ROUNDING_SINGLE * held;
        total = highest < total ? highest : total;
        return total < least ? least : total;
    }

    private static double slope(double behind, double ahead, double along, double room) {
        if (!(behind * ahead > 0)) {
            return 0;
        }
        double wanted = (behind + (ahead + ahead)) * ((1 - along) * (1.0 / 6));
        double most = room * behind;
        double other = ROUNDING * ahead;
        if (ahead > 0) {
            double size = most < wanted ? most : wanted;
            return other < size ? other : size;
        }
        double size = most > wanted ? most : wanted;
        return other > size ? other : size;
    }
}
