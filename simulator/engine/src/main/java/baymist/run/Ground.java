package baymist.run;

import baymist.access.Station;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.coverage.SeamMap;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.Finding;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.spray.SprayCast;
import baymist.voxel.GridPart;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The bays that a job is computed in, with what the jets do there: the whole structure where it has room, else the sprayed bays and so many rings of
 * neighbours (docs/decisions/0009-computed-part.md). The whole's voxels are let go once a part is taken from them.
 */
final class Ground {
    /** Rings of neighbours to begin with, where they have room. */
    static final int FIRST_RINGS = 2;

    /** Fewest rings that are kept: what a jet throws through a hole lands in the next bay. */
    static final int FEWEST_RINGS = 1;

    /** Share of the product carried beyond the computed bays from which one ring more is computed, or the run warns (ASSUMED: a tenth of a per cent). */
    static final double CARRIED_TOLD = 1e-3;

    private final VoxelGrid grid;
    private final Spraying spraying;
    private final double[] openingAreaM2;
    private final List<Finding> geometry;
    private final @Nullable Structure whole;
    private final int rings;
    private final boolean growable;

    private Ground(
            VoxelGrid grid,
            Spraying spraying,
            double[] openingAreaM2,
            List<Finding> geometry,
            @Nullable Structure whole,
            int rings,
            boolean growable) {
        this.grid = grid;
        this.spraying = spraying;
        this.openingAreaM2 = openingAreaM2;
        this.geometry = geometry;
        this.whole = whole;
        this.rings = rings;
        this.growable = growable;
    }

    /** What a ground is chosen for. */
    record Ask(
            Scene scene,
            Structure structure,
            Timeline timeline,
            RunOptions options,
            MemoryBudget.Lease memory,
            Workers workers,
            RunObserver observer) {
        MemoryEstimate takes(VoxelGrid grid) {
            return RunEstimate.of(scene, grid, timeline).memory();
        }
    }

    /**
     * Chooses the bays, takes memory for them and casts the jets.
     *
     * @param rings of neighbours where memory has to choose; 0 for as many as one begins with
     * @throws baymist.problem.SceneException RUN-008 if not even the sprayed bays and their neighbours have room
     */
    static Ground choose(Ask ask, int rings) {
        PartRule rule = ask.options.part();
        MemoryBudget budget = ask.options.memory();
        VoxelGrid grid = ask.structure.grid(ask.workers);
        boolean fits = ask.takes(grid).totalBytes() <= budget.bytes();
        if (rule.isWhole() || (rule.isByMemory() && fits)) {
            return whole(ask, grid);
        }
        boolean[] tips = sprayed(ask.scene, grid, ask.timeline);
        if (tips == null) {
            return whole(ask, grid);
        }
        int wanted = rule.isByMemory() ? Math.max(rings, FIRST_RINGS) : rule.rings();
        int least = rule.isByMemory() ? FEWEST_RINGS : wanted;
        BayRings bays = BayRings.of(ask.structure.cavity(), grid);
        // refused before the jets are cast, which takes its time
        trial(ask, grid, bays, tips).most(wanted, least);
        Spraying everywhere = Spraying.cast(ask.scene, ask.structure, ask.timeline, ask.workers, ask.observer);
        PartTrial trial = trial(ask, grid, bays, withAir(tips, grid, everywhere, ask.timeline.count()));
        int kept = trial.most(wanted, least);
        boolean growable = rule.isByMemory() && trial.grows(kept);
        return part(ask, grid, everywhere, bays, trial.bays(kept), kept, growable);
    }

    private static PartTrial trial(Ask ask, VoxelGrid grid, BayRings bays, boolean[] sprayed) {
        return new PartTrial(ask.scene, ask.structure.cavity(), grid, bays, sprayed, ask::takes, ask.options.memory());
    }

    private static Ground whole(Ask ask, VoxelGrid grid) {
        Cavity cavity = ask.structure.cavity();
        ask.memory.take(MemoryCheck.job(ask.scene, cavity, grid, ask::takes, ask.options.memory()));
        Spraying spraying = Spraying.cast(ask.scene, ask.structure, ask.timeline, ask.workers, ask.observer);
        double[] areas = OpenFractions.areasM2(cavity.openings());
        return new Ground(grid, spraying, areas, List.of(), ask.structure, 0, false);
    }

    private static Ground part(
            Ask ask, VoxelGrid whole, Spraying everywhere, BayRings bays, boolean[] kept, int rings, boolean growable) {
        Cavity cavity = ask.structure.cavity();
        GridPart part = GridPart.of(whole, kept);
        double[] areas = OpenFractions.areasM2(cavity.openings());
        double[] factor = bays.airFactors(kept, areas);
        for (int o = 0; o < areas.length; o++) {
            areas[o] *= factor[o];
        }
        List<Finding> geometry = RunFindings.sheets(ask.scene, cavity, whole);
        Spraying spraying = everywhere.in(part);
        ask.structure.letGo();
        ask.memory.take(Math.min(
                ask.takes(part.grid()).totalBytes(), ask.options.memory().bytes()));
        ask.observer.note(ComputedBays.of(part.grid()).sentence());
        return new Ground(part.grid(), spraying, areas, geometry, null, rings, growable);
    }

    /** Bays in which tips stand or fog is let out at a point; null if none or all are meant. */
    static boolean @Nullable [] sprayed(Scene scene, VoxelGrid grid, Timeline timeline) {
        InitialFog fog = scene.initialFog();
        List<Integer> cells = new ArrayList<>();
        if (fog != null) {
            Vec3 point = fog.pointM();
            if (point == null) {
                return null;
            }
            cells.add(grid.cellHolding(point));
        }
        for (Moment m : timeline.moments()) {
            Station station = m.station();
            if (station != null) {
                cells.add(grid.cellHolding(station.pose().positionM()));
            }
        }
        boolean[] bays = new boolean[grid.bays().size()];
        boolean any = false;
        for (int cell : cells) {
            if (cell >= 0) {
                bays[grid.bayOfCell(cell)] = true;
                any = true;
            }
        }
        return any ? bays : null;
    }

    /** With the bays into which tips give air: beside a sheet not always that of the cell that holds the tip. */
    private static boolean[] withAir(boolean[] tips, VoxelGrid grid, Spraying casts, int moments) {
        boolean[] bays = tips.clone();
        for (int m = 0; m < moments; m++) {
            SprayCast cast = casts.cast(m);
            if (cast != null && cast.hits().airCell() >= 0) {
                bays[grid.bayOfCell(cast.hits().airCell())] = true;
            }
        }
        return bays;
    }

    /** Cells that are computed. */
    VoxelGrid grid() {
        return grid;
    }

    /** What the jets do in them. */
    Spraying spraying() {
        return spraying;
    }

    /** Areas of the openings as the air finds them, m², [openings]. */
    double[] openingAreaM2() {
        return openingAreaM2;
    }

    /** Seams of the computed bays. */
    SeamMap seams(Scene scene, Cavity cavity, Workers workers) {
        Structure all = whole;
        return all != null
                ? all.seams(workers)
                : SeamMap.of(cavity, grid, scene.targets().seamCreepM());
    }

    /** Remarks on the geometry of the whole, where it is not at hand any more. */
    @Nullable
    List<Finding> geometry() {
        return whole != null ? null : geometry;
    }

    int rings() {
        return rings;
    }

    /** Says that it will be done. */
    String growing(double carriedKg, double productKg, double timeS) {
        return String.format(
                Locale.ROOT,
                "after %.1f s, %.2f %% of the product has been carried into bays not computed: from the start again with one ring of bays more, %d",
                timeS,
                100 * carriedKg / productKg,
                rings + 1);
    }

    /** Whether so much carried beyond is a reason to compute one ring more, for which there is room. */
    boolean shouldGrow(double carriedKg, double productKg) {
        return growable && carriedKg > CARRIED_TOLD * productKg;
    }
}
