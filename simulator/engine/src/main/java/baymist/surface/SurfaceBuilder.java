package baymist.surface;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Makes a {@link Surface}: splits the sheets, looks what each side faces, sorts the sides into patches, gathers surfels for each vertex. */
final class SurfaceBuilder {
    /** How far a surfel's centroid may lie from the middle of the triangle that shows it, voxels along each axis. */
    private static final double REACH = 1.0;
    /** Triangles that meet at less than about 35 degrees share a normal: cosine. */
    private static final double SMOOTH = 0.82;

    private static final double GROW = 1.1;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final SurfaceOptions options;
    private final SurfelFinder finder;
    private final double voxelM;

    private Vec3 radiusM = Vec3.ZERO;
    private final FloatList xyz = new FloatList();
    private final FloatList normals = new FloatList();
    private final IntList corners = new IntList();
    private final IntList surfelOfTriangle = new IntList();
    private final IntList start = new IntList();
    private final IntList surfel = new IntList();
    private final FloatList weight = new FloatList();

    SurfaceBuilder(Cavity cavity, VoxelGrid grid, SurfaceOptions options) {
        this.cavity = cavity;
        this.grid = grid;
        this.options = options;
        finder = new SurfelFinder(grid);
        voxelM = Math.cbrt(grid.sizeM().x() * grid.sizeM().y() * grid.sizeM().z());
    }

    Surface build() {
        Pieces sheets = SheetSplitter.sheets(cavity);
        double edge = options.edgeM() > 0 ? options.edgeM() : voxelM;
        int most = options.maxTriangles() / 2;
        Pieces pieces = SheetSplitter.split(sheets, edge, most);
        boolean simplified = false;
        while (pieces.triangles() > most) {
            edge *= GROW;
            simplified = sheets.triangles() > most;
            Pieces from = simplified ? Simplifier.merged(sheets, edge) : sheets;
            pieces = SheetSplitter.split(from, edge, most);
        }
        double slack = simplified ? edge : 0;
        Vec3 h = grid.sizeM();
        radiusM = new Vec3(Math.max(h.x(), edge), Math.max(h.y(), edge), Math.max(h.z(), edge));
        List<Patch> patches = patches(pieces, REACH + slack / voxelM);
        start.add(surfel.size());
        double kept = edge <= voxelM ? 1 : voxelM * voxelM / (edge * edge);
        return new Surface(
                xyz.toArray(),
                normals.toArray(),
                corners.toArray(),
                surfelOfTriangle.toArray(),
                patches,
                start.toArray(),
                surfel.toArray(),
                weight.toArray(),
                grid.surfels().count(),
                new SurfaceDetail(
                        corners.size() / 3, cavity.cutSheets().triangleCount(), edge, voxelM, simplified, kept));
    }

    /** One side of a triangle. */
    private record Facet(int triangle, boolean front, Vec3 normal, int surfel) {}

    private record Key(Patch.Side side, int part, int bay) {}

    private List<Patch> patches(Pieces pieces, double reach) {
        Map<Key, List<Facet>> sorted = new HashMap<>();
        for (int t = 0; t < pieces.triangles(); t++) {
            Vec3 area = pieces.doubleAreaVector(t);
            if (!(area.length() > 0)) {
                continue;
            }
            Vec3 middle = pieces.point(pieces.corner(t, 0))
                    .plus(pieces.point(pieces.corner(t, 1)))
                    .plus(pieces.point(pieces.corner(t, 2)))
                    .times(1.0 / 3);
            for (int side = 0; side < 2; side++) {
                Vec3 normal = side == 0 ? area.unit() : area.unit().negate();
                int s = finder.nearest(middle, pieces.part(t), normal, reach);
                Key key = s < 0
                        ? new Key(Patch.Side.OUTSIDE, pieces.part(t), -1)
                        : new Key(Patch.Side.CAVITY, pieces.part(t), finder.bay(s));
                sorted.computeIfAbsent(key, k -> new ArrayList<>()).add(new Facet(t, side == 0, normal, s));
            }
        }
        List<Key> keys = new ArrayList<>(sorted.keySet());
        keys.sort(Comparator.comparing(Key::side).thenComparing(Key::part).thenComparing(Key::bay));
        List<Patch> patches = new ArrayList<>();
        for (Key key : keys) {
            patches.add(patch(key, sorted.getOrDefault(key, List.of()), pieces));
        }
        return patches;
    }

    private Patch patch(Key key, List<Facet> facets, Pieces pieces) {
        int firstVertex = xyz.size() / 3;
        int firstTriangle = corners.size() / 3;
        // groups of like normals at each sheet vertex, in the order of the facets
        Map<Integer, List<Vertex>> at = new HashMap<>();
        List<Vertex> order = new ArrayList<>();
        for (Facet f : facets) {
            for (int k = 0; k < 3; k++) {
                int v = pieces.corner(f.triangle(), f.front() ? k : 2 - k);
                corners.add(firstVertex + vertex(at.computeIfAbsent(v, x -> new ArrayList<>()), order, v, f, pieces));
            }
            surfelOfTriangle.add(f.surfel());
        }
        for (Vertex v : order) {
            Vec3 n = v.sum.unit();
            Vec3 p = pieces.point(v.sheetVertex).plus(options.standOffM(), n);
            for (int axis = 0; axis < 3; axis++) {
                xyz.add((float) p.get(axis));
                normals.add((float) n.get(axis));
            }
            start.add(surfel.size());
            if (key.side() == Patch.Side.CAVITY) {
                gather(pieces.point(v.sheetVertex), key, n, v.surfel);
            }
        }
        return new Patch(
                key.part(),
                key.bay(),
                key.side(),
                firstVertex,
                xyz.size() / 3 - firstVertex,
                firstTriangle,
                corners.size() / 3 - firstTriangle);
    }

    private static int vertex(List<Vertex> here, List<Vertex> order, int v, Facet f, Pieces pieces) {
        double area = pieces.doubleAreaVector(f.triangle()).length();
        for (Vertex known : here) {
            if (known.sum.unit().dot(f.normal()) >= SMOOTH) {
                known.sum = known.sum.plus(area, f.normal());
                return known.number;
            }
        }
        Vertex made = new Vertex(order.size(), v, f.normal().times(area), f.surfel());
        order.add(made);
        here.add(made);
        return made.number;
    }

    private void gather(Vec3 p, Key key, Vec3 normal, int own) {
        int found = 0;
        for (double wider = 1; wider <= 3 && found == 0; wider++) {
            found = finder.gather(p, key.part(), key.bay(), normal, radiusM.times(wider));
        }
        if (found == 0) {
            surfel.add(own);
            weight.add(1);
            return;
        }
        for (int n = 0; n < found; n++) {
            surfel.add(finder.found(n));
            weight.add(finder.weight(n));
        }
    }

    /** A vertex of a patch while its triangles come in. */
    private static final class Vertex {
        private final int number;
        private final int sheetVertex;
        private final int surfel;
        private Vec3 sum;

        Vertex(int number, int sheetVertex, Vec3 sum, int surfel) {
            this.number = number;
            this.sheetVertex = sheetVertex;
            this.sum = sum;
            this.surfel = surfel;
        }
    }

    private static final class FloatList {
        private float[] values = new float[1024];
        private int size;

        void add(float value) {
            if (size == values.length) {
                values = Arrays.copyOf(values, 2 * size);
            }
            values[size++] = value;
        }

        int size() {
            return size;
        }

        float[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }

    private static final class IntList {
        private int[] values = new int[1024];
        private int size;

        void add(int value) {
            if (size == values.length) {
                values = Arrays.copyOf(values, 2 * size);
            }
            values[size++] = value;
        }

        int size() {
            return size;
        }

        int[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }
}
