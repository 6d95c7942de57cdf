package baymist.seam;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Joins straight pieces that go on from one another to polylines. */
public final class SeamChains {
    /** Ends nearer than this are one, m. */
    private static final double SAME_M = 2e-6;
    /** A shorter piece is a splinter of a cut and is of the kind of its neighbour, m. */
    private static final double SPLINTER_M = 1e-3;

    private SeamChains() {}

    /**
     * A polyline.
     *
     * @param pointsM its corners, m
     * @param members the pieces that it is made of, indices into what was joined
     */
    public record Chain(List<Vec3> pointsM, List<Integer> members) {
        public Chain {
            pointsM = List.copyOf(pointsM);
            members = List.copyOf(members);
        }
    }

    private record End(long i, long j, long k) {
        static End of(Vec3 p) {
            return new End(Math.round(p.x() / SAME_M), Math.round(p.y() / SAME_M), Math.round(p.z() / SAME_M));
        }
    }

    /**
     * Polylines of pieces, each piece used once: lines that end or branch first, then closed ones. Points in a straight run are left out.
     *
     * @param segments pieces of one pair of parts
     */
    public static List<Chain> join(List<SeamSegment> segments) {
        Map<End, List<Integer>> at = new HashMap<>();
        for (int s = 0; s < segments.size(); s++) {
            at.computeIfAbsent(End.of(segments.get(s).from()), k -> new ArrayList<>())
                    .add(s);
            at.computeIfAbsent(End.of(segments.get(s).to()), k -> new ArrayList<>())
                    .add(s);
        }
        boolean[] used = new boolean[segments.size()];
        List<Chain> lines = new ArrayList<>();
        for (boolean ends : new boolean[] {true, false}) {
            for (int s = 0; s < used.length; s++) {
                SeamSegment piece = segments.get(s);
                boolean fromEnd = degree(at, piece.from()) != 2;
                boolean toEnd = degree(at, piece.to()) != 2;
                if (!used[s] && (!ends || fromEnd || toEnd)) {
                    lines.add(walk(segments, at, used, s, fromEnd || !toEnd));
                }
            }
        }
        return lines;
    }

    private static int degree(Map<End, List<Integer>> at, Vec3 p) {
        return at.getOrDefault(End.of(p), List.of()).size();
    }

    private static Chain walk(
            List<SeamSegment> segments, Map<End, List<Integer>> at, boolean[] used, int start, boolean forward) {
        List<Vec3> line = new ArrayList<>();
        List<Integer> members = new ArrayList<>();
        int s = start;
        Vec3 head = forward ? segments.get(s).from() : segments.get(s).to();
        line.add(head);
        while (s >= 0) {
            used[s] = true;
            members.add(s);
            SeamSegment piece = segments.get(s);
            head = End.of(piece.from()).equals(End.of(head)) ? piece.to() : piece.from();
            line.add(head);
            List<Integer> here = at.getOrDefault(End.of(head), List.of());
            int next = -1;
            if (here.size() == 2) {
                for (int n : here) {
                    next = used[n] ? next : n;
                }
            }
            s = next;
        }
        return new Chain(straightened(line), members);
    }

    private static List<Vec3> straightened(List<Vec3> line) {
        List<Vec3> kept = new ArrayList<>();
        for (Vec3 p : line) {
            while (kept.size() > 1) {
                Vec3 a = kept.get(kept.size() - 2);
                Vec3 b = kept.get(kept.size() - 1);
                Vec3 whole = p.minus(a);
                boolean straight = whole.cross(b.minus(a)).length() < 1e-9 * whole.dot(whole)
                        && b.minus(a).dot(whole) > 0
                        && p.minus(b).dot(whole) > 0;
                if (!straight) {
                    break;
                }
                kept.remove(kept.size() - 1);
            }
            kept.add(p);
        }
        return kept;
    }

    /** The same pieces, where splinters take the kind of a longer piece of the same parts that they touch. */
    static List<SeamSegment> withoutSplinters(List<SeamSegment> segments) {
        Map<List<Object>, SeamSegment> longest = new HashMap<>();
        for (SeamSegment s : segments) {
            for (Vec3 p : List.of(s.from(), s.to())) {
                longest.merge(
                        List.of(s.partA(), s.partB(), End.of(p)), s, (a, b) -> a.lengthM() >= b.lengthM() ? a : b);
            }
        }
        List<SeamSegment> out = new ArrayList<>();
        for (SeamSegment s : segments) {
            SeamSegment beside = s;
            for (Vec3 p : List.of(s.from(), s.to())) {
                SeamSegment other = longest.getOrDefault(List.of(s.partA(), s.partB(), End.of(p)), s);
                beside = other.lengthM() > beside.lengthM() ? other : beside;
            }
            boolean splinter = s.lengthM() < SPLINTER_M && beside.lengthM() > SPLINTER_M;
            out.add(splinter ? new SeamSegment(s.partA(), s.partB(), beside.kind(), s.from(), s.to(), s.wedges()) : s);
        }
        return out;
    }
}
