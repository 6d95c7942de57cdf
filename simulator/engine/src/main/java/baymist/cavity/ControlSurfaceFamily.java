package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.ControlSurface;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.ControlSurfaceDetail.Beads;
import baymist.scene.ControlSurfaceDetail.Horn;
import baymist.scene.ControlSurfaceDetail.Nose;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Control surface: a wedge between a spar at x = 0 and the trailing edge, symmetric about z = 0 but for beads; ahead of the spar
 * a nose and a horn, if there are any.
 *
 * <p>Depth and chord run straight from root to tip. Where chord and depth do not taper in step the skins are warped; they
 * are then ruled through enough stations and strips that no panel departs from the ruled surface by more than 0.05 mm. All
 * sheets share one grid of rows (y) and columns (chord fraction), which holds the bends of the beads of either skin; ribs,
 * spar and trailing edge take their outlines from it, so beads that cross them leave no slit.
 */
final class ControlSurfaceFamily {
    /** Rows or columns nearer to each other than this are one, m. */
    private static final double SAME_M = 1e-7;

    private final ControlSurface spec;
    private final SheetModel model = new SheetModel();
    private final @Nullable BeadPattern upperBeads;
    private final @Nullable BeadPattern lowerBeads;

    private ControlSurfaceFamily(ControlSurface spec) {
        this.spec = spec;
        this.upperBeads = pattern(spec.detail().upper());
        this.lowerBeads = pattern(spec.detail().lower());
    }

    static SheetModel build(ControlSurface spec) {
        ControlSurfaceCheck.measures(spec);
        return new ControlSurfaceFamily(spec).build();
    }

    private @Nullable BeadPattern pattern(@Nullable Beads beads) {
        return beads == null ? null : new BeadPattern(spec, beads);
    }

    private SheetModel build() {
        FamilyChecks.remarkSpan(model, spec.ribs(), spec.spanM());
        remarkBeads("upper", upperBeads);
        remarkBeads("lower", lowerBeads);
        int pieces = pieces();
        double[] columns = columns(pieces);
        double[] stations = stations(pieces);
        ControlSurfaceCheck.gridSize(spec, stations.length, columns.length);
        List<RibSheets.Section> all = new ArrayList<>();
        for (double y : stations) {
            all.add(section(y, columns));
        }
        ControlSurfaceCheck.depth(spec, all);
        List<RibSheets.Section> atRibs = new ArrayList<>();
        List<Integer> ribRows = new ArrayList<>();
        for (Rib rib : spec.ribs()) {
            for (int j = 0; j < all.size(); j++) {
                if (all.get(j).yM() == rib.yM()) {
                    atRibs.add(all.get(j));
                    ribRows.add(j);
                }
            }
        }
        int upper = model.part("upper skin", PartKind.SKIN, spec.gaugeM());
        int lower = model.part("lower skin", PartKind.SKIN, spec.gaugeM());
        int spar = model.part("spar", PartKind.SPAR, spec.gaugeM());
        RibSheets sheets = new RibSheets(model, spec.gaugeM(), spec.place());
        sheets.ruled(upper, all.stream().map(RibSheets.Section::upper).toList());
        sheets.ruled(lower, all.stream().map(s -> RibSheets.reversed(s.lower())).toList());
        new SparSheets(model, spec.gaugeM(), spec.place())
                .web(
                        spar,
                        all.stream().map(s -> s.lower().get(0)).toList(),
                        all.stream().map(s -> s.upper().get(0)).toList(),
                        ribRows,
                        spec.detail().sparHoles());
        int last = columns.length - 1;
        if (spec.edgeDepthM() > 0) {
            int edge = model.part("trailing edge", PartKind.WALL, spec.gaugeM());
            sheets.ruled(
                    edge,
                    all.stream()
                            .map(s -> List.of(s.upper().get(last), s.lower().get(last)))
                            .toList());
        }
        sheets.ribs(spec.ribs(), atRibs);
        new NoseSheets(spec, model, sheets, all).build();
        return model;
    }

    private void remarkBeads(String side, @Nullable BeadPattern beads) {
        if (beads != null) {
            model.remarks.add("the " + side + " skin has " + beads.number() + " beads");
        }
    }

    private int pieces() {
        List<List<Vec3>> skins = new ArrayList<>();
        List<List<Vec3>> noses = new ArrayList<>();
        Nose nose = spec.detail().nose();
        for (Rib rib : spec.ribs()) {
            RibSheets.Section plain = plain(rib.yM());
            skins.add(plain.upper());
            if (nose != null) {
                Vec3 top = plain.upper().get(0);
                Vec3 foot = plain.lower().get(0);
                noses.add(new NoseShape(spec, nose).section(rib.yM(), top, foot).upper());
            }
        }
        return Math.max(FamilyChecks.warpPieces(skins), FamilyChecks.warpPieces(noses));
    }

    private double[] columns(int pieces) {
        Set<Double> fixed = new HashSet<>();
        TreeSet<Double> set = new TreeSet<>();
        for (int k = 0; k <= pieces; k++) {
            set.add((double) k / pieces);
        }
        fixed.add(0.0);
        fixed.add(1.0);
        for (BeadPattern beads : patterns()) {
            for (double s : beads.columns()) {
                if (s >= 0 && s <= 1) {
                    set.add(s);
                }
            }
        }
        return merged(set, fixed, SAME_M / spec.rootChordM());
    }

    private double[] stations(int pieces) {
        Set<Double> fixed = new HashSet<>();
        TreeSet<Double> set = new TreeSet<>();
        for (int i = 0; i < spec.ribs().size(); i++) {
            double y = spec.ribs().get(i).yM();
            fixed.add(y);
            for (int k = 1; k < pieces && i > 0; k++) {
                double before = spec.ribs().get(i - 1).yM();
                set.add(before + (y - before) * k / pieces);
            }
        }
        double first = spec.ribs().get(0).yM();
        double last = spec.ribs().get(spec.ribs().size() - 1).yM();
        for (BeadPattern beads : patterns()) {
            for (double y : beads.rows()) {
                if (y > first && y < last) {
                    set.add(y);
                }
            }
        }
        Nose nose = spec.detail().nose();
        if (nose != null) {
            nose.ribs().forEach(rib -> fixed.add(rib.yM()));
        }
        Horn horn = spec.detail().horn();
        if (horn != null) {
            fixed.add(ControlSurfaceCheck.hornFromM(spec, horn));
        }
        set.addAll(fixed);
        return merged(set, fixed, SAME_M);
    }

    private List<BeadPattern> patterns() {
        List<BeadPattern> out = new ArrayList<>();
        if (upperBeads != null) {
            out.add(upperBeads);
        }
        if (lowerBeads != null) {
            out.add(lowerBeads);
        }
        return out;
    }

    /** The values in order; of those that almost meet one is kept, a fixed one if there is one. */
    private static double[] merged(SortedSet<Double> set, Set<Double> fixed, double same) {
        List<Double> kept = new ArrayList<>();
        for (double v : set) {
            int end = kept.size() - 1;
            if (end < 0 || v - kept.get(end) > same || (fixed.contains(v) && fixed.contains(kept.get(end)))) {
                kept.add(v);
            } else if (fixed.contains(v)) {
                kept.set(end, v);
            }
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double along(double root, double tip, double y) {
        return root + (tip - root) * y / spec.spanM();
    }

    private RibSheets.Section plain(double y) {
        double half = 0.5 * along(spec.rootDepthM(), spec.tipDepthM(), y);
        double edge = 0.5 * spec.edgeDepthM();
        double chord = along(spec.rootChordM(), spec.tipChordM(), y);
        return new RibSheets.Section(
                y,
                List.of(new Vec3(0, y, half), new Vec3(chord, y, edge)),
                List.of(new Vec3(0, y, -half), new Vec3(chord, y, -edge)));
    }

    private RibSheets.Section section(double y, double[] columns) {
        double chord = along(spec.rootChordM(), spec.tipChordM(), y);
        double half = 0.5 * along(spec.rootDepthM(), spec.tipDepthM(), y);
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        for (double s : columns) {
            double z = s == 1 ? 0.5 * spec.edgeDepthM() : half + s * (0.5 * spec.edgeDepthM() - half);
            double up = upperBeads == null ? 0 : upperBeads.heightM(s, y);
            double down = lowerBeads == null ? 0 : lowerBeads.heightM(s, y);
            upper.add(new Vec3(chord * s, y, z + up));
            lower.add(new Vec3(chord * s, y, -(z + down)));
        }
        return new RibSheets.Section(y, upper, lower);
    }
}
