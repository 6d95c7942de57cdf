package baymist.picture;

/**
 * Colours of a change of film on a diverging scale: dark blue where a fifth of the film is left, pale grey where nothing changed, dark
 * orange where it is five times as much. Blue against orange keeps apart for all usual kinds of colour blindness (Brettel, Viénot and Mollon
 * 1997 model what is seen; the points are our own choice), and lightness falls alike to both ends.
 */
final class DifferenceColours {
    /** Ratio at the ends of the scale. */
    static final double MOST = 5;

    private static final OkLab LESS = OkLab.ofPolar(0.38, 0.12, 262);
    private static final OkLab LESS_MIDDLE = OkLab.ofPolar(0.68, 0.10, 250);
    private static final OkLab SAME = OkLab.ofPolar(0.95, 0.005, 100);
    private static final OkLab MORE_MIDDLE = OkLab.ofPolar(0.72, 0.13, 65);
    private static final OkLab MORE = OkLab.ofPolar(0.42, 0.11, 48);

    private final double hazeM;

    /** @param hazeM film that changes are measured against where there is next to none, m */
    DifferenceColours(double hazeM) {
        this.hazeM = hazeM;
    }

    /** Place on the scale, -1..1, of a change from one film to another, m: the logarithm of their ratio, both with haze added. */
    double place(double beforeM, double nowM) {
        double ratio = Math.log((nowM + hazeM) / (beforeM + hazeM)) / Math.log(MOST);
        return Math.max(-1, Math.min(1, ratio));
    }

    int rgb(double beforeM, double nowM) {
        return colour(place(beforeM, nowM)).toRgb();
    }

    /** Colour at a place -1..1. */
    static OkLab colour(double place) {
        OkLab middle = place < 0 ? LESS_MIDDLE : MORE_MIDDLE;
        OkLab end = place < 0 ? LESS : MORE;
        double way = Math.min(1, Math.abs(place));
        return way < 0.5 ? SAME.towards(middle, 2 * way) : middle.towards(end, 2 * way - 1);
    }
}
