package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.Part;
import baymist.cavity.PartKind;

/**
 * Words for the six directions of the structure axes (x aft, y right, z up) as they are said on this structure.
 *
 * <p>A structure with ribs that lies on one side of the centre plane y = 0 is spoken of as inboard and outboard, with
 * inboard towards the centre plane; every other structure as left and right.
 */
public final class Compass {
    /** How far past the centre plane a one-sided structure may reach, as a share of its width. ASSUMED. */
    private static final double CENTRE_SLACK = 0.05;

    private final String low;
    private final String high;

    private Compass(String low, String high) {
        this.low = low;
        this.high = high;
    }

    /** The words of a cavity whose interior surfaces reach from {@code lowYM} to {@code highYM} along y, m. */
    public static Compass of(Cavity cavity, double lowYM, double highYM) {
        boolean ribs = cavity.parts().stream().map(Part::kind).anyMatch(k -> k == PartKind.RIB);
        double slack = CENTRE_SLACK * (highYM - lowYM);
        if (ribs && lowYM >= -slack) {
            return new Compass("inboard", "outboard");
        }
        if (ribs && highYM <= slack) {
            return new Compass("outboard", "inboard");
        }
        return new Compass("left", "right");
    }

    /** The word for a direction: axis 0, 1, 2; {@code up} = towards larger coordinates. Usable as "... face", "... half". */
    public String word(int axis, boolean up) {
        return switch (axis) {
            case 0 -> up ? "aft" : "forward";
            case 1 -> up ? high : low;
            default -> up ? "upper" : "lower";
        };
    }

    /** How an extent along an axis is said: "120 mm fore-aft". */
    static String along(int axis) {
        return switch (axis) {
            case 0 -> "fore-aft";
            case 1 -> "across";
            default -> "high";
        };
    }

    /** Whether sideways is said as inboard and outboard. */
    public boolean inboardOutboard() {
        return !low.equals("left");
    }
}
