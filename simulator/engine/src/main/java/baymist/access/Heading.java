package baymist.access;

import baymist.geom.Vec3;

/**
 * A place on a wand's centreline and the direction that it goes on in.
 *
 * @param atM place, m
 * @param along unit vector towards the tip
 */
record Heading(Vec3 atM, Vec3 along) {}
