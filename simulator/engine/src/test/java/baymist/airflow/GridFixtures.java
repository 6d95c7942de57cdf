package baymist.airflow;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.spray.JetPush;
import baymist.spray.SprayHits;
import baymist.voxel.Bay;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Grids built by hand: a box of whole cells, closed by six walls, with baffles square to x and vents. */
final class GridFixtures {
    private final int nx;
    private final int ny;
    private final int nz;
    private final Vec3 size;
    private final List<Baffle> baffles = new ArrayList<>();
    private final List<double[]> vents = new ArrayList<>();

    /** Open area of a baffle's face (j, k), m². */
    interface Aperture {
        double areaM2(int j, int k);
    }

    private record Baffle(int atI, int opening, Aperture aperture) {}

    private GridFixtures(int nx, int ny, int nz, Vec3 size) {
        this.nx = nx;
        this.ny = ny;
        this.nz = nz;
        this.size = size;
    }

    static GridFixtures box(int nx, int ny, int nz, double h) {
        return new GridFixtures(nx, ny, nz, new Vec3(h, h, h));
    }

    static GridFixtures box(int nx, int ny, int nz, Vec3 size) {
        return new GridFixtures(nx, ny, nz, size);
    }

    /** A sheet between columns atI - 1 and atI with one opening. */
    GridFixtures baffle(int atI, int opening, Aperture aperture) {
        baffles.add(new Baffle(atI, opening, aperture));
        return this;
    }

    GridFixtures vent(int opening, int i, int j, int k, int direction, double areaM2) {
        vents.add(new double[] {opening, i, j, k, direction, areaM2});
        return this;
    }

    int cell(int i, int j, int k) {
        return i + nx * (j + ny * k);
    }

    VoxelGrid build() {
        int n = nx * ny * nz;
        int[] identity = new int[n];
        double[] volume = new double[n];
        int[] neighbour = new int[6 * n];
        Arrays.fill(volume, size.x() * size.y() * size.z());
        Arrays.setAll(identity, c -> c);
        for (int c = 0; c < n; c++) {
            for (int d = 0; d < 6; d++) {
                neighbour[6 * c + d] = behind(c, d);
            }
        }
        int[] bay = bays(neighbour);
        return new VoxelGrid(
                nx,
                ny,
                nz,
                Vec3.ZERO,
                size,
                identity,
                identity.clone(),
                volume,
                neighbour,
                bay,
                faces(neighbour),
                surfels(neighbour),
                bayList(bay, neighbour),
                List.of(),
                List.of());
    }

    private int behind(int c, int d) {
        int[] at = {c % nx, c / nx % ny, c / (nx * ny)};
        int[] count = {nx, ny, nz};
        int a = d / 2;
        int i = at[0];
        at[a] += d % 2 == 0 ? -1 : 1;
        if (at[a] < 0 || at[a] >= count[a]) {
            return -1;
        }
        int faceI = d == 0 ? i : i + 1;
        if (a == 0 && baffles.stream().anyMatch(b -> b.atI() == faceI)) {
            return -1;
        }
        return cell(at[0], at[1], at[2]);
    }

    private double sideM2(int axis) {
        return size.x() * size.y() * size.z() / size.get(axis);
    }

    private FaceSet faces(int[] neighbour) {
        List<double[]> entries = new ArrayList<>();
        for (int c = 0; c < nx * ny * nz; c++) {
            for (int a = 0; a < 3; a++) {
                int other = neighbour[6 * c + 2 * a + 1];
                if (other >= 0) {
                    entries.add(new double[] {c, other, a, sideM2(a), -1});
                } else if (a == 0) {
                    addBaffleFaces(c, entries);
                }
            }
        }
        int n = entries.size();
        int v = vents.size();
        FaceSet f = new FaceSet(
                new int[n],
                new int[n],
                new byte[n],
                new double[n],
                new int[n],
                new int[v],
                new byte[v],
                new byte[v],
                new double[v],
                new int[v]);
        for (int e = 0; e < n; e++) {
            double[] x = entries.get(e);
            f.low()[e] = (int) x[0];
            f.high()[e] = (int) x[1];
            f.axis()[e] = (byte) x[2];
            f.areaM2()[e] = x[3];
            f.opening()[e] = (int) x[4];
        }
        for (int e = 0; e < v; e++) {
            double[] x = vents.get(e);
            f.ventOpening()[e] = (int) x[0];
            f.ventCell()[e] = cell((int) x[1], (int) x[2], (int) x[3]);
            f.ventAxis()[e] = (byte) (x[4] / 2);
            f.ventSign()[e] = (byte) (x[4] % 2 == 0 ? -1 : 1);
            f.ventAreaM2()[e] = x[5];
        }
        return f;
    }

    private void addBaffleFaces(int c, List<double[]> entries) {
        for (Baffle b : baffles) {
            double area = b.aperture().areaM2(c / nx % ny, c / (nx * ny));
            if (c % nx == b.atI() - 1 && area > 0) {
                entries.add(new double[] {c, c + 1, 0, area, b.opening()});
            }
        }
    }

    private SurfelSet surfels(int[] neighbour) {
        List<int[]> sides = new ArrayList<>();
        for (int c = 0; c < nx * ny * nz; c++) {
            for (int d = 0; d < 6; d++) {
                if (neighbour[6 * c + d] < 0) {
                    sides.add(new int[] {c, d});
                }
            }
        }
        int n = sides.size();
        SurfelSet s = new SurfelSet(
                new int[n],
                new byte[n],
                new int[n],
                new int[n],
                new double[n],
                new double[n],
                new double[n],
                new double[n],
                new double[n],
                new double[n],
                new double[n],
                new int[n + 1],
                new int[0]);
        double[][] normal = {s.normalX(), s.normalY(), s.normalZ()};
        double[][] centre = {s.centreX(), s.centreY(), s.centreZ()};
        for (int e = 0; e < n; e++) {
            int c = sides.get(e)[0];
            int d = sides.get(e)[1];
            int[] at = {c % nx, c / nx % ny, c / (nx * ny)};
            s.cell()[e] = c;
            s.direction()[e] = (byte) d;
            s.closure()[e] = -1;
            s.areaM2()[e] = sideM2(d / 2);
            for (int a = 0; a < 3; a++) {
                centre[a][e] = (at[a] + 0.5) * size.get(a);
            }
            normal[d / 2][e] = d % 2 == 0 ? 1 : -1;
            centre[d / 2][e] += (d % 2 == 0 ? -0.5 : 0.5) * size.get(d / 2);
        }
        return s;
    }

    private int[] bays(int[] neighbour) {
        UnionFind sets = new UnionFind(nx * ny * nz);
        for (int i = 0; i < neighbour.length; i++) {
            if (neighbour[i] >= 0) {
                sets.join(i / 6, neighbour[i]);
            }
        }
        return sets.numbered();
    }

    private List<Bay> bayList(int[] bay, int[] neighbour) {
        List<Bay> list = new ArrayList<>();
        for (int b = 0; b <= Arrays.stream(bay).max().orElse(-1); b++) {
            int cells = 0;
            double area = 0;
            Box3 bounds = Box3.EMPTY;
            for (int c = 0; c < bay.length; c++) {
                if (bay[c] != b) {
                    continue;
                }
                cells++;
                Vec3 low = new Vec3(c % nx * size.x(), c / nx % ny * size.y(), (double) (c / (nx * ny)) * size.z());
                bounds = bounds.including(low).including(low.plus(size));
                for (int d = 0; d < 6; d++) {
                    area += neighbour[6 * c + d] < 0 ? sideM2(d / 2) : 0;
                }
            }
            list.add(new Bay("bay " + (b + 1), cells * size.x() * size.y() * size.z(), area, bounds, cells));
        }
        return list;
    }

    /** Spray with air alone: a supply and a stream through given cells. */
    static SprayHits air(double airM3PerS, int airCell, int[] streamCell, Vec3[] streamM4PerS, double powerW, int bay) {
        return air(airM3PerS, airCell, streamCell, streamM4PerS, powerW, bay, JetPush.NONE);
    }

    static SprayHits air(
            double airM3PerS,
            int airCell,
            int[] streamCell,
            Vec3[] streamM4PerS,
            double powerW,
            int bay,
            JetPush push) {
        int n = streamCell.length;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] z = new double[n];
        for (int s = 0; s < n; s++) {
            x[s] = streamM4PerS[s].x();
            y[s] = streamM4PerS[s].y();
            z[s] = streamM4PerS[s].z();
        }
        int[] none = new int[0];
        double[] nothing = new double[0];
        return new SprayHits(
                none,
                nothing,
                none,
                nothing,
                0,
                streamCell,
                x,
                y,
                z,
                none,
                none,
                nothing,
                nothing,
                airM3PerS,
                airCell,
                0.5,
                powerW,
                bay,
                0,
                0,
                push);
    }

    static SprayHits supply(double airM3PerS, int airCell) {
        return air(airM3PerS, airCell, new int[0], new Vec3[0], 0, 0);
    }

    /** A mixing of nothing. */
    static Mixing calm(VoxelGrid grid) {
        return new Mixing(
                new double[grid.cellCount()], new double[grid.surfels().count()], 1.5e-5);
    }

    /** Largest |sum of outgoing fluxes - source + expansion V| over the cells, m³/s. */
    static double worstDivergence(VoxelGrid grid, AirField field) {
        double[] left = field.sourceM3PerS().clone();
        FaceSet faces = grid.faces();
        for (int c = 0; c < left.length; c++) {
            left[c] -= field.expansionPerS() * grid.volumeM3(c);
        }
        for (int f = 0; f < faces.count(); f++) {
            left[faces.low()[f]] -= field.faceFluxM3PerS()[f];
            left[faces.high()[f]] += field.faceFluxM3PerS()[f];
        }
        for (int v = 0; v < faces.vents(); v++) {
            left[faces.ventCell()[v]] -= field.ventFluxM3PerS()[v];
        }
        return Arrays.stream(left).map(Math::abs).max().orElse(0);
    }
}
