package baymist.picture;

import baymist.voxel.SurfelSet;
import java.awt.image.BufferedImage;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/** The pixels of one panel: film colours, hatched and outlined bare regions, lines where other members stand. */
final class PanelImage {
    private static final int HATCH = 8;
    private static final int BARE_PAPER = 0xFFF6F0;
    private static final int BARE = Canvas.BARE.getRGB() & 0xFFFFFF;
    private static final int RIM = 0x8A9099;
    private static final int MEMBER = 0x30363D;
    private static final int HALO = 0xFFFFFF;
    /** A number needs this much room round its place, pixels; smaller spots keep their hatch alone. */
    private static final int ROOM = 2;
    /** A place is deep from this share of the deepest on. */
    private static final double DEEP = 0.8;

    private final PanelRaster raster;
    private final SurfelSet surfels;
    private final int[] regionOf;
    private final IntUnaryOperator colour;
    private final int[] depth;

    /**
     * @param regionOf number of the bare region of each surfel, 0 = not bare, [surfels]
     * @param colour of a surfel that is not bare, red, green and blue in the low 24 bits
     */
    PanelImage(PanelRaster raster, SurfelSet surfels, int[] regionOf, IntUnaryOperator colour) {
        this.raster = raster;
        this.surfels = surfels;
        this.regionOf = regionOf;
        this.colour = colour;
        this.depth = depths();
    }

    /** The panel as an image, clear where there is no sheet. */
    BufferedImage paint() {
        int w = raster.width();
        int h = raster.height();
        boolean[] member = new boolean[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                member[x + w * y] = parted(raster.owner(x, y), raster.owner(x + 1, y))
                        || parted(raster.owner(x, y), raster.owner(x, y + 1));
            }
        }
        BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_ARGB);
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int s = raster.owner(x, y);
                if (s >= 0) {
                    int rgb = member[x + w * y] ? MEMBER : nextTo(member, x, y) ? HALO : colour(x, y, s);
                    image.setRGB(x, y, 0xFF000000 | rgb);
                }
            }
        }
        return image;
    }

    /**
     * The pixel of a region that lies deep inside it and near its middle, or null when the region has no room for a
     * number.
     */
    double @Nullable [] middleOf(int region) {
        int w = raster.width();
        int deepest = 0;
        double sumX = 0;
        double sumY = 0;
        int count = 0;
        for (int y = 0; y < raster.height(); y++) {
            for (int x = 0; x < w; x++) {
                if (region(x, y) == region) {
                    deepest = Math.max(deepest, depth[x + w * y]);
                    sumX += x;
                    sumY += y;
                    count++;
                }
            }
        }
        return deepest < ROOM ? null : deepNear(region, DEEP * deepest, sumX / count, sumY / count);
    }

    /** The pixel of a region nearest to a point among those at least this deep. */
    private double[] deepNear(int region, double deep, double nearX, double nearY) {
        double[] best = {nearX, nearY};
        double least = Double.POSITIVE_INFINITY;
        for (int y = 0; y < raster.height(); y++) {
            for (int x = 0; x < raster.width(); x++) {
                double d = Math.hypot(x - nearX, y - nearY);
                if (d < least && depth[x + raster.width() * y] >= deep && region(x, y) == region) {
                    least = d;
                    best = new double[] {x + 0.5, y + 0.5};
                }
            }
        }
        return best;
    }

    private int colour(int x, int y, int s) {
        if (regionOf[s] != 0) {
            boolean edge = depth[x + raster.width() * y] <= 2;
            return edge || (x + y) % HATCH < 2 ? BARE : BARE_PAPER;
        }
        boolean rim = raster.owner(x - 1, y) < 0
                || raster.owner(x + 1, y) < 0
                || raster.owner(x, y - 1) < 0
                || raster.owner(x, y + 1) < 0;
        return rim ? RIM : colour.applyAsInt(s);
    }

    /** Steps to the nearest pixel of another region, of film or off the sheet; 1 on the edge itself. Two sweeps. */
    private int[] depths() {
        int w = raster.width();
        int h = raster.height();
        int[] d = new int[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                d[x + w * y] = 1 + Math.min(at(d, x, y, x - 1, y), at(d, x, y, x, y - 1));
            }
        }
        for (int y = h - 1; y >= 0; y--) {
            for (int x = w - 1; x >= 0; x--) {
                int near = 1 + Math.min(at(d, x, y, x + 1, y), at(d, x, y, x, y + 1));
                d[x + w * y] = Math.min(d[x + w * y], near);
            }
        }
        return d;
    }

    private int at(int[] d, int x, int y, int nx, int ny) {
        boolean onPage = nx >= 0 && ny >= 0 && nx < raster.width() && ny < raster.height();
        return onPage && region(x, y) == region(nx, ny) ? d[nx + raster.width() * ny] : 0;
    }

    private int region(int x, int y) {
        int s = raster.owner(x, y);
        return s < 0 ? -1 : regionOf[s];
    }

    private boolean nextTo(boolean[] member, int x, int y) {
        int w = raster.width();
        return (x > 0 && member[x - 1 + w * y])
                || (y > 0 && member[x + w * (y - 1)])
                || (x < w - 1 && member[x + 1 + w * y])
                || (y < raster.height() - 1 && member[x + w * (y + 1)]);
    }

    /** Whether something stands between two surfels that touch on the page: no way from one to the other in two steps. */
    private boolean parted(int s, int t) {
        if (s < 0 || t < 0 || s == t) {
            return false;
        }
        for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
            int n = surfels.neighbour()[e];
            if (n == t || (surfels.part()[n] == surfels.part()[s] && isNeighbour(n, t))) {
                return false;
            }
        }
        return true;
    }

    private boolean isNeighbour(int s, int t) {
        for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
            if (surfels.neighbour()[e] == t) {
                return true;
            }
        }
        return false;
    }
}
