package baymist.geom;

/**
 * One number for an unordered pair of numbers, for hash tables of edges. The ends of an edge mostly have numbers that are nearly
 * alike, and plain hashes of such pairs fall together; a product with the golden ratio's odd multiple of 2^64 spreads them (Knuth
 * 1998, The Art of Computer Programming 3, section 6.4) and keeps different pairs apart.
 */
public final class PairKey {
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    private PairKey() {}

    /** The same for (a, b) and (b, a), different for any other pair; both 0 or more. */
    public static long of(int a, int b) {
        return ((long) Math.min(a, b) << 32 | Math.max(a, b)) * SPREAD;
    }
}
