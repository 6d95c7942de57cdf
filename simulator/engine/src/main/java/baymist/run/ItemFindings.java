package baymist.run;

import baymist.coverage.ItemDose;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is to be said about protected items: badly held by the voxels, or sprayed too much. */
final class ItemFindings {
    private ItemFindings() {}

    static List<Finding> of(List<ItemDose> doses, SourcePlace place) {
        List<Finding> findings = new ArrayList<>();
        for (ItemDose d : doses) {
            double whole = d.areaM2() + d.unresolvedM2();
            if (whole <= 0) {
                findings.add(new Finding(
                        "PROT-002",
                        Severity.WARNING,
                        place,
                        "protected item '" + d.name() + "' has no surface in the cavity; is its position right?"));
            } else if (d.unresolvedM2() > 0.5 * whole) {
                findings.add(new Finding(
                        "PROT-003",
                        Severity.WARNING,
                        place,
                        String.format(
                                Locale.ROOT,
                                "%.0f %% of protected item '%s' is finer than the voxels and not judged; a smaller voxel would"
                                        + " show it",
                                100 * d.unresolvedM2() / whole,
                                d.name())));
            }
            if (d.exceeded()) {
                findings.add(new Finding(
                        "PROT-001",
                        Severity.WARNING,
                        place,
                        String.format(
                                Locale.ROOT,
                                "protected item '%s' gets up to %.2f um of film, more than its limit of %.2f um: mask it, or keep"
                                        + " the spray away from it",
                                d.name(),
                                1e6 * d.maxM(),
                                1e6 * d.limitM())));
            }
        }
        return findings;
    }
}
