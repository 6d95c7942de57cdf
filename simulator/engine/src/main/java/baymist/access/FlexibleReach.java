package baymist.access;

import baymist.access.RouteTree.Node;
import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.Flexibility;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where a flexible wand gets to through an entry: curvature-bounded paths in the free space between the sheets ({@link BendSearch}), within its
 * length, total bend and push. What it reports free is free; what it doesn't find may exist between its cells. The budget counts pieces of
 * centreline tried.
 */
public final class FlexibleReach implements ReachSearch {
    /** Force that the nose needs to slide along sheets, N (ASSUMED: a few grams of tip that touches a skin). */
    static final double TIP_DRAG_N = 1;

    /** Density of the oil that fills the bore, kg/m³ (ASSUMED: mineral oils lie between 820 and 920). */
    static final double OIL_KG_PER_M3 = 900;

    /** Play in an opening beyond which more makes feeding no easier, m (ASSUMED: a finger's breadth). */
    private static final double ENOUGH_PLAY_M = 0.010;

    /** Most ways through different openings that are told. */
    private static final int MOST_ROUTES = 8;

    /** Ways whose ends are nearer together than this lead to one place, cells. */
    private static final double NEAR_CELLS = 2.5;

    @Override
    public WandReach search(ReachProblem p) {
        FlexRoutes found = routes(p);
        if (found.routes().isEmpty()) {
            WandReach none = WandReach.none(p, found.refusal());
            return found.exhausted() ? none : none.incomplete();
        }
        FlexRoute deepest = found.routes().get(0);
        for (FlexRoute r : found.routes()) {
            deepest = r.depthM() > deepest.depthM() ? r : deepest;
        }
        return new WandReach(
                p.entry().name(),
                p.wand().name(),
                true,
                0,
                deepest.depthM(),
                deepest.stop(),
                found.tips(),
                found.resolutionM(),
                found.exhausted(),
                found.routes().stream()
                        .sorted(Comparator.comparingDouble((FlexRoute r) -> -r.depthM()))
                        .map(r -> new WandWay(r.through(), r.depthM(), r.bendRad(), r.pushN()))
                        .toList());
    }

    /**
     * All ways that were found.
     *
     * @throws baymist.problem.SceneException if the entry names no opening or does not lead in
     */
    public FlexRoutes routes(ReachProblem p) {
        return routes(p, null);
    }

    /** As above, the way whose tip comes nearest to a region first; null = the one that goes deepest. */
    public FlexRoutes routes(ReachProblem p, @Nullable Box3 region) {
        Flexibility flex = p.wand().flexibility();
        if (flex == null) {
            throw new IllegalArgumentException("'" + p.wand().name() + "' is not flexible");
        }
        p.axis();
        FlexStart start = new FlexStart(p);
        BendLimits limits = limits(p.wand(), flex);
        String shut = p.shut();
        HoleFit fit = start.fit();
        if (shut == null && fit.clearanceM() < 0) {
            shut = String.format(
                    Locale.ROOT,
                    "'%s' is too small: a wand of %.3f mm lacks %.3f mm across",
                    p.opening().name(),
                    2e3 * limits.radiusM(),
                    -2e3 * fit.clearanceM());
        }
        List<PathPiece> starts = shut == null ? start.pieces() : List.of();
        if (shut == null && starts.isEmpty()) {
            shut = "there is no room behind '" + p.opening().name() + "'";
        }
        Box3 box = p.cavity().cutSheets().bounds();
        Vec3 size = box.max().minus(box.min());
        SearchGrain grain = SearchGrain.of(limits.minBendM(), size.x() * size.y() * size.z());
        if (shut != null) {
            String part = p.cavity().parts().get(p.opening().part()).name();
            WandStop refusal = new WandStop(part, p.opening().place().centreM(), fit.clearanceM(), shut);
            return new FlexRoutes(List.of(), List.of(), refusal, fit.clearanceM(), 0, 0, 0, 0, true, grain.cellM());
        }
        return explore(p, limits, grain, starts, fit.clearanceM(), region);
    }

    private static FlexRoutes explore(
            ReachProblem p,
            BendLimits limits,
            SearchGrain grain,
            List<PathPiece> starts,
            double playM,
            @Nullable Box3 region) {
        Bvh bvh = p.surroundings().bvh();
        FreeSpace space = new FreeSpace(bvh, p.surroundings()::name, Math.max(0.004, 0.4 * grain.stepM()));
        Gates gates = new Gates(p.cavity().openings());
        BendSearch search = new BendSearch(space, limits, grain, gates);
        List<Node> nodes = search.explore(starts, p.settings().budget());
        FlexEnd ending = new FlexEnd(space, limits, grain, gates);
        List<FlexRoute> routes = new ArrayList<>();
        boolean whole = limits.lengthM() >= p.wand().lengthM();
        for (Node end : ends(nodes, grain, region)) {
            routes.add(route(space, limits, grain, gates, ending, end, whole));
        }
        easiestFirst(p.cavity(), routes, NEAR_CELLS * grain.cellM(), limits.radiusM());
        List<WandPose> tips = tips(nodes, limits.radiusM(), routes, p.settings().tips());
        return new FlexRoutes(
                routes,
                tips,
                routes.get(0).stop(),
                playM,
                search.expanded(),
                search.tried(),
                space.exactQueries(),
                space.lookUps(),
                search.tried() < p.settings().budget(),
                grain.cellM());
    }

    /** Puts the way through the roomiest openings before the others to the same place; among equals the one that takes least push. */
    private static void easiestFirst(Cavity cavity, List<FlexRoute> routes, double nearM, double radiusM) {
        Vec3 place = routes.get(0).path().tipM(routes.get(0).depthM());
        FlexRoute easiest = routes.stream()
                .filter(r -> r.path().tipM(r.depthM()).distance(place) < nearM)
                .min(Comparator.comparingDouble((FlexRoute r) -> -playM(cavity, r, radiusM))
                        .thenComparingDouble(FlexRoute::pushN))
                .orElse(routes.get(0));
        routes.remove(easiest);
        routes.add(0, easiest);
    }

    /** Play in the tightest opening between bays, m; what is more than {@link #ENOUGH_PLAY_M} counts as that. */
    private static double playM(Cavity cavity, FlexRoute route, double radiusM) {
        double least = ENOUGH_PLAY_M;
        for (String name : route.through()) {
            Outline outline =
                    cavity.openings().get(cavity.openingIndex(name)).place().outline();
            least = Math.min(least, outline.clearanceM(0, 0) - radiusM);
        }
        return least;
    }

    /**
     * The place that takes most wand to get to by the shortest way; then the other ways through openings, those that come near the same place
     * first, by their cost.
     */
    private static List<Node> ends(List<Node> nodes, SearchGrain grain, @Nullable Box3 region) {
        Node deepest = nodes.get(0);
        for (Node n : nodes) {
            boolean better = region == null
                    ? n.visits() == 0 && n.lengthM() > deepest.lengthM()
                    : distanceM(region, n.end().atM())
                            < distanceM(region, deepest.end().atM());
            deepest = better ? n : deepest;
        }
        Map<List<Integer>, Node> there = new HashMap<>();
        Map<List<Integer>, Node> elsewhere = new HashMap<>();
        for (Node n : nodes) {
            if (n.way().equals(deepest.way())) {
                continue;
            }
            if (n.end().atM().distance(deepest.end().atM()) < NEAR_CELLS * grain.cellM()) {
                there.merge(n.way(), n, (a, b) -> b.lengthM() < a.lengthM() ? b : a);
            }
            if (n.visits() == 0) {
                elsewhere.merge(n.way(), n, (a, b) -> b.lengthM() > a.lengthM() ? b : a);
            }
        }
        List<Node> ends = new ArrayList<>(List.of(deepest));
        there.values().stream()
                .sorted(Comparator.comparingDouble(Node::lengthM).thenComparingInt(Node::number))
                .limit(MOST_ROUTES / 2)
                .forEach(ends::add);
        elsewhere.values().stream()
                .filter(n -> !there.containsKey(n.way()))
                .sorted(Comparator.comparingDouble((Node n) -> -n.lengthM()).thenComparingInt(Node::number))
                .limit(MOST_ROUTES - ends.size())
                .forEach(ends::add);
        return ends;
    }

    private static FlexRoute route(
            FreeSpace space,
            BendLimits limits,
            SearchGrain grain,
            Gates gates,
            FlexEnd ending,
            Node end,
            boolean whole) {
        List<PathPiece> found = end.path();
        // the stretch within the entry's own sheet has been judged by the hole; it stays as it is
        PathPiece lead = found.get(0);
        List<PathPiece> rest = found.subList(1, found.size());
        List<PathPiece> path = new ArrayList<>(List.of(lead));
        if (!rest.isEmpty()) {
            RouteSmoother smoother = new RouteSmoother(
                    limits.minBendM(),
                    grain.bendCostM(),
                    false,
                    candidate -> allowed(space, limits, gates, ending, lead, candidate, end.way()));
            path.addAll(smoother.smooth(rest));
        }
        path = ending.pushedOn(path, end.way());
        List<PathPiece> beyond = path.size() > 1 ? path.subList(1, path.size()) : path;
        FreeSpace.Block least = space.leastClearance(beyond, limits.radiusM(), 1e-4);
        return new FlexRoute(
                new CurvedPath(path, limits.radiusM()),
                BendConnector.lengthM(path),
                FlexEnd.bendRad(path),
                ending.pushN(path),
                gates.names(end.way()),
                least.clearanceM(),
                least.part(),
                ending.stop(path, whole));
    }

    private static boolean allowed(
            FreeSpace space,
            BendLimits limits,
            Gates gates,
            FlexEnd ending,
            PathPiece lead,
            List<PathPiece> rest,
            List<Integer> way) {
        List<PathPiece> all = new ArrayList<>(List.of(lead));
        all.addAll(rest);
        if (BendConnector.lengthM(all) > limits.lengthM()
                || FlexEnd.bendRad(all) > limits.maxBendRad()
                || ending.pushN(all) > limits.pushLimitN()) {
            return false;
        }
        List<Integer> now = List.of();
        for (PathPiece p : rest) {
            if (now == null || !space.free(p, limits.radiusM())) {
                return false;
            }
            now = gates.after(now, p);
        }
        return way.equals(now);
    }

    /** Bodies to one place in each cell that was reached, thinned evenly to the number wanted; the routes' ends first. */
    private static List<WandPose> tips(List<Node> nodes, double radiusM, List<FlexRoute> routes, int most) {
        List<WandPose> tips = new ArrayList<>();
        for (FlexRoute r : routes) {
            tips.add(r.path().body(r.depthM()));
        }
        List<Node> first =
                new ArrayList<>(nodes.stream().filter(n -> n.visits() == 0).toList());
        double deepest = routes.stream().mapToDouble(FlexRoute::depthM).max().orElse(0);
        first.removeIf(n -> n.lengthM() > deepest);
        int wanted = Math.max(0, most - tips.size());
        double stride = Math.max(1, (double) first.size() / Math.max(1, wanted));
        for (double i = 0; i < first.size() && tips.size() < most; i += stride) {
            Node n = first.get((int) i);
            CurvedPath path = new CurvedPath(n.path(), radiusM);
            tips.add(path.body(path.maxDepthM()));
        }
        tips.sort(Comparator.comparingDouble((WandPose t) -> -t.depthM()));
        return tips;
    }

    private static double distanceM(Box3 box, Vec3 p) {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++) {
            double c = p.get(axis);
            double d =
                    Math.max(0, Math.max(box.min().get(axis) - c, c - box.max().get(axis)));
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    static BendLimits limits(WandSpec wand, Flexibility flex) {
        double bore = Math.PI / 4 * wand.boreM() * wand.boreM();
        double metal = Math.PI / 4 * wand.outerM() * wand.outerM() - bore;
        double weight = Air.GRAVITY * (metal * wand.material().densityKgPerM3() + bore * OIL_KG_PER_M3);
        double length = wand.lengthM();
        for (WandSpec.Coupling c : wand.couplings()) {
            if (c.outerM() > wand.thickestM()) {
                length = Math.min(length, Math.max(0, c.fromTipM() - 0.5 * c.lengthM()));
            }
        }
        return new BendLimits(
                0.5 * wand.thickestM(),
                length,
                flex.minBendRadiusM(),
                flex.maxTotalBendRad(),
                flex.pushLimitN(),
                flex.friction(),
                weight,
                TIP_DRAG_N);
    }
}
