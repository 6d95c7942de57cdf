package baymist.voxel;

import baymist.geom.Vec3;

/** A place where outside air reaches the cavity although every opening is closed. */
public record Leak(Vec3 positionM, String where) {}
