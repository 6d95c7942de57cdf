package baymist.fog;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.voxel.Bay;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * A box of nx x ny x nz cells with six walls, by hand: optional baffles square to x with one opening entry each, vents in
 * the walls. Closures carry the opening's area.
 */
public final class BoxGrid {
    private record Entry(int low, int high, int axis, double areaM2, int opening) {}

    private record Vent(int cell, int axis, int sign, double areaM2, int opening) {}

    private record Surfel(int cell, int direction, double areaM2, int closure) {}

    private final int nx;
    private final int ny;
    private final int nz;
    private final double[] size;
    private final Map<Integer, double[]> baffles = new HashMap<>();
    private final List<Vent> vents = new ArrayList<>();
    private int openings;

    public BoxGrid(int nx, int ny, int nz, double sizeX, double sizeY, double sizeZ) {
        this.nx = nx;
        this.ny = ny;
        this.nz = nz;
        this.size = new double[] {sizeX, sizeY, sizeZ};
    }

    public static BoxGrid cubes(int nx, int ny, int nz, double sizeM) {
        return new BoxGrid(nx, ny, nz, sizeM, sizeM, sizeM);
    }

    /** A sheet between cells i - 1 and i with an opening in the face of row (j, k). Returns the opening. */
    public int baffle(int i, int j, int k, double openAreaM2) {
        baffles.put(i, new double[] {j, k, openAreaM2, openings});
        return openings++;
    }

    /** An opening to the outside in side {@code direction} of cell (i, j, k). Returns the opening. */
    public int vent(int i, int j, int k, int direction, double areaM2) {
        vents.add(new Vent(cell(i, j, k), direction / 2, direction % 2 == 0 ? -1 : 1, areaM2, openings));
        return openings++;
    }

    public int cell(int i, int j, int k) {
        return i + nx * (j + ny * k);
    }

    public int openings() {
        return openings;
    }

    public VoxelGrid build() {
        int cells = nx * ny * nz;
        int[] neighbour = new int[6 * cells];
        java.util.Arrays.fill(neighbour, -1);
        List<Entry> entries = new ArrayList<>();
        List<Surfel> surfels = new ArrayList<>();
        for (int c = 0; c < cells; c++) {
            for (int a = 0; a < 3; a++) {
                for (int side = 0; side < 2; side++) {
                    addSide(c, a, side, neighbour, entries, surfels);
                }
            }
        }
        int[] identity = new int[cells];
        double[] volume = new double[cells];
        int[] bay = new int[cells];
        for (int c = 0; c < cells; c++) {
            identity[c] = c;
            volume[c] = size[0] * size[1] * size[2];
            int i = c % nx;
            bay[c] = (int) baffles.keySet().stream().filter(at -> at <= i).count();
        }
        List<Bay> bays = new ArrayList<>();
        for (int b = 0; b <= baffles.size(); b++) {
            bays.add(new Bay("bay " + b, 0, 0, Box3.EMPTY, 0));
        }
        return new VoxelGrid(
                nx,
                ny,
                nz,
                Vec3.ZERO,
                new Vec3(size[0], size[1], size[2]),
                identity,
                identity.clone(),
                volume,
                neighbour,
                bay,
                faceSet(entries),
                surfelSet(surfels, neighbour),
                bays,
                List.of(),
                List.of());
    }

    private void addSide(int c, int a, int side, int[] neighbour, List<Entry> entries, List<Surfel> surfels) {
        int[] at = {c % nx, c / nx % ny, c / (nx * ny)};
        int[] count = {nx, ny, nz};
        int direction = 2 * a + side;
        double area = size[0] * size[1] * size[2] / size[a];
        at[a] += side == 0 ? -1 : 1;
        boolean outside = at[a] < 0 || at[a] >= count[a];
        int other = outside ? -1 : cell(at[0], at[1], at[2]);
        double[] baffle = !outside && a == 0 ? baffles.get(Math.max(at[0], c % nx)) : null;
        if (!outside && baffle == null) {
            neighbour[6 * c + direction] = other;
            if (side == 1) {
                entries.add(new Entry(c, other, a, area, -1));
            }
            return;
        }
        if (baffle != null) {
            boolean here = at[1] == (int) baffle[0] && at[2] == (int) baffle[1];
            double hole = here ? baffle[2] : 0;
            if (here && side == 1) {
                entries.add(new Entry(c, other, a, hole, (int) baffle[3]));
            }
            addWall(c, direction, area, hole, here ? (int) baffle[3] : -1, surfels);
            return;
        }
        double hole = 0;
        int opening = -1;
        for (Vent v : vents) {
            if (v.cell == c && v.axis == a && (v.sign > 0) == (side == 1)) {
                hole = v.areaM2;
                opening = v.opening;
            }
        }
        addWall(c, direction, area, hole, opening, surfels);
    }

    private static void addWall(int c, int direction, double area, double hole, int opening, List<Surfel> surfels) {
        if (area > hole * (1 + 1e-9)) {
            surfels.add(new Surfel(c, direction, area - hole, -1));
        }
        if (hole > 0) {
            surfels.add(new Surfel(c, direction, hole, opening));
        }
    }

    private FaceSet faceSet(List<Entry> e) {
        byte[] axis = new byte[e.size()];
        for (int i = 0; i < axis.length; i++) {
            axis[i] = (byte) e.get(i).axis;
        }
        byte[] ventAxis = new byte[vents.size()];
        byte[] ventSign = new byte[vents.size()];
        for (int i = 0; i < ventAxis.length; i++) {
            ventAxis[i] = (byte) vents.get(i).axis;
            ventSign[i] = (byte) vents.get(i).sign;
        }
        return new FaceSet(
                e.stream().mapToInt(Entry::low).toArray(),
                e.stream().mapToInt(Entry::high).toArray(),
                axis,
                e.stream().mapToDouble(Entry::areaM2).toArray(),
                e.stream().mapToInt(Entry::opening).toArray(),
                vents.stream().mapToInt(Vent::cell).toArray(),
                ventAxis,
                ventSign,
                vents.stream().mapToDouble(Vent::areaM2).toArray(),
                vents.stream().mapToInt(Vent::opening).toArray());
    }

    private SurfelSet surfelSet(List<Surfel> list, int[] neighbour) {
        int n = list.size();
        byte[] direction = new byte[n];
        double[][] normal = new double[3][n];
        double[][] centre = new double[3][n];
        for (int s = 0; s < n; s++) {
            Surfel f = list.get(s);
            direction[s] = (byte) f.direction;
            int sign = f.direction % 2 == 0 ? -1 : 1;
            normal[f.direction / 2][s] = -sign;
            int[] at = {f.cell % nx, f.cell / nx % ny, f.cell / (nx * ny)};
            for (int a = 0; a < 3; a++) {
                double half = a == f.direction / 2 ? 0.5 + 0.5 * sign : 0.5;
                centre[a][s] = (at[a] + half) * size[a];
            }
        }
        int[] start = new int[n + 1];
        int[] neighbours = neighbours(list, neighbour, start);
        return new SurfelSet(
                list.stream().mapToInt(Surfel::cell).toArray(),
                direction,
                new int[n],
                list.stream().mapToInt(Surfel::closure).toArray(),
                list.stream().mapToDouble(Surfel::areaM2).toArray(),
                normal[0],
                normal[1],
                normal[2],
                centre[0],
                centre[1],
                centre[2],
                start,
                neighbours);
    }

    /** Surfels share an edge if a lattice edge is in both and their cells are the same or open to one another. */
    private int[] neighbours(List<Surfel> list, int[] open, int[] start) {
        Map<Long, List<Integer>> byEdge = new HashMap<>();
        List<TreeSet<Integer>> of = new ArrayList<>();
        for (int s = 0; s < list.size(); s++) {
            of.add(new TreeSet<>());
            for (long edge : edges(list.get(s))) {
                for (int t : byEdge.computeIfAbsent(edge, k -> new ArrayList<>())) {
                    if (connected(list.get(s).cell, list.get(t).cell, open)) {
                        of.get(s).add(t);
                        of.get(t).add(s);
                    }
                }
                byEdge.get(edge).add(s);
            }
        }
        List<Integer> all = new ArrayList<>();
        for (int s = 0; s < list.size(); s++) {
            all.addAll(of.get(s));
            start[s + 1] = all.size();
        }
        return all.stream().mapToInt(Integer::intValue).toArray();
    }

    private static boolean connected(int a, int b, int[] open) {
        if (a == b) {
            return true;
        }
        for (int d = 0; d < 6; d++) {
            if (open[6 * a + d] == b) {
                return true;
            }
        }
        return false;
    }

    private List<Long> edges(Surfel f) {
        int[] at = {f.cell % nx, f.cell / nx % ny, f.cell / (nx * ny)};
        int a = f.direction / 2;
        at[a] += f.direction % 2;
        List<Long> edges = new ArrayList<>();
        for (int along = 0; along < 3; along++) {
            if (along == a) {
                continue;
            }
            int across = 3 - a - along;
            for (int side = 0; side < 2; side++) {
                int[] node = at.clone();
                node[across] += side;
                edges.add((((long) node[0] * (ny + 1) + node[1]) * (nz + 1) + node[2]) * 3 + along);
            }
        }
        return edges;
    }
}
