package baymist.coverage;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import java.util.List;

/**
 * A place that stays bare: surfels below haze that hang together.
 *
 * @param id rank in this run, 1 = largest
 * @param areaM2 true area, m²
 * @param centroidM area-weighted middle, m
 * @param where place in structure words
 * @param parts names of the parts that it lies on, most area first
 * @param surfels its surfels, ascending
 * @param label stable name: bay and part by number, then a letter for the place on it, as in "3.7c" (docs/theory/coverage.md, section 3);
 *     the same from run to run and from voxel size to voxel size for a region at the same place; {@link #SPOTS} for what is gathered
 * @param bays names of the bays that it lies in, most area first
 * @param extentM box round it, m
 * @param seamM bare length of seam in it, m
 * @param entry name of the nearest entry by way through the air, "" where there is none
 * @param depthM that way, from the entry to the nearest point of the region, m; NaN where there is none
 */
public record UnreachedRegion(
        int id,
        double areaM2,
        Vec3 centroidM,
        String where,
        List<String> parts,
        int[] surfels,
        String label,
        List<String> bays,
        Box3 extentM,
        double seamM,
        String entry,
        double depthM) {
    /** Label of the one entry that gathers spots. */
    public static final String SPOTS = "spots";

    public UnreachedRegion {
        parts = List.copyOf(parts);
        bays = List.copyOf(bays);
    }
}
