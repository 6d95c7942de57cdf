package baymist.scene;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * An opening cut into a named part at a position.
 *
 * @param name unique in the scene
 * @param part name of the sheet it is cut into
 * @param centreM position, m; moved onto the nearest point of the part
 * @param lengthwise direction of the outline's u axis, or null for the part's natural one
 * @param place where in the scene it is stated, for messages
 */
public record OpeningSpec(
        String name,
        String part,
        Outline outline,
        Vec3 centreM,
        @Nullable Vec3 lengthwise,
        PhaseStates states,
        SourcePlace place) {}
