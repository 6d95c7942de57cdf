package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.ControlSurface;
import baymist.scene.CavitySpec.Rib;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Control surface: a wedge between a spar at x = 0 and the trailing edge, symmetric about z = 0.
 *
 * <p>Depth and chord run straight from root to tip. Where chord and depth do not taper in step the skins are warped; they
 * are then ruled through enough stations and strips that no panel departs from the ruled surface by more than 0.05 mm.
 */
final class ControlSurfaceFamily {
    private static final double WARP_M = 5e-5;
    private static final int MOST_STRIPS = 16;

    private final ControlSurface spec;
    private final SheetModel model = new SheetModel();

    private ControlSurfaceFamily(ControlSurface spec) {
        this.spec = spec;
    }

    static SheetModel build(ControlSurface spec) {
        return new ControlSurfaceFamily(spec).build();
    }

    private SheetModel build() {
        check();
        FamilyChecks.remarkSpan(model, spec.ribs(), spec.spanM());
        int strips = strips();
        List<RibSheets.Section> all = new ArrayList<>();
        List<RibSheets.Section> atRibs = new ArrayList<>();
        for (int i = 0; i < spec.ribs().size(); i++) {
            double y = spec.ribs().get(i).yM();
            RibSheets.Section here = section(y, strips);
            if (i > 0) {
                double before = spec.ribs().get(i - 1).yM();
                for (int k = 1; k < strips; k++) {
                    all.add(section(before + (y - before) * k / strips, strips));
                }
            }
            all.add(here);
            atRibs.add(here);
        }
        int upper = model.part("upper skin", PartKind.SKIN, spec.gaugeM());
        int lower = model.part("lower skin", PartKind.SKIN, spec.gaugeM());
        int spar = model.part("spar", PartKind.SPAR, spec.gaugeM());
        RibSheets sheets = new RibSheets(model, spec.gaugeM(), spec.place());
        sheets.ruled(upper, all.stream().map(RibSheets.Section::upper).toList());
        sheets.ruled(lower, all.stream().map(s -> reversed(s.lower())).toList());
        sheets.ruled(
                spar,
                all.stream()
                        .map(s -> List.of(s.lower().get(0), s.upper().get(0)))
                        .toList());
        if (spec.edgeDepthM() > 0) {
            int edge = model.part("trailing edge", PartKind.WALL, spec.gaugeM());
            sheets.ruled(
                    edge,
                    all.stream()
                            .map(s -> List.of(s.upper().get(strips), s.lower().get(strips)))
                            .toList());
        }
        sheets.ribs(spec.ribs(), atRibs);
        return model;
    }

    private void check() {
        SpecCheck check = new SpecCheck(spec.place());
        FamilyChecks.ribs(check, spec.ribs(), spec.spanM());
        check.positive("span", spec.spanM());
        check.positive("root chord", spec.rootChordM());
        check.positive("tip chord", spec.tipChordM());
        check.positive("root depth", spec.rootDepthM());
        check.positive("tip depth", spec.tipDepthM());
        check.positive("gauge", spec.gaugeM());
        check.notNegative("trailing-edge depth", spec.edgeDepthM());
        if (spec.edgeDepthM() > Math.min(spec.rootDepthM(), spec.tipDepthM())) {
            check.error(
                    "CAV-009",
                    "trailing-edge depth " + SpecCheck.mm(spec.edgeDepthM())
                            + " is more than the depth at the spar; a wedge narrows aft");
        }
        for (int i = 0; i < spec.ribs().size() && check.clean(); i++) {
            Rib rib = spec.ribs().get(i);
            if (rib.shortOfEdgeM() >= chord(rib.yM())) {
                check.error(
                        "CAV-010",
                        "rib " + (i + 1) + " would stop " + SpecCheck.mm(rib.shortOfEdgeM())
                                + " short of the trailing edge, but the chord there is only "
                                + SpecCheck.mm(chord(rib.yM())));
            }
        }
        check.orThrow();
    }

    private int strips() {
        double worst = 0;
        for (int i = 0; i + 1 < spec.ribs().size(); i++) {
            RibSheets.Section a = section(spec.ribs().get(i).yM(), 1);
            RibSheets.Section b = section(spec.ribs().get(i + 1).yM(), 1);
            // distance of one corner of the panel from the plane of the other three
            Vec3 p = a.upper().get(0);
            Vec3 n = a.upper().get(1).minus(p).cross(b.upper().get(1).minus(p)).unit();
            worst = Math.max(worst, Math.abs(b.upper().get(0).minus(p).dot(n)));
        }
        // a diagonal misses the middle of a warped panel by a quarter of that at most; n strips a side divide it by n
        // squared
        return (int) Math.min(MOST_STRIPS, Math.max(1, Math.ceil(Math.sqrt(worst / 4 / WARP_M))));
    }

    private double along(double root, double tip, double y) {
        return root + (tip - root) * y / spec.spanM();
    }

    private double chord(double y) {
        return along(spec.rootChordM(), spec.tipChordM(), y);
    }

    private RibSheets.Section section(double y, int strips) {
        double chord = chord(y);
        double half = 0.5 * along(spec.rootDepthM(), spec.tipDepthM(), y);
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        for (int k = 0; k <= strips; k++) {
            double s = (double) k / strips;
            double z = k == strips ? 0.5 * spec.edgeDepthM() : half + s * (0.5 * spec.edgeDepthM() - half);
            upper.add(new Vec3(chord * s, y, z));
            lower.add(new Vec3(chord * s, y, -z));
        }
        return new RibSheets.Section(y, upper, lower);
    }

    private static List<Vec3> reversed(List<Vec3> points) {
        List<Vec3> copy = new ArrayList<>(points);
        Collections.reverse(copy);
        return copy;
    }
}
