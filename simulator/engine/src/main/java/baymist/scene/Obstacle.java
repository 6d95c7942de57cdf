package baymist.scene;

import baymist.problem.SourcePlace;

/** Something outside that stands in the way of a wand: a wall, a strut, the next surface. */
public record Obstacle(String name, BodySpec body, SourcePlace place) {}
