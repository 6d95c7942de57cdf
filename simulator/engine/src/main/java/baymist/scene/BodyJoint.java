package baymist.scene;

import baymist.problem.SourcePlace;

/**
 * Two openings of adjoining bodies that are one.
 *
 * @param a opening of the body whose sheet stays, e.g. "left float: aft hole"
 * @param b the opening that lies against it
 * @param name of the joint opening
 */
public record BodyJoint(String a, String b, String name, SourcePlace place) {}
