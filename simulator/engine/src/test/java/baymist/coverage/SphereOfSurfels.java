package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.Box3;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.voxel.Bay;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;

/** A hollow sphere as rings of surfels with exact areas and surface centroids, all in one cell; for closed-form checks. */
record SphereOfSurfels(Cavity cavity, VoxelGrid grid) {
    /** Rings about x, so that cones about x cut between rings. */
    static SphereOfSurfels of(double radius, int rings, int perRing) {
        return build(radius, rings, perRing, 0);
    }

    static SphereOfSurfels aboutZ(double radius, int rings, int perRing) {
        return build(radius, rings, perRing, 2);
    }

    double[] film(ToDoubleFunction<Vec3> of) {
        SurfelSet s = grid.surfels();
        double[] film = new double[s.count()];
        Arrays.setAll(film, i -> of.applyAsDouble(new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i])));
        return film;
    }

    static VoxelGrid withSurfels(VoxelGrid g, SurfelSet surfels) {
        int cells = g.cellCount();
        int[] lattice = new int[cells];
        double[] volume = new double[cells];
        int[] neighbour = new int[6 * cells];
        int[] bay = new int[cells];
        for (int c = 0; c < cells; c++) {
            lattice[c] = g.latticeOfCell(c);
            volume[c] = g.volumeM3(c);
            bay[c] = g.bayOfCell(c);
            for (int d = 0; d < 6; d++) {
                neighbour[6 * c + d] = g.neighbour(c, d);
            }
        }
        return new VoxelGrid(
                g.nx(),
                g.ny(),
                g.nz(),
                g.origin(),
                g.sizeM(),
                lattice,
                lattice,
                volume,
                neighbour,
                bay,
                g.faces(),
                surfels,
                g.bays(),
                g.leaks(),
                g.unresolved());
    }

    private static SphereOfSurfels build(double radius, int rings, int perRing, int axis) {
        int count = rings * perRing;
        double[][] v = new double[7][count];
        int[] start = new int[count + 1];
        int[] neighbour = new int[4 * count];
        int used = 0;
        double slice = 2 * Math.PI / perRing;
        for (int s = 0; s < count; s++) {
            int ring = s / perRing;
            int k = s % perRing;
            double c0 = Math.cos(Math.PI * ring / rings);
            double c1 = Math.cos(Math.PI * (ring + 1) / rings);
            double height = 0.5 * (c0 + c1); // Archimedes: area is even along the axis
            double out = Math.sqrt(1 - height * height);
            double angle = (k + 0.5) * slice;
            double[] p = new double[3];
            p[axis] = height;
            p[(axis + 1) % 3] = out * Math.cos(angle);
            p[(axis + 2) % 3] = out * Math.sin(angle);
            v[0][s] = radius * radius * slice * (c0 - c1);
            for (int a = 0; a < 3; a++) {
                v[1 + a][s] = -p[a];
                v[4 + a][s] = radius * p[a];
            }
            TreeSet<Integer> near = new TreeSet<>();
            near.add(ring * perRing + (k + 1) % perRing);
            near.add(ring * perRing + (k + perRing - 1) % perRing);
            if (ring > 0) {
                near.add(s - perRing);
            }
            if (ring < rings - 1) {
                near.add(s + perRing);
            }
            for (int n : near) {
                neighbour[used++] = n;
            }
            start[s + 1] = used;
        }
        int[] closure = new int[count];
        Arrays.fill(closure, -1);
        SurfelSet surfels = new SurfelSet(
                new int[count],
                new byte[count],
                new int[count],
                closure,
                v[0],
                v[1],
                v[2],
                v[3],
                v[4],
                v[5],
                v[6],
                start,
                Arrays.copyOf(neighbour, used));
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
        double volume = 4.0 / 3 * Math.PI * Math.pow(radius, 3);
        Box3 box = new Box3(new Vec3(-radius, -radius, -radius), new Vec3(radius, radius, radius));
        VoxelGrid grid = new VoxelGrid(
                1,
                1,
                1,
                box.min(),
                box.size().times(0.01),
                new int[] {0},
                new int[] {0},
                new double[] {volume},
                new int[] {-1, -1, -1, -1, -1, -1},
                new int[] {0},
                none,
                surfels,
                List.of(new Bay("bay 1", volume, 4 * Math.PI * radius * radius, box, 1)),
                List.of(),
                List.of());
        TriangleMesh empty = new TriangleMesh(new double[0], new int[0]);
        Cavity cavity = new Cavity(
                "sphere",
                List.of(new Part("shell", PartKind.SKIN, 0.001)),
                List.of(),
                empty,
                new int[0],
                empty,
                new int[0],
                empty,
                new int[0],
                null,
                List.of());
        return new SphereOfSurfels(cavity, grid);
    }
}
