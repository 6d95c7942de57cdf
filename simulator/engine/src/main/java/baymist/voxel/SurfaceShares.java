package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.numeric.Workers;

/** Cuts all sheets and closures into pieces and shares them out, block by block of triangles. */
final class SurfaceShares {
    private static final int TRIANGLES_PER_BLOCK = 16;

    private SurfaceShares() {}

    static AreaShares[] ofSheets(
            Cavity cavity,
            Lattice lattice,
            BlockedFaces blocked,
            CavityCells cells,
            SheetOrientation sheets,
            Bvh tree,
            Workers workers) {
        TriangleMesh mesh = cavity.cutSheets();
        AreaShares[] blocks = new AreaShares[blocks(mesh)];
        workers.forBlocks(mesh.triangleCount(), TRIANGLES_PER_BLOCK, (from, to) -> {
            AreaShares mine = new AreaShares();
            TriangleSlicer slicer = new TriangleSlicer(lattice);
            PieceSharer sharer = new PieceSharer(cavity, lattice, blocked, cells, sheets, new Sight(tree));
            double[] corners = new double[9];
            for (int t = from; t < to; t++) {
                Vec3 n = mesh.normal(t);
                int triangle = t;
                sharer.startTriangle(cavity.partOfCut(t), n);
                slicer.slice(
                        corners(mesh, t, corners),
                        n,
                        (cell, area, x, y, z) ->
                                sharer.share(mine, mine.addPiece(triangle, x, y, z), cell, area, x, y, z));
            }
            blocks[from / TRIANGLES_PER_BLOCK] = mine;
        });
        return blocks;
    }

    static AreaShares[] ofClosures(
            Cavity cavity,
            Lattice lattice,
            BlockedFaces blocked,
            CavityCells cells,
            OpeningFaces openings,
            ClosureMesh closures,
            Workers workers) {
        TriangleMesh mesh = closures.mesh();
        ClosureSharer sharer = new ClosureSharer(cavity, lattice, blocked, cells, openings);
        AreaShares[] blocks = new AreaShares[blocks(mesh)];
        workers.forBlocks(mesh.triangleCount(), TRIANGLES_PER_BLOCK, (from, to) -> {
            AreaShares mine = new AreaShares();
            TriangleSlicer slicer = new TriangleSlicer(lattice);
            double[] corners = new double[9];
            for (int t = from; t < to; t++) {
                Vec3 n = mesh.normal(t);
                int triangle = t;
                int opening = closures.openingOf()[t];
                slicer.slice(
                        corners(mesh, t, corners),
                        n,
                        (cell, area, x, y, z) ->
                                sharer.share(mine, mine.addPiece(triangle, x, y, z), opening, n, cell, area, x, y, z));
            }
            blocks[from / TRIANGLES_PER_BLOCK] = mine;
        });
        return blocks;
    }

    private static int blocks(TriangleMesh mesh) {
        return (mesh.triangleCount() + TRIANGLES_PER_BLOCK - 1) / TRIANGLES_PER_BLOCK;
    }

    private static double[] corners(TriangleMesh mesh, int t, double[] into) {
        for (int k = 0; k < 9; k++) {
            into[k] = mesh.coordinate(mesh.corner(t, k / 3), k % 3);
        }
        return into;
    }
}
