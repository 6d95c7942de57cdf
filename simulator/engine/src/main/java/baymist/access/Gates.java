package baymist.access;

import baymist.cavity.Opening;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The openings of a cavity, as a centreline crosses them: which way through which holes a wand has come. */
final class Gates {
    /** Longest chord of a line that is tested, as a share of the radius of its bend. */
    private static final double CHORD = 0.25;

    private final List<Opening> openings;

    Gates(List<Opening> openings) {
        this.openings = List.copyOf(openings);
    }

    static final Gates NONE = new Gates(List.of());

    int count() {
        return openings.size();
    }

    Opening opening(int gate) {
        return openings.get(gate);
    }

    /**
     * The way after a piece.
     *
     * @param way gates passed so far: 1 + index for a pass along the outline's normal, negative against it; a gate passed back is
     *     struck out
     * @return the same list if nothing is crossed; null if the piece leaves the cavity
     */
    @Nullable
    List<Integer> after(List<Integer> way, PathPiece piece) {
        if (openings.isEmpty()) {
            return way;
        }
        int chords = (int) Math.max(1, Math.ceil(piece.bendRad() / CHORD));
        List<Integer> now = way;
        Vec3 a = piece.pointAt(0);
        for (int i = 1; i <= chords; i++) {
            Vec3 b = piece.pointAt(piece.lengthM() * i / chords);
            now = chord(now, a, b);
            if (now == null) {
                return null;
            }
            a = b;
        }
        return now;
    }

    private @Nullable List<Integer> chord(List<Integer> way, Vec3 a, Vec3 b) {
        List<Integer> now = way;
        for (int g = 0; g < openings.size(); g++) {
            PlacedOutline place = openings.get(g).place();
            double ha = place.heightM(a);
            double hb = place.heightM(b);
            if (ha < 0 == hb < 0) {
                continue;
            }
            Vec3 cross = a.plus(ha / (ha - hb), b.minus(a));
            if (!place.outline().contains(place.u(cross), place.v(cross))) {
                continue;
            }
            if (openings.get(g).exterior()) {
                return null;
            }
            int mark = hb >= 0 ? g + 1 : -(g + 1);
            List<Integer> longer = new ArrayList<>(now);
            if (!longer.isEmpty() && longer.get(longer.size() - 1) == -mark) {
                longer.remove(longer.size() - 1);
            } else {
                longer.add(mark);
            }
            now = List.copyOf(longer);
        }
        return now;
    }

    /** Names of the openings on a way, in order. */
    List<String> names(List<Integer> way) {
        return way.stream().map(m -> openings.get(Math.abs(m) - 1).name()).toList();
    }
}
