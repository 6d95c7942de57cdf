package baymist.access;

import baymist.geom.Vec3;

/** Where the tip is: position (m), forward axis of the wand and direction of the pin (unit vectors, square). */
public record TipPose(Vec3 positionM, Vec3 axis, Vec3 pin) {}
