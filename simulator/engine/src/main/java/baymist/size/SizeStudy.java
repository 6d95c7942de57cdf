package baymist.size;

import baymist.access.Surroundings;
import baymist.cavity.CavityBuilder;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.study.StudyResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Sweeps wands over a scene's job and finds the shortest and the thinnest that meet a goal. Read {@link #run} from top to bottom. */
public final class SizeStudy {
    /** Longer lengths that are tried where the chosen one misses the goal in full. */
    private static final int TRIES = 3;

    private final Scene scene;
    private final SizeRequest request;
    private final Runs runs;
    private final Ways ways;
    private final List<Sweep> sweeps = new ArrayList<>();
    private int jobs;

    /** Where jobs are run. Results come in the order of the jobs, whatever the number of threads. */
    public interface Runs {
        /** Jobs at planning resolution. */
        List<StudyResult> plan(List<Scene> jobs);

        /** One job at its own resolution; null = not asked for. */
        @Nullable
        StudyResult full(Scene job);

        /** The resolution of {@link #plan} in words. */
        String planning();

        /** The next round begins. */
        default void round(String what, int jobs) {}
    }

    private SizeStudy(Scene scene, SizeRequest request, Runs runs) {
        this.scene = scene;
        this.request = request;
        this.runs = runs;
        this.ways = new Ways(scene, Surroundings.of(CavityBuilder.build(scene), scene), request);
    }

    /**
     * Sizes a wand.
     *
     * @throws SceneException SIZ-001 if the scene has no passes
     */
    public static SizeResult run(Scene scene, SizeRequest request, Runs runs) {
        if (scene.passes().isEmpty()) {
            throw new SceneException(
                    "SIZ-001",
                    SourcePlace.of(scene.file()),
                    "the scene has no `passes`, so there is no job to size a wand for; state at least one");
        }
        SizeStudy study = new SizeStudy(scene, request, runs);
        study.sweep(request.designs(false));
        if (!request.hooks().isEmpty() && (request.hooksFirst() || study.shortest() == null)) {
            study.sweep(request.designs(true));
        }
        return study.close();
    }

    /** Rounds of runs over all designs at once, until none wants another. */
    private void sweep(List<Design> designs) {
        List<Sweep> now = designs.stream().map(d -> Sweep.begin(ways, d)).toList();
        sweeps.addAll(now);
        for (int round = 1; true; round++) {
            List<Sweep> owners = new ArrayList<>();
            List<Integer> marks = new ArrayList<>();
            for (Sweep s : now) {
                for (int k : s.wanted()) {
                    owners.add(s);
                    marks.add(k);
                }
            }
            if (owners.isEmpty()) {
                return;
            }
            runs.round(round == 1 ? "each wand as deep as it goes" : "lengths, round " + round, owners.size());
            List<Scene> scenes = new ArrayList<>();
            for (int i = 0; i < owners.size(); i++) {
                scenes.add(owners.get(i).job(marks.get(i)));
            }
            List<StudyResult> results = runs.plan(scenes);
            for (int i = 0; i < results.size(); i++) {
                owners.get(i).learn(marks.get(i), results.get(i));
            }
            jobs += results.size();
        }
    }

    private SizeResult close() {
        List<DesignResult> designs = sweeps.stream().map(Sweep::result).toList();
        Candidate shortest = shortest();
        Candidate thinnest = first(designs, THINNEST);
        List<SizeResult.Verified> verified = new ArrayList<>();
        if (shortest != null) {
            Sweep own = sweeps.get(designs.indexOf(owner(designs, shortest)));
            for (int k = shortest.marks(); k <= own.most() && verified.size() < TRIES; k++) {
                double length = request.lengthM(k);
                StudyResult full = runs.full(own.job(k));
                if (full == null) {
                    break;
                }
                boolean meets = LengthSearch.score(full, request) >= 1;
                verified.add(new SizeResult.Verified(shortest.design(), length, full, meets));
                if (meets) {
                    shortest = own.candidate(k);
                    break;
                }
            }
        }
        return new SizeResult(scene, request, runs.planning(), designs, shortest, thinnest, verified, jobs);
    }

    private static DesignResult owner(List<DesignResult> designs, Candidate c) {
        return designs.stream().filter(d -> c.equals(d.shortest())).findFirst().orElseThrow();
    }

    private static final Comparator<Candidate> THINNEST = Comparator.comparingDouble(
                    (Candidate c) -> c.design().thickestM())
            .thenComparingDouble(c -> c.design().tube().outerM())
            .thenComparingInt(Candidate::marks)
            .thenComparing(c -> -c.at().reached());

    private static final Comparator<Candidate> SHORTEST =
            Comparator.comparingInt(Candidate::marks).thenComparing(THINNEST);

    private @Nullable Candidate shortest() {
        return first(sweeps.stream().map(Sweep::result).toList(), SHORTEST);
    }

    private static @Nullable Candidate first(List<DesignResult> designs, Comparator<Candidate> order) {
        Candidate best = null;
        for (DesignResult d : designs) {
            Candidate c = d.shortest();
            if (c != null && (best == null || order.compare(c, best) < 0)) {
                best = c;
            }
        }
        return best;
    }
}
