package baymist.inspect;

import baymist.card.CardSource;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.DropletSpec;
import baymist.scene.Inspection;
import baymist.scene.Scene;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyResult;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.ArrayList;
import java.util.List;

/** Fits liquid rate and droplet size to findings. */
public final class Refit {
    /** The liquid rate is sought within this factor either way (ASSUMED: a knob turned, a filter half blocked). */
    public static final double LIQUID_FACTOR = 2;

    /** Settings of the droplet size that are run before anything is fitted. */
    private static final int NODES = 5;

    /** Runs at the setting found, each correcting the fit by what it shows. */
    private static final int ROUNDS = 3;

    private final CardSource source;
    private final Inspection inspection;
    private final PlaceSamples places;
    private final PlanningRun runs;
    private final int atOnce;
    private final List<int[]> elements;
    private final VoxelGrid grid;

    Refit(CardSource source, Inspection inspection, PlaceSamples places, PlanningRun runs, int atOnce) {
        this.source = source;
        this.inspection = inspection;
        this.places = places;
        this.runs = runs;
        this.atOnce = atOnce;
        Scene planned = runs.planning().of(source.scene(), CavityBuilder.build(source.scene()));
        try (Workers workers = new Workers(atOnce)) {
            grid = runs.planning().equals(Planning.OWN)
                    ? source.grid()
                    : Voxelizer.voxelize(source.cavity(), planned.voxel(), workers);
        }
        elements = places.on(grid);
    }

    /**
     * A setting with what is known of it.
     *
     * @param best the most likely setting
     * @param liquidLow,liquidHigh range of the liquid factor that findings leave open (likelihood ratio, 68 %)
     * @param sizeLow,sizeHigh the same of the size factor
     * @param sizeRange factor either way within which the size was sought; 1 = not varied
     * @param misfitBefore,misfitAfter minus the logarithm of the findings' likelihood, at the stated setting and at the best
     * @param runs planning runs made
     * @param filmM film of each place at the best setting, m, [places]
     */
    public record Result(
            Setting best,
            double liquidLow,
            double liquidHigh,
            double sizeLow,
            double sizeHigh,
            double sizeRange,
            double misfitBefore,
            double misfitAfter,
            int runs,
            double[] filmM) {
        /**
         * Whether the findings speak for this setting rather than for the stated one: within the ranges, and likelier by what chance gives in one
         * case of twenty (two factors: half of 5.99, Wilks 1938).
         */
        public boolean speaks() {
            return !atEnd() && misfitBefore() - misfitAfter() >= 3.0;
        }

        /** Whether an end of a range is the end of what was sought: the truth may lie beyond. */
        public boolean atEnd() {
            double edge = 1.02;
            return best.liquid() > LIQUID_FACTOR / edge
                    || best.liquid() < edge / LIQUID_FACTOR
                    || (sizeRange > 1 && (best.size() > sizeRange / edge || best.size() < edge / sizeRange));
        }
    }

    /**
     * The fit.
     *
     * @throws SceneException FND-004 if the planning runs can't be made
     */
    Result fit() {
        DropletSpec stated = source.scene().supply().droplets();
        double range = stated instanceof DropletSpec.Tracer ? 1 : stated.dv50Factor();
        int n = range > 1 ? NODES : 1;
        List<Setting> settings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            settings.add(new Setting(1, n == 1 ? 1 : Math.pow(range, 2.0 * i / (n - 1) - 1)));
        }
        settings.add(new Setting(1 / LIQUID_FACTOR, 1));
        settings.add(new Setting(LIQUID_FACTOR, 1));
        List<double[]> films = run(settings);
        FilmModel model = new FilmModel(
                new FilmModel.Runs(range, films.subList(0, n), LIQUID_FACTOR, films.get(n), films.get(n + 1)),
                places.films());
        Likelihood likelihood = new Likelihood(inspection, source.scene().targets());
        double before = likelihood.misfit(model.at(Setting.STATED));
        LikelihoodSearch search = new LikelihoodSearch(LIQUID_FACTOR, range);
        Setting best = search.best(s -> likelihood.misfit(model.at(s)));
        for (int round = 0; round < ROUNDS; round++) {
            model.correct(best, run(List.of(best)).get(0));
            best = search.best(s -> likelihood.misfit(model.at(s)));
        }
        double after = likelihood.misfit(model.at(best));
        double[] open = search.ranges(s -> likelihood.misfit(model.at(s)), after + 0.5);
        return new Result(
                best, open[0], open[1], open[2], open[3], range, before, after, n + 2 + ROUNDS, model.at(best));
    }

    private List<double[]> run(List<Setting> settings) {
        List<StudyResult> results =
                runs.runAll(settings.stream().map(s -> s.of(source.scene())).toList(), atOnce, PlanningRun.Watch.NONE);
        List<double[]> films = new ArrayList<>();
        for (StudyResult r : results) {
            String refused = r.refused();
            if (refused != null) {
                throw new SceneException(
                        "FND-004", SourcePlace.of(source.scene().file()), "a run of the fit can't be made: " + refused);
            }
            films.add(PlaceSamples.films(grid.surfels(), elements, r.filmM()));
        }
        return films;
    }
}
