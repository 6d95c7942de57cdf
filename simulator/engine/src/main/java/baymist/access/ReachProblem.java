package baymist.access;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.EntrySpec;
import baymist.scene.WandSpec;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One question: where does this wand get to through this entry? */
public record ReachProblem(Surroundings surroundings, EntrySpec entry, WandSpec wand, ReachSettings settings) {

    public Cavity cavity() {
        return surroundings.cavity();
    }

    /**
     * Index of the entry's opening.
     *
     * @throws SceneException ACC-001 if the cavity has no such opening
     */
    public int openingIndex() {
        int index = cavity().openingIndex(entry.opening());
        if (index < 0) {
            throw new SceneException(
                    "ACC-001",
                    entry.place(),
                    "entry '" + entry.name() + "' names the opening '" + entry.opening()
                            + "', which the cavity does not have;" + " it has " + names(cavity()));
        }
        return index;
    }

    public Opening opening() {
        return cavity().openings().get(openingIndex());
    }

    /** Gauge of the entry's own sheet, m. */
    public double gaugeM() {
        return cavity().parts().get(opening().part()).gaugeM();
    }

    /**
     * Direction of the entry, a unit vector: as stated, or square to the opening.
     *
     * @throws SceneException ACC-002 if it does not lead in
     */
    public Vec3 axis() {
        Vec3 normal = opening().place().normal();
        Vec3 stated = entry.direction();
        Vec3 axis = stated == null ? normal : stated.unit();
        if (axis.dot(normal) < 1e-3) {
            throw new SceneException(
                    "ACC-002",
                    entry.place(),
                    String.format(
                            Locale.ROOT,
                            "entry '%s' points along (%.3f, %.3f, %.3f), which does not lead in through '%s'; its inward normal is"
                                    + " (%.3f, %.3f, %.3f)",
                            entry.name(),
                            axis.x(),
                            axis.y(),
                            axis.z(),
                            opening().name(),
                            normal.x(),
                            normal.y(),
                            normal.z()));
        }
        return axis;
    }

    /** Why nothing can enter here, whatever its size; null if something can. */
    public @Nullable String shut() {
        Opening opening = opening();
        if (!opening.exterior()) {
            return "'" + opening.name() + "' leads from bay to bay, not in from outside";
        }
        if (!surroundings.open(openingIndex())) {
            return "'" + opening.name() + "' is closed while spraying";
        }
        return null;
    }

    private static String names(Cavity cavity) {
        return cavity.openings().isEmpty()
                ? "none"
                : cavity.openings().stream().map(Opening::name).collect(Collectors.joining(", "));
    }
}
