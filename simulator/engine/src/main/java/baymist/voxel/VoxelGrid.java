package baymist.voxel;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The cavity as cells of air with walls on faces; immutable, only cavity cells are stored.
 *
 * <p>Lattice index of a cell = i + nx * (j + ny * k). Cavity cells are numbered 0..cellCount-1 in ascending lattice index.
 */
public final class VoxelGrid {
    private final int nx;
    private final int ny;
    private final int nz;
    private final Vec3 origin;
    private final Vec3 sizeM;
    private final int[] latticeOfCell;
    private final int[] cellOfLattice;
    private final double[] volumeM3;
    private final int[] neighbour;
    private final int[] bayOfCell;
    private final FaceSet faces;
    private final SurfelSet surfels;
    private final List<Bay> bays;
    private final List<Leak> leaks;
    private final List<UnresolvedArea> unresolved;
    private final @Nullable PartOfWhole part;

    /**
     * @param origin low corner of lattice cell (0, 0, 0), m
     * @param sizeM voxel size along each axis, m
     * @param latticeOfCell [cellCount] ascending
     * @param cellOfLattice [nx*ny*nz] cavity cell or -1 (outside, or not part of the job)
     * @param volumeM3 [cellCount] air volume of each cell, partial cells included
     * @param neighbour [6 * cellCount] cavity cell behind side d of cell c at 6*c+d where no sheet lies between, else -1
     * @param bayOfCell [cellCount] index into bays
     */
    public VoxelGrid(
            int nx,
            int ny,
            int nz,
            Vec3 origin,
            Vec3 sizeM,
            int[] latticeOfCell,
            int[] cellOfLattice,
            double[] volumeM3,
            int[] neighbour,
            int[] bayOfCell,
            FaceSet faces,
            SurfelSet surfels,
            List<Bay> bays,
            List<Leak> leaks,
            List<UnresolvedArea> unresolved) {
        this(
                nx,
                ny,
                nz,
                origin,
                sizeM,
                latticeOfCell,
                cellOfLattice,
                volumeM3,
                neighbour,
                bayOfCell,
                faces,
                surfels,
                bays,
                leaks,
                unresolved,
                null);
    }

    VoxelGrid(
            int nx,
            int ny,
            int nz,
            Vec3 origin,
            Vec3 sizeM,
            int[] latticeOfCell,
            int[] cellOfLattice,
            double[] volumeM3,
            int[] neighbour,
            int[] bayOfCell,
            FaceSet faces,
            SurfelSet surfels,
            List<Bay> bays,
            List<Leak> leaks,
            List<UnresolvedArea> unresolved,
            @Nullable PartOfWhole part) {
        this.part = part;
        this.nx = nx;
        this.ny = ny;
        this.nz = nz;
        this.origin = origin;
        this.sizeM = sizeM;
        this.latticeOfCell = latticeOfCell;
        this.cellOfLattice = cellOfLattice;
        this.volumeM3 = volumeM3;
        this.neighbour = neighbour;
        this.bayOfCell = bayOfCell;
        this.faces = faces;
        this.surfels = surfels;
        this.bays = List.copyOf(bays);
        this.leaks = List.copyOf(leaks);
        this.unresolved = List.copyOf(unresolved);
    }

    /** The same grid with other names for its bays, one for each, in order. */
    public VoxelGrid withBayNames(List<String> names) {
        if (names.size() != bays.size()) {
            throw new IllegalArgumentException(names.size() + " names for " + bays.size() + " bays");
        }
        List<Bay> named = new ArrayList<>();
        for (int b = 0; b < names.size(); b++) {
            named.add(bays.get(b).named(names.get(b)));
        }
        return new VoxelGrid(
                nx,
                ny,
                nz,
                origin,
                sizeM,
                latticeOfCell,
                cellOfLattice,
                volumeM3,
                neighbour,
                bayOfCell,
                faces,
                surfels,
                named,
                leaks,
                unresolved,
                part);
    }

    /** What was left out of a larger grid to make this one, or null where it is whole. */
    public @Nullable PartOfWhole part() {
        return part;
    }

    public int nx() {
        return nx;
    }

    public int ny() {
        return ny;
    }

    public int nz() {
        return nz;
    }

    public Vec3 origin() {
        return origin;
    }

    /** Voxel size along x, y, z, m. */
    public Vec3 sizeM() {
        return sizeM;
    }

    /** Number of cavity cells. */
    public int cellCount() {
        return latticeOfCell.length;
    }

    public int latticeOfCell(int cell) {
        return latticeOfCell[cell];
    }

    /** Cavity cell at lattice position, or -1 (also outside the lattice). */
    public int cellAt(int i, int j, int k) {
        if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) {
            return -1;
        }
        return cellOfLattice[i + nx * (j + ny * k)];
    }

    public int i(int cell) {
        return latticeOfCell[cell] % nx;
    }

    public int j(int cell) {
        return latticeOfCell[cell] / nx % ny;
    }

    public int k(int cell) {
        return latticeOfCell[cell] / (nx * ny);
    }

    /** Centre of a cavity cell, m. */
    public Vec3 centre(int cell) {
        return new Vec3(
                origin.x() + (i(cell) + 0.5) * sizeM.x(),
                origin.y() + (j(cell) + 0.5) * sizeM.y(),
                origin.z() + (k(cell) + 0.5) * sizeM.z());
    }

    /** Cavity cell that holds the point, or -1. */
    public int cellHolding(Vec3 p) {
        return cellAt(
                (int) Math.floor((p.x() - origin.x()) / sizeM.x()),
                (int) Math.floor((p.y() - origin.y()) / sizeM.y()),
                (int) Math.floor((p.z() - origin.z()) / sizeM.z()));
    }

    /** Air volume of a cell, m³. */
    public double volumeM3(int cell) {
        return volumeM3[cell];
    }

    public double totalVolumeM3() {
        double sum = 0;
        for (double v : volumeM3) {
            sum += v;
        }
        return sum;
    }

    /** Cavity cell behind side {@code direction} (0 = -x .. 5 = +z) where no sheet lies between, else -1. */
    public int neighbour(int cell, int direction) {
        return neighbour[6 * cell + direction];
    }

    public int bayOfCell(int cell) {
        return bayOfCell[cell];
    }

    public FaceSet faces() {
        return faces;
    }

    public SurfelSet surfels() {
        return surfels;
    }

    public List<Bay> bays() {
        return bays;
    }

    public List<Leak> leaks() {
        return leaks;
    }

    /** Interior sheet area that no voxel faces; resolved + unresolved = exact. */
    public List<UnresolvedArea> unresolved() {
        return unresolved;
    }

    public double unresolvedAreaM2() {
        return unresolved.stream().mapToDouble(UnresolvedArea::areaM2).sum();
    }
}
