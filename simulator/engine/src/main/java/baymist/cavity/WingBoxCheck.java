package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.WingBox;
import baymist.scene.WingBoxDetail;
import baymist.scene.WingBoxDetail.FalseSpar;
import baymist.scene.WingBoxDetail.Notch;
import baymist.scene.WingBoxDetail.Station;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** What the measures of a wing box must satisfy. */
final class WingBoxCheck {
    private WingBoxCheck() {}

    /** Checks all measures; the shape of the sections. */
    static WingShape shape(WingBox spec) {
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
        Naca4 naca = section(spec, check);
        falseSpars(spec, check);
        ends(spec, check);
        Notch notch = spec.detail().notch();
        if (notch != null) {
            check.positive("notch clearance", notch.clearanceM());
        }
        check.orThrow();
        return spec.detail().measured() ? WingShape.Measured.of(spec) : new WingShape.Naca(spec, naca);
    }

    private static Naca4 section(WingBox spec, SpecCheck check) {
        WingBoxDetail detail = spec.detail();
        if (detail.measured()) {
            stations(check, "root", detail.root(), spec, spec.rootChordM());
            if (!detail.tip().isEmpty()) {
                stations(check, "tip", detail.tip(), spec, spec.tipChordM());
            }
            return new Naca4(0, 0, 0.12);
        }
        try {
            return Naca4.of(spec.naca());
        } catch (IllegalArgumentException e) {
            check.error("CAV-005", e.getMessage() == null ? "unknown section" : e.getMessage());
            return new Naca4(0, 0, 0.12);
        }
    }

    private static void stations(SpecCheck check, String end, List<Station> list, WingBox spec, double chordM) {
        if (list.size() < 2 || list.size() > 200) {
            check.error("CAV-032", list.size() + " heights measured at the " + end + "; 2 to 200 expected");
            return;
        }
        double before = Double.NEGATIVE_INFINITY;
        for (Station s : list) {
            if (!(s.aftM() - before >= 1e-4)) {
                check.error(
                        "CAV-032",
                        "the " + end + " station at " + SpecCheck.mm(s.aftM())
                                + " does not lie aft of the one before; stations from front to rear, 0.1 mm apart at"
                                + " least, expected");
            }
            if (!(s.upperM() > s.lowerM())
                    || !(Math.abs(s.upperM()) <= SpecCheck.LARGEST_M)
                    || !(Math.abs(s.lowerM()) <= SpecCheck.LARGEST_M)) {
                check.error(
                        "CAV-032",
                        "at the " + end + " station at " + SpecCheck.mm(s.aftM()) + " the upper skin stands at "
                                + SpecCheck.mm(s.upperM()) + " and the lower at " + SpecCheck.mm(s.lowerM())
                                + "; upper above lower expected");
            }
            before = s.aftM();
        }
        double slack = 1e-6;
        double first = list.get(0).aftM() / chordM;
        double last = list.get(list.size() - 1).aftM() / chordM;
        if (!(first <= spec.frontSpar() + slack && last >= spec.rearSpar() - slack)) {
            check.error(
                    "CAV-032",
                    String.format(
                            Locale.ROOT,
                            "the %s stations reach from %.4g to %.4g of the chord, the spars stand at %.4g and %.4g;"
                                    + " measure at both spars, too",
                            end,
                            first,
                            last,
                            spec.frontSpar(),
                            spec.rearSpar()));
        }
    }

    private static void falseSpars(WingBox spec, SpecCheck check) {
        Set<String> names = new HashSet<>();
        List<Double> taken = new ArrayList<>(List.of(spec.frontSpar(), spec.rearSpar()));
        int n = spec.ribs().size();
        double least = 1e-3 / Math.min(spec.rootChordM(), spec.tipChordM());
        for (FalseSpar spar : spec.detail().falseSpars()) {
            boolean between = spar.at() > spec.frontSpar() && spar.at() < spec.rearSpar();
            boolean clear = taken.stream().allMatch(t -> Math.abs(t - spar.at()) >= least);
            if (!between || !clear) {
                check.error(
                        "CAV-035",
                        "a false spar stands at " + spar.at() + " of the chord; between the front spar at "
                                + spec.frontSpar() + " and the rear spar at " + spec.rearSpar()
                                + ", 1 mm off any other, expected");
            }
            if (!(spar.fromRib() >= 1 && spar.fromRib() < spar.toRib() && spar.toRib() <= n)) {
                check.error(
                        "CAV-035",
                        "the false spar at " + spar.at() + " runs from rib " + spar.fromRib() + " to rib "
                                + spar.toRib() + "; two of the ribs 1 to " + n + ", the inner first, expected");
            }
            taken.add(spar.at());
        }
        for (FalseSpar spar : check.clean() ? spec.detail().falseSpars() : List.<FalseSpar>of()) {
            WingStations stations = new WingStations(spec);
            for (int count : new int[] {spec.stringersUpper(), spec.stringersLower()}) {
                for (int i = 1; i <= count; i++) {
                    if (Math.abs(stations.foot(i, count) - spar.at()) < least) {
                        check.error(
                                "CAV-035",
                                "a stringer stands in the false spar at " + spar.at()
                                        + " of the chord; move the spar by 1 mm at least, or leave the stringer out");
                    }
                }
            }
        }
        for (int i = 0; i < n; i++) {
            unique(check, names, RibSheets.name(spec.ribs(), i));
        }
        int number = 0;
        for (FalseSpar spar : spec.detail().falseSpars()) {
            number++;
            unique(check, names, spar.name() == null ? "false spar " + number : spar.name());
        }
        for (String fixed : new String[] {"upper skin", "lower skin", "front spar", "rear spar"}) {
            unique(check, names, fixed);
        }
    }

    static void unique(SpecCheck check, Set<String> names, String name) {
        if (!names.add(name)) {
            check.error("CAV-036", "two parts are called '" + name + "'; names must differ");
        }
    }

    private static void ends(WingBox spec, SpecCheck check) {
        int n = spec.ribs().size();
        end(
                check,
                "root",
                spec.detail().openRoot(),
                n < 1 ? List.of() : spec.ribs().subList(0, 1));
        end(
                check,
                "tip",
                spec.detail().openTip(),
                n < 1 ? List.of() : spec.ribs().subList(n - 1, n));
    }

    private static void end(SpecCheck check, String end, boolean open, List<Rib> rib) {
        if (open && rib.stream().anyMatch(r -> !r.holes().isEmpty())) {
            check.error(
                    "CAV-037",
                    "the " + end + " is open, but its rib has holes; close the " + end + " or drop the holes");
        }
    }

    /** The upper skin must stay above the lower one between measured stations, too. */
    static void depth(WingBox spec, List<RibSheets.Section> rows, double[] fractions) {
        for (RibSheets.Section row : rows) {
            for (int k = 0; k < row.points(); k++) {
                if (!(row.upper().get(k).z() - row.lower().get(k).z() > 1e-4)) {
                    SpecCheck check = new SpecCheck(spec.place());
                    check.error(
                            "CAV-032",
                            String.format(
                                    Locale.ROOT,
                                    "the skins meet at %.4g of the chord at y = %s; are all heights measured from one"
                                            + " line?",
                                    fractions[k],
                                    SpecCheck.mm(row.yM())));
                    check.orThrow();
                }
            }
        }
    }

    /** A stringer's top must stay inside of its section. */
    static void top(WingBox spec, String name, RibSheets.Section section, Vec3 top, int side) {
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
}
