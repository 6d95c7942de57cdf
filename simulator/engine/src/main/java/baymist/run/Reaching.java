package baymist.run;

import baymist.access.AccessFinder;
import baymist.access.Insertion;
import baymist.access.OpenInPass;
import baymist.access.ReachProblem;
import baymist.access.ReachSearches;
import baymist.access.ReachSettings;
import baymist.access.ReachShare;
import baymist.access.Sag;
import baymist.access.SagResult;
import baymist.access.Surroundings;
import baymist.access.TubeSection;
import baymist.access.WandPath;
import baymist.access.WandPose;
import baymist.access.WandReach;
import baymist.access.WandStop;
import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Every entry with every wand: search, sag, share of the cavity. */
final class Reaching {
    /** Distance of tip places along a wand's way, share of the distance that counts as reached. */
    private static final double PLACES = 0.2;

    /** Half of the usual lines of straight wands: a study tries many wands. What that leaves open is told as the resolution. */
    private static final ReachSettings MANY_LINES = new ReachSettings(
            ReachSettings.DEFAULT.resolutionM(), ReachSettings.DEFAULT.budget() / 2, ReachSettings.DEFAULT.tips());

    /** A straight way in the entry's direction that is this deep against the deepest is what a hand would take. */
    private static final double NEARLY = 0.98;

    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final ReachOptions options;

    /** One question before its answer. */
    private record Task(EntrySpec entry, WandSpec wand, int opening, boolean opened, Surroundings around) {}

    Reaching(Scene scene, Cavity cavity, VoxelGrid grid, ReachOptions options) {
        this.scene = scene;
        this.cavity = cavity;
        this.grid = grid;
        this.options = options;
    }

    ReachResult run(Workers workers, RunObserver observer) {
        Surroundings asStated = Surroundings.of(cavity, scene);
        List<Task> tasks = tasks(asStated);
        observer.stage("reach of " + tasks.size() + " insertions");
        ReachLine[] lines = new ReachLine[tasks.size()];
        AtomicInteger done = new AtomicInteger();
        // hooks and flexible wands take longest: begun first, no thread waits for the last of them
        List<Integer> order = IntStream.range(0, tasks.size())
                .boxed()
                .sorted(Comparator.comparing(i -> tasks.get(i).wand().kind() == WandSpec.Kind.STRAIGHT))
                .toList();
        workers.forEach(tasks.size(), k -> {
            RunCancelledException.throwIf(observer.cancelled());
            int i = order.get(k);
            lines[i] = line(tasks.get(i));
            synchronized (done) {
                observer.progress((double) done.incrementAndGet() / tasks.size(), Double.NaN);
            }
        });
        List<ReachLine> all = List.of(lines);
        List<Vec3> places = all.stream().flatMap(l -> l.places().stream()).toList();
        ReachShare together = ReachShare.of(grid, asStated, places, options.withinM());
        return new ReachResult(
                scene, cavity, grid, asStated, options.withinM(), all, together, ReachFindings.of(scene, all));
    }

    private List<Task> tasks(Surroundings asStated) {
        List<WandSpec> wands = new ArrayList<>(scene.wands().values());
        wands.sort(Comparator.comparing(WandSpec::name));
        for (WandSpec w : options.wands()) {
            if (wands.stream().noneMatch(known -> known.name().equals(w.name()))) {
                wands.add(w);
            }
        }
        refuseNothing(wands);
        List<Task> tasks = new ArrayList<>();
        for (EntrySpec entry : scene.entries()) {
            int opening = new ReachProblem(asStated, entry, wands.get(0), ReachSettings.DEFAULT).openingIndex();
            Surroundings around = inside(opening, asStated.open(opening));
            wands.forEach(w -> tasks.add(new Task(entry, w, opening, false, around)));
        }
        if (options.allOpenings()) {
            for (int o = 0; o < cavity.openings().size(); o++) {
                Opening opening = cavity.openings().get(o);
                boolean used =
                        scene.entries().stream().anyMatch(e -> e.opening().equals(opening.name()));
                if (opening.exterior() && !used) {
                    boolean opened = !asStated.open(o);
                    Surroundings around = inside(o, true);
                    EntrySpec entry = new EntrySpec(opening.name(), opening.name(), null, SourcePlace.of(scene.file()));
                    int index = o;
                    wands.forEach(w -> tasks.add(new Task(entry, w, index, opened, around)));
                }
            }
        }
        return tasks;
    }

    private void refuseNothing(List<WandSpec> wands) {
        List<Finding> errors = new ArrayList<>();
        SourcePlace place = SourcePlace.of(scene.file());
        if (scene.entries().isEmpty() && !options.allOpenings()) {
            errors.add(new Finding(
                    "ACC-030",
                    Severity.ERROR,
                    place,
                    "the scene states no `entries`, so there is no way in to look at; add one, or ask for all openings"
                            + " (--all-openings)"));
        }
        if (wands.isEmpty()) {
            errors.add(new Finding(
                    "ACC-031",
                    Severity.ERROR,
                    place,
                    "the scene has no `wands`, so there is nothing to put in; add one, or name wand files (--wand,"
                            + " --all-wands)"));
        }
        if (!errors.isEmpty()) {
            throw new SceneException(errors);
        }
    }

    /** What keeps a wand inside: all that leads out is shut but the opening that it comes in by. */
    private Surroundings inside(int entry, boolean open) {
        boolean[] states = OpenInPass.of(cavity, scene);
        for (int o = 0; o < states.length; o++) {
            states[o] = states[o] && !cavity.openings().get(o).exterior();
        }
        states[entry] = open;
        return Surroundings.of(cavity, scene, states);
    }

    /** A wand that would leave again by an opening that is really open is told so. */
    private WandReach wayOut(Task t, WandReach reach) {
        WandStop stop = reach.stop();
        boolean[] open = OpenInPass.of(cavity, scene);
        for (int o = 0; o < open.length && stop != null; o++) {
            String name = cavity.openings().get(o).name();
            if (o != t.opening && open[o] && stop.partName().equals("closed opening '" + name + "'")) {
                String why = "it would leave the cavity again by '" + name + "'";
                WandStop out = new WandStop("way out by '" + name + "'", stop.placeM(), stop.clearanceM(), why);
                return reach.endedBy(out);
            }
        }
        return reach;
    }

    private ReachLine line(Task t) {
        boolean straight = t.wand.kind() == WandSpec.Kind.STRAIGHT;
        ReachProblem problem =
                new ReachProblem(t.around, t.entry, t.wand, straight ? MANY_LINES : ReachSettings.DEFAULT);
        WandReach reach = wayOut(t, ReachSearches.of(t.wand).search(problem));
        List<Vec3> places = places(t.wand, reach);
        return new ReachLine(
                t.entry,
                t.wand,
                t.opening,
                t.opened,
                reach,
                sag(problem, reach),
                places,
                ReachShare.of(grid, t.around, places, options.withinM()),
                bays(places));
    }

    /** Sag along the entry's own direction where that goes nearly as deep as any line, else along the deepest. */
    private @Nullable SagResult sag(ReachProblem problem, WandReach reach) {
        if (!reach.feasible() || reach.tips().isEmpty() || problem.wand().kind() != WandSpec.Kind.STRAIGHT) {
            return null;
        }
        WandPose deepest = reach.tips().get(0);
        Insertion plain = AccessFinder.find(problem);
        WandPath.Straight line = plain.feasible() && plain.maxDepthM() >= NEARLY * deepest.depthM()
                ? new WandPath.Straight(plain.originM(), plain.axis(), deepest.radiusM(), plain.maxDepthM())
                : new WandPath.Straight(
                        deepest.centrelineM().get(0), deepest.tipAxis(), deepest.radiusM(), deepest.depthM());
        TubeSection tube = TubeSection.of(problem.wand(), scene.product().densityKgPerM3());
        Sag sag = new Sag(
                problem.surroundings(), problem.openingIndex(), line, tube, scene.gravity(), scene.gravityMPerS2());
        return sag.at(line.maxDepthM());
    }

    /**
     * Where the tip can be: at the ends of the ways; a straight wand's tip has been at every place of its line, a flexible one's follows
     * its body. The tip of a hook has not been where its body lies.
     */
    private List<Vec3> places(WandSpec wand, WandReach reach) {
        List<Vec3> places = new ArrayList<>();
        double step = PLACES * options.withinM();
        for (WandPose pose : reach.tips()) {
            places.add(pose.tipM());
            if (wand.kind() == WandSpec.Kind.BENT) {
                continue;
            }
            List<Vec3> line = pose.centrelineM();
            for (int i = line.size() - 1; i > 0; i--) {
                Vec3 from = line.get(i);
                Vec3 way = line.get(i - 1).minus(from);
                int n = (int) Math.max(1, Math.ceil(way.length() / step));
                for (int k = 1; k <= n; k++) {
                    // the plane of the entry itself is no place inside
                    if (i > 1 || k < n) {
                        places.add(from.plus((double) k / n, way));
                    }
                }
            }
        }
        return places;
    }

    private List<String> bays(List<Vec3> places) {
        TreeSet<Integer> seen = new TreeSet<>();
        for (Vec3 p : places) {
            int cell = grid.cellHolding(p);
            if (cell >= 0) {
                seen.add(grid.bayOfCell(cell));
            }
        }
        return seen.stream().map(b -> grid.bays().get(b).name()).toList();
    }
}
