package baymist.plan;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.Opening;
import baymist.problem.SceneException;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import java.util.ArrayList;
import java.util.List;

/**
 * The scene as it stands, or with a panel off, or with holes drilled.
 *
 * @param panels closed openings that are opened while spraying
 * @param holes names of holes that would be drilled
 */
record PlanVariant(Scene scene, List<String> panels, List<String> holes) {
    /** What a panel costs (ASSUMED: one that brings less than a point of area is not worth its screws). */
    private static final double PANEL_WORTH = 0.01;

    /** What a hole costs (ASSUMED: holes come after everything else). */
    private static final double HOLE_WORTH = 0.02;

    PlanVariant {
        panels = List.copyOf(panels);
        holes = List.copyOf(holes);
    }

    /** What it takes off a plan's worth. */
    double cost() {
        return PANEL_WORTH * panels.size() + HOLE_WORTH * holes.size();
    }

    /** In words, for progress. */
    String words() {
        return panels.isEmpty() && holes.isEmpty()
                ? ""
                : panels.isEmpty()
                        ? ", with " + String.join(", ", holes)
                        : ", with " + String.join(", ", panels) + " off";
    }

    /**
     * The scene as it stands, with each panel off alone, and with all of them.
     *
     * @throws SceneException PLN-003 if a panel is no opening of the cavity
     */
    static List<PlanVariant> of(Scene scene) {
        List<PlanVariant> all = new ArrayList<>();
        all.add(new PlanVariant(scene, List.of(), List.of()));
        List<String> panels = scene.studies().plan().panels();
        if (panels.isEmpty()) {
            return all;
        }
        Cavity cavity = CavityBuilder.build(scene);
        panels.forEach(p -> all.add(off(scene, cavity, List.of(p))));
        if (panels.size() > 1) {
            all.add(off(scene, cavity, panels));
        }
        return all;
    }

    private static PlanVariant off(Scene scene, Cavity cavity, List<String> panels) {
        SceneEdit edit = SceneEdit.of(scene);
        for (String panel : panels) {
            int index = cavity.openingIndex(panel);
            if (index < 0) {
                throw new SceneException(
                        "PLN-003",
                        scene.studies().plan().place(),
                        "`panels` names '" + panel + "', which is no opening of this cavity; openings are "
                                + cavity.openings().stream().map(Opening::name).toList());
            }
            PhaseStates now = cavity.openings().get(index).states();
            edit.state(panel, now.with(PhaseStates.Phase.PASS, OpeningState.OPEN));
            boolean entered = scene.entries().stream().anyMatch(e -> e.opening().equals(panel));
            if (!entered) {
                edit.entry(
                        new EntrySpec(panel, panel, null, scene.studies().plan().place()));
            }
        }
        return new PlanVariant(edit.done(), panels, List.of());
    }
}
