package baymist.viewer.draw;

/**
 * Puts change of film on one line of colours: lost at its beginning, unchanged in the middle, gained at its end; places without a
 * counterpart are told apart by a colour of their own before the beginning. The scale is even about zero and grows like a logarithm beyond
 * the haze limit, so that small changes are seen beside large ones.
 *
 * @param hazeM film from which a surface counts as reached, m
 * @param largestM change at the ends of the scale, m
 */
public record DifferencePlaces(double hazeM, double largestM) {
    private static final int COLOURS = 512;
    private static final int UNKNOWN = 16;
    private static final int LOST = 0xB3400E;
    private static final int SAME = 0xE4E1DA;
    private static final int GAINED = 0x1F4E9A;

    public DifferencePlaces {
        largestM = Math.max(largestM, 2 * hazeM);
    }

    /** Place of a change, 0..1; not a number = no counterpart. */
    public float place(double changeM) {
        if (Double.isNaN(changeM)) {
            return (UNKNOWN / 2 + 0.5f) / COLOURS;
        }
        double size = Math.log1p(Math.abs(changeM) / hazeM) / Math.log1p(largestM / hazeM);
        double share = 0.5 + 0.5 * Math.signum(changeM) * Math.min(1, size);
        return (float) ((UNKNOWN + 1 + share * (COLOURS - UNKNOWN - 3) + 0.5) / COLOURS);
    }

    /** Places of changes. */
    public float[] places(float[] changeM) {
        float[] places = new float[changeM.length];
        for (int v = 0; v < places.length; v++) {
            places[v] = place(changeM[v]);
        }
        return places;
    }

    /**
     * The line as colours, 0xRRGGBB.
     *
     * @param unknown colour of places without a counterpart
     */
    public int[] line(int unknown) {
        int[] line = new int[COLOURS];
        for (int i = 0; i < COLOURS; i++) {
            double share = (i - UNKNOWN) / (COLOURS - 1.0 - UNKNOWN);
            line[i] = i < UNKNOWN ? unknown : colour(share);
        }
        return line;
    }

    /** Colour at a place of the scale: 0 = most lost, 1 = most gained. */
    public static int colour(double share) {
        double size = Math.abs(2 * share - 1);
        int end = share < 0.5 ? LOST : GAINED;
        int rgb = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            double mixed = (1 - size) * (SAME >> shift & 255) + size * (end >> shift & 255);
            rgb |= (int) Math.round(mixed) << shift;
        }
        return rgb;
    }
}
