package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.WingBox;
import baymist.scene.WingBoxDetail.FalseSpar;
import java.util.ArrayList;
import java.util.List;

/**
 * Wing box: skins of NACA 4-digit sections or of measured heights between two upright spars, false spars between those, ribs
 * square to y, blade stringers.
 *
 * <p>Sections of one shape scaled by the local chord leave plane strips between equal chord fractions; where shapes differ
 * (heights measured at both ends) the skins are warped and divided between the ribs. Chord fractions are spaced evenly from
 * spar to spar with the feet of the stringers, the false spars and the measured stations added; upper and lower skin use the
 * same. Stringers stand square to the skin in the plane of the section, keep their height from root to tip and cross the
 * ribs, through notches ({@link StringerNotches}) if there are any.
 */
final class WingBoxFamily {
    private final WingBox spec;
    private final SheetModel model = new SheetModel();

    private WingBoxFamily(WingBox spec) {
        this.spec = spec;
    }

    static SheetModel build(WingBox spec) {
        return new WingBoxFamily(spec).build();
    }

    private SheetModel build() {
        WingShape shape = WingBoxCheck.shape(spec);
        FamilyChecks.remarkSpan(model, spec.ribs(), spec.spanM());
        WingStations stations = new WingStations(spec);
        double[] fractions = stations.fractions();
        Rows rows = rows(shape, fractions);
        WingBoxCheck.depth(spec, rows.all, fractions);
        int upper = model.part("upper skin", PartKind.SKIN, spec.gaugeM());
        int lower = model.part("lower skin", PartKind.SKIN, spec.gaugeM());
        int front = model.part("front spar", PartKind.SPAR, spec.gaugeM());
        int rear = model.part("rear spar", PartKind.SPAR, spec.gaugeM());
        RibSheets sheets = new RibSheets(model, spec.gaugeM(), spec.place());
        sheets.ruled(upper, rows.all.stream().map(RibSheets.Section::upper).toList());
        sheets.ruled(
                lower, rows.all.stream().map(s -> RibSheets.reversed(s.lower())).toList());
        int last = fractions.length - 1;
        sheets.ruled(
                front,
                rows.all.stream()
                        .map(s -> List.of(s.lower().get(0), s.upper().get(0)))
                        .toList());
        sheets.ruled(
                rear,
                rows.all.stream()
                        .map(s -> List.of(s.upper().get(last), s.lower().get(last)))
                        .toList());
        int[] ribs = sheets.ribs(spec.ribs(), rows.atRibs());
        ends(sheets, ribs, rows.atRibs());
        falseSpars(stations, fractions, rows);
        for (int side : new int[] {+1, -1}) {
            stringers(sheets, stations, shape, rows, side, ribs);
        }
        return model;
    }

    /** Sections in order of y; {@code ribRows} are those at the ribs. */
    private record Rows(List<RibSheets.Section> all, List<Integer> ribRows) {
        List<RibSheets.Section> atRibs() {
            return ribRows.stream().map(all::get).toList();
        }
    }

    private Rows rows(WingShape shape, double[] fractions) {
        List<List<Vec3>> outline = new ArrayList<>();
        for (Rib rib : spec.ribs()) {
            outline.add(section(shape, fractions, rib.yM()).loop());
        }
        // one shape that is scaled has plane strips; what is left is rounding
        int pieces = spec.detail().tip().isEmpty() ? 1 : FamilyChecks.warpPieces(outline);
        List<RibSheets.Section> all = new ArrayList<>();
        List<Integer> ribRows = new ArrayList<>();
        for (int i = 0; i < spec.ribs().size(); i++) {
            double y = spec.ribs().get(i).yM();
            if (i > 0) {
                double before = spec.ribs().get(i - 1).yM();
                for (int k = 1; k < pieces; k++) {
                    all.add(section(shape, fractions, before + (y - before) * k / pieces));
                }
            }
            ribRows.add(all.size());
            all.add(section(shape, fractions, y));
        }
        return new Rows(all, ribRows);
    }

    private RibSheets.Section section(WingShape shape, double[] fractions, double y) {
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        for (double f : fractions) {
            upper.add(point(y, f, shape.heightM(y, f, +1)));
            lower.add(point(y, f, shape.heightM(y, f, -1)));
        }
        return new RibSheets.Section(y, upper, lower);
    }

    private Vec3 point(double y, double chordwise, double heightM) {
        double s = y / spec.spanM();
        return new Vec3(s * spec.sweepM() + WingShape.chordM(spec, y) * chordwise, y, s * spec.dihedralM() + heightM);
    }

    private void ends(RibSheets sheets, int[] ribs, List<RibSheets.Section> sections) {
        int last = ribs.length - 1;
        if (spec.detail().openRoot()) {
            sheets.openEnd("open root", ribs[0], sections.get(0), Vec3.Y);
        }
        if (spec.detail().openTip()) {
            sheets.openEnd("open tip", ribs[last], sections.get(last), Vec3.Y.negate());
        }
    }

    private void falseSpars(WingStations stations, double[] fractions, Rows rows) {
        SparSheets webs = new SparSheets(model, spec.gaugeM(), spec.place());
        int number = 0;
        for (FalseSpar spar : spec.detail().falseSpars()) {
            number++;
            String name = spar.name() == null ? "false spar " + number : spar.name();
            int k = stations.indexOf(fractions, spar.at());
            int from = rows.ribRows.get(spar.fromRib() - 1);
            int to = rows.ribRows.get(spar.toRib() - 1);
            List<RibSheets.Section> along = rows.all.subList(from, to + 1);
            List<Integer> bays = new ArrayList<>();
            for (int rib = spar.fromRib(); rib <= spar.toRib(); rib++) {
                bays.add(rows.ribRows.get(rib - 1) - from);
            }
            webs.web(
                    model.part(name, PartKind.SPAR, spec.gaugeM()),
                    along.stream().map(s -> s.lower().get(k)).toList(),
                    along.stream().map(s -> s.upper().get(k)).toList(),
                    bays,
                    spar.holes());
        }
    }

    private void stringers(RibSheets sheets, WingStations stations, WingShape shape, Rows rows, int side, int[] ribs) {
        int number = side > 0 ? spec.stringersUpper() : spec.stringersLower();
        StringerNotches notches = new StringerNotches(model, spec, ribs);
        String sideName = side > 0 ? "upper" : "lower";
        for (int i = 1; i <= number; i++) {
            String name = sideName + " stringer " + i;
            double f = stations.foot(i, number);
            List<List<Vec3>> blade = new ArrayList<>();
            for (RibSheets.Section section : rows.all) {
                double y = section.yM();
                Vec3 inward = new Vec3(shape.slope(y, f, side), 0, -1).unit().times(side * spec.stringerHeightM());
                Vec3 foot = point(y, f, shape.heightM(y, f, side));
                Vec3 top = foot.plus(inward);
                WingBoxCheck.top(spec, name, section, top, side);
                blade.add(List.of(foot, top));
            }
            sheets.ruled(model.part(name, PartKind.STRINGER, spec.gaugeM()), blade);
            for (int r = 1; r + 1 < ribs.length; r++) {
                int row = rows.ribRows.get(r);
                List<Vec3> skin =
                        side > 0 ? rows.all.get(row).upper() : rows.all.get(row).lower();
                notches.cut(
                        r,
                        sideName + " notch " + i,
                        skin,
                        blade.get(row).get(0),
                        blade.get(row).get(1));
            }
        }
    }
}
