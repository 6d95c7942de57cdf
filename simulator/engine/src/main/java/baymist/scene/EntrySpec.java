package baymist.scene;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * An opening that a wand may use.
 *
 * @param opening name of the opening, in the model or cut by the scene
 * @param direction of the wand going in, or null = square to the opening
 * @param grommet a lining of the hole, or null
 * @param secondPlate another plate with a hole that the wand passes as well, or null
 */
public record EntrySpec(
        String name,
        String opening,
        @Nullable Vec3 direction,
        @Nullable Grommet grommet,
        @Nullable SecondPlate secondPlate,
        SourcePlace place) {
    /**
     * A grommet, bush or edge lining that narrows a hole and thickens its edge.
     *
     * @param boreM diameter left, m
     * @param thicknessM length of the bore along the hole, m, half of it on either side of the sheet
     */
    public record Grommet(double boreM, double thicknessM) {}

    /**
     * A second plate parallel to the opening's sheet, with a hole opposite to it (a doubled skin, a guide).
     *
     * @param distanceM distance of its middle from the opening, m, positive further in, negative outside
     */
    public record SecondPlate(double distanceM, double gaugeM, Outline outline) {}

    /** A plain hole. */
    public EntrySpec(String name, String opening, @Nullable Vec3 direction, SourcePlace place) {
        this(name, opening, direction, null, null, place);
    }
}
