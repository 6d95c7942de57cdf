package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.WingBox;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;

/**
 * Wing box: NACA 4-digit skins between two upright spars, ribs square to y, blade stringers.
 *
 * <p>All sections are one shape scaled by the local chord, so the strips between equal chord fractions are plane. Chord
 * fractions are spaced evenly from spar to spar with the feet of the stringers added; upper and lower skin use the same.
 * Stringers stand square to the skin in the plane of the section, keep their height from root to tip and pass the ribs
 * without notches: blade and rib simply cross.
 */
final class WingBoxFamily {
    /** Strips from spar to spar; half a metre of a 12 % section aft of 15 % chord then stays within 0.1 mm of the curve. */
    private static final int STRIPS = 24;

    private final WingBox spec;
    private final SheetModel model = new SheetModel();

    private WingBoxFamily(WingBox spec) {
        this.spec = spec;
    }

    static SheetModel build(WingBox spec) {
        return new WingBoxFamily(spec).build();
    }

    private SheetModel build() {
        Naca4 naca = check();
        FamilyChecks.remarkSpan(model, spec.ribs(), spec.spanM());
        double[] fractions = fractions();
        List<RibSheets.Section> sections = new ArrayList<>();
        for (Rib rib : spec.ribs()) {
            sections.add(section(naca, fractions, rib.yM()));
        }
        int upper = model.part("upper skin", PartKind.SKIN, spec.gaugeM());
        int lower = model.part("lower skin", PartKind.SKIN, spec.gaugeM());
        int front = model.part("front spar", PartKind.SPAR, spec.gaugeM());
        int rear = model.part("rear spar", PartKind.SPAR, spec.gaugeM());
        RibSheets sheets = new RibSheets(model, spec.gaugeM(), spec.place());
        sheets.ruled(upper, sections.stream().map(RibSheets.Section::upper).toList());
        sheets.ruled(lower, sections.stream().map(s -> reversed(s.lower())).toList());
        int last = fractions.length - 1;
        sheets.ruled(
                front,
                sections.stream()
                        .map(s -> List.of(s.lower().get(0), s.upper().get(0)))
                        .toList());
        sheets.ruled(
                rear,
                sections.stream()
                        .map(s -> List.of(s.upper().get(last), s.lower().get(last)))
                        .toList());
        sheets.ribs(spec.ribs(), sections);
        stringers(sheets, naca, sections, spec.stringersUpper(), +1);
        stringers(sheets, naca, sections, spec.stringersLower(), -1);
        return model;
    }

    private Naca4 check() {
        SpecCheck check = new SpecCheck(spec.place());
        FamilyChecks.ribs(check, spec.ribs(), spec.spanM());
        check.positive("span", spec.spanM());
        check.positive("root chord", spec.rootChordM());
        check.positive("tip chord", spec.tipChordM());
        check.positive("gauge", spec.gaugeM());
        check.finite("sweep", spec.sweepM());
        check.finite("dihedral", spec.dihedralM());
        // 0.02 and 0.98 keep the surfaces functions of the chordwise position
        if (!(spec.frontSpar() >= 0.02 && spec.frontSpar() < spec.rearSpar() && spec.rearSpar() <= 0.98)) {
            check.error(
                    "CAV-002",
                    "spars stand at " + spec.frontSpar() + " and " + spec.rearSpar()
                            + " of the chord; front before rear, between 0.02 and 0.98, expected");
        }
        if (spec.stringersUpper() < 0
                || spec.stringersLower() < 0
                || spec.stringersUpper() + spec.stringersLower() > 200) {
            check.error("CAV-003", "number of stringers is out of range; 0 to 200 in all expected");
        }
        if (spec.stringersUpper() + spec.stringersLower() > 0) {
            check.positive("stringer height", spec.stringerHeightM());
        }
        for (Rib rib : spec.ribs()) {
            if (rib.shortOfEdgeM() != 0) {
                check.error("CAV-004", "a wing-box rib runs from spar to spar and can't stop short of an edge");
            }
        }
        Naca4 naca = new Naca4(0, 0, 0.12);
        try {
            naca = Naca4.of(spec.naca());
        } catch (IllegalArgumentException e) {
            check.error("CAV-005", e.getMessage() == null ? "unknown section" : e.getMessage());
        }
        check.orThrow();
        return naca;
    }

    private double[] fractions() {
        TreeSet<Double> set = new TreeSet<>();
        for (int k = 0; k <= STRIPS; k++) {
            set.add(between((double) k / STRIPS));
        }
        for (int n : new int[] {spec.stringersUpper(), spec.stringersLower()}) {
            for (int i = 1; i <= n; i++) {
                set.add(foot(i, n));
            }
        }
        // evenly spaced stations that almost meet a stringer's foot would leave a sliver strip: the foot stays
        List<Double> kept = new ArrayList<>();
        double least = 0.1 * (spec.rearSpar() - spec.frontSpar()) / STRIPS;
        for (double f : set) {
            boolean fixed = isFoot(f) || f == spec.frontSpar() || f == spec.rearSpar();
            double before = kept.isEmpty() ? -1 : kept.get(kept.size() - 1);
            if (f - before >= least || kept.isEmpty()) {
                kept.add(f);
            } else if (fixed && isFoot(before)) {
                kept.add(f);
            } else if (fixed) {
                kept.set(kept.size() - 1, f);
            }
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private boolean isFoot(double f) {
        for (int n : new int[] {spec.stringersUpper(), spec.stringersLower()}) {
            for (int i = 1; i <= n; i++) {
                if (foot(i, n) == f) {
                    return true;
                }
            }
        }
        return false;
    }

    private double between(double s) {
        return s == 1 ? spec.rearSpar() : spec.frontSpar() + s * (spec.rearSpar() - spec.frontSpar());
    }

    /** Chord fraction of stringer i of n, evenly pitched between the spars. */
    private double foot(int i, int n) {
        return between((double) i / (n + 1));
    }

    private RibSheets.Section section(Naca4 naca, double[] fractions, double y) {
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        for (double f : fractions) {
            upper.add(point(y, f, naca.height(f, +1)));
            lower.add(point(y, f, naca.height(f, -1)));
        }
        return new RibSheets.Section(y, upper, lower);
    }

    private double chord(double y) {
        return spec.rootChordM() + (spec.tipChordM() - spec.rootChordM()) * y / spec.spanM();
    }

    private Vec3 point(double y, double chordwise, double height) {
        double s = y / spec.spanM();
        return new Vec3(s * spec.sweepM() + chord(y) * chordwise, y, s * spec.dihedralM() + chord(y) * height);
    }

    private void stringers(RibSheets sheets, Naca4 naca, List<RibSheets.Section> sections, int number, int side) {
        for (int i = 1; i <= number; i++) {
            String name = (side > 0 ? "upper" : "lower") + " stringer " + i;
            double f = foot(i, number);
            double h = 1e-5;
            double slope = (naca.height(f + h, side) - naca.height(f - h, side)) / (2 * h);
            Vec3 inward = new Vec3(slope, 0, -1).unit().times(side * spec.stringerHeightM());
            List<List<Vec3>> rows = new ArrayList<>();
            for (RibSheets.Section section : sections) {
                Vec3 foot = point(section.yM(), f, naca.height(f, side));
                Vec3 top = foot.plus(inward);
                checkTop(name, section, top, side);
                rows.add(List.of(foot, top));
            }
            sheets.ruled(model.part(name, PartKind.STRINGER, spec.gaugeM()), rows);
        }
    }

    private void checkTop(String name, RibSheets.Section section, Vec3 top, int side) {
        boolean inside = top.x() > section.frontX()
                && top.x() < section.rearX()
                && side * (top.z() - section.heightM(top.x(), side > 0 ? section.lower() : section.upper())) > 0;
        if (!inside) {
            SpecCheck check = new SpecCheck(spec.place());
            check.error(
                    "CAV-006",
                    name + " of height " + SpecCheck.mm(spec.stringerHeightM())
                            + " comes through the far side of the box at y = " + SpecCheck.mm(section.yM())
                            + "; make it lower than the box is deep");
            check.orThrow();
        }
    }

    private static List<Vec3> reversed(List<Vec3> points) {
        List<Vec3> copy = new ArrayList<>(points);
        Collections.reverse(copy);
        return copy;
    }
}
