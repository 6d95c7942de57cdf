package baymist.scene;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;

/**
 * The name that people have for a bay.
 *
 * @param name stands wherever the bay is told of, in place of "bay 3"
 * @param atM a point in its air, structure axes, m
 */
public record BayLabel(String name, Vec3 atM, SourcePlace place) {}
