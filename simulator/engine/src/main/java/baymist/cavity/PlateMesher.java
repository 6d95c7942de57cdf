package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.Predicate;

/**
 * Meshes flat plates that meet each other so that they share edges vertex for vertex.
 *
 * <ol>
 *   <li>Each plate is divided into convex pieces.
 *   <li>Pieces are split along the plane of every other plate that touches them.
 *   <li>Corners closer than the tolerance become one vertex ({@link VertexWeld}).
 *   <li>Vertices that lie on the edge of a piece are put into that edge, so that no T-joint is left.
 *   <li>Pieces become triangles; their winding is that of the plate's corners.
 * </ol>
 *
 * Belongs to one build and one thread.
 */
final class PlateMesher {
    /** Sine of the angle below which two plates count as parallel and don't divide each other. */
    private static final double PARALLEL = 1e-6;

    private final double toleranceM;
    private final VertexWeld weld;
    private final List<Plate> plates = new ArrayList<>();

    /** What a plate does besides being there. */
    private enum Role {
        /** Is divided by others, divides others, is meshed. */
        FULL,
        /** Divides others only. */
        CUTTER,
        /** Takes over new vertices on its edges only. */
        FOLLOWER
    }

    private record Plate(int part, List<Vec3> corners, Vec3 normal, Box3 box, Role role) {}

    /** A convex piece of a plate. */
    private record Piece(int part, List<Vec3> corners) {}

    PlateMesher(double toleranceM) {
        this(toleranceM, p -> true);
    }

    /** @param mayMove vertices that may be joined to a neighbour within the tolerance; others keep their place to the bit */
    PlateMesher(double toleranceM, Predicate<Vec3> mayMove) {
        this.toleranceM = toleranceM;
        this.weld = new VertexWeld(toleranceM, mayMove);
    }

    /** Adds a plate, a simple polygon, flat within the tolerance; returns its number. */
    int plate(int part, Vec3... corners) {
        return add(part, List.of(corners), Role.FULL);
    }

    int plate(int part, List<Vec3> corners) {
        return add(part, corners, Role.FULL);
    }

    /** Adds a plate that only marks where others are to be divided. */
    void cutter(List<Vec3> corners) {
        add(-1, corners, Role.CUTTER);
    }

    /** Adds a convex piece that is not divided but takes over vertices on its edges. */
    void follower(int part, List<Vec3> corners) {
        add(part, corners, Role.FOLLOWER);
    }

    private int add(int part, List<Vec3> corners, Role role) {
        Box3 box = Box3.EMPTY;
        for (Vec3 p : corners) {
            box = box.including(p);
        }
        Vec3 area = SheetCutter.areaVector(corners);
        Vec3 normal = area.length() > 0 ? area.unit() : Vec3.ZERO;
        plates.add(new Plate(part, List.copyOf(corners), normal, box, role));
        return plates.size() - 1;
    }

    /** The last word on a piece that is about to be meshed. */
    interface PiecePart {
        /** Part that the piece of a plate becomes, given the plate's own; -1 = it is left out. */
        int of(int plate, int ownPart, Vec3 middle);
    }

    void mesh(SheetModel model) {
        mesh(model, (plate, ownPart, middle) -> ownPart);
    }

    void mesh(SheetModel model, PiecePart parts) {
        for (Plate plate : plates) {
            if (plate.role() != Role.CUTTER) {
                plate.corners().forEach(weld::vertex);
            }
        }
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < plates.size(); i++) {
            if (plates.get(i).role() != Role.CUTTER) {
                for (List<Vec3> piece : divided(i)) {
                    int part = parts.of(i, plates.get(i).part(), middle(piece));
                    if (part >= 0) {
                        pieces.add(new Piece(part, piece));
                    }
                }
            }
        }
        List<int[]> rings = new ArrayList<>();
        for (Piece piece : pieces) {
            rings.add(ring(piece.corners()));
        }
        VertexWeld.EdgeVertices onEdges = weld.edgeVertices();
        for (int k = 0; k < rings.size(); k++) {
            triangles(model, pieces.get(k).part(), rings.get(k), onEdges);
        }
    }

    private List<List<Vec3>> divided(int i) {
        Plate plate = plates.get(i);
        if (plate.role() == Role.FOLLOWER) {
            return List.of(plate.corners());
        }
        List<List<Vec3>> pieces = convex(plate);
        for (int j = 0; j < plates.size(); j++) {
            Plate other = plates.get(j);
            if (j != i && other.role() != Role.FOLLOWER && touch(plate.box(), other.box())) {
                double sine = plate.normal().cross(other.normal()).length();
                if (sine > PARALLEL) {
                    pieces = divide(pieces, plate, other);
                }
            }
        }
        return pieces;
    }

    private boolean touch(Box3 a, Box3 b) {
        for (int axis = 0; axis < 3; axis++) {
            if (a.min().get(axis) > b.max().get(axis) + toleranceM
                    || b.min().get(axis) > a.max().get(axis) + toleranceM) {
                return false;
            }
        }
        return true;
    }

    private static List<List<Vec3>> convex(Plate plate) {
        if (plate.corners().size() == 3) {
            return List.of(plate.corners());
        }
        Vec3 along = plate.corners().get(1).minus(plate.corners().get(0));
        PlacedOutline frame =
                PlacedOutline.of(new Outline.Circle(1), plate.corners().get(0), along, plate.normal());
        List<double[]> flat = new ArrayList<>();
        for (Vec3 p : plate.corners()) {
            flat.add(new double[] {frame.u(p), frame.v(p)});
        }
        List<List<double[]>> pieces = ConvexPieces.of(new Outline.Polygon(flat));
        if (pieces.size() == 1) {
            return List.of(plate.corners());
        }
        List<List<Vec3>> result = new ArrayList<>();
        for (List<double[]> piece : pieces) {
            result.add(piece.stream().map(p -> frame.point(p[0], p[1])).toList());
        }
        return result;
    }

    private List<List<Vec3>> divide(List<List<Vec3>> pieces, Plate plate, Plate other) {
        Vec3 line = plate.normal().cross(other.normal()).unit();
        double[] trace = range(other.corners(), plate, line);
        if (trace[1] - trace[0] <= toleranceM) {
            return pieces;
        }
        List<List<Vec3>> result = new ArrayList<>();
        for (List<Vec3> piece : pieces) {
            double[] d = heights(piece, other);
            boolean below = false;
            boolean above = false;
            for (double h : d) {
                below |= h < 0;
                above |= h > 0;
            }
            double[] own = range(piece, other, line);
            double common = Math.min(trace[1], own[1]) - Math.max(trace[0], own[0]);
            if (below && above && common > toleranceM) {
                result.add(half(piece, d, -1));
                result.add(half(piece, d, +1));
            } else {
                result.add(piece);
            }
        }
        return result;
    }

    /** Heights of corners above a plate's plane; what is within the tolerance lies on it. */
    private double[] heights(List<Vec3> corners, Plate plane) {
        double[] d = new double[corners.size()];
        for (int k = 0; k < d.length; k++) {
            double h = corners.get(k).minus(plane.corners().get(0)).dot(plane.normal());
            d[k] = Math.abs(h) <= toleranceM ? 0 : h;
        }
        return d;
    }

    /** Where a polygon meets a plate's plane: first and last place along the line of the two planes, or an empty range. */
    private double[] range(List<Vec3> corners, Plate plane, Vec3 line) {
        double[] d = heights(corners, plane);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < d.length; k++) {
            int next = (k + 1) % d.length;
            Vec3 p = corners.get(k);
            if (d[k] * d[next] < 0) {
                p = p.plus(d[k] / (d[k] - d[next]), corners.get(next).minus(p));
            } else if (d[k] != 0) {
                continue;
            }
            low = Math.min(low, p.dot(line));
            high = Math.max(high, p.dot(line));
        }
        return new double[] {low, high};
    }

    private static List<Vec3> half(List<Vec3> corners, double[] d, int sign) {
        List<Vec3> kept = new ArrayList<>();
        for (int i = 0; i < d.length; i++) {
            int j = (i + 1) % d.length;
            if (sign * d[i] >= 0) {
                kept.add(corners.get(i));
            }
            if (d[i] * d[j] < 0) {
                // always from the negative to the positive end, so that both halves get the same point
                int n = d[i] < 0 ? i : j;
                int p = n == i ? j : i;
                Vec3 a = corners.get(n);
                kept.add(a.plus(d[n] / (d[n] - d[p]), corners.get(p).minus(a)));
            }
        }
        return kept;
    }

    static Vec3 middle(List<Vec3> corners) {
        Vec3 sum = Vec3.ZERO;
        for (Vec3 p : corners) {
            sum = sum.plus(p);
        }
        return sum.times(1.0 / corners.size());
    }

    /** Vertex numbers round a piece, none twice in turn. */
    private int[] ring(List<Vec3> corners) {
        int[] ring = corners.stream().mapToInt(weld::vertex).toArray();
        int n = ring.length;
        int[] r = ring;
        IntPredicate fresh = k -> r[k] != r[(k + n - 1) % n];
        return java.util.stream.IntStream.range(0, n)
                .filter(fresh)
                .map(k -> r[k])
                .toArray();
    }

    private void triangles(SheetModel model, int part, int[] ring, VertexWeld.EdgeVertices onEdges) {
        if (ring.length < 3) {
            return;
        }
        List<Vec3> corners = new ArrayList<>();
        for (int k = 0; k < ring.length; k++) {
            corners.add(weld.point(ring[k]));
            for (int v : onEdges.between(ring[k], ring[(k + 1) % ring.length])) {
                corners.add(weld.point(v));
            }
        }
        if (SheetCutter.area(corners) <= toleranceM * toleranceM) {
            return;
        }
        if (corners.size() == 3) {
            model.triangle(part, corners.get(0), corners.get(1), corners.get(2));
        } else if (corners.size() == 4 && ring.length == 4) {
            model.quad(part, corners.get(0), corners.get(1), corners.get(2), corners.get(3));
        } else {
            // a fan about the middle has no flat triangle even where corners lie in one line
            Vec3 middle = middle(corners);
            for (int k = 0; k < corners.size(); k++) {
                model.triangle(part, middle, corners.get(k), corners.get((k + 1) % corners.size()));
            }
        }
    }
}
