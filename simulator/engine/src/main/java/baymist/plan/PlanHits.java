package baymist.plan;

import baymist.coverage.ItemAssessor;
import baymist.coverage.ItemDose;
import baymist.run.RunResult;
import java.util.List;

/** Which protected items a run sprays beyond their limits. */
final class PlanHits {
    private PlanHits() {}

    static List<String> of(RunResult run) {
        if (run.scene().protectedItems().isEmpty()) {
            return List.of();
        }
        return ItemAssessor.assess(run.scene(), run.cavity(), run.grid(), run.filmM()).stream()
                .filter(ItemDose::exceeded)
                .map(ItemDose::name)
                .toList();
    }
}
