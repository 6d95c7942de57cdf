package baymist.study;

import baymist.access.AccessFinder;
import baymist.access.Insertion;
import baymist.access.ReachProblem;
import baymist.access.ReachSettings;
import baymist.access.Station;
import baymist.access.Stations;
import baymist.access.Surroundings;
import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.run.MemoryCheck;
import baymist.run.Structure;
import baymist.run.Structures;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a job can reach at most, before anything is sprayed. Two bounds that no spraying can pass:
 *
 * <ol>
 *   <li>product: a film of haze on a share {@code s} of the area {@code A} takes {@code s A h} of liquid, and no more than what
 * leaves the tip is there;
 *   <li>air: product gets only into bays that are joined, by openings open while spraying or hanging, to a bay that the tip stands in.
 * </ol>
 *
 * @param refused why the job can't be done, or null
 * @param reached bound of the share of area that is reached, 0..1
 * @param why what bounds it, in words
 * @param shut bays that nothing leads to from where the tip stands
 */
record Bound(@Nullable String refused, double reached, String why, List<ShutBay> shut) {
    Bound {
        shut = List.copyOf(shut);
    }

    static Bound refused(String why) {
        return new Bound(why, 0, "", List.of());
    }

    /** Bound of a job; the scene is at planning resolution. */
    static Bound of(Scene scene, Structures structures) {
        try (Workers one = new Workers(1)) {
            Structure structure = structures.of(scene);
            Cavity cavity = structure.cavity();
            Surroundings around = Surroundings.of(cavity, scene);
            List<Insertion> ways = new ArrayList<>();
            for (PassSpec pass : scene.passes()) {
                EntrySpec entry = scene.entries().stream()
                        .filter(e -> e.name().equals(pass.entry()))
                        .findFirst()
                        .orElseThrow();
                WandSpec wand = java.util.Objects.requireNonNull(scene.wands().get(pass.wand()));
                ReachProblem problem = new ReachProblem(around, entry, wand, ReachSettings.DEFAULT);
                Insertion in = AccessFinder.find(problem, pass.aim(), pass.fromDepthM());
                if (!in.feasible()) {
                    return refused("the wand does not go in: " + in.stoppedBy());
                }
                ways.add(in);
            }
            List<Station> stations = Stations.plan(scene, ways).stations();
            VoxelGrid grid = structure.grid(one);
            return bounded(scene, cavity, grid, stations);
        } catch (SceneException e) {
            if (MemoryCheck.isRefusal(e)) {
                throw e;
            }
            return refused(e.findings().get(0).text());
        }
    }

    private static Bound bounded(Scene scene, Cavity cavity, VoxelGrid grid, List<Station> stations) {
        double[] areas = new double[grid.bays().size()];
        SurfelSet surfels = grid.surfels();
        double area = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                areas[grid.bayOfCell(surfels.cell()[s])] += surfels.areaM2()[s];
                area += surfels.areaM2()[s];
            }
        }
        double trigger = stations.stream().mapToDouble(Station::durationS).sum();
        boolean fitted =
                scene.supply() instanceof SupplySpec.Pressure p && !p.cups().isEmpty();
        double product = fitted
                ? 1
                : trigger
                        * scene.supply().liquidKgPerS()
                        / scene.product().densityKgPerM3()
                        / (scene.targets().hazeM() * area);
        boolean[] joined = joined(cavity, grid, stations);
        double air = 0;
        List<ShutBay> shut = new ArrayList<>();
        for (int b = 0; b < areas.length; b++) {
            air += joined[b] ? areas[b] / area : 0;
            if (!joined[b] && areas[b] > 0) {
                shut.add(new ShutBay(grid.bays().get(b).name(), areas[b] / area));
            }
        }
        if (product < Math.min(1, air)) {
            String why = String.format(Locale.ROOT, "%.1f s of trigger spray too little", trigger);
            return new Bound(null, product, why, shut);
        }
        return new Bound(null, Math.min(1, air), "bays that nothing leads to from the tip", shut);
    }

    /** Bays that air can come into from where the tip stands; all of them if no place of the tip lies in a cell. */
    private static boolean[] joined(Cavity cavity, VoxelGrid grid, List<Station> stations) {
        boolean[] joined = new boolean[grid.bays().size()];
        boolean any = false;
        for (Station s : stations) {
            int cell = grid.cellHolding(s.pose().positionM());
            if (cell >= 0) {
                joined[grid.bayOfCell(cell)] = true;
                any = true;
            }
        }
        FaceSet faces = grid.faces();
        boolean more = true;
        while (more) {
            more = false;
            for (int f = 0; f < faces.count(); f++) {
                int a = grid.bayOfCell(faces.low()[f]);
                int b = grid.bayOfCell(faces.high()[f]);
                boolean opened =
                        faces.opening()[f] < 0 || opens(cavity.openings().get(faces.opening()[f]));
                if (joined[a] != joined[b] && opened) {
                    joined[a] = true;
                    joined[b] = true;
                    more = true;
                }
            }
        }
        if (!any) {
            java.util.Arrays.fill(joined, true);
        }
        return joined;
    }

    private static boolean opens(Opening o) {
        return o.states().pass() == OpeningState.OPEN || o.states().hang() == OpeningState.OPEN;
    }
}
