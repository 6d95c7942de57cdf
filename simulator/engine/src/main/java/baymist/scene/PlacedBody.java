package baymist.scene;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;

/**
 * A structure that is placed among others.
 *
 * @param name stands before the names of its parts and openings: "left float: rib 2"
 * @param rotationDeg turns about x, y and z of the common axes, in that order, degrees
 * @param atM where its origin goes, m
 */
public record PlacedBody(String name, CavitySpec model, Vec3 rotationDeg, Vec3 atM, SourcePlace place) {}
