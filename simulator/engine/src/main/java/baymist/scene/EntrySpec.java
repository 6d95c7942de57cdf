package baymist.scene;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * An opening that a wand may use.
 *
 * @param opening name of the opening, in the model or cut by the scene
 * @param direction of the wand going in, or null = square to the opening
 */
public record EntrySpec(
        String name, String opening, @Nullable Vec3 direction, SourcePlace place) {}
