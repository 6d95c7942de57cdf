package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.ControlSurface;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.ControlSurfaceDetail.Beads;
import baymist.scene.ControlSurfaceDetail.Form;
import baymist.scene.ControlSurfaceDetail.Horn;
import baymist.scene.ControlSurfaceDetail.Nose;
import baymist.scene.ControlSurfaceDetail.Run;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What the measures of a control surface must satisfy. */
final class ControlSurfaceCheck {
    /** Grid points of the skins; a million triangles are plenty for a control surface. */
    private static final long MOST_POINTS = 250_000;

    private static final int MOST_BEADS = 1000;

    private ControlSurfaceCheck() {}

    /** Station at which the horn begins. */
    static double hornFromM(ControlSurface spec, Horn horn) {
        return spec.ribs().get(spec.ribs().size() - 1).yM() - horn.widthM();
    }

    static void measures(ControlSurface spec) {
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
            double chord = along(spec, spec.rootChordM(), spec.tipChordM(), rib.yM());
            if (rib.shortOfEdgeM() >= chord) {
                check.error(
                        "CAV-010",
                        "rib " + (i + 1) + " would stop " + SpecCheck.mm(rib.shortOfEdgeM())
                                + " short of the trailing edge, but the chord there is only "
                                + SpecCheck.mm(chord));
            }
        }
        check.orThrow();
        beads(check, "upper", spec, spec.detail().upper());
        beads(check, "lower", spec, spec.detail().lower());
        nose(check, spec);
        horn(check, spec);
        names(check, spec);
        check.orThrow();
    }

    private static double along(ControlSurface spec, double root, double tip, double yM) {
        return root + (tip - root) * yM / spec.spanM();
    }

    private static void beads(SpecCheck check, String side, ControlSurface spec, @Nullable Beads b) {
        if (b == null) {
            return;
        }
        String what = "beads of the " + side + " skin: ";
        check.positive(what + "pitch", b.pitchM());
        check.positive(what + "width", b.widthM());
        check.finite(what + "depth", b.depthM());
        check.notNegative(what + "run-out", b.runOutM());
        check.notNegative(what + "distance from ribs", b.clearOfRibsM());
        double longest = Math.max(spec.spanM(), spec.rootChordM());
        if (b.pitchM() < longest / MOST_BEADS) {
            check.error(
                    "CAV-033",
                    what + "a pitch of " + SpecCheck.mm(b.pitchM()) + " makes too many beads; at least "
                            + SpecCheck.mm(longest / MOST_BEADS) + " expected");
        }
        boolean sizes = b.widthM() <= b.pitchM() * (1 + 1e-9)
                && (b.form() == Form.SINE || (b.flankM() > 0 && b.flankM() <= b.widthM() / 2 * (1 + 1e-9)));
        if (!sizes) {
            check.error(
                    "CAV-033",
                    what + "width " + SpecCheck.mm(b.widthM()) + ", pitch " + SpecCheck.mm(b.pitchM()) + ", flanks of "
                            + SpecCheck.mm(b.flankM())
                            + "; a width of at most the pitch and flanks of at most half of the width expected");
        }
        boolean run = b.fromM() >= 0 && b.fromM() < b.toM() && b.toM() <= spec.rootChordM() * (1 + 1e-9);
        if (!run) {
            check.error(
                    "CAV-033",
                    what + "they reach from " + SpecCheck.mm(b.fromM()) + " to " + SpecCheck.mm(b.toM())
                            + " aft of the spar; within the root chord of " + SpecCheck.mm(spec.rootChordM())
                            + " expected");
        }
        boolean fades = b.runOutM() > 0;
        boolean atEdges = b.fromM() <= 1e-9 && b.toM() >= spec.rootChordM() - 1e-9;
        boolean through = b.run() == Run.SPANWISE ? b.clearOfRibsM() == 0 : atEdges;
        boolean tooLong = b.run() == Run.CHORDWISE && 2 * b.runOutM() > b.toM() - b.fromM();
        if ((!fades && !through) || tooLong) {
            check.error(
                    "CAV-033",
                    what + "a run-out of " + SpecCheck.mm(b.runOutM())
                            + " does not fit; above 0 where beads end within the sheet, and at most half of their length,"
                            + " expected");
        }
    }

    private static void nose(SpecCheck check, ControlSurface spec) {
        Nose nose = spec.detail().nose();
        if (nose == null) {
            return;
        }
        check.positive("nose length at the root", nose.rootLengthM());
        check.positive("nose length at the tip", nose.tipLengthM());
        check.notNegative("nose radius", nose.radiusM());
        double atTip = nose.radiusM() * spec.tipDepthM() / spec.rootDepthM();
        boolean fits = nose.radiusM() <= spec.rootDepthM() / 2 * (1 + 1e-9)
                && nose.radiusM() <= nose.rootLengthM()
                && atTip <= nose.tipLengthM();
        if (!fits) {
            check.error(
                    "CAV-034",
                    "the nose radius " + SpecCheck.mm(nose.radiusM())
                            + " is too large; at most half of the depth at the spar and the nose's length expected");
        }
        Horn horn = spec.detail().horn();
        double before = spec.ribs().get(0).yM();
        double end = horn == null ? spec.ribs().get(spec.ribs().size() - 1).yM() : hornFromM(spec, horn);
        for (Rib rib : nose.ribs()) {
            if (!(rib.yM() - before >= 1e-4 && end - rib.yM() >= 1e-4)) {
                check.error(
                        "CAV-034",
                        "a nose rib stands at y = " + SpecCheck.mm(rib.yM())
                                + "; in order from the root, between the nose's ends at "
                                + SpecCheck.mm(spec.ribs().get(0).yM()) + " and " + SpecCheck.mm(end) + ", expected");
            }
            before = rib.yM();
        }
        if (beadsAtSpar(spec)) {
            check.error("CAV-034", "beads that run up to the spar leave slits at the nose; end them aft of it");
        }
    }

    /** Nose and horn meet plain edges of the spar only. */
    private static boolean beadsAtSpar(ControlSurface spec) {
        for (Beads b : new Beads[] {spec.detail().upper(), spec.detail().lower()}) {
            if (b != null && b.run() == Run.CHORDWISE && b.runOutM() == 0) {
                return true;
            }
        }
        return false;
    }

    private static void horn(SpecCheck check, ControlSurface spec) {
        Horn horn = spec.detail().horn();
        if (horn == null) {
            return;
        }
        check.positive("horn width", horn.widthM());
        check.positive("horn length", horn.lengthM());
        check.notNegative("horn front depth", horn.frontDepthM());
        check.notNegative("horn bulkhead", horn.bulkheadM());
        double from = hornFromM(spec, horn);
        if (!(from - spec.ribs().get(0).yM() >= 1e-4)) {
            check.error(
                    "CAV-034",
                    "the horn is " + SpecCheck.mm(horn.widthM()) + " wide; less than the span of "
                            + SpecCheck.mm(spec.spanM()) + " expected");
        }
        if (horn.frontDepthM() > Math.min(along(spec, spec.rootDepthM(), spec.tipDepthM(), from), spec.tipDepthM())) {
            check.error(
                    "CAV-034",
                    "the horn's front is deeper (" + SpecCheck.mm(horn.frontDepthM())
                            + ") than the spar there; at most as deep expected");
        }
        if (!(horn.bulkheadM() < horn.lengthM())) {
            check.error(
                    "CAV-034",
                    "the horn's bulkhead stands " + SpecCheck.mm(horn.bulkheadM())
                            + " ahead of the spar; less than the horn's length of " + SpecCheck.mm(horn.lengthM())
                            + " expected");
        }
        for (Rib rib : spec.ribs()) {
            double off = Math.abs(rib.yM() - from);
            if (off > 0 && off < 1e-6) {
                check.error(
                        "CAV-034",
                        "the horn's inner rib stands " + SpecCheck.mm(off)
                                + " off a rib; on it or 0.001 mm off expected");
            }
        }
        if (beadsAtSpar(spec)) {
            check.error("CAV-034", "beads that run up to the spar leave slits at the horn; end them aft of it");
        }
    }

    private static void names(SpecCheck check, ControlSurface spec) {
        Set<String> names = new HashSet<>();
        for (int i = 0; i < spec.ribs().size(); i++) {
            WingBoxCheck.unique(check, names, RibSheets.name(spec.ribs(), i));
        }
        Nose nose = spec.detail().nose();
        List<Rib> noseRibs = nose == null ? List.of() : nose.ribs();
        for (int i = 0; i < noseRibs.size(); i++) {
            String own = noseRibs.get(i).name();
            WingBoxCheck.unique(check, names, own == null ? "nose rib " + (i + 1) : own);
        }
        for (String fixed : new String[] {
            "upper skin",
            "lower skin",
            "spar",
            "trailing edge",
            "nose skin",
            "nose root rib",
            "nose tip rib",
            "horn upper skin",
            "horn lower skin",
            "horn front",
            "horn bulkhead",
            "horn inner rib",
            "horn outer rib"
        }) {
            WingBoxCheck.unique(check, names, fixed);
        }
    }

    static void gridSize(ControlSurface spec, int rows, int columns) {
        if ((long) rows * columns > MOST_POINTS) {
            SpecCheck check = new SpecCheck(spec.place());
            check.error(
                    "CAV-033",
                    "the beads need a grid of " + rows + " x " + columns + " points; at most " + MOST_POINTS
                            + " expected, so check pitch and width");
            check.orThrow();
        }
    }

    /** Beads must leave air between the skins. */
    static void depth(ControlSurface spec, List<RibSheets.Section> rows) {
        for (RibSheets.Section row : rows) {
            for (int k = 0; k < row.points(); k++) {
                Vec3 up = row.upper().get(k);
                double depth = up.z() - row.lower().get(k).z();
                boolean sharp = k == row.points() - 1 && spec.edgeDepthM() == 0;
                if (sharp ? Math.abs(depth) > 0 : !(depth > 0)) {
                    SpecCheck check = new SpecCheck(spec.place());
                    check.error(
                            "CAV-033",
                            String.format(
                                    Locale.ROOT,
                                    "with their beads the skins stand %s apart at %s; %s",
                                    SpecCheck.mm(depth),
                                    SpecCheck.at(up),
                                    sharp
                                            ? "where they meet at the trailing edge beads must have faded out"
                                            : "make the beads shallower or end them further forward"));
                    check.orThrow();
                }
            }
        }
    }

    /** The horn's inner rib closes the nose's end, so it must cover it. */
    static void covers(ControlSurface spec, RibSheets.Section horn, RibSheets.Section nose) {
        for (Vec3 p : nose.upper()) {
            boolean inside = p.x() >= horn.frontX() - 1e-9 && p.z() <= horn.heightM(p.x(), horn.upper()) + 1e-9;
            if (!inside) {
                SpecCheck check = new SpecCheck(spec.place());
                check.error(
                        "CAV-034",
                        "the nose reaches beyond the horn at " + SpecCheck.at(p)
                                + "; a horn that is longer and at least as deep as the nose expected");
                check.orThrow();
            }
        }
    }
}
