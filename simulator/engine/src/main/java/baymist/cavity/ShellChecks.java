package baymist.cavity;

import baymist.scene.CavitySpec.Shell;
import baymist.scene.ShellSpec;
import baymist.scene.ShellSpec.Floor;
import baymist.scene.ShellSpec.Frame;
import baymist.scene.ShellSpec.HalfBreadth;
import baymist.scene.ShellSpec.Measured;
import baymist.scene.ShellSpec.Oval;
import baymist.scene.ShellSpec.Station;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Whether the measures of a shell make sense together. */
final class ShellChecks {
    /** Webs and stations nearer than this are one, m. */
    private static final double APART_M = 1e-4;

    private ShellChecks() {}

    static void measures(Shell spec) {
        SpecCheck check = new SpecCheck(spec.place());
        ShellSpec shape = spec.shape();
        check.positive("gauge", spec.gaugeM());
        stations(check, shape.stations());
        if (shape.segments() != 0 && (shape.segments() < 16 || shape.segments() > 720)) {
            check.error("CAV-041", "segments is " + shape.segments() + "; 16 to 720 expected");
        }
        if (shape.stringers() < 0 || shape.stringers() > 100) {
            check.error("CAV-045", shape.stringers() + " stringers given; 0 to 100 expected");
        } else if (shape.stringers() > 0) {
            check.positive("stringer height", shape.stringerHeightM());
        }
        check.orThrow();
        double first = shape.stations().get(0).xM();
        double last = shape.stations().get(shape.stations().size() - 1).xM();
        frames(check, shape, first, last);
        for (Floor floor : shape.floors()) {
            floor(check, shape, floor, first, last);
        }
        names(check, shape);
        check.orThrow();
    }

    /** Parts are called by name, so a name of the user's must not be that of another part. */
    private static void names(SpecCheck check, ShellSpec shape) {
        Set<String> taken = new HashSet<>(List.of("skin", "forward end", "aft end"));
        for (Frame f : shape.frames()) {
            if (f.name() != null && !taken.add(f.name())) {
                check.error(
                        "CAV-043", f.place(), "two parts are called '" + f.name() + "'; give the frame its own name");
            }
        }
        for (Floor f : shape.floors()) {
            if (f.name() != null && !taken.add(f.name())) {
                check.error(
                        "CAV-044", f.place(), "two parts are called '" + f.name() + "'; give the floor its own name");
            }
        }
    }

    private static void stations(SpecCheck check, List<Station> stations) {
        if (stations.size() < 2 || stations.size() > 200) {
            check.error("CAV-041", stations.size() + " station(s) given; 2 to 200 expected");
            return;
        }
        double before = Double.NEGATIVE_INFINITY;
        for (Station s : stations) {
            if (!(s.xM() - before >= APART_M && Math.abs(s.xM()) <= SpecCheck.LARGEST_M)) {
                check.error(
                        "CAV-041",
                        s.place(),
                        "a station stands at x = " + SpecCheck.mm(s.xM())
                                + ", not aft of the one before; give stations from the front aft, 0.1 mm apart at least");
            }
            before = s.xM();
            if (s instanceof Oval o) {
                oval(check, o);
            } else if (s instanceof Measured m) {
                measured(check, m);
            }
        }
    }

    private static void oval(SpecCheck check, Oval o) {
        boolean sizes = within(o.halfWidthM()) && within(o.aboveM()) && within(o.belowM());
        if (!sizes || !(Math.abs(o.centreUpM()) <= SpecCheck.LARGEST_M)) {
            check.error(
                    "CAV-041",
                    o.place(),
                    "the section at x = " + SpecCheck.mm(o.xM()) + " is " + SpecCheck.mm(o.halfWidthM())
                            + " to the side, " + SpecCheck.mm(o.aboveM()) + " up and " + SpecCheck.mm(o.belowM())
                            + " down; more than 0 and at most 1000 m expected");
        }
        if (!(o.roundness() >= 1 && o.roundness() <= 10)) {
            check.error("CAV-041", o.place(), "roundness is " + o.roundness() + "; 1 to 10 expected");
        }
    }

    private static boolean within(double sizeM) {
        return sizeM > 0 && sizeM <= SpecCheck.LARGEST_M;
    }

    private static void measured(SpecCheck check, Measured m) {
        List<HalfBreadth> b = m.breadths();
        if (b.size() < 2) {
            check.error("CAV-042", m.place(), b.size() + " half-breadth(s) given; at least keel and crown expected");
            return;
        }
        boolean wide = false;
        for (int k = 0; k < b.size(); k++) {
            boolean end = k == 0 || k == b.size() - 1;
            double half = b.get(k).halfM();
            wide |= half > 0;
            if (!(half >= 0 && half <= SpecCheck.LARGEST_M) || (half == 0 && !end)) {
                check.error(
                        "CAV-042",
                        m.place(),
                        "half-breadth " + (k + 1) + " at x = " + SpecCheck.mm(m.xM()) + " is " + SpecCheck.mm(half)
                                + "; more than 0 expected (0 at keel and crown)");
            }
            if (k > 0 && !(b.get(k).upM() - b.get(k - 1).upM() >= APART_M)) {
                check.error(
                        "CAV-042",
                        m.place(),
                        "half-breadth " + (k + 1) + " at x = " + SpecCheck.mm(m.xM()) + " is taken at a height of "
                                + SpecCheck.mm(b.get(k).upM())
                                + ", not above the one before; list them from the keel up, 0.1 mm apart at least");
            }
        }
        if (!wide) {
            check.error("CAV-042", m.place(), "all half-breadths are 0; a section with some width expected");
        }
    }

    private static void frames(SpecCheck check, ShellSpec shape, double first, double last) {
        double before = first;
        for (Frame f : shape.frames()) {
            if (!(f.xM() >= before + APART_M && f.xM() <= last - APART_M)) {
                check.error(
                        "CAV-043",
                        f.place(),
                        "a frame or bulkhead stands at x = " + SpecCheck.mm(f.xM()) + "; between the ends ("
                                + SpecCheck.mm(first) + " and " + SpecCheck.mm(last)
                                + ") and clear of every other one expected");
            }
            before = f.xM();
            depth(check, f);
        }
        depth(check, shape.forwardEnd());
        depth(check, shape.aftEnd());
    }

    private static void depth(SpecCheck check, Frame f) {
        if (!(f.depthM() >= 0 && f.depthM() <= SpecCheck.LARGEST_M)) {
            check.error(
                    "CAV-043", f.place(), "a frame's depth is " + SpecCheck.mm(f.depthM()) + "; 0 to 1000 m expected");
        }
    }

    private static void floor(SpecCheck check, ShellSpec shape, Floor floor, double first, double last) {
        if (!(floor.fromM() >= first && floor.toM() <= last && floor.toM() - floor.fromM() >= APART_M)) {
            check.error(
                    "CAV-044",
                    floor.place(),
                    "the floor runs from x = " + SpecCheck.mm(floor.fromM()) + " to " + SpecCheck.mm(floor.toM())
                            + "; a stretch between " + SpecCheck.mm(first) + " and " + SpecCheck.mm(last)
                            + " expected");
            return;
        }
        double[] low = new double[] {Double.NEGATIVE_INFINITY, 0};
        double[] high = new double[] {Double.POSITIVE_INFINITY, 0};
        for (int k = 0; k + 1 < shape.stations().size(); k++) {
            Station a = shape.stations().get(k);
            Station b = shape.stations().get(k + 1);
            double from = Math.max(a.xM(), floor.fromM());
            double to = Math.min(b.xM(), floor.toM());
            for (double x : from <= to ? new double[] {from, to} : new double[0]) {
                double s = (x - a.xM()) / (b.xM() - a.xM());
                double keel = keel(a) + s * (keel(b) - keel(a));
                double crown = crown(a) + s * (crown(b) - crown(a));
                low = keel > low[0] ? new double[] {keel, x} : low;
                high = crown < high[0] ? new double[] {crown, x} : high;
            }
        }
        if (!(floor.upM() - low[0] >= APART_M && high[0] - floor.upM() >= APART_M)) {
            check.error(
                    "CAV-044",
                    floor.place(),
                    "the floor at a height of " + SpecCheck.mm(floor.upM()) + " leaves the shell, which reaches from "
                            + SpecCheck.mm(low[0]) + " (x = " + SpecCheck.mm(low[1]) + ") to " + SpecCheck.mm(high[0])
                            + " (x = " + SpecCheck.mm(high[1]) + ") there; a height between these expected");
        }
    }

    static double keel(Station s) {
        return s instanceof Oval o
                ? o.centreUpM() - o.belowM()
                : ((Measured) s).breadths().get(0).upM();
    }

    static double crown(Station s) {
        return s instanceof Oval o
                ? o.centreUpM() + o.aboveM()
                : ((Measured) s)
                        .breadths()
                        .get(((Measured) s).breadths().size() - 1)
                        .upM();
    }
}
