package baymist.access;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Where a bent rigid tube gets to through an entry: threaded so that the stretch in the hole stands as freely as it can ({@link HookFit}), turned to any clock
 * angle that the sheets beyond allow ({@link HookThread}).
 */
public final class HookReach implements ReachSearch {
    private static final int CLOCKS = 72;
    private static final double SLIDE_M = 0.002;
    private static final int MOST_SLIDES = 300;

    @Override
    public WandReach search(ReachProblem p) {
        Search s = new Search(p);
        int deepest = s.deepest();
        if (deepest < 1) {
            WandReach none = WandReach.none(p, s.none().stop());
            return s.sawAll() ? none : none.incomplete();
        }
        double depth = s.thread.slideM(deepest);
        return new WandReach(
                p.entry().name(),
                p.wand().name(),
                true,
                0,
                depth,
                s.stop(deepest),
                s.tips(p.settings().tips()),
                Math.max(s.thread.slideM(1), depth * 2 * Math.PI / CLOCKS),
                s.sawAll());
    }

    /**
     * The threading motion.
     *
     * @param clockRad clock angle of the pin that is wanted at the end, rad; the nearest that can be had is taken
     */
    public HookMotion motion(ReachProblem p, double clockRad) {
        return new Search(p).motion(clockRad);
    }

    /** One tube in one entry. */
    private static final class Search {
        final ReachProblem p;
        final HookShape shape;
        final HookSpace space;
        final HookThread thread;
        final double holeRadiusM;
        final double gaugeM;
        final @Nullable String shut;
        final double mostM;

        Search(ReachProblem p) {
            if (p.wand().kind() != WandSpec.Kind.BENT) {
                throw new IllegalArgumentException("'" + p.wand().name() + "' is no bent rigid tube");
            }
            this.p = p;
            p.axis();
            shape = new HookShape(p.wand());
            holeRadiusM = holeRadiusM();
            gaugeM = p.entry().grommet() == null
                    ? p.gaugeM()
                    : Math.max(p.gaugeM(), p.entry().grommet().thicknessM());
            space = new HookSpace(p, p.wand().thickestM() / 2);
            mostM = mostM(p.wand());
            int slides = (int) Math.max(8, Math.min(MOST_SLIDES, Math.ceil(mostM / SLIDE_M) + 1));
            thread = new HookThread(
                    shape,
                    space,
                    p.opening().place(),
                    holeRadiusM,
                    gaugeM,
                    mostM,
                    slides,
                    CLOCKS,
                    p.settings().budget());
            shut = p.shut() != null ? p.shut() : refusal();
            if (shut == null) {
                thread.flood();
            }
        }

        private @Nullable String refusal() {
            if (p.entry().secondPlate() != null) {
                return "a bent tube is not threaded through two plates by this search";
            }
            double play = holeRadiusM - p.wand().thickestM() / 2;
            if (play < 0) {
                return String.format(
                        Locale.ROOT,
                        "'%s' is too small: a tube of %.3f mm lacks %.3f mm across",
                        p.opening().name(),
                        1e3 * p.wand().thickestM(),
                        -2e3 * play);
            }
            return null;
        }

        /** The largest circle about the middle of the opening counts as the hole, narrowed by a grommet. */
        private double holeRadiusM() {
            Outline outline = p.opening().place().outline();
            double radius = outline instanceof Outline.Circle c ? c.radiusM() : outline.clearanceM(0, 0);
            return p.entry().grommet() == null
                    ? radius
                    : Math.min(radius, p.entry().grommet().boreM() / 2);
        }

        private static double mostM(WandSpec wand) {
            double most = wand.lengthM();
            for (WandSpec.Coupling c : wand.couplings()) {
                if (c.outerM() > wand.thickestM()) {
                    most = Math.min(most, c.fromTipM() - 0.5 * c.lengthM());
                }
            }
            return most;
        }

        /** Deepest slide that was reached; below 1 if the tube does not go in. */
        int deepest() {
            return shut == null ? thread.deepest() : -1;
        }

        HookMotion motion(double clockRad) {
            int deepest = deepest();
            if (deepest < 1) {
                return none();
            }
            int clock = thread.nearestClock(deepest, clockRad);
            List<HookMotion.Step> steps = new ArrayList<>();
            double least = Double.POSITIVE_INFINITY;
            String where = "";
            double slide = 0;
            for (int[] at : thread.way(deepest, clock)) {
                HookMotion.Step step = step(at[0], at[1]);
                steps.add(step);
                if (step.holeClearanceM() < least) {
                    least = step.holeClearanceM();
                    where = "the hole '" + p.opening().name() + "'";
                    slide = step.slideM();
                }
                if (step.sheetClearanceM() < least) {
                    least = step.sheetClearanceM();
                    where = step.nearest();
                    slide = step.slideM();
                }
            }
            List<Double> clocks = new ArrayList<>();
            for (int j = 0; j < thread.clocks(); j++) {
                if (thread.reached(deepest, j)) {
                    clocks.add(thread.clockRad(j));
                }
            }
            return new HookMotion(
                    steps,
                    new HookPath(thread, deepest, clockRad),
                    thread.slideM(deepest),
                    clocks,
                    least,
                    where,
                    slide,
                    stop(deepest),
                    thread.tried(),
                    sawAll());
        }

        /** Whether the flood came to its end before the budget did. */
        boolean sawAll() {
            return thread.tried() < p.settings().budget();
        }

        private HookMotion none() {
            String part = p.cavity().parts().get(p.opening().part()).name();
            String why = shut != null ? shut : "it touches before its tip is through";
            WandStop stop =
                    new WandStop(part, thread.holeM(), holeRadiusM - p.wand().thickestM() / 2, why);
            WandPath nowhere = WandPath.straight(
                    thread.holeM(), p.opening().place().normal(), p.wand().thickestM() / 2, 0);
            return new HookMotion(
                    List.of(), nowhere, 0, List.of(), stop.clearanceM(), part, 0, stop, thread.tried(), true);
        }

        private HookMotion.Step step(int i, int j) {
            HookPlace place = thread.place(i, j);
            HookSpace.Touch touch = space.nearest(place);
            return new HookMotion.Step(
                    place.slideM(),
                    place.clockRad(),
                    place.fit().tiltRad(),
                    place.fit().clearanceM(),
                    touch == null ? Double.POSITIVE_INFINITY : touch.clearanceM(),
                    touch == null ? "" : touch.part(),
                    place.tip().positionM());
        }

        private WandStop stop(int deepest) {
            Vec3 tip = thread.place(deepest, Math.max(0, thread.nearestClock(deepest, 0)))
                    .tip()
                    .positionM();
            if (deepest == thread.slides() - 1) {
                boolean whole = mostM >= p.wand().lengthM();
                return new WandStop(
                        whole ? AccessFinder.WAND_LENGTH : "coupling",
                        tip,
                        0,
                        whole ? "the whole tube is in" : "a coupling is at the entry");
            }
            String part = p.cavity().parts().get(p.opening().part()).name();
            if (thread.fitAt(deepest + 1).clearanceM() < 0) {
                return new WandStop(part, thread.holeM(), thread.fitAt(deepest).clearanceM(), bendDoesNotPass());
            }
            HookThread.Stop stop = thread.stop(deepest);
            if (stop == null) {
                return new WandStop(part, thread.holeM(), 0, "the search ended here");
            }
            HookSpace.Touch touch = stop.touch();
            String why = thread.tried() >= p.settings().budget()
                    ? "the search ended here by its budget, near " + touch.part()
                    : "the tube meets " + touch.part() + " at every clock angle that it can be turned to";
            return new WandStop(touch.part(), touch.placeM(), Math.max(0, touch.clearanceM()), why);
        }

        private String bendDoesNotPass() {
            double sharpest = p.wand().pieces().stream()
                    .filter(WandPiece.Bend.class::isInstance)
                    .mapToDouble(b -> ((WandPiece.Bend) b).radiusM())
                    .min()
                    .orElse(0);
            return String.format(
                    Locale.ROOT,
                    "a bend of %.1f mm radius does not pass: a hole of %.2f mm in %.2f mm sheet wants %.1f mm or more for this tube",
                    1e3 * sharpest,
                    2e3 * holeRadiusM,
                    1e3 * gaugeM,
                    1e3 * BendFit.leastRadiusM(2 * holeRadiusM, p.wand().outerM(), gaugeM));
        }

        /** Bodies all over the grid that was reached, deepest first. */
        List<WandPose> tips(int most) {
            List<int[]> all = new ArrayList<>();
            for (int i = 1; i < thread.slides(); i++) {
                for (int j = 0; j < thread.clocks(); j++) {
                    if (thread.reached(i, j)) {
                        all.add(new int[] {i, j});
                    }
                }
            }
            all.sort(Comparator.comparingInt((int[] a) -> -a[0]).thenComparingInt(a -> a[1]));
            List<WandPose> tips = new ArrayList<>();
            HookThread.Stop stop = thread.stop(thread.deepest());
            if (stop != null) {
                // the body that the stop is told for comes first
                tips.add(thread.place(thread.deepest(), stop.clock()).pose());
            }
            double stride = Math.max(1, (double) all.size() / most);
            for (double k = 0; k < all.size() && tips.size() < most; k += stride) {
                int[] at = all.get((int) k);
                tips.add(thread.place(at[0], at[1]).pose());
            }
            return tips;
        }
    }
}
