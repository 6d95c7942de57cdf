package baymist.access;

import baymist.geom.Vec3;

/**
 * What ends an insertion.
 *
 * @param partName the part, closed opening or obstacle, or {@link AccessFinder#WAND_LENGTH}
 * @param placeM where it touches or would touch, m
 * @param clearanceM distance that is left between the wand's body and it, m; 0 = they touch
 * @param why one clause in words, for a report
 */
public record WandStop(String partName, Vec3 placeM, double clearanceM, String why) {}
