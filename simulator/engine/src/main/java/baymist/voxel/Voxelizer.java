package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.VoxelSpec;

/** Turns the sheets of a cavity into cells of air with walls on faces. The steps are told in the package's documentation. */
public final class Voxelizer {
    private Voxelizer() {}

    /**
     * Voxels of a cavity, the same to the last bit for any number of workers.
     *
     * @param wanted wished voxel size, m; 0 along an axis lets {@code docs/theory/voxels.md} section 1 choose. The size is
     *     snapped so that whole cells span the bounding box of the sheets
     * @return cavity cells only; openings are entries in {@link FaceSet} whatever their state
     * @throws SceneException VOX-001 if the sheets enclose nothing (at the inside point), with the places where outside
     *     air comes in; VOX-002 if an opening lies in sheet that no voxel resolves; VOX-003 if the voxels are too small for
     *     the memory; VOX-004 if a wished size is no length
     */
    public static VoxelGrid voxelize(Cavity cavity, VoxelSpec wanted, Workers workers) {
        Lattice lattice = lattice(cavity, wanted);
        BlockedFaces crossings = SheetCrossings.find(cavity, lattice, workers);
        Enclosure enclosure = Enclosure.flood(lattice, crossings);
        BlockedFaces blocked = crossings.withSkinsOutside(cavity, lattice, enclosure);
        OpeningFaces openings = OpeningPlacer.place(cavity, lattice, blocked, enclosure);
        CavityCells cells = CavityCells.choose(cavity, lattice, blocked, enclosure, openings);
        FaceSet faces = FaceSetBuilder.build(lattice, blocked, cells, openings);
        int[] neighbour = FaceSetBuilder.neighbours(lattice, blocked, cells);
        SheetOrientation sheets = new SheetOrientation(cavity);
        SurfaceTotals totals = surface(cavity, lattice, blocked, cells, openings, sheets, workers);
        SurfelSet surfels = SurfelBuilder.build(cavity, lattice, blocked, cells, openings, totals, neighbour);
        double[] volume = CellVolumes.bySides(lattice, blocked, cells, sheets);
        CellVolumes.matchTotal(volume, lattice, blocked, cells, totals.enclosedM3());
        BayFinder.Bays bays = BayFinder.find(lattice, cells, neighbour, volume, faces, surfels);
        return new VoxelGrid(
                lattice.count(0),
                lattice.count(1),
                lattice.count(2),
                lattice.origin(),
                lattice.pitch(),
                cells.latticeOfCell(),
                cells.cellOfLattice(),
                volume,
                neighbour,
                bays.bayOfCell(),
                faces,
                surfels,
                bays.list(),
                openings.leaks(),
                totals.unresolved());
    }

    /** Voxel size along x, y and z as it comes out for a wished one, snapped to the cavity, m; errors as {@link #voxelize}. */
    public static Vec3 sizeM(Cavity cavity, VoxelSpec wanted) {
        return lattice(cavity, wanted).pitch();
    }

    /** Cells of the lattice that a wished voxel size asks for, those outside the cavity included; errors as {@link #voxelize}. */
    public static long latticeCells(Cavity cavity, VoxelSpec wanted) {
        return lattice(cavity, wanted).cells();
    }

    static Lattice lattice(Cavity cavity, VoxelSpec wanted) {
        Box3 box = cavity.sheets().bounds();
        if (box.isEmpty()
                || !(box.size().x() > 0 && box.size().y() > 0 && box.size().z() > 0)) {
            throw new SceneException(
                    "VOX-001",
                    new SourcePlace(cavity.name(), 0, "sheets"),
                    "the sheets enclose no air: they lie in one plane; sheets all round the cavity would be right");
        }
        return new Lattice(box, PitchRule.cells(box.size(), wanted, cavity.name()));
    }

    private static SurfaceTotals surface(
            Cavity cavity,
            Lattice lattice,
            BlockedFaces blocked,
            CavityCells cells,
            OpeningFaces openings,
            SheetOrientation sheets,
            Workers workers) {
        ClosureMesh closures = ClosureMesh.of(cavity);
        SurfaceTotals totals = new SurfaceTotals(cavity, lattice, cells, 2 * blocked.count() + 2 * openings.count());
        Bvh tree = Bvh.of(cavity.sheets());
        AreaShares[] shares = SurfaceShares.ofSheets(cavity, lattice, blocked, cells, sheets, tree, workers);
        totals.addSheets(
                shares, UnseenSides.find(cavity, lattice, cells, new Aim(lattice, blocked), shares, tree, workers));
        totals.addClosures(
                closures, SurfaceShares.ofClosures(cavity, lattice, blocked, cells, openings, closures, workers));
        return totals;
    }
}
