package baymist.access;

/**
 * A tip pose held for a time during a pass.
 *
 * @param pass index of the pass in the scene
 * @param startS job time at which it begins, s
 * @param durationS how long the tip stands for here, s
 * @param depthM insertion depth, m
 */
public record Station(int pass, TipPose pose, double startS, double durationS, double depthM) {}
