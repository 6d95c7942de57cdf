package baymist.inspect;

import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.card.WorkCard.Doubt;
import baymist.card.WorkCard.Point;
import baymist.coverage.RegionWords;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Inspection;
import baymist.scene.Inspection.Seen;
import baymist.scene.Scene;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Holds findings against a run, fits the setting, makes a touch-up. */
public final class InspectionStudy {
    private InspectionStudy() {}

    /**
     * What is asked for.
     *
     * @param refit whether the setting is fitted
     * @param touchUp whether passes are sought for what was found thin or dry
     * @param planning resolution of the runs of fit and touch-up
     */
    public record Options(boolean refit, boolean touchUp, Planning planning) {
        /** Everything, at planning resolution. */
        public static final Options ALL = new Options(true, true, Planning.DEFAULT);
    }

    /**
     * The study.
     *
     * @throws baymist.problem.SceneException FND-001 to FND-004 if a finding names nothing that is there, or a run can't be made
     */
    public static InspectionResult of(
            CardSource source, Inspection inspection, Options asked, RunOptions options, RunObserver observer) {
        PlaceSamples places = PlaceSamples.of(source, inspection);
        double[] film = places.films();
        int n = places.count();
        List<Seen> predicted = new ArrayList<>();
        double[][] forecast = new double[n][];
        int[] outcome = new int[n];
        List<String> where = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            predicted.add(FilmSpread.expected(film[i], source.scene().targets()));
            forecast[i] = FilmSpread.of(film[i], source.scene().targets());
            outcome[i] = inspection.places().get(i).seen().index();
            where.add(RegionWords.of(source.cavity(), source.grid(), places.surfels(i)));
        }
        List<Seen> seen =
                inspection.places().stream().map(Inspection.Place::seen).toList();
        observer.stage("fit");
        Refit.Result refit = asked.refit()
                ? new Refit(
                                source,
                                inspection,
                                places,
                                new PlanningRun(asked.planning(), StudyStore.none()),
                                options.threads())
                        .fit()
                : null;
        Scene fitted = (refit == null || !refit.speaks() ? Setting.STATED : refit.best()).of(source.scene());
        observer.stage("touch-up");
        TouchUp.Result touchUp = null;
        CardSource touched = null;
        List<Point> points = List.of();
        if (asked.touchUp() && seen.stream().anyMatch(s -> s != Seen.WET)) {
            try (Workers workers = new Workers(options.threads())) {
                touchUp = new TouchUp(source, fitted, inspection, places, workers).find();
            }
            Scene job = touchUp.scene();
            if (job != null) {
                RunResult run = Simulation.run(asked.planning().of(job, source.cavity()), options, observer);
                touched = CardSource.of(run);
                points = points(source, inspection, places, touched, where);
            }
        }
        return new InspectionResult(
                source,
                inspection,
                film,
                where,
                HitTable.of(predicted, seen),
                Brier.score(forecast, outcome),
                Brier.ofFrequencies(outcome, Seen.values().length),
                refit,
                touchUp,
                touched,
                points);
    }

    /** Places found thin or dry with what the touch-up adds there. */
    private static List<Point> points(
            CardSource source, Inspection inspection, PlaceSamples places, CardSource touched, List<String> where) {
        double[] added = PlaceSamples.films(touched.grid().surfels(), places.on(touched.grid()), touched.filmM());
        List<Point> points = new ArrayList<>();
        SurfelSet q = source.grid().surfels();
        for (int i = 0; i < places.count(); i++) {
            Inspection.Place p = inspection.places().get(i);
            if (p.seen() != Seen.WET) {
                int[] s = places.surfels(i);
                Vec3 at = p.atM() != null ? p.atM() : centre(q, s);
                points.add(new WorkCard.Point(
                        points.size() + 1,
                        p.seen() == Seen.DRY ? Doubt.FOUND_DRY : Doubt.FOUND_THIN,
                        where.get(i),
                        at,
                        Arrays.stream(s).mapToDouble(x -> q.areaM2()[x]).sum(),
                        added[i] + (p.measured() ? p.filmM() : 0),
                        p.region() == null ? "" : p.region(),
                        ""));
            }
        }
        return points;
    }

    private static Vec3 centre(SurfelSet q, int[] surfels) {
        Vec3 sum = Vec3.ZERO;
        double area = 0;
        for (int s : surfels) {
            sum = sum.plus(q.areaM2()[s], PlaceSamples.centre(q, s));
            area += q.areaM2()[s];
        }
        return sum.times(1 / area);
    }
}
