package baymist.field;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;

/**
 * Surfaces that something is to reach.
 *
 * @param where in structure words
 * @param surfels ascending; read-only
 * @param areaM2 sum of their areas
 * @param centroidM area-weighted, m
 * @param boxM box round their centroids, m
 */
public record FieldRegion(String where, int[] surfels, double areaM2, Vec3 centroidM, Box3 boxM) {
    static FieldRegion of(String where, int[] members, SurfelSet surfels) {
        double area = 0;
        Vec3 moment = Vec3.ZERO;
        Box3 box = Box3.EMPTY;
        for (int s : members) {
            Vec3 at = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
            area += surfels.areaM2()[s];
            moment = moment.plus(surfels.areaM2()[s], at);
            box = box.including(at);
        }
        return new FieldRegion(where, members, area, moment.times(1 / area), box);
    }
}
