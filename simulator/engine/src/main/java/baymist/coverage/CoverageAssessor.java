package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.Part;
import baymist.scene.Scene;
import baymist.scene.TargetSpec;
import baymist.voxel.Bay;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/**
 * Turns film into verdicts: one for each surfel, shares of area for the whole, each part, each bay and each facing, and
 * the connected regions that got nothing. Definitions: docs/theory/coverage.md, equations (1) to (4).
 */
public final class CoverageAssessor {
    /** Floors: surfaces whose normal into the air points up within 45 degrees of structure z. */
    public static final String FACING_UP = "facing up";
    /** Ceilings: surfaces whose normal points down within 45 degrees of structure z. */
    public static final String FACING_DOWN = "facing down";
    /** Everything else. */
    public static final String UPRIGHT = "upright";

    /** How the words of the one entry that gathers small spots begin. */
    public static final String SCATTERED = "scattered small spots";

    private static final double COS_45 = Math.sqrt(0.5);

    private CoverageAssessor() {}

    /**
     * Assesses a film by area alone, without seams. Closures (surfels of taped, plugged or closed openings) and protected items get no verdict and no
     * share.
     *
     * @param filmM film build on each surfel, m, [surfels], 0 or more
     * @param target thresholds, 0 &lt; haze &le; build &le; excess
     * @return shares of true surface area; parts and bays without resolved interior area are left out
     * @throws IllegalArgumentException on a wrong array length, a negative or non-finite film or disordered thresholds
     */
    public static Coverage assess(Cavity cavity, VoxelGrid grid, double[] filmM, TargetSpec target) {
        return assess(cavity, grid, filmM, target, SeamMap.none(cavity, grid), EntryWays.NONE);
    }

    /** The same with coverage by length of seam; {@code seams} is made once for all films on a grid. */
    public static Coverage assess(Cavity cavity, VoxelGrid grid, double[] filmM, TargetSpec target, SeamMap seams) {
        return assess(cavity, grid, filmM, target, seams, EntryWays.NONE);
    }

    /** The same with the thresholds of a scene, its seams, and the way to each region from its entries. */
    public static Coverage assess(Scene scene, Cavity cavity, VoxelGrid grid, double[] filmM) {
        return assess(
                scene,
                cavity,
                grid,
                filmM,
                SeamMap.of(cavity, grid, scene.targets().seamCreepM()));
    }

    /** The same with seams that were found before. */
    public static Coverage assess(Scene scene, Cavity cavity, VoxelGrid grid, double[] filmM, SeamMap seams) {
        return assess(cavity, grid, filmM, scene.targets(), seams, EntryWays.of(scene, cavity, grid));
    }

    private static Coverage assess(
            Cavity cavity, VoxelGrid grid, double[] filmM, TargetSpec target, SeamMap seams, EntryWays ways) {
        SurfelSet surfels = grid.surfels();
        requireSound(surfels, filmM, target);
        Verdict[] verdict = verdicts(surfels, filmM, target);
        FractionTally total = new FractionTally("all surfaces");
        List<FractionTally> parts = new ArrayList<>();
        for (Part p : cavity.parts()) {
            parts.add(new FractionTally(p.name()));
        }
        List<FractionTally> bays = new ArrayList<>();
        for (Bay b : grid.bays()) {
            bays.add(new FractionTally(b.name()));
        }
        List<FractionTally> facings =
                List.of(new FractionTally(FACING_UP), new FractionTally(FACING_DOWN), new FractionTally(UPRIGHT));
        for (int s = 0; s < surfels.count(); s++) {
            if (!surfels.isStructure(s)) {
                continue;
            }
            double area = surfels.areaM2()[s];
            total.add(area, filmM[s], verdict[s]);
            parts.get(surfels.part()[s]).add(area, filmM[s], verdict[s]);
            bays.get(grid.bayOfCell(surfels.cell()[s])).add(area, filmM[s], verdict[s]);
            facings.get(facing(surfels.normalZ()[s])).add(area, filmM[s], verdict[s]);
        }
        return new Coverage(
                total.toFractions(),
                fractions(parts),
                fractions(bays),
                fractions(facings),
                new RegionFinder(cavity, grid, verdict, target, seams.bareBySurfel(filmM, target.hazeM()), ways).find(),
                verdict,
                seams.assess(filmM, target));
    }

    /** Shares of the whole structure alone, without regions: for films that are only compared. */
    public static Fractions total(String name, VoxelGrid grid, double[] filmM, TargetSpec target) {
        SurfelSet surfels = grid.surfels();
        requireSound(surfels, filmM, target);
        FractionTally total = new FractionTally(name);
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                total.add(surfels.areaM2()[s], filmM[s], verdict(filmM[s], target));
            }
        }
        return total.toFractions();
    }

    /** Verdict on a film of this build: reached from haze on, protected from the target on, excess above the limit. */
    public static Verdict verdict(double filmM, TargetSpec target) {
        if (filmM < target.hazeM()) {
            return Verdict.UNREACHED;
        }
        if (filmM < target.buildM()) {
            return Verdict.THIN;
        }
        return filmM > target.excessM() ? Verdict.EXCESS : Verdict.PROTECTED;
    }

    private static Verdict[] verdicts(SurfelSet surfels, double[] filmM, TargetSpec target) {
        Verdict[] verdict = new Verdict[surfels.count()];
        for (int s = 0; s < verdict.length; s++) {
            if (surfels.isStructure(s)) {
                verdict[s] = verdict(filmM[s], target);
            }
        }
        return verdict;
    }

    private static int facing(double normalZ) {
        return normalZ >= COS_45 ? 0 : normalZ <= -COS_45 ? 1 : 2;
    }

    private static List<Fractions> fractions(List<FractionTally> tallies) {
        return tallies.stream()
                .filter(t -> !t.isEmpty())
                .map(FractionTally::toFractions)
                .toList();
    }

    private static void requireSound(SurfelSet surfels, double[] filmM, TargetSpec target) {
        if (filmM.length != surfels.count()) {
            throw new IllegalArgumentException(
                    "film on " + filmM.length + " surfels given, " + surfels.count() + " expected");
        }
        for (int s = 0; s < filmM.length; s++) {
            if (!(filmM[s] >= 0) || Double.isInfinite(filmM[s])) {
                throw new IllegalArgumentException("film " + filmM[s] + " m on surfel " + s + ", 0 or more expected");
            }
        }
        if (!(target.hazeM() > 0 && target.hazeM() <= target.buildM() && target.buildM() <= target.excessM())) {
            throw new IllegalArgumentException("thresholds " + target + ", 0 < haze <= build <= excess expected");
        }
    }
}
