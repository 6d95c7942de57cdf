package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.StiffenedVoid;
import baymist.scene.CrossFrame;
import baymist.scene.Stiffeners;

/** What the measures of a stiffened void must satisfy together. */
final class VoidCheck {
    /** Least distance between sheets that stand side by side. */
    private static final double CLEAR_M = 1e-3;

    private static final int MOST_BARS = 200;

    private final SpecCheck check;
    private final StiffenedVoid spec;
    private final Vec3 size;

    VoidCheck(StiffenedVoid spec) {
        this.spec = spec;
        this.size = spec.sizeM();
        this.check = new SpecCheck(spec.place());
    }

    void orThrow() {
        check.positive("length", size.x());
        check.positive("width", size.y());
        check.positive("height", size.z());
        check.positive("gauge", spec.gaugeM());
        check.orThrow();
        int bars = 0;
        for (Stiffeners s : spec.longitudinals()) {
            boolean onSide = s.wall().endsWith("wall");
            bars += bars(s, onSide ? size.z() : size.y(), onSide ? size.y() : size.z());
        }
        for (Stiffeners s : spec.deckBeams()) {
            bars += bars(s, size.x(), size.z());
        }
        if (bars > MOST_BARS) {
            check.error("CAV-053", bars + " bars come out of these spacings; at most " + MOST_BARS + " expected");
        }
        double before = 0;
        for (CrossFrame f : spec.frames()) {
            before = frame(f, before);
        }
        check.orThrow();
    }

    private int bars(Stiffeners s, double width, double room) {
        double back = s.flange() == Stiffeners.Side.ON ? 0 : s.flange() == Stiffeners.Side.BACK ? 1 : 0.5;
        if (!(s.spacingM() > s.flangeM() + CLEAR_M && s.webM() > 0 && s.flangeM() >= 0)) {
            check.error(
                    "CAV-053",
                    s.place(),
                    "bars at a spacing of " + SpecCheck.mm(s.spacingM()) + " with a web of " + SpecCheck.mm(s.webM())
                            + " and a flange of " + SpecCheck.mm(s.flangeM())
                            + "; a web above 0 and a spacing above the flange expected");
            return 0;
        }
        if (!(s.webM() <= room - CLEAR_M)) {
            check.error(
                    "CAV-053",
                    s.place(),
                    "a web of " + SpecCheck.mm(s.webM()) + " reaches across the whole box, which is "
                            + SpecCheck.mm(room) + " there; less expected");
        }
        int number = VoidFamily.places(s, width).size();
        double first = s.firstM() - back * s.flangeM();
        double last = s.firstM() + (number - 1) * s.spacingM() + (1 - back) * s.flangeM();
        if (number == 0 || !(first >= CLEAR_M && last <= width - CLEAR_M)) {
            check.error(
                    "CAV-053",
                    s.place(),
                    "bars on the " + s.wall() + " reach from " + SpecCheck.mm(first) + " to " + SpecCheck.mm(last)
                            + "; within 0 and " + SpecCheck.mm(width) + " expected: set `first` or `spacing`");
        }
        return number;
    }

    private double frame(CrossFrame f, double before) {
        if (!(f.xM() >= before + CLEAR_M && f.xM() <= size.x() - CLEAR_M)) {
            check.error(
                    "CAV-054",
                    f.place(),
                    "a frame stands at x = " + SpecCheck.mm(f.xM())
                            + "; frames in order, aft of the forward wall and forward of the aft wall, at "
                            + SpecCheck.mm(size.x()) + ", expected");
        }
        double half = 0.5 * Math.min(size.y(), size.z());
        if (!(f.drainRadiusM() >= 0 && f.drainRadiusM() < half && f.airRadiusM() >= 0 && f.airRadiusM() < half)) {
            check.error(
                    "CAV-054",
                    f.place(),
                    "corner holes of radius " + SpecCheck.mm(f.drainRadiusM()) + " and " + SpecCheck.mm(f.airRadiusM())
                            + "; 0 to half of the section, " + SpecCheck.mm(half) + ", expected");
        }
        return f.xM();
    }
}
