package baymist.viewer.model;

import baymist.coverage.UnreachedRegion;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import baymist.voxel.SurfelSet;
import java.util.List;

/**
 * Bare places of a run, largest first.
 *
 * @param rows one for each
 */
public record RegionList(List<Row> rows) {
    public RegionList {
        rows = List.copyOf(rows);
    }

    /**
     * One bare place.
     *
     * @param region as the run found it
     * @param facing unit vector out of the sheet into the air, the mean over it; the camera looks against it
     * @param viewM distance from which all of it is seen, m
     */
    public record Row(UnreachedRegion region, Vec3 facing, double viewM) {
        public String label() {
            return region.label();
        }

        /** Where it is, in structure words. */
        public String where() {
            return region.where();
        }

        public double areaM2() {
            return region.areaM2();
        }

        public Vec3 centreM() {
            return region.centroidM();
        }

        public int[] surfels() {
            return region.surfels();
        }
    }

    public static RegionList of(RunResult result) {
        SurfelSet surfels = result.grid().surfels();
        return new RegionList(
                result.coverage().unreached().stream().map(r -> row(r, surfels)).toList());
    }

    private static Row row(UnreachedRegion region, SurfelSet surfels) {
        Vec3 sum = Vec3.ZERO;
        for (int s : region.surfels()) {
            Vec3 normal = new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
            sum = sum.plus(surfels.areaM2()[s], normal);
        }
        // a region round a corner may face nowhere in the mean
        boolean faces = sum.length() > 0.1 * region.areaM2();
        double extent = region.extentM().size().length();
        return new Row(region, faces ? sum.unit() : Vec3.Z, Math.max(0.15, 1.5 * extent));
    }
}
