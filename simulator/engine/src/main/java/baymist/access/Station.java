package baymist.access;

/**
 * A tip pose held for a time during a pass.
 *
 * @param pass index of the pass in the scene
 * @param startS job time at which it begins, s
 * @param durationS how long the tip stands for here, s
 * @param depthM insertion depth, m
 * @param travelM stretch of the wand's path that the station stands for, centred on it, m; 0 while the wand is held
 */
public record Station(int pass, TipPose pose, double startS, double durationS, double depthM, double travelM) {
    /** A station at which the wand is held still. */
    public Station(int pass, TipPose pose, double startS, double durationS, double depthM) {
        this(pass, pose, startS, durationS, depthM, 0);
    }
}
