package baymist.viewer.draw;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds places for labels beside what they name, so that none lies on another; the first in the list choose first. */
public final class LabelPlaces {
    private static final int DIRECTIONS = 12;
    private static final double[] RADII_PX = {14, 30, 52, 80, 115};
    private static final double GAP_PX = 3;

    private LabelPlaces() {}

    /** A rectangle of the picture, pixels from the top left corner. */
    public record Box(double x, double y, double width, double height) {
        public boolean meets(Box o, double gap) {
            return x < o.x + o.width + gap
                    && o.x < x + width + gap
                    && y < o.y + o.height + gap
                    && o.y < y + height + gap;
        }

        boolean within(double w, double h) {
            return x >= 2 && y >= 2 && x + width <= w - 2 && y + height <= h - 2;
        }
    }

    /** What is to be named: its place on the picture and the size of its label, pixels. */
    public record Wish(double x, double y, double width, double height) {}

    /**
     * Places labels.
     *
     * @param taken rectangles that stay free of labels
     * @return one for each wish; null where there is no room
     */
    public static List<@Nullable Box> of(List<Wish> wishes, List<Box> taken, double widthPx, double heightPx) {
        List<Box> used = new ArrayList<>(taken);
        for (Wish w : wishes) {
            used.add(new Box(w.x() - 3, w.y() - 3, 6, 6));
        }
        List<@Nullable Box> places = new ArrayList<>();
        for (Wish wish : wishes) {
            Box place = place(wish, used, widthPx, heightPx);
            places.add(place);
            if (place != null) {
                used.add(place);
            }
        }
        return places;
    }

    private static @Nullable Box place(Wish wish, List<Box> used, double widthPx, double heightPx) {
        boolean right = wish.x() >= widthPx / 2;
        for (double radius : RADII_PX) {
            for (int d = 0; d < DIRECTIONS; d++) {
                // outwards first, then turning up and down by turns
                double turn = (d % 2 == 0 ? -1 : 1) * ((d + 1) / 2) * 2 * Math.PI / DIRECTIONS - Math.PI / 12;
                double dx = Math.cos(turn) * (right ? 1 : -1);
                double dy = Math.sin(turn);
                double x = wish.x() + radius * dx + (dx >= 0 ? 0 : -wish.width());
                double y = wish.y() + radius * dy - wish.height() / 2;
                Box box = new Box(x, y, wish.width(), wish.height());
                if (box.within(widthPx, heightPx) && used.stream().noneMatch(u -> u.meets(box, GAP_PX))) {
                    return box;
                }
            }
        }
        return null;
    }
}
