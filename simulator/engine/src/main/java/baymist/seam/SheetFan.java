package baymist.seam;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Half-planes of sheet round a piece of line, by part and angle. Mutable while it is filled; sorted by {@link #wedgesOf}.
 */
final class SheetFan {
    /** Half-planes of one part nearer than this are one, rad. */
    private static final double SAME_RAD = 1e-3;
    /** Sheets nearer to parallel than this lie on each other, rad: 15°, ASSUMED. */
    static final double LAP_RAD = Math.toRadians(15);

    private final Vec3 along;
    private final Vec3 first;
    private final Vec3 second;
    private final List<Half> halves = new ArrayList<>();

    private record Half(int part, double angle) {}

    /** A wedge between half-planes of two parts, lower part first. */
    record Sector(int partA, int partB, SeamWedge wedge) {}

    /** @param along unit vector of the line */
    SheetFan(Vec3 along) {
        this.along = along;
        this.first = along.anyPerpendicular();
        this.second = along.cross(first);
    }

    /** Adds a half-plane: {@code away} points from the line into the sheet. */
    void add(int part, Vec3 away) {
        double angle = Math.atan2(away.dot(second), away.dot(first));
        for (Half h : halves) {
            if (h.part == part && apart(h.angle, angle) < SAME_RAD) {
                return;
            }
        }
        halves.add(new Half(part, angle));
    }

    private static double apart(double a, double b) {
        double d = Math.abs(a - b) % (2 * Math.PI);
        return Math.min(d, 2 * Math.PI - d);
    }

    int count(int part) {
        return (int) halves.stream().filter(h -> h.part == part).count();
    }

    /** Parts with sheet here, ascending. */
    List<Integer> parts() {
        return halves.stream().map(Half::part).distinct().sorted().toList();
    }

    /** How two parts meet here, or null if they only lie on each other, or end in none of them. */
    @Nullable
    SeamKind kind(int a, int b) {
        int ofA = count(a);
        int ofB = count(b);
        boolean parallel = false;
        boolean apart = false;
        for (Half h : halves) {
            if (h.part == a || h.part == b) {
                int other = h.part == a ? b : a;
                boolean near = halves.stream().anyMatch(o -> o.part == other && apart(o.angle, h.angle) < LAP_RAD);
                parallel |= near;
                apart |= !near;
            }
        }
        if (!apart) {
            return ofA == 1 && ofB == 1 ? SeamKind.LAP : null;
        }
        if (parallel) {
            return SeamKind.LAP;
        }
        return ofA == 1 && ofB == 1 ? SeamKind.CORNER : SeamKind.TEE;
    }

    /** Wedges of air between neighbouring half-planes of different parts. */
    List<Sector> sectors() {
        List<Half> sorted = new ArrayList<>(halves);
        sorted.sort(Comparator.comparingDouble(Half::angle).thenComparingInt(Half::part));
        List<List<Half>> groups = new ArrayList<>();
        for (Half h : sorted) {
            List<Half> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
            if (!last.isEmpty() && h.angle - last.get(0).angle < SAME_RAD) {
                last.add(h);
            } else {
                groups.add(new ArrayList<>(List.of(h)));
            }
        }
        int n = groups.size();
        if (n > 1
                && 2 * Math.PI + groups.get(0).get(0).angle - groups.get(n - 1).get(0).angle < SAME_RAD) {
            groups.get(0).addAll(groups.remove(--n));
        }
        List<Sector> found = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double from = groups.get(i).get(0).angle;
            double to = groups.get((i + 1) % n).get(0).angle;
            double open = to > from ? to - from : to - from + 2 * Math.PI;
            for (Half a : groups.get(i)) {
                for (Half b : groups.get((i + 1) % n)) {
                    if (a.part != b.part) {
                        SeamWedge wedge = wedge(from, open);
                        found.add(
                                a.part < b.part
                                        ? new Sector(a.part, b.part, wedge)
                                        : new Sector(b.part, a.part, wedge.swapped()));
                    }
                }
            }
        }
        return found;
    }

    private SeamWedge wedge(double from, double open) {
        double to = from + open;
        return new SeamWedge(at(from), at(to), at(from + Math.PI / 2), at(to - Math.PI / 2), at(from + open / 2), open);
    }

    private Vec3 at(double angle) {
        return first.times(Math.cos(angle)).plus(Math.sin(angle), second);
    }

    Vec3 along() {
        return along;
    }
}
