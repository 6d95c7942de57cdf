package baymist.coverage;

import baymist.geom.Vec3;
import java.util.List;

/** Connected surfels below haze: id (1 = largest), area m², centroid m, place in structure words, parts and surfels. */
public record UnreachedRegion(int id, double areaM2, Vec3 centroidM, String where, List<String> parts, int[] surfels) {}
