package baymist.viewer.draw;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Lines that show the shape: rims and folds of sheets, lines where parts meet, outlines of openings. They come from the whole sheets, since
 * cutting leaves edges that lie on no line of the structure, and are parted where they pass from bay to bay.
 */
public final class StructureLines {
    /** Sheets that turn less than this are smooth, cosine of 25 degrees (ASSUMED). */
    private static final double SMOOTH = Math.cos(Math.toRadians(25));
    /** Meshes beyond this are drawn without lines: they would only blacken the picture. */
    private static final int MOST_TRIANGLES = 300_000;
    /** Corners of a round opening. */
    private static final int ROUND = 28;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final Map<Owner, List<Vec3>> ends = new LinkedHashMap<>();

    private record Owner(int part, int bay) {}

    private record Edge(Vec3 low, Vec3 high) {}

    /**
     * Lines of one part in one bay.
     *
     * @param bay index of a bay, or -1 where no air is near
     * @param segments m, x y z of one end then of the other
     */
    public record Lines(int part, int bay, float[] segments) {}

    private static final class Use {
        private final Vec3 normal;
        private final int part;
        private int triangles = 1;
        private boolean drawn = true;

        Use(Vec3 normal, int part) {
            this.normal = normal;
            this.part = part;
        }

        void meet(Vec3 other, int otherPart) {
            triangles++;
            drawn = triangles > 2 || part != otherPart || Math.abs(normal.dot(other)) < SMOOTH;
        }
    }

    private StructureLines(Cavity cavity, VoxelGrid grid) {
        this.cavity = cavity;
        this.grid = grid;
    }

    /** The lines of a cavity. */
    public static List<Lines> of(Cavity cavity, VoxelGrid grid) {
        StructureLines lines = new StructureLines(cavity, grid);
        lines.edges();
        lines.openings();
        List<Lines> out = new ArrayList<>();
        lines.ends.forEach((owner, points) -> out.add(new Lines(owner.part(), owner.bay(), flat(points))));
        return out;
    }

    private static float[] flat(List<Vec3> points) {
        float[] flat = new float[3 * points.size()];
        for (int i = 0; i < flat.length; i++) {
            flat[i] = (float) points.get(i / 3).get(i % 3);
        }
        return flat;
    }

    private void edges() {
        TriangleMesh mesh = cavity.sheets();
        Map<Edge, Use> uses = new LinkedHashMap<>();
        for (int t = 0; t < mesh.triangleCount() && mesh.triangleCount() <= MOST_TRIANGLES; t++) {
            int part = cavity.partOfSheet(t);
            if (part < 0) {
                continue;
            }
            Vec3 n = mesh.normal(t);
            for (int k = 0; k < 3; k++) {
                Vec3 a = mesh.point(t, k);
                Vec3 b = mesh.point(t, (k + 1) % 3);
                Edge edge = before(a, b) ? new Edge(a, b) : new Edge(b, a);
                Use use = uses.putIfAbsent(edge, new Use(n, part));
                if (use != null) {
                    use.meet(n, part);
                }
            }
        }
        uses.forEach((edge, use) -> {
            if (use.drawn) {
                add(use.part, edge.low(), edge.high());
            }
        });
    }

    private void openings() {
        for (Opening o : cavity.openings()) {
            List<double[]> ring = o.place().outline().polygon(ROUND);
            for (int i = 0; i < ring.size(); i++) {
                double[] a = ring.get(i);
                double[] b = ring.get((i + 1) % ring.size());
                add(o.part(), o.place().point(a[0], a[1]), o.place().point(b[0], b[1]));
            }
        }
    }

    /** Adds a line, in pieces as the bay beside it changes. */
    private void add(int part, Vec3 from, Vec3 to) {
        double step = Math.min(
                grid.sizeM().x(), Math.min(grid.sizeM().y(), grid.sizeM().z()));
        int pieces = (int) Math.max(1, Math.min(400, Math.ceil(from.distance(to) / step)));
        Vec3 along = to.minus(from);
        int start = 0;
        int bay = bayBeside(from.plus(0.5 / pieces, along));
        for (int i = 1; i <= pieces; i++) {
            int next = i == pieces ? Integer.MIN_VALUE : bayBeside(from.plus((i + 0.5) / pieces, along));
            if (next != bay) {
                List<Vec3> list = ends.computeIfAbsent(new Owner(part, bay), o -> new ArrayList<>());
                list.add(from.plus((double) start / pieces, along));
                list.add(from.plus((double) i / pieces, along));
                start = i;
                bay = next;
            }
        }
    }

    /** The bay with most air round a point, or -1. */
    private int bayBeside(Vec3 p) {
        Map<Integer, Integer> votes = new HashMap<>();
        int best = -1;
        int most = 0;
        for (int n = 0; n < 27; n++) {
            Vec3 off = new Vec3(
                    0.9 * (n % 3 - 1) * grid.sizeM().x(),
                    0.9 * (n / 3 % 3 - 1) * grid.sizeM().y(),
                    0.9 * (n / 9 - 1) * grid.sizeM().z());
            int cell = grid.cellHolding(p.plus(off));
            if (cell >= 0) {
                int bay = grid.bayOfCell(cell);
                int here = votes.merge(bay, 1, Integer::sum);
                if (here > most) {
                    most = here;
                    best = bay;
                }
            }
        }
        return best;
    }

    private static boolean before(Vec3 a, Vec3 b) {
        int order = Double.compare(a.x(), b.x());
        order = order != 0 ? order : Double.compare(a.y(), b.y());
        order = order != 0 ? order : Double.compare(a.z(), b.z());
        return order < 0;
    }
}
