package baymist.spray;

import baymist.access.TestCavity;
import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.PhaseStates;
import baymist.voxel.Bay;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Box 0.4 x 0.6 x 0.16 m in 20 mm cells with a rib at y = 0.305 (5 mm off the lattice) that has a hole of 60 mm, and a port of
 * 20 mm in the left wall. Parts: 0 forward, 1 aft, 2 left, 3 right, 4 floor, 5 ceiling, 6 rib. Openings: 0 port, 1 rib hole.
 */
final class GridFixture implements SurfelFinder {
    static final double H = 0.02;
    static final double RIB_Y = 0.305;
    static final Vec3 RIB_HOLE = new Vec3(0.2, RIB_Y, 0.08);
    static final double HOLE_R = 0.03;

    final Cavity cavity;
    final VoxelGrid grid;
    private final int nx = 20;
    private final int ny = 30;
    private final int nz = 8;
    private final int lastBeforeRib = 14;
    private final int[] surfelAt = new int[6 * nx * ny * nz];
    private final int[] closureAt = new int[6 * nx * ny * nz];

    GridFixture() {
        this(TestCavity.OPEN);
    }

    GridFixture(PhaseStates hole) {
        cavity = TestCavity.box(0.4, 0.6, 0.16, TestCavity.port("port", 0.2, 0.08, 20e-3, TestCavity.OPEN))
                .sheet(
                        "rib",
                        new Vec3(0, RIB_Y, 0),
                        new Vec3(0.4, 0, 0),
                        new Vec3(0, 0, 0.16),
                        new TestCavity.Hole("rib hole", new Outline.Circle(HOLE_R), RIB_HOLE, Vec3.Y, false, hole))
                .build();
        grid = grid();
    }

    private VoxelGrid grid() {
        int n = nx * ny * nz;
        int[] lattice = new int[n];
        double[] volume = new double[n];
        int[] neighbour = new int[6 * n];
        int[] bay = new int[n];
        Arrays.fill(surfelAt, -1);
        Arrays.fill(closureAt, -1);
        List<int[]> surfels = new ArrayList<>();
        for (int c = 0; c < n; c++) {
            lattice[c] = c;
            volume[c] = H * H * H;
            int[] at = {c % nx, c / nx % ny, c / (nx * ny)};
            bay[c] = at[1] > lastBeforeRib ? 1 : 0;
            for (int d = 0; d < 6; d++) {
                int[] to = at.clone();
                to[d / 2] += d % 2 == 0 ? -1 : 1;
                boolean out = to[0] < 0 || to[1] < 0 || to[2] < 0 || to[0] >= nx || to[1] >= ny || to[2] >= nz;
                boolean rib = (d == 3 && at[1] == lastBeforeRib) || (d == 2 && at[1] == lastBeforeRib + 1);
                neighbour[6 * c + d] = out || rib ? -1 : to[0] + nx * (to[1] + ny * to[2]);
                if (out || rib) {
                    surfelAt[6 * c + d] = surfels.size();
                    surfels.add(new int[] {c, d, rib ? 6 : d, -1});
                    closureAt[6 * c + d] = surfels.size();
                    surfels.add(new int[] {c, d, rib ? 6 : d, rib ? 1 : 0});
                }
            }
        }
        Box3 box = new Box3(Vec3.ZERO, new Vec3(0.4, 0.6, 0.16));
        FaceSet none = new FaceSet(
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
        return new VoxelGrid(
                nx,
                ny,
                nz,
                Vec3.ZERO,
                new Vec3(H, H, H),
                lattice,
                lattice,
                volume,
                neighbour,
                bay,
                none,
                set(surfels),
                List.of(
                        new Bay("left", 0.4 * RIB_Y * 0.16, 1, box, n / 2),
                        new Bay("right", 0.4 * 0.295 * 0.16, 1, box, n / 2)),
                List.of(),
                List.of());
    }

    private SurfelSet set(List<int[]> list) {
        int n = list.size();
        int[] cell = new int[n];
        byte[] direction = new byte[n];
        int[] part = new int[n];
        int[] closure = new int[n];
        double[][] d = new double[7][n];
        for (int s = 0; s < n; s++) {
            int[] e = list.get(s);
            cell[s] = e[0];
            direction[s] = (byte) e[1];
            part[s] = e[2];
            closure[s] = e[3];
            d[0][s] = H * H;
            d[1 + e[1] / 2][s] = e[1] % 2 == 0 ? 1 : -1;
            d[4][s] = (e[0] % nx + 0.5) * H;
            d[5][s] = (e[0] / nx % ny + 0.5) * H;
            d[6][s] = (e[0] / (nx * ny) + 0.5) * H;
        }
        return new SurfelSet(
                cell, direction, part, closure, d[0], d[1], d[2], d[3], d[4], d[5], d[6], new int[n + 1], new int[0]);
    }

    @Override
    public int cellNear(Vec3 p, Vec3 towards) {
        int i = clamp((int) Math.floor((p.x() + 1e-9 * towards.x()) / H), nx);
        int j = clamp((int) Math.floor((p.y() + 1e-9 * towards.y()) / H), ny);
        int k = clamp((int) Math.floor((p.z() + 1e-9 * towards.z()) / H), nz);
        if (Math.abs(p.y() - RIB_Y) < 1e-9) {
            j = towards.y() > 0 ? lastBeforeRib + 1 : lastBeforeRib;
        } else if (p.y() < RIB_Y && j > lastBeforeRib) {
            j = lastBeforeRib;
        }
        return i + nx * (j + ny * k);
    }

    private static int clamp(int v, int n) {
        return Math.max(0, Math.min(n - 1, v));
    }

    @Override
    public int surfelNear(Vec3 p, int part, Vec3 towards) {
        return surfelAt[6 * cellNear(p, towards) + side(towards)];
    }

    @Override
    public int closureNear(Vec3 p, int opening, Vec3 towards) {
        return closureAt[6 * cellNear(p, towards) + side(towards)];
    }

    /** Side of the cell that faces against the direction. */
    private static int side(Vec3 towards) {
        double ax = Math.abs(towards.x());
        double ay = Math.abs(towards.y());
        double az = Math.abs(towards.z());
        if (ax >= ay && ax >= az) {
            return towards.x() > 0 ? 0 : 1;
        }
        return ay >= az ? (towards.y() > 0 ? 2 : 3) : (towards.z() > 0 ? 4 : 5);
    }
}
