package baymist.picture;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** One scale for all panels, and their places in rows. */
final class PanelLayout {
    static final double TITLE_SIZE = 19;
    static final double VIEW_SIZE = 14;
    static final double HEAD = 50;
    private static final double GAP_X = 44;
    private static final double GAP_Y = 40;
    private static final double TALLEST = 900;
    /** Height that all rows should stay within, pixels, as long as the widest panel keeps a third of the page. */
    private static final double FULL_PAGE = 1900;

    /** A panel at its place: top left corner of the drawing (below its two lines of title), pixels. */
    record Placed(Panel panel, double x, double y, double width, double height) {}

    private final List<Placed> placed;
    private final double pixelsPerM;
    private final double heightPx;

    private PanelLayout(List<Placed> placed, double pixelsPerM, double heightPx) {
        this.placed = placed;
        this.pixelsPerM = pixelsPerM;
        this.heightPx = heightPx;
    }

    static PanelLayout of(List<Panel> panels, double width, Lettering lettering) throws IOException {
        double widest = panels.stream().mapToDouble(Panel::widthM).max().orElse(1);
        double tallest = panels.stream().mapToDouble(Panel::heightM).max().orElse(1);
        double scale = Math.min(width / widest, TALLEST / tallest);
        PanelLayout layout = pack(panels, scale, width, lettering);
        while (layout.heightPx > FULL_PAGE && widest * scale > width / 3) {
            scale *= 0.93;
            layout = pack(panels, scale, width, lettering);
        }
        return layout;
    }

    /** Panels at a scale that is settled already. */
    static PanelLayout at(List<Panel> panels, double pixelsPerM, double width, Lettering lettering) throws IOException {
        return pack(panels, pixelsPerM, width, lettering);
    }

    private static PanelLayout pack(List<Panel> panels, double scale, double width, Lettering lettering)
            throws IOException {
        List<Placed> placed = new ArrayList<>();
        double x = 0;
        double y = 0;
        double rowHeight = 0;
        for (Panel p : panels) {
            double w = p.widthM() * scale;
            double h = p.heightM() * scale;
            double block =
                    Math.max(w, Math.max(lettering.width(p.title(), TITLE_SIZE), lettering.width(p.view(), VIEW_SIZE)));
            if (x > 0 && x + block > width + 0.5) {
                x = 0;
                y += rowHeight + GAP_Y;
                rowHeight = 0;
            }
            placed.add(new Placed(p, x, y + HEAD, w, h));
            x += block + GAP_X;
            rowHeight = Math.max(rowHeight, HEAD + h);
        }
        return new PanelLayout(List.copyOf(placed), scale, y + rowHeight);
    }

    List<Placed> placed() {
        return placed;
    }

    double pixelsPerM() {
        return pixelsPerM;
    }

    double heightPx() {
        return heightPx;
    }
}
