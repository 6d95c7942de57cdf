package baymist.run;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.scene.BayLabel;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Gives bays the names that the scene states for them. */
public final class BayNaming {
    private BayNaming() {}

    /**
     * The grid with its bays named.
     *
     * @throws SceneException GEO-004 for every label whose point lies in no bay, or in one that has a name already, or whose
     *     name is that of another bay
     */
    public static VoxelGrid named(VoxelGrid grid, List<BayLabel> labels) {
        if (labels.isEmpty()) {
            return grid;
        }
        List<String> names = new ArrayList<>();
        grid.bays().forEach(bay -> names.add(bay.name()));
        Map<Integer, BayLabel> given = new HashMap<>();
        List<Finding> problems = new ArrayList<>();
        for (BayLabel label : labels) {
            int cell = grid.cellHolding(label.atM());
            if (cell < 0) {
                problems.add(problem(label, "lies in no bay; a point in its air, half a voxel or more off the sheets"));
                continue;
            }
            int bay = grid.bayOfCell(cell);
            BayLabel before = given.putIfAbsent(bay, label);
            if (before != null) {
                problems.add(problem(
                        label, "lies in the bay that is called '" + before.name() + "' already; one name a bay"));
            } else {
                names.set(bay, label.name());
            }
        }
        for (BayLabel label : given.values()) {
            if (names.stream().filter(label.name()::equals).count() > 1) {
                problems.add(problem(label, "gives its bay the name of another one; a name of its own"));
            }
        }
        if (!problems.isEmpty()) {
            throw new SceneException(problems);
        }
        return grid.withBayNames(names);
    }

    private static Finding problem(BayLabel label, String text) {
        return new Finding(
                "GEO-004",
                Severity.ERROR,
                label.place(),
                String.format(
                        Locale.ROOT,
                        "the point of bay '%s' (%.1f, %.1f, %.1f) mm %s would be right",
                        label.name(),
                        1e3 * label.atM().x(),
                        1e3 * label.atM().y(),
                        1e3 * label.atM().z(),
                        text));
    }
}
