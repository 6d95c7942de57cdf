package baymist.voxel;

import baymist.geom.Vec3;

/** Interior sheet area that no voxel faces: pieces of one part in one place, area m² and centroid. */
public record UnresolvedArea(int part, double areaM2, Vec3 centroidM) {}
