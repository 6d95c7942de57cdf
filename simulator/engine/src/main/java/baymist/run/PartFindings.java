package baymist.run;

import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a run of some bays has to say about the others. */
final class PartFindings {
    private PartFindings() {}

    static List<Finding> of(Scene scene, VoxelGrid grid, PartRule rule, double carriedKg, double productKg) {
        ComputedBays bays = ComputedBays.of(grid);
        if (bays.isWhole()) {
            return List.of();
        }
        List<Finding> findings = new ArrayList<>();
        findings.add(computed(scene, bays, rule, "computed"));
        double share = productKg > 0 ? carriedKg / productKg : 0;
        if (share > Ground.CARRIED_TOLD) {
            findings.add(new Finding(
                    "PART-002",
                    Severity.WARNING,
                    SourcePlace.of(scene.file()),
                    String.format(
                            Locale.ROOT,
                            "%.2f %% of the product (%.3f g) is carried into bays that are not computed, more than %.1f %%:"
                                    + " the bays at the edge get more or less than is said here; %s",
                            100 * share,
                            1e3 * carriedKg,
                            100 * Ground.CARRIED_TOLD,
                            rule.isByMemory()
                                    ? "give Java more memory (-Xmx), or take coarser voxels (--voxel)"
                                    : "ask for more rings (--part)")));
        }
        return findings;
    }

    /** PART-001, for a run or for what it would do. */
    static Finding computed(Scene scene, ComputedBays bays, PartRule rule, String verb) {
        return new Finding(
                "PART-001",
                Severity.WARNING,
                SourcePlace.of(scene.file()),
                String.format(
                        Locale.ROOT,
                        "%s %s%s; of the other %d nothing is said, neither reached nor bare",
                        bays.words(),
                        verb,
                        rule.isByMemory() ? ", the rest does not fit in memory" : " (--part)",
                        bays.leftOut().size()));
    }
}
