package baymist.study;

/**
 * A bay that no candidate's product can get into: no opening that is open while spraying or hanging leads there from where a tip stands.
 *
 * @param share of the structure's surface that lies in it, 0..1
 */
public record ShutBay(String name, double share) {}
