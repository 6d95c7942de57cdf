package baymist.seam;

import baymist.geom.Vec3;

/**
 * Cavity air between the two sheets of a seam, seen along the line: one side of the seam. All vectors are unit vectors square to the line.
 *
 * @param alongA away from the line in the first part's sheet
 * @param alongB away from the line in the second part's sheet
 * @param faceA normal of the first sheet into the wedge
 * @param faceB normal of the second sheet into the wedge
 * @param bisector middle of the wedge
 * @param openRad angle between the sheets, 0..2π
 */
public record SeamWedge(Vec3 alongA, Vec3 alongB, Vec3 faceA, Vec3 faceB, Vec3 bisector, double openRad) {
    /** The same with the parts changed over. */
    SeamWedge swapped() {
        return new SeamWedge(alongB, alongA, faceB, faceA, bisector, openRad);
    }
}
