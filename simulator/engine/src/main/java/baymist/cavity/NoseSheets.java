package baymist.cavity;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.ControlSurface;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.ControlSurfaceDetail.Horn;
import baymist.scene.ControlSurfaceDetail.Nose;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What stands ahead of a control surface's spar: the nose and the horn. Both use the rows of the main skins and meet the edges
 * of the spar vertex for vertex. Where the nose ends at the horn, the horn's inner rib closes both.
 */
final class NoseSheets {
    private final ControlSurface spec;
    private final SheetModel model;
    private final RibSheets sheets;
    private final List<RibSheets.Section> rows;

    NoseSheets(ControlSurface spec, SheetModel model, RibSheets sheets, List<RibSheets.Section> rows) {
        this.spec = spec;
        this.model = model;
        this.sheets = sheets;
        this.rows = rows;
    }

    void build() {
        Nose nose = spec.detail().nose();
        Horn horn = spec.detail().horn();
        int hornRow = horn == null ? rows.size() - 1 : rowAt(ControlSurfaceCheck.hornFromM(spec, horn));
        List<RibSheets.Section> noseRows = List.of();
        if (nose != null) {
            noseRows = nose(nose, hornRow, horn == null);
        }
        if (horn != null) {
            horn(horn, hornRow, noseRows);
        }
    }

    private int rowAt(double yM) {
        for (int j = 0; j < rows.size(); j++) {
            if (rows.get(j).yM() == yM) {
                return j;
            }
        }
        throw new IllegalStateException("no row at y = " + yM);
    }

    private static Vec3 top(RibSheets.Section row) {
        return row.upper().get(0);
    }

    private static Vec3 foot(RibSheets.Section row) {
        return row.lower().get(0);
    }

    private List<RibSheets.Section> nose(Nose nose, int endRow, boolean closesTip) {
        NoseShape shape = new NoseShape(spec, nose);
        List<RibSheets.Section> sections = new ArrayList<>();
        Map<Double, RibSheets.Section> byStation = new HashMap<>();
        for (RibSheets.Section row : rows.subList(0, endRow + 1)) {
            RibSheets.Section section = shape.section(row.yM(), top(row), foot(row));
            sections.add(section);
            byStation.put(row.yM(), section);
        }
        int skin = model.part("nose skin", PartKind.SKIN, spec.gaugeM());
        // one sheet round the leading edge: lower side forward, upper side aft
        sheets.ruled(skin, sections.stream().map(NoseSheets::round).toList());
        List<Rib> ribs = new ArrayList<>();
        ribs.add(new Rib(rows.get(0).yM(), 0, List.of(), "nose root rib"));
        int number = 0;
        for (Rib rib : nose.ribs()) {
            number++;
            String name = rib.name() == null ? "nose rib " + number : rib.name();
            ribs.add(new Rib(rib.yM(), 0, rib.holes(), name));
        }
        if (closesTip) {
            ribs.add(new Rib(rows.get(endRow).yM(), 0, List.of(), "nose tip rib"));
        }
        for (Rib rib : ribs) {
            RibSheets.Section section = byStation.get(rib.yM());
            if (section == null) {
                throw new IllegalStateException("no row at y = " + rib.yM());
            }
            sheets.rib(rib.name() == null ? "" : rib.name(), rib, section, Vec3.Y);
        }
        return sections;
    }

    private static List<Vec3> round(RibSheets.Section section) {
        List<Vec3> points = RibSheets.reversed(section.lower());
        points.addAll(section.upper().subList(1, section.points()));
        return points;
    }

    private void horn(Horn horn, int fromRow, List<RibSheets.Section> noseRows) {
        SourcePlace place = spec.place();
        List<RibSheets.Section> sections = new ArrayList<>();
        for (RibSheets.Section row : rows.subList(fromRow, rows.size())) {
            sections.add(hornSection(horn, row));
        }
        if (!noseRows.isEmpty()) {
            ControlSurfaceCheck.covers(spec, sections.get(0), noseRows.get(noseRows.size() - 1));
        }
        int upper = model.part("horn upper skin", PartKind.SKIN, spec.gaugeM());
        int lower = model.part("horn lower skin", PartKind.SKIN, spec.gaugeM());
        sheets.ruled(upper, sections.stream().map(RibSheets.Section::upper).toList());
        sheets.ruled(
                lower, sections.stream().map(s -> RibSheets.reversed(s.lower())).toList());
        SparSheets webs = new SparSheets(model, spec.gaugeM(), place);
        List<Integer> bay = List.of(0, sections.size() - 1);
        if (horn.frontDepthM() > 0) {
            webs.web(
                    model.part("horn front", PartKind.WALL, spec.gaugeM()),
                    sections.stream().map(s -> s.lower().get(0)).toList(),
                    sections.stream().map(s -> s.upper().get(0)).toList(),
                    bay,
                    List.of());
        }
        if (horn.bulkheadM() > 0) {
            webs.web(
                    model.part("horn bulkhead", PartKind.WALL, spec.gaugeM()),
                    sections.stream().map(s -> s.lower().get(1)).toList(),
                    sections.stream().map(s -> s.upper().get(1)).toList(),
                    bay,
                    horn.bulkheadHoles());
        }
        Rib inner = new Rib(sections.get(0).yM(), 0, List.of());
        sheets.rib("horn inner rib", inner, sections.get(0), Vec3.Y);
        RibSheets.Section end = sections.get(sections.size() - 1);
        sheets.rib("horn outer rib", new Rib(end.yM(), 0, List.of()), end, Vec3.Y.negate());
    }

    private static RibSheets.Section hornSection(Horn horn, RibSheets.Section row) {
        double h = top(row).z();
        double front = horn.frontDepthM() / 2;
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        upper.add(new Vec3(-horn.lengthM(), row.yM(), front));
        lower.add(new Vec3(-horn.lengthM(), row.yM(), -front));
        if (horn.bulkheadM() > 0) {
            double z = h + (front - h) * horn.bulkheadM() / horn.lengthM();
            upper.add(new Vec3(-horn.bulkheadM(), row.yM(), z));
            lower.add(new Vec3(-horn.bulkheadM(), row.yM(), -z));
        }
        upper.add(top(row));
        lower.add(foot(row));
        return new RibSheets.Section(row.yM(), upper, lower);
    }
}
