package baymist.cavity;

/** A tee of two tubes, for tests of later stages. */
public final class TubeTee {
    private TubeTee() {}

    /** Main tube 0.4 m along x, branch 0.25 m up from its middle, bores of 1 mm less all round than the outside. */
    public static Cavity of(int segments, double mainOuterM, double branchOuterM, double holeM) {
        return TubeFrameFamilyTest.tee(segments, mainOuterM, branchOuterM, holeM);
    }
}
