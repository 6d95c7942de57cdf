package baymist.viewer.fx;

import baymist.viewer.draw.DifferencePlaces;
import baymist.viewer.model.FilmUnit;

/** What the colours of a difference mean. */
final class DifferenceLegend extends LegendStrip {
    /** @param size of the lettering, 1 = plain */
    DifferenceLegend(DifferencePlaces places, FilmUnit unit, Theme theme, double size) {
        super("Change of film", theme, size);
        colours(DifferencePlaces::colour);
        String most = unit.text(places.largestM());
        below(0, "-" + most);
        below(0.5, "0");
        below(1, "+" + most);
        above(0, "lost");
        above(0.5, "no change");
        above(1, "gained");
    }
}
