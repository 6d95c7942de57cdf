package baymist.plan;

import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Structures;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.study.Change;
import baymist.study.Comparison;
import baymist.study.HoleSite;
import baymist.study.HoleStudy;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Plans the passes of a scene; read {@link #plan} from top to bottom. */
public final class Planner {
    /** Whole lines that are begun with, beside what the program says. */
    private static final int WHOLE_LINES = 3;

    /** Single strokes, the best by the matrix, that are run as they are: no plan may do worse than the best of them. */
    private static final int SINGLES = 4;

    private final Scene stated;
    private final PlanOptions options;
    private final RunOptions run;
    private final RunObserver observer;
    private final Structures structures = Structures.shared();

    private Planner(Scene stated, PlanOptions options, RunOptions run, RunObserver observer) {
        this.stated = stated;
        this.options = options;
        this.run = run;
        this.observer = observer;
    }

    /**
     * The plan of a scene.
     *
     * @throws SceneException PLN-001 if no wand of the scene goes in, PLN-002 if it has none or no entry, PLN-003 for unknown panels, and as a run
     *     and a search for holes do
     */
    public static PlanResult plan(Scene stated, PlanOptions options, RunOptions run, RunObserver observer) {
        refuseNothing(stated);
        return new Planner(stated, options, run, observer).plan();
    }

    /** What was found for one variant of the scene, at planning resolution. */
    private record Found(
            PlanVariant variant,
            DoseMatrix matrix,
            PlanLimits limits,
            PlanRefiner.@Nullable Refined refined,
            List<PlanResult.Round> rounds,
            PlanTrials.@Nullable Trial own,
            double waitS,
            int runs) {
        double worth() {
            return refined == null ? Double.NEGATIVE_INFINITY : refined.best().worth(limits) - variant.cost();
        }
    }

    private PlanResult plan() {
        List<PlanVariant> variants = new ArrayList<>(PlanVariant.of(stated));
        HoleStudy.@Nullable Holes holes = options.drill() ? holes(variants) : null;
        @Nullable Found base = null;
        @Nullable Found best = null;
        for (PlanVariant v : variants) {
            if (best != null && best.worth() > PlanScore.MOST_WORTH - v.cost()) {
                continue; // not even all of it would pay for what has to be opened or drilled more
            }
            Found found = found(v, base == null ? null : base.limits());
            if (found == null) {
                continue;
            }
            base = base == null ? found : base;
            best = best == null || found.worth() > best.worth() ? found : best;
        }
        if (base == null || best == null) {
            throw new SceneException(
                    "PLN-001",
                    SourcePlace.of(stated.file()),
                    "no wand of the scene goes in at one of its entries, so there is nothing to plan with; `baymist reach` says what keeps"
                            + " them out");
        }
        return closed(base, best, holes);
    }

    /** Holes as more variants of the scene: the first one alone, the first two ... */
    private HoleStudy.Holes holes(List<PlanVariant> variants) {
        observer.stage("access holes");
        PlanningRun runs = new PlanningRun(Planning.DEFAULT, StudyStore.none(), structures);
        HoleStudy.Holes holes = new HoleStudy(runs, run.threads()).run(stated, Comparison.Watch.NONE);
        Scene drilled = stated;
        List<String> names = new ArrayList<>();
        for (HoleStudy.Chosen c : holes.chosen()) {
            HoleSite site = c.site();
            drilled = new Change.RoundHole(
                            c.name(), site.part(), site.centreM(), site.drill().diameterM())
                    .apply(drilled);
            names.add(c.name());
            variants.add(new PlanVariant(drilled, List.of(), names));
        }
        return holes;
    }

    /** The best plan of one variant; null where no wand goes in. */
    private @Nullable Found found(PlanVariant variant, @Nullable PlanLimits given) {
        observer.stage("plan" + variant.words());
        DoseMatrix matrix =
                DoseMatrices.of(variant.scene(), options.dose(), options.store(), structures, run, observer);
        if (matrix.lines().isEmpty()) {
            return null;
        }
        try (Workers workers = new Workers(run.threads())) {
            double waitS = PlanPasses.hangS(stated);
            PlanTrials trials = new PlanTrials(matrix, structures, workers, observer, waitS, options.runs());
            PlanTrials.Trial own = stated.passes().isEmpty() ? null : trials.of(matrix.scene());
            PlanLimits limits = given != null
                    ? given
                    : LimitsOfScene.of(stated, matrix, options, own == null ? PlanScore.NONE : own.score());
            PlanRefiner refiner = new PlanRefiner(matrix, limits, trials, options.runs(), observer);
            Patches patches = Patches.of(matrix.grid());
            Beginnings from = new Beginnings(matrix, limits);
            List<List<Stroke>> beginnings = new ArrayList<>(from.wholeLines(WHOLE_LINES));
            beginnings.add(from.strokes(ShortfallProgram.solve(matrix, patches, limits)));
            beginnings.add(from.allLines());
            beginnings.add(from.like(stated.passes()));
            PlanRefiner.@Nullable Refined refined = refiner.best(beginnings, from.singles(SINGLES), patches);
            double wait = refined == null ? waitS : wait(trials, limits, refined.best(), waitS);
            if (refined != null && wait != waitS) {
                refined = new PlanRefiner.Refined(trials.withWait(refined.best().strokes(), wait), refined.anchored());
            }
            return new Found(variant, matrix, limits, refined, refiner.rounds(), own, wait, trials.runs());
        }
    }

    /** The shortest wait between passes that gives as much as the best of some, s. */
    private static double wait(PlanTrials trials, PlanLimits limits, PlanTrials.Trial best, double statedS) {
        if (best.strokes().size() < 2) {
            return 0;
        }
        double chosen = statedS;
        double most = best.worth(limits);
        for (double other : WAITS_S) {
            PlanTrials.Trial t = trials.withWait(best.strokes(), other);
            boolean shorter = other < chosen && t.worth(limits) >= most;
            boolean longer = other > chosen && t.worth(limits) > most + WAIT_WORTH;
            if (shorter || longer) {
                chosen = other;
                most = Math.max(most, t.worth(limits));
            }
        }
        return chosen;
    }

    /** Waits between passes that are tried beside the scene's own, s. */
    private static final double[] WAITS_S = {0, 20, 60};

    /** A longer wait must bring this much, worth; a shorter one may lose nothing (ASSUMED: as little as counts). */
    private static final double WAIT_WORTH = PlanScore.SAME_REACHED;

    private PlanResult closed(Found base, Found best, HoleStudy.@Nullable Holes holes) {
        PlanTrials.@Nullable Trial own = base.own();
        PlanRefiner.@Nullable Refined refined = best.refined();
        boolean keepOwn = own != null
                && own.film() != null
                && base.limits()
                        .keeps(
                                0.999 * own.score().triggerS(),
                                0.999 * own.score().productM3())
                && own.score().worth(base.limits(), stated.passes().size()) > best.worth();
        PlanTrials.@Nullable Trial kept = keepOwn ? own : refined == null ? null : refined.best();
        List<Stroke> strokes =
                keepOwn || refined == null ? List.of() : refined.best().strokes();
        Scene variant = keepOwn ? stated : best.variant().scene();
        List<PassSpec> passes = keepOwn ? stated.passes() : PlanPasses.of(best.matrix(), strokes, best.waitS());
        Scene planned = variant.withPasses(passes);
        if (kept != null && kept.film() != null) {
            planned = PlanMasks.bagged(planned, kept.film().itemsHit());
        }
        Handed handed = handed(best, kept, strokes, planned);
        HandsResult hands = hands(best, handed);
        PlanScore predicted = keepOwn && own != null
                ? own.score()
                : strokes.isEmpty() ? PlanScore.NONE : best.matrix().score(handed.strokes());
        return new PlanResult(
                stated,
                handed.planned(),
                best.matrix(),
                handed.strokes(),
                best.limits(),
                predicted,
                best.rounds(),
                handed.checked(),
                own == null ? null : own.score(),
                keepOwn,
                options.dose().planning().words(),
                best.runs(),
                keepOwn ? List.of() : best.variant().panels(),
                holes,
                PlanMasks.more(handed.planned(), stated),
                BlindBay.of(best.matrix(), best.limits()),
                handed.verified(),
                handed.rounds(),
                hands);
    }

    /** The plan that is handed over, with what the matrix knows after its full run. */
    private record Handed(
            List<Stroke> strokes,
            Scene planned,
            PlanScore checked,
            @Nullable DoseMatrix matrix,
            @Nullable RunResult verified,
            List<PlanResult.Round> rounds) {}

    /** The plan as it stands, or what full runs made of it. */
    private Handed handed(Found best, PlanTrials.@Nullable Trial kept, List<Stroke> strokes, Scene planned) {
        PlanScore checked = kept == null ? PlanScore.NONE : kept.score();
        PlanRefiner.@Nullable Refined refined = strokes.isEmpty() ? null : best.refined();
        @Nullable DoseMatrix matrix = refined == null ? null : refined.anchored();
        if (!options.full() || planned.passes().isEmpty()) {
            return new Handed(strokes, planned, checked, matrix, null, List.of());
        }
        FullRounds full = new FullRounds(best.limits(), best.waitS(), structures, run, observer);
        if (matrix == null) {
            FullRounds.Ran ran = full.ran(planned);
            PlanResult.Round round = new PlanResult.Round(checked, FullRounds.found(ran.result()));
            return new Handed(strokes, ran.scene(), checked, null, ran.result(), List.of(round));
        }
        FullRounds.Verified v = full.of(planned, strokes, matrix, checked, options.fullRounds());
        PlanScore score = v.strokes().equals(strokes) ? checked : checked(best, v.strokes());
        return new Handed(
                v.strokes(), v.ran().scene(), score, v.matrix(), v.ran().result(), v.rounds());
    }

    /** What a planning run of other strokes finds. */
    private PlanScore checked(Found best, List<Stroke> strokes) {
        try (Workers workers = new Workers(run.threads())) {
            return new PlanTrials(best.matrix(), structures, workers, observer, best.waitS(), options.runs())
                    .of(List.of(strokes))
                    .get(0)
                    .score();
        }
    }

    private @Nullable HandsResult hands(Found best, Handed handed) {
        DoseMatrix matrix = handed.matrix();
        if (matrix == null) {
            return null;
        }
        HandsResult hands = Hands.study(matrix, handed.strokes());
        if (!options.full() || !options.handRuns()) {
            return hands;
        }
        List<HandsResult.Check> checks =
                new ArrayList<>(HandsCheck.of(matrix, handed.strokes(), best.waitS(), run, observer));
        checks.add(HandsCheck.inFull(matrix, handed.strokes(), best.waitS(), handed.planned(), run, observer));
        return hands.with(checks);
    }

    private static void refuseNothing(Scene scene) {
        boolean panels = !scene.studies().plan().panels().isEmpty();
        if (scene.wands().isEmpty() || (scene.entries().isEmpty() && !panels)) {
            throw new SceneException(
                    "PLN-002",
                    SourcePlace.of(scene.file()),
                    "a plan needs at least one wand in `wands` and one entry in `entries`; the scene has "
                            + scene.wands().size() + " and " + scene.entries().size());
        }
    }
}
