package baymist.picture;

import baymist.cavity.Cavity;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Which surfel owns each pixel of a panel: the nearest one, if it is within three quarters of a cell along either page
 * axis and the pixel lies on the sheet. Every surfel so gets the patch of sheet round its centroid, without gaps.
 */
final class PanelRaster {
    private static final double REACH = 0.75;
    /** Triangles of the sheet that look more than this squarely at the page make its outline: cosine. */
    private static final double FACES_PAGE = 0.2;

    private final int width;
    private final int height;
    private final int[] owner;
    private final double pixelsPerM;
    private final Panel panel;

    /** Lays a raster of the panel at this scale. */
    PanelRaster(Panel panel, SurfelSet surfels, Cavity cavity, double pixelsPerM) {
        this.panel = panel;
        this.pixelsPerM = pixelsPerM;
        width = Math.max(1, (int) Math.ceil(panel.widthM() * pixelsPerM));
        height = Math.max(1, (int) Math.ceil(panel.heightM() * pixelsPerM));
        owner = new int[width * height];
        Arrays.fill(owner, -1);
        assign(surfels);
        cutToSheet(cavity);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Owner of a pixel, or -1 off the sheet and outside the raster. */
    int owner(int x, int y) {
        return x < 0 || y < 0 || x >= width || y >= height ? -1 : owner[x + width * y];
    }

    /** Page position of a point, pixels from the top left corner of the raster. */
    double x(Vec3 p) {
        return (panel.u(p) - panel.lowU()) * pixelsPerM;
    }

    double y(Vec3 p) {
        return (panel.highV() - panel.v(p)) * pixelsPerM;
    }

    private void assign(SurfelSet surfels) {
        int columns = (int) Math.ceil(panel.widthM() / panel.cellU()) + 1;
        int rows = (int) Math.ceil(panel.heightM() / panel.cellV()) + 1;
        int[] first = new int[columns * rows];
        Arrays.fill(first, -1);
        int[] shown = panel.surfels();
        int[] next = new int[shown.length];
        double[] u = new double[shown.length];
        double[] v = new double[shown.length];
        for (int i = shown.length - 1; i >= 0; i--) {
            int s = shown[i];
            Vec3 p = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
            u[i] = (panel.u(p) - panel.lowU()) / panel.cellU();
            v[i] = (panel.highV() - panel.v(p)) / panel.cellV();
            int bucket = (int) u[i] + columns * (int) v[i];
            next[i] = first[bucket];
            first[bucket] = i;
        }
        for (int y = 0; y < height; y++) {
            double pv = (y + 0.5) / pixelsPerM / panel.cellV();
            for (int x = 0; x < width; x++) {
                double pu = (x + 0.5) / pixelsPerM / panel.cellU();
                owner[x + width * y] = nearest(pu, pv, u, v, first, next, columns, rows, shown);
            }
        }
    }

    private static int nearest(
            double pu, double pv, double[] u, double[] v, int[] first, int[] next, int columns, int rows, int[] shown) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        int bu = (int) pu;
        int bv = (int) pv;
        for (int b = Math.max(0, bv - 1); b <= Math.min(rows - 1, bv + 1); b++) {
            for (int a = Math.max(0, bu - 1); a <= Math.min(columns - 1, bu + 1); a++) {
                for (int i = first[a + columns * b]; i >= 0; i = next[i]) {
                    double du = Math.abs(u[i] - pu);
                    double dv = Math.abs(v[i] - pv);
                    double d = du * du + dv * dv;
                    boolean nearer = d < least || (d == least && shown[i] < best);
                    if (du <= REACH && dv <= REACH && nearer) {
                        least = d;
                        best = shown[i];
                    }
                }
            }
        }
        return best;
    }

    private void cutToSheet(Cavity cavity) {
        Path2D outline = sheetOutline(cavity);
        if (outline == null) {
            return;
        }
        BufferedImage mask = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D g = mask.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
        g.setColor(Color.WHITE);
        g.fill(outline);
        g.draw(outline); // a pixel of slack, so that seams between triangles don't show
        g.dispose();
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (mask.getRaster().getSample(x, y, 0) == 0) {
                    owner[x + width * y] = -1;
                }
            }
        }
    }

    /** Triangles of the cut sheet on the page, or null when the cavity has none of this part. */
    private @Nullable Path2D sheetOutline(Cavity cavity) {
        TriangleMesh mesh = cavity.cutSheets();
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        boolean any = false;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double facing = mesh.normal(t).dot(panel.normal());
            if (cavity.partOfCut(t) != panel.part() || Math.abs(facing) < FACES_PAGE) {
                continue;
            }
            any = true;
            // all triangles turn the same way on the page, so that those that overlap don't cancel
            boolean flip = turnsLeft(mesh, t);
            for (int k = 0; k < 3; k++) {
                Vec3 p = mesh.point(t, flip ? 2 - k : k);
                if (k == 0) {
                    path.moveTo(x(p), y(p));
                } else {
                    path.lineTo(x(p), y(p));
                }
            }
            path.closePath();
        }
        return any ? path : null;
    }

    private boolean turnsLeft(TriangleMesh mesh, int t) {
        Vec3 a = mesh.point(t, 0);
        Vec3 b = mesh.point(t, 1);
        Vec3 c = mesh.point(t, 2);
        double turn = (x(b) - x(a)) * (y(c) - y(a)) - (y(b) - y(a)) * (x(c) - x(a));
        return turn < 0;
    }
}
