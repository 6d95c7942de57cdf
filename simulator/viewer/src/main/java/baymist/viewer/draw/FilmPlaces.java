package baymist.viewer.draw;

import baymist.picture.FilmColours;
import baymist.scene.TargetSpec;

/**
 * Puts film on one line of colours: bare structure at its beginning, then the film scale. Along the line film grows logarithmically on
 * both sides of the haze limit, so that the border of what is bare falls where it belongs between two corners.
 */
public final class FilmPlaces {
    /** Colours on the line. */
    public static final int COLOURS = 1024;
    /** Colours that stand for bare structure. */
    public static final int BARE = 96;

    private final FilmColours scale;
    private final double perFold;

    public FilmPlaces(TargetSpec target) {
        scale = new FilmColours(target);
        perFold = (COLOURS - 1 - BARE) / Math.log(scale.highM() / scale.lowM());
    }

    /** Film at the pale end, m. */
    public double lowM() {
        return scale.lowM();
    }

    /** Film at the dark end, m. */
    public double highM() {
        return scale.highM();
    }

    /** Place of a film on the line, 0..1. */
    public float place(double filmM) {
        double colour = BARE + (filmM > 0 ? perFold * Math.log(filmM / scale.lowM()) : -COLOURS);
        return (float) ((Math.max(2, Math.min(COLOURS - 2, colour)) + 0.5) / COLOURS);
    }

    /** Places of films; not a number counts as bare. */
    public float[] places(float[] filmM) {
        float[] places = new float[filmM.length];
        for (int v = 0; v < places.length; v++) {
            places[v] = place(filmM[v]);
        }
        return places;
    }

    /**
     * The line as colours, 0xRRGGBB.
     *
     * @param bare colour of bare structure
     */
    public static int[] line(int bare) {
        int[] line = new int[COLOURS];
        for (int i = 0; i < COLOURS; i++) {
            line[i] = i < BARE ? bare : FilmColours.rgbAt((i - BARE) / (COLOURS - 1.0 - BARE));
        }
        return line;
    }
}
