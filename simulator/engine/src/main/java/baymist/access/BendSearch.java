package baymist.access;

import baymist.access.RouteTree.Node;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * Search for paths of bounded curvature in free space.
 *
 * <p>From each place that is reached a straight and arcs of a few curvatures in several planes go on by one step, each certified against the
 * sheets ({@link FreeSpace}). Ways are closed by bins of place and direction ({@link RouteTree}; the scheme of hybrid-state A*: Dolgov, Thrun,
 * Montemerlo & Diebel 2010, Path planning for autonomous vehicles in unknown semi-structured environments, IJRR 29(5)). Ways into cells that
 * nobody has been to go first, then ways through other openings, then the rest, the cheaper first in each: a search that is stopped early has looked everywhere a little rather than somewhere
 * thoroughly. From new cells a join straight into nearby openings is tried as well. The budget counts pieces that were tried, never time.
 */
final class BendSearch {
    /** Openings that a join is tried into from a new cell. */
    private static final int JOINS = 3;

    /** Steps beyond which no join into an opening is tried. */
    private static final double JOIN_STEPS = 12;

    private final FreeSpace space;
    private final BendLimits limits;
    private final SearchGrain grain;
    private final Gates gates;
    private final RouteTree tree;
    private final double[] curvatures;
    private int tried;
    private int expanded;

    BendSearch(FreeSpace space, BendLimits limits, SearchGrain grain, Gates gates) {
        this.space = space;
        this.limits = limits;
        this.grain = grain;
        this.gates = gates;
        this.tree = new RouteTree(grain);
        this.curvatures = grain.curvatures();
    }

    /** Pieces tried so far. */
    int tried() {
        return tried;
    }

    /** Places gone on from so far. */
    int expanded() {
        return expanded;
    }

    /**
     * Goes everywhere within the budget.
     *
     * @param starts first pieces through the entry, known to be free
     * @return every way taken in, in order of arrival
     */
    List<Node> explore(List<PathPiece> starts, int budget) {
        PriorityQueue<Node> queue = new PriorityQueue<>(Comparator.comparingInt(Node::rank)
                .thenComparingDouble(n -> n.lengthM() + grain.bendCostM() * n.bendRad())
                .thenComparingInt(Node::number));
        for (PathPiece start : starts) {
            add(queue, null, List.of(start), start.start().along().anyPerpendicular());
        }
        while (!queue.isEmpty() && tried < budget) {
            Node from = queue.remove();
            expanded++;
            fan(from, queue);
            if (from.rank() <= 1) {
                intoOpenings(from, queue);
            }
        }
        return tree.nodes();
    }

    /**
     * Shortest path found from one heading to another, m, by length alone.
     *
     * @param across square to the start's direction: the planes of arcs count from it
     * @return its pieces, or null if none was found within the budget
     */
    @Nullable
    List<PathPiece> shortest(Heading start, Vec3 across, Heading goal, int budget) {
        PriorityQueue<Node> queue = new PriorityQueue<>(Comparator.<Node>comparingDouble(
                        n -> n.lengthM() + n.end().atM().distance(goal.atM()))
                .thenComparingInt(Node::number));
        add(queue, null, List.of(PathPiece.straight(start, 0)), across);
        List<PathPiece> best = null;
        double bestM = Double.POSITIVE_INFINITY;
        while (!queue.isEmpty() && tried < budget) {
            Node from = queue.remove();
            if (from.lengthM() + from.end().atM().distance(goal.atM()) >= bestM) {
                break;
            }
            expanded++;
            List<PathPiece> rest = BendConnector.join(from.end(), goal, limits.minBendM());
            if (rest != null && from.lengthM() + BendConnector.lengthM(rest) < bestM && freeAll(rest)) {
                bestM = from.lengthM() + BendConnector.lengthM(rest);
                best = new ArrayList<>(from.path());
                best.addAll(rest);
            }
            fan(from, queue);
        }
        return best == null ? null : new RouteSmoother(limits.minBendM(), 0, true, this::freeAll).smooth(best);
    }

    private boolean freeAll(List<PathPiece> pieces) {
        for (PathPiece p : pieces) {
            tried++;
            if (!space.free(p, limits.radiusM())) {
                return false;
            }
        }
        return true;
    }

    /** A straight and arcs all round. */
    private void fan(Node from, PriorityQueue<Node> queue) {
        Vec3 other = from.end().along().cross(from.across());
        attempt(from, new PathPiece(from.end(), from.across(), 0, grain.stepM()), queue);
        for (double share : curvatures) {
            for (int k = 0; k < grain.azimuths(); k++) {
                double angle = 2 * Math.PI * k / grain.azimuths();
                Vec3 towards = from.across().times(Math.cos(angle)).plus(Math.sin(angle), other);
                attempt(
                        from,
                        new PathPiece(from.end(), towards.unit(), share / limits.minBendM(), grain.stepM()),
                        queue);
            }
        }
    }

    private void attempt(Node from, PathPiece piece, PriorityQueue<Node> queue) {
        PathPiece fitted = within(from, piece);
        if (fitted.lengthM() < 1e-6) {
            return;
        }
        tried++;
        if (space.free(fitted, limits.radiusM())) {
            add(queue, from, List.of(fitted), fitted.carry(from.across()));
        }
    }

    /** The piece cut to what is left of length and bend. */
    private PathPiece within(Node from, PathPiece piece) {
        double left = Math.min(piece.lengthM(), limits.lengthM() - from.lengthM());
        if (piece.curvaturePerM() > 0) {
            left = Math.min(left, (limits.maxBendRad() - from.bendRad()) / piece.curvaturePerM());
        }
        return piece.cut(Math.max(0, left));
    }

    /** Joins from a heading through the middle of the nearest openings. */
    private void intoOpenings(Node from, PriorityQueue<Node> queue) {
        List<Integer> near = new ArrayList<>();
        double reach = JOIN_STEPS * grain.stepM();
        for (int g = 0; g < gates.count(); g++) {
            double d = gates.opening(g).place().centreM().distance(from.end().atM());
            if (!gates.opening(g).exterior() && d < reach && d > grain.stepM()) {
                near.add(g);
            }
        }
        near.sort(Comparator.<Integer>comparingDouble(g ->
                        gates.opening(g).place().centreM().distance(from.end().atM()))
                .thenComparingInt(g -> g));
        for (int g : near.subList(0, Math.min(JOINS, near.size()))) {
            Vec3 centre = gates.opening(g).place().centreM();
            Vec3 normal = gates.opening(g).place().normal();
            boolean below = gates.opening(g).place().heightM(from.end().atM()) < 0;
            Vec3 through = below ? normal : normal.negate();
            Heading goal = new Heading(centre.plus(-0.25 * grain.stepM(), through), through);
            List<PathPiece> join = BendConnector.join(from.end(), goal, limits.minBendM());
            if (join == null) {
                continue;
            }
            List<PathPiece> whole = new ArrayList<>();
            for (PathPiece p : join) {
                if (p.lengthM() > 1e-9) {
                    whole.add(p);
                }
            }
            whole.add(PathPiece.straight(goal, 0.5 * grain.stepM()));
            if (freeAll(whole)) {
                Vec3 across = from.across();
                for (PathPiece p : whole) {
                    across = p.carry(across);
                }
                add(queue, from, whole, across);
            }
        }
    }

    private void add(PriorityQueue<Node> queue, @Nullable Node from, List<PathPiece> pieces, Vec3 across) {
        double length = from == null ? 0 : from.lengthM();
        double bend = from == null ? 0 : from.bendRad();
        PushForce push = from == null ? PushForce.NONE : from.push();
        List<Integer> way = from == null ? List.of() : from.way();
        for (PathPiece p : pieces) {
            length += p.lengthM();
            bend += p.bendRad();
            push = push.beyond(p, limits.friction(), limits.weightNPerM());
            List<Integer> now = from == null ? way : gates.after(way, p);
            if (now == null) {
                return;
            }
            way = now;
        }
        if (length > limits.lengthM() + 1e-9
                || bend > limits.maxBendRad() + 1e-9
                || push.atHandN(limits.tipDragN()) > limits.pushLimitN()) {
            return;
        }
        Heading end = pieces.get(pieces.size() - 1).end();
        Vec3 square = across.plus(-across.dot(end.along()), end.along()).unit();
        Node taken = tree.offer(new Node(0, from, pieces, end, square, length, bend, push, way, 0, 0));
        if (taken != null) {
            queue.add(taken);
        }
    }
}
