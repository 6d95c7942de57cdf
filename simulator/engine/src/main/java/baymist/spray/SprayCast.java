package baymist.spray;

/** Rates of a station and what tells how sure they are. */
public record SprayCast(SprayHits hits, SprayDetail detail) {}
