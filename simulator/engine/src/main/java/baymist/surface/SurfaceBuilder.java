package baymist.surface;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Makes a {@link Surface}: splits the sheets, looks what each side faces, sorts the sides into patches, gathers surfels for each vertex.
 */
final class SurfaceBuilder {
    /** How far a surfel's centroid may lie from the middle of the triangle that shows it, voxels along each axis. */
    private static final double REACH = 1.0;
    /** Triangles that meet at less than about 35 degrees share a normal: cosine. */
    private static final double SMOOTH = 0.82;

    /** Longest edge over the mean voxel size at which there is about one vertex for each surfel. */
    private static final double EDGE = 1.5;
    /** Mean area of split triangles over the square of the longest edge, about. */
    private static final double AREA = 0.25;

    private static final double GROW = 1.1;
    /** Room for triangles that are not alike over the structure. */
    private static final double SPARE = 1.1;

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

    /** As finely as asked for, or as the limit allows. */
    Surface build() {
        Pieces sheets = SheetSplitter.sheets(cavity);
        FlatStretches.number(sheets);
        int most = (int) (options.maxTriangles() / sides(sheets));
        double edge = options.edgeM() > 0 ? options.edgeM() : EDGE * voxelM;
        boolean simplified = sheets.triangles() > 0.8 * most;
        double least = simplified ? edge : Math.sqrt(areaM2(sheets) / (AREA * (most - sheets.triangles())));
        edge = Math.max(edge, least);
        Pieces from = simplified ? merged(sheets, edge) : sheets;
        Pieces pieces = SheetSplitter.split(from, edge, most);
        while (pieces.triangles() > most) {
            edge *= GROW;
            from = simplified ? merged(sheets, edge) : sheets;
            pieces = SheetSplitter.split(from, edge, most);
        }
        double slack = simplified ? edge : 0;
        Vec3 h = grid.sizeM();
        double spacing = edge / EDGE;
        radiusM = new Vec3(Math.max(h.x(), spacing), Math.max(h.y(), spacing), Math.max(h.z(), spacing));
        List<Patch> patches = patches(from, pieces, REACH + slack / voxelM);
        start.add(surfel.size());
        double kept = Math.min(1, voxelM * voxelM / (spacing * spacing));
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
                        corners.size() / 3,
                        cavity.cutSheets().triangleCount(),
                        edge,
                        voxelM,
                        simplified,
                        kept > 0.999 ? 1 : kept));
    }

    /** Sides that carry film, for each side of the sheets; the others take few triangles. */
    private double sides(Pieces sheets) {
        double film = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            film += grid.surfels().closure()[s] < 0 ? grid.surfels().areaM2()[s] : 0;
        }
        return Math.min(2, SPARE * film / areaM2(sheets) + 2.0 * sheets.triangles() / options.maxTriangles());
    }

    private static double areaM2(Pieces sheets) {
        double sum = 0;
        for (int t = 0; t < sheets.triangles(); t++) {
            sum += 0.5 * sheets.doubleAreaVector(t).length();
        }
        return sum;
    }

    private static Pieces merged(Pieces sheets, double cellM) {
        Pieces merged = Simplifier.merged(sheets, cellM);
        FlatStretches.number(merged);
        return merged;
    }

    /** One side of a triangle. */
    private record Facet(Pieces of, int triangle, boolean front, Vec3 normal, int surfel) {}

    private record Key(Patch.Side side, int part, int bay) {}

    /** One side of a flat stretch. */
    private record Flat(int stretch, boolean front) {}

    private List<Patch> patches(Pieces sheets, Pieces pieces, double reach) {
        Map<Key, List<Facet>> sorted = new HashMap<>();
        Set<Flat> facing = new HashSet<>();
        List<Facet> outside = new ArrayList<>();
        for (Facet f : facets(pieces)) {
            Vec3 middle = middle(pieces, f.triangle());
            int s = finder.nearest(middle, pieces.part(f.triangle()), f.normal(), reach);
            if (s < 0) {
                outside.add(f);
            } else {
                facing.add(new Flat(pieces.stretch(f.triangle()), f.front()));
                sorted.computeIfAbsent(
                                new Key(Patch.Side.CAVITY, pieces.part(f.triangle()), finder.bay(s)),
                                k -> new ArrayList<>())
                        .add(new Facet(pieces, f.triangle(), f.front(), f.normal(), s));
            }
        }
        // a side that carries no film anywhere on its stretch needs no small triangles
        outside.removeIf(f -> !facing.contains(new Flat(pieces.stretch(f.triangle()), f.front())));
        for (Facet f : facets(sheets)) {
            if (!facing.contains(new Flat(sheets.stretch(f.triangle()), f.front()))) {
                outside.add(f);
            }
        }
        for (Facet f : outside) {
            sorted.computeIfAbsent(new Key(Patch.Side.OUTSIDE, f.of().part(f.triangle()), -1), k -> new ArrayList<>())
                    .add(f);
        }
        List<Key> keys = new ArrayList<>(sorted.keySet());
        keys.sort(Comparator.comparing(Key::side).thenComparing(Key::part).thenComparing(Key::bay));
        List<Patch> patches = new ArrayList<>();
        for (Key key : keys) {
            patches.add(patch(key, sorted.getOrDefault(key, List.of())));
        }
        return patches;
    }

    private static List<Facet> facets(Pieces pieces) {
        List<Facet> all = new ArrayList<>();
        for (int t = 0; t < pieces.triangles(); t++) {
            Vec3 area = pieces.doubleAreaVector(t);
            if (area.length() > 0) {
                all.add(new Facet(pieces, t, true, area.unit(), -1));
                all.add(new Facet(pieces, t, false, area.unit().negate(), -1));
            }
        }
        return all;
    }

    private static Vec3 middle(Pieces pieces, int t) {
        return pieces.point(pieces.corner(t, 0))
                .plus(pieces.point(pieces.corner(t, 1)))
                .plus(pieces.point(pieces.corner(t, 2)))
                .times(1.0 / 3);
    }

    private Patch patch(Key key, List<Facet> facets) {
        int firstVertex = xyz.size() / 3;
        int firstTriangle = corners.size() / 3;
        // groups of like normals at each sheet vertex, in the order of the facets
        Map<Integer, List<Vertex>> at = new HashMap<>();
        List<Vertex> order = new ArrayList<>();
        for (Facet f : facets) {
            Pieces pieces = f.of();
            for (int k = 0; k < 3; k++) {
                int v = pieces.corner(f.triangle(), f.front() ? k : 2 - k);
                corners.add(firstVertex + vertex(at.computeIfAbsent(v, x -> new ArrayList<>()), order, v, f));
            }
            surfelOfTriangle.add(f.surfel());
        }
        for (Vertex v : order) {
            Vec3 n = v.sum.unit();
            Vec3 p = v.point.plus(options.standOffM(), n);
            for (int axis = 0; axis < 3; axis++) {
                xyz.add((float) p.get(axis));
                normals.add((float) n.get(axis));
            }
            start.add(surfel.size());
            if (key.side() == Patch.Side.CAVITY) {
                gather(v.point, key, n, v.surfel);
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

    private static int vertex(List<Vertex> here, List<Vertex> order, int v, Facet f) {
        double area = f.of().doubleAreaVector(f.triangle()).length();
        for (Vertex known : here) {
            if (known.sum.unit().dot(f.normal()) >= SMOOTH) {
                known.sum = known.sum.plus(area, f.normal());
                return known.number;
            }
        }
        Vertex made = new Vertex(order.size(), f.of().point(v), f.normal().times(area), f.surfel());
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
        private final Vec3 point;
        private final int surfel;
        private Vec3 sum;

        Vertex(int number, Vec3 point, Vec3 sum, int surfel) {
            this.number = number;
            this.point = point;
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
