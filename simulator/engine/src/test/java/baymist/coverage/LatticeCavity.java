package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.Box3;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.voxel.Bay;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.UnaryOperator;

/**
 * A closed box of cells with inner walls, made by hand for tests: walls lie on cell faces, surfels are the blocked sides
 * of cells, neighbours share an edge on the same side of the sheets. A map may bend the lattice (a wedge, a sweep).
 */
public final class LatticeCavity {
    private static final int[][] STEP = {{-1, 0, 0}, {1, 0, 0}, {0, -1, 0}, {0, 1, 0}, {0, 0, -1}, {0, 0, 1}};

    private final int[] n;
    private final Vec3 size;
    private final List<Part> parts = new ArrayList<>();
    private final int[] outer = new int[6];
    private final List<Wall> walls = new ArrayList<>();
    private final List<Opening> openings = new ArrayList<>();
    private UnaryOperator<Vec3> map = p -> p;
    private Vec3 origin = Vec3.ZERO;

    private record Wall(
            int axis, int index, int part, BiPredicate<Integer, Integer> hole, BiPredicate<Integer, Integer> there) {}

    /** What was built. */
    public record Built(Cavity cavity, VoxelGrid grid) {}

    public LatticeCavity(int nx, int ny, int nz, Vec3 cellM) {
        n = new int[] {nx, ny, nz};
        size = cellM;
    }

    public LatticeCavity at(Vec3 lowCorner) {
        origin = lowCorner;
        return this;
    }

    /** Names the six outer walls, -x, +x, -y, +y, -z, +z; equal names are one part. */
    public LatticeCavity outer(String[] names, PartKind[] kinds) {
        for (int d = 0; d < 6; d++) {
            outer[d] = part(names[d], kinds[d]);
        }
        return this;
    }

    /** A control-surface like wedge: front spar, skins, end ribs; the +x side is closed by the lower skin. */
    public LatticeCavity wedge() {
        return outer(
                new String[] {"front spar", "lower skin", "rib 1", "rib 9", "lower skin", "upper skin"},
                new PartKind[] {PartKind.SPAR, PartKind.SKIN, PartKind.RIB, PartKind.RIB, PartKind.SKIN, PartKind.SKIN
                });
    }

    /** A wing-box like box: spars, skins, end ribs. */
    public LatticeCavity box() {
        return outer(
                new String[] {"front spar", "rear spar", "rib 1", "rib 9", "lower skin", "upper skin"},
                new PartKind[] {PartKind.SPAR, PartKind.SPAR, PartKind.RIB, PartKind.RIB, PartKind.SKIN, PartKind.SKIN
                });
    }

    /** A plain tank without ribs. */
    public LatticeCavity tank() {
        PartKind[] wall = new PartKind[6];
        Arrays.fill(wall, PartKind.WALL);
        return outer(new String[] {"forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling"}, wall);
    }

    /** An inner wall on the low side of cells with this index along the axis; {@code hole} by the other two indices. */
    public LatticeCavity wall(int axis, int index, String name, PartKind kind, BiPredicate<Integer, Integer> hole) {
        walls.add(new Wall(axis, index, part(name, kind), hole, (a, b) -> true));
        return this;
    }

    /** A blade that stands on part of the plane only, as a stringer does. */
    public LatticeCavity blade(int axis, int index, String name, BiPredicate<Integer, Integer> there) {
        walls.add(new Wall(axis, index, part(name, PartKind.STRINGER), (a, b) -> false, there));
        return this;
    }

    public LatticeCavity opening(Opening opening) {
        openings.add(opening);
        return this;
    }

    public int part(String name, PartKind kind) {
        for (int p = 0; p < parts.size(); p++) {
            if (parts.get(p).name().equals(name)) {
                return p;
            }
        }
        parts.add(new Part(name, kind, 0.0008));
        return parts.size() - 1;
    }

    /** Bends the lattice: applied to every corner. */
    public LatticeCavity bent(UnaryOperator<Vec3> by) {
        map = by;
        return this;
    }

    public Built build() {
        int cells = n[0] * n[1] * n[2];
        int[] same = new int[cells];
        Arrays.setAll(same, c -> c);
        int[] neighbour = new int[6 * cells];
        for (int c = 0; c < cells; c++) {
            for (int d = 0; d < 6; d++) {
                neighbour[6 * c + d] = partAt(c, d, false) >= 0 ? -1 : step(c, d);
            }
        }
        int[] bay = bays(cells);
        SurfelSet surfels = surfels(cells);
        double[] volume = new double[cells];
        Arrays.fill(volume, size.x() * size.y() * size.z());
        VoxelGrid grid = new VoxelGrid(
                n[0],
                n[1],
                n[2],
                origin,
                size,
                same,
                same,
                volume,
                neighbour,
                bay,
                noFaces(),
                surfels,
                bayList(bay, volume, surfels),
                List.of(),
                List.of());
        TriangleMesh none = new TriangleMesh(new double[0], new int[0]);
        int[] partOfCut = new int[2 * surfels.count()];
        TriangleMesh sheets = sheets(surfels, partOfCut);
        Cavity cavity = new Cavity(
                "lattice", parts, openings, sheets, partOfCut, sheets, partOfCut, none, new int[0], null, List.of());
        return new Built(cavity, grid);
    }

    private int cell(int i, int j, int k) {
        return i + n[0] * (j + n[1] * k);
    }

    private int[] ijk(int c) {
        return new int[] {c % n[0], c / n[0] % n[1], c / (n[0] * n[1])};
    }

    private int step(int c, int d) {
        int[] p = ijk(c);
        for (int a = 0; a < 3; a++) {
            p[a] += STEP[d][a];
            if (p[a] < 0 || p[a] >= n[a]) {
                return -1;
            }
        }
        return cell(p[0], p[1], p[2]);
    }

    /** Part on side d of a cell or -1; with {@code closed} every hole counts as shut (part index does not matter then). */
    private int partAt(int c, int d, boolean closed) {
        if (step(c, d) < 0) {
            return outer[d];
        }
        int[] p = ijk(c);
        int axis = d / 2;
        int plane = p[axis] + d % 2;
        int a = p[axis == 0 ? 1 : 0];
        int b = p[axis == 2 ? 1 : 2];
        for (Wall w : walls) {
            if (w.axis == axis && w.index == plane && w.there.test(a, b) && (closed || !w.hole.test(a, b))) {
                return w.part;
            }
        }
        return -1;
    }

    private int[] bays(int cells) {
        int[] bay = new int[cells];
        Arrays.fill(bay, -1);
        int next = 0;
        for (int start = 0; start < cells; start++) {
            if (bay[start] >= 0) {
                continue;
            }
            List<Integer> queue = new ArrayList<>(List.of(start));
            bay[start] = next;
            for (int q = 0; q < queue.size(); q++) {
                int c = queue.get(q);
                for (int d = 0; d < 6; d++) {
                    int m = step(c, d);
                    if (m >= 0 && bay[m] < 0 && partAt(c, d, true) < 0) {
                        bay[m] = next;
                        queue.add(m);
                    }
                }
            }
            next++;
        }
        return bay;
    }

    private SurfelSet surfels(int cells) {
        int[] number = new int[6 * cells];
        Arrays.fill(number, -1);
        List<int[]> found = new ArrayList<>();
        for (int c = 0; c < cells; c++) {
            for (int d = 0; d < 6; d++) {
                int p = partAt(c, d, false);
                if (p >= 0) {
                    number[6 * c + d] = found.size();
                    found.add(new int[] {c, d, p});
                }
            }
        }
        int count = found.size();
        int[] cell = new int[count];
        byte[] direction = new byte[count];
        int[] part = new int[count];
        int[] closure = new int[count];
        Arrays.fill(closure, -1);
        double[][] v = new double[7][count];
        int[] start = new int[count + 1];
        List<Integer> neighbours = new ArrayList<>();
        for (int s = 0; s < count; s++) {
            int c = found.get(s)[0];
            int d = found.get(s)[1];
            cell[s] = c;
            direction[s] = (byte) d;
            part[s] = found.get(s)[2];
            measure(c, d, s, v);
            neighbours.addAll(neighboursOf(c, d, number));
            start[s + 1] = neighbours.size();
        }
        return new SurfelSet(
                cell,
                direction,
                part,
                closure,
                v[0],
                v[1],
                v[2],
                v[3],
                v[4],
                v[5],
                v[6],
                start,
                neighbours.stream().mapToInt(Integer::intValue).toArray());
    }

    private List<Integer> neighboursOf(int c, int d, int[] number) {
        List<Integer> found = new ArrayList<>();
        for (int e = 0; e < 6; e++) {
            if (e / 2 == d / 2) {
                continue;
            }
            if (number[6 * c + e] >= 0) {
                found.add(number[6 * c + e]);
                continue;
            }
            int next = step(c, e);
            if (number[6 * next + d] >= 0) {
                found.add(number[6 * next + d]);
                continue;
            }
            int behind = step(next, d);
            if (behind >= 0 && number[6 * behind + (e ^ 1)] >= 0) {
                found.add(number[6 * behind + (e ^ 1)]);
            }
        }
        found.sort(null);
        return found;
    }

    private Vec3[] corners(int c, int d) {
        int[] p = ijk(c);
        int axis = d / 2;
        int u = (axis + 1) % 3;
        int w = (axis + 2) % 3;
        Vec3[] corners = new Vec3[4];
        int[][] order = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
        for (int q = 0; q < 4; q++) {
            double[] x = {p[0], p[1], p[2]};
            x[axis] += d % 2;
            x[u] += order[q][0];
            x[w] += order[q][1];
            corners[q] = map.apply(origin.plus(new Vec3(x[0] * size.x(), x[1] * size.y(), x[2] * size.z())));
        }
        return corners;
    }

    private void measure(int c, int d, int s, double[][] v) {
        Vec3[] q = corners(c, d);
        Vec3 twice = q[2].minus(q[0]).cross(q[3].minus(q[1]));
        Vec3 normal = twice.length() > 0 ? twice.unit() : Vec3.X;
        if (d % 2 == 1) {
            normal = normal.negate(); // into the air: away from the side that the sheet is on
        }
        Vec3 centre = q[0].plus(q[1]).plus(q[2]).plus(q[3]).times(0.25);
        v[0][s] = 0.5 * twice.length();
        v[1][s] = normal.x();
        v[2][s] = normal.y();
        v[3][s] = normal.z();
        v[4][s] = centre.x();
        v[5][s] = centre.y();
        v[6][s] = centre.z();
    }

    private TriangleMesh sheets(SurfelSet surfels, int[] partOf) {
        double[] xyz = new double[12 * surfels.count()];
        int[] corners = new int[6 * surfels.count()];
        for (int s = 0; s < surfels.count(); s++) {
            Vec3[] q = corners(surfels.cell()[s], surfels.direction()[s]);
            for (int k = 0; k < 4; k++) {
                for (int a = 0; a < 3; a++) {
                    xyz[12 * s + 3 * k + a] = q[k].get(a);
                }
            }
            int[] quad = {0, 1, 2, 0, 2, 3};
            for (int k = 0; k < 6; k++) {
                corners[6 * s + k] = 4 * s + quad[k];
            }
            partOf[2 * s] = surfels.part()[s];
            partOf[2 * s + 1] = surfels.part()[s];
        }
        return new TriangleMesh(xyz, corners);
    }

    private List<Bay> bayList(int[] bay, double[] volume, SurfelSet surfels) {
        int count = Arrays.stream(bay).max().orElse(-1) + 1;
        List<Bay> bays = new ArrayList<>();
        for (int b = 0; b < count; b++) {
            double v = 0;
            int cells = 0;
            for (int c = 0; c < bay.length; c++) {
                if (bay[c] == b) {
                    v += volume[c];
                    cells++;
                }
            }
            double a = 0;
            Box3 box = Box3.EMPTY;
            for (int s = 0; s < surfels.count(); s++) {
                if (bay[surfels.cell()[s]] == b) {
                    a += surfels.areaM2()[s];
                    box = box.including(new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]));
                }
            }
            bays.add(new Bay("bay " + (b + 1), v, a, box, cells));
        }
        return bays;
    }

    private static FaceSet noFaces() {
        return new FaceSet(
                new int[0],
                new int[0],
                new byte[0],
                new double[0],
                new int[0],
                new int[0],
                new byte[0],
                new byte[0],
                new double[0],
                new int[0]);
    }
}
