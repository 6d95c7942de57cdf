package baymist.access;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Ways that a search has found so far, closed by bins of place, direction and openings passed: in a bin only ways stay of which none is
 * both longer and more bent than another. The order of everything follows from the order of the offers alone.
 */
final class RouteTree {
    private static final int PER_BIN = 2;

    private final SearchGrain grain;
    private final List<Node> nodes = new ArrayList<>();
    private final Map<Bin, List<Node>> bins = new HashMap<>();
    private final Map<Cell, Integer> visits = new HashMap<>();
    private final Map<CellByWay, Integer> visitsByWay = new HashMap<>();
    private final Map<List<Integer>, Integer> ways = new HashMap<>();

    RouteTree(SearchGrain grain) {
        this.grain = grain;
    }

    /**
     * The end of a way.
     *
     * @param number order of arrival
     * @param parent what it continues, null at an entry
     * @param pieces what was added to the parent
     * @param across unit vector square to the direction, carried without twist: the planes of the next arcs count from it
     * @param visits how many ways had come to this cell before
     * @param wayVisits how many of them through the same openings
     */
    record Node(
            int number,
            @Nullable Node parent,
            List<PathPiece> pieces,
            Heading end,
            Vec3 across,
            double lengthM,
            double bendRad,
            PushForce push,
            List<Integer> way,
            int visits,
            int wayVisits) {
        /** 0 = first in its cell, 1 = first there through these openings, from 2 on the more the oftener visited. */
        int rank() {
            return visits == 0 ? 0 : wayVisits == 0 ? 1 : 1 + wayVisits;
        }

        /** All pieces from the entry on. */
        List<PathPiece> path() {
            List<List<PathPiece>> back = new ArrayList<>();
            for (Node n = this; n != null; n = n.parent) {
                back.add(n.pieces);
            }
            Collections.reverse(back);
            return back.stream().flatMap(List::stream).toList();
        }
    }

    private record Cell(int x, int y, int z) {}

    private record CellByWay(Cell cell, int way) {}

    private record Bin(CellByWay cell, int direction) {}

    /** Takes a way in unless its bin holds a better one; returns it with its number and novelty, or null. */
    @Nullable
    Node offer(Node candidate) {
        int way = ways.computeIfAbsent(candidate.way(), k -> ways.size());
        Cell cell = cell(candidate.end().atM());
        CellByWay byWay = new CellByWay(cell, way);
        List<Node> held =
                bins.computeIfAbsent(new Bin(byWay, facet(candidate.end().along())), k -> new ArrayList<>(1));
        for (Node n : held) {
            if (n.lengthM() <= candidate.lengthM() + 1e-9 && n.bendRad() <= candidate.bendRad() + 1e-9) {
                return null;
            }
        }
        held.removeIf(n -> n.lengthM() >= candidate.lengthM() && n.bendRad() >= candidate.bendRad());
        if (held.size() >= PER_BIN) {
            return null;
        }
        int before = visits.merge(cell, 1, Integer::sum) - 1;
        int beforeByWay = visitsByWay.merge(byWay, 1, Integer::sum) - 1;
        Node taken = new Node(
                nodes.size(),
                candidate.parent(),
                candidate.pieces(),
                candidate.end(),
                candidate.across(),
                candidate.lengthM(),
                candidate.bendRad(),
                candidate.push(),
                candidate.way(),
                before,
                beforeByWay);
        nodes.add(taken);
        held.add(taken);
        return taken;
    }

    List<Node> nodes() {
        return Collections.unmodifiableList(nodes);
    }

    private Cell cell(Vec3 p) {
        return new Cell((int) Math.floor(p.x() / grain.cellM()), (int) Math.floor(p.y() / grain.cellM()), (int)
                Math.floor(p.z() / grain.cellM()));
    }

    /** Field of the direction on a cube, 0 .. 6 facets² - 1. */
    private int facet(Vec3 d) {
        double ax = Math.abs(d.x());
        double ay = Math.abs(d.y());
        double az = Math.abs(d.z());
        int axis = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
        double main = d.get(axis);
        double u = d.get((axis + 1) % 3) / Math.abs(main);
        double v = d.get((axis + 2) % 3) / Math.abs(main);
        int n = grain.facets();
        return ((2 * axis + (main > 0 ? 1 : 0)) * n + field(u, n)) * n + field(v, n);
    }

    private static int field(double u, int n) {
        // equal angles rather than equal lengths on the cube; half a field off, so that the axes lie inside fields
        double share = Math.atan(u) / (Math.PI / 2) + 0.5;
        return (int) Math.max(0, Math.min(n - 1, Math.floor(share * n)));
    }
}
