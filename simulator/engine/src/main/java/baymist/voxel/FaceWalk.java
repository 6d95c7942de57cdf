package baymist.voxel;

import baymist.geom.Vec3;

/**
 * Straight rays from cell to cell until a wall on a face stops them: several times faster than rays against the sheets, and as right as the voxels are. A
 * wall stands at most half a voxel off its sheet, and a slanted sheet is a staircase, so a ray that grazes one may stop early. The next face is always
 * the one whose plane comes first along the ray (Amanatides and Woo 1987, A fast voxel traversal algorithm for ray tracing, Eurographics). Immutable; threads may share it.
 */
public final class FaceWalk {
    /** Bit d of a lattice cell is set where side d (0 = -x .. 5 = +z) leads to another cell of the cavity, [nx * ny * nz]; 0 outside. */
    private final byte[] open;

    private final int nx;
    private final int ny;
    private final int nz;
    private final double lowX;
    private final double lowY;
    private final double lowZ;
    private final double sizeX;
    private final double sizeY;
    private final double sizeZ;

    private FaceWalk(VoxelGrid grid, byte[] open) {
        this.open = open;
        nx = grid.nx();
        ny = grid.ny();
        nz = grid.nz();
        lowX = grid.origin().x();
        lowY = grid.origin().y();
        lowZ = grid.origin().z();
        sizeX = grid.sizeM().x();
        sizeY = grid.sizeM().y();
        sizeZ = grid.sizeM().z();
    }

    /** The walls of a grid. A face in a sheet lets rays through where openings take at least half of it, open or not. */
    public static FaceWalk of(VoxelGrid grid) {
        byte[] open = new byte[grid.nx() * grid.ny() * grid.nz()];
        for (int c = 0; c < grid.cellCount(); c++) {
            int bits = 0;
            for (int d = 0; d < 6; d++) {
                bits |= grid.neighbour(c, d) >= 0 ? 1 << d : 0;
            }
            open[grid.latticeOfCell(c)] = (byte) bits;
        }
        FaceSet faces = grid.faces();
        double[] whole = {
            grid.sizeM().y() * grid.sizeM().z(),
            grid.sizeM().x() * grid.sizeM().z(),
            grid.sizeM().x() * grid.sizeM().y()
        };
        double areaM2 = 0;
        for (int e = 0; e < faces.count(); e++) {
            boolean same = e > 0
                    && faces.low()[e] == faces.low()[e - 1]
                    && faces.high()[e] == faces.high()[e - 1]
                    && faces.axis()[e] == faces.axis()[e - 1];
            areaM2 = (same ? areaM2 : 0) + faces.areaM2()[e];
            int axis = faces.axis()[e];
            if (faces.opening()[e] >= 0 && areaM2 >= 0.5 * whole[axis]) {
                open[grid.latticeOfCell(faces.low()[e])] |= (byte) (1 << (2 * axis + 1));
                open[grid.latticeOfCell(faces.high()[e])] |= (byte) (1 << (2 * axis));
            }
        }
        return new FaceWalk(grid, open);
    }

    /** Distance to the first wall in lengths of the direction, or {@code most} if none lies nearer. What lies outside the cavity is walled in cell by cell. */
    public double free(Vec3 from, Vec3 direction, double most) {
        return free(from.x(), from.y(), from.z(), direction.x(), direction.y(), direction.z(), most);
    }

    /** The same from (x, y, z) along (dx, dy, dz), which is not zero. */
    public double free(double x, double y, double z, double dx, double dy, double dz, double most) {
        double atX = (x - lowX) / sizeX;
        double atY = (y - lowY) / sizeY;
        double atZ = (z - lowZ) / sizeZ;
        int i = (int) Math.floor(atX);
        int j = (int) Math.floor(atY);
        int k = (int) Math.floor(atZ);
        if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) {
            return 0;
        }
        // along each axis: the ray's parameter at the next plane and from plane to plane; infinite where it runs in a
        // plane
        double stepX = sizeX / Math.abs(dx);
        double stepY = sizeY / Math.abs(dy);
        double stepZ = sizeZ / Math.abs(dz);
        double nextX = dx == 0 ? Double.POSITIVE_INFINITY : stepX * (dx > 0 ? i + 1 - atX : atX - i);
        double nextY = dy == 0 ? Double.POSITIVE_INFINITY : stepY * (dy > 0 ? j + 1 - atY : atY - j);
        double nextZ = dz == 0 ? Double.POSITIVE_INFINITY : stepZ * (dz > 0 ? k + 1 - atZ : atZ - k);
        int jumpX = dx > 0 ? 1 : -1;
        int jumpY = dy > 0 ? nx : -nx;
        int jumpZ = dz > 0 ? nx * ny : -nx * ny;
        int sideX = dx > 0 ? 2 : 1;
        int sideY = dy > 0 ? 8 : 4;
        int sideZ = dz > 0 ? 32 : 16;
        int cell = i + nx * (j + ny * k);
        while (true) {
            double t;
            int side;
            int jump;
            if (nextX <= nextY && nextX <= nextZ) {
                t = nextX;
                nextX += stepX;
                side = sideX;
                jump = jumpX;
            } else if (nextY <= nextZ) {
                t = nextY;
                nextY += stepY;
                side = sideY;
                jump = jumpY;
            } else {
                t = nextZ;
                nextZ += stepZ;
                side = sideZ;
                jump = jumpZ;
            }
            if (t >= most) {
                return most;
            }
            if ((open[cell] & side) == 0) {
                return t;
            }
            cell += jump;
        }
    }
}
