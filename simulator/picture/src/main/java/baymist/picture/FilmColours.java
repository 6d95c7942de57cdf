package baymist.picture;

import baymist.scene.TargetSpec;

/**
 * Colours of film on a logarithmic scale, from pale yellow at haze to dark indigo at twice the excess limit.
 *
 * <p>The colours lie on a bent line through three points of OKLab and are spaced evenly along it; lightness falls all
 * the way, so that order can be read without colour. The points are our own choice.
 */
public final class FilmColours {
    /** Colour of bare metal, 0xRRGGBB: a red-orange that no film colour comes near. */
    public static final int BARE_RGB = Canvas.BARE.getRGB() & 0xFFFFFF;

    private static final OkLab[] POINTS = {
        OkLab.ofPolar(0.955, 0.075, 103), OkLab.ofPolar(0.66, 0.115, 185), OkLab.ofPolar(0.29, 0.115, 278)
    };

    private final double lowM;
    private final double highM;

    /** Scale of a job: haze to twice the excess limit. */
    public FilmColours(TargetSpec target) {
        lowM = target.hazeM();
        highM = 2 * target.excessM();
    }

    /** Film at the pale end, m. */
    public double lowM() {
        return lowM;
    }

    /** Film at the dark end, m. */
    public double highM() {
        return highM;
    }

    /** Place of a film on the scale, 0..1; thinner and thicker films stick to the ends. */
    public double place(double filmM) {
        if (!(filmM > lowM)) {
            return 0;
        }
        return Math.min(1, Math.log(filmM / lowM) / Math.log(highM / lowM));
    }

    /** Colour of a film, 0xRRGGBB. */
    public int rgb(double filmM) {
        return colour(place(filmM)).toRgb();
    }

    /** Colour at a place 0..1 of the scale, 0xRRGGBB. */
    public static int rgbAt(double place) {
        return colour(place).toRgb();
    }

    /** Colour at a place 0..1 of the scale. */
    static OkLab colour(double place) {
        double whole = 0;
        for (int i = 1; i < POINTS.length; i++) {
            whole += POINTS[i - 1].distance(POINTS[i]);
        }
        double left = Math.min(1, Math.max(0, place)) * whole;
        for (int i = 1; i < POINTS.length; i++) {
            double length = POINTS[i - 1].distance(POINTS[i]);
            if (left <= length || i == POINTS.length - 1) {
                return POINTS[i - 1].towards(POINTS[i], Math.min(1, left / length));
            }
            left -= length;
        }
        return POINTS[POINTS.length - 1];
    }
}
