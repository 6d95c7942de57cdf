package baymist.scene;

import baymist.geom.Vec3;

/** The line that a control surface turns about: two points on it, m. */
public record HingeLine(Vec3 fromM, Vec3 toM) {}
