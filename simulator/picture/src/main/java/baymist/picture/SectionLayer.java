package baymist.picture;

import java.io.IOException;

/** What is drawn over (and under) the structure in a section. */
interface SectionLayer {
    /** Paints what lies under all lines. */
    void ground(Canvas c, SectionPainter.Place p);

    /** Adds names; the corner of the drawing is (0, 0). */
    void label(SectionPainter.Place p, LeaderLabels labels) throws IOException;

    /** Paints over the structure and tells the bays' names what to stay clear of. */
    void paint(Canvas c, SectionPainter.Place p, BayLabels bays);

    /** Explains its signs from (x, y) on, one line high. */
    void key(Canvas c, double x, double y) throws IOException;
}
