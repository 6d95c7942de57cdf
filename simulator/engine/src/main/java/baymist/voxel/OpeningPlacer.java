package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Lays every opening on blocked faces of its own part.
 *
 * <p>Each column of the opening's footprint hands its overlap to the blocked face of the part in that column that lies
 * nearest to the opening's plane. Where the column has none (a sheet's edge, a place too thin for the voxels) the nearest
 * column that has one takes it, so no area is lost and a pinhole is always found. Faces that have on their two sides what
 * the opening was stated to join (inside and outside, or two insides) go first. An opening that has another sheet close
 * behind it, in the same faces, leads into a space too thin for the voxels: it is treated as closed and reported.
 */
final class OpeningPlacer {
    /** How far beyond the footprint a stand-in column may lie, columns. */
    private static final int STAND_IN_REACH = 3;

    private static final int NO_CAP = -2;

    private static final int AS_STATED = 0;
    private static final int USABLE = 1;
    private static final int NO_USE = 2;
    private static final int TOO_THIN = 3;
    private static final int OUTSIDE_AIR_ONLY = 4;

    /** Cosine above which another sheet in the same face lies across the opening rather than along its edge. */
    private static final double ACROSS = 0.8;

    private final Cavity cavity;
    private final Lattice lattice;
    private final BlockedFaces blocked;
    private final Enclosure enclosure;
    private final List<Leak> leaks = new ArrayList<>();
    /** See {@link #capOf}; of the opening in hand. */
    private int seenCap = NO_CAP;

    private OpeningPlacer(Cavity cavity, Lattice lattice, BlockedFaces blocked, Enclosure enclosure) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.blocked = blocked;
        this.enclosure = enclosure;
    }

    static OpeningFaces place(Cavity cavity, Lattice lattice, BlockedFaces blocked, Enclosure enclosure) {
        OpeningPlacer placer = new OpeningPlacer(cavity, lattice, blocked, enclosure);
        // area by slot, for each opening; tree maps keep the order of the slots
        List<SortedMap<Integer, Double>> areas = new ArrayList<>();
        for (int o = 0; o < cavity.openings().size(); o++) {
            Opening opening = cavity.openings().get(o);
            placer.seenCap = opening.kind() == Opening.Kind.GAP ? placer.capOf(o) : NO_CAP;
            areas.add(placer.placeOne(opening));
        }
        return sorted(areas, blocked.count(), placer.leaks);
    }

    private static OpeningFaces sorted(List<SortedMap<Integer, Double>> areas, int slots, List<Leak> leaks) {
        int[] start = new int[slots + 1];
        for (SortedMap<Integer, Double> one : areas) {
            for (int slot : one.keySet()) {
                start[slot + 1]++;
            }
        }
        for (int s = 0; s < slots; s++) {
            start[s + 1] += start[s];
        }
        int count = start[slots];
        int[] slotOf = new int[count];
        int[] opening = new int[count];
        double[] area = new double[count];
        int[] next = Arrays.copyOf(start, slots);
        for (int o = 0; o < areas.size(); o++) {
            for (Map.Entry<Integer, Double> e : areas.get(o).entrySet()) {
                int at = next[e.getKey()]++;
                slotOf[at] = e.getKey();
                opening[at] = o;
                area[at] = e.getValue();
            }
        }
        return new OpeningFaces(start, slotOf, opening, area, List.copyOf(leaks));
    }

    private SortedMap<Integer, Double> placeOne(Opening opening) {
        OpeningFootprint foot = new OpeningFootprint(opening, lattice);
        if (leadsIntoThinSpace(opening, foot)) {
            return reportThin(opening);
        }
        for (int rank = AS_STATED; rank <= USABLE; rank++) {
            SortedMap<Integer, Double> areas = spread(opening, foot, rank);
            if (areas.isEmpty()) {
                int slot = nearestOfPart(opening, rank);
                if (slot >= 0) {
                    areas.put(slot, 1.0);
                }
            }
            if (!areas.isEmpty()) {
                reportIfUnexpected(opening, rank, areas.firstKey());
                return scaled(areas, opening.areaM2());
            }
        }
        if (nearestOfPart(opening, TOO_THIN) >= 0 || nearestOfPart(opening, NO_USE) >= 0) {
            return reportThin(opening);
        }
        int open = nearestOfPart(opening, OUTSIDE_AIR_ONLY);
        if (open < 0 && !opening.exterior()) {
            return reportThin(opening);
        }
        if (open < 0) {
            throw new SceneException(
                    "VOX-002",
                    new SourcePlace(cavity.name(), 0, "openings"),
                    "opening \"" + opening.name() + "\" lies in a sheet that no voxel face resolves ("
                            + partName(opening) + "); smaller voxels would be right");
        }
        List<Leak> ways = new LeakFinder(cavity, lattice, blocked).leaksInto(blocked.lowCell(open));
        for (Leak way : ways) {
            leaks.add(new Leak(
                    way.positionM(),
                    "opening \"" + opening.name() + "\" has outside air on both sides; it comes in " + way.where(),
                    way.wayM()));
        }
        if (ways.isEmpty()) {
            leaks.add(new Leak(
                    opening.place().centreM(), "opening \"" + opening.name() + "\" has outside air on both sides"));
        }
        return new TreeMap<>();
    }

    private boolean leadsIntoThinSpace(Opening opening, OpeningFootprint foot) {
        boolean thin = false;
        for (int c = foot.firstC; c <= foot.lastC; c++) {
            for (int b = foot.firstB; b <= foot.lastB; b++) {
                if (foot.overlapM2(b, c) > 0) {
                    if (bestInColumn(opening, foot, b, c, AS_STATED) >= 0) {
                        return false;
                    }
                    thin |= bestInColumn(opening, foot, b, c, TOO_THIN) >= 0;
                }
            }
        }
        return thin;
    }

    private SortedMap<Integer, Double> reportThin(Opening opening) {
        leaks.add(
                new Leak(
                        opening.place().centreM(),
                        "opening \"" + opening.name() + "\" in " + partName(opening)
                                + " leads into a space too thin for the voxels and is treated as closed; smaller voxels would be right"));
        return new TreeMap<>();
    }

    private String partName(Opening opening) {
        return opening.part() >= 0 ? cavity.parts().get(opening.part()).name() : "gap";
    }

    private void reportIfUnexpected(Opening opening, int rank, int slot) {
        if (rank == USABLE && !opening.exterior() && opening.kind() != Opening.Kind.GAP) {
            int low = blocked.lowCell(slot);
            boolean lowOutside = !enclosure.encloses(low);
            String where = "opening \"" + opening.name() + "\" in " + partName(opening)
                    + " was stated as an internal one but leads outside on its "
                    + (lowOutside ? "low " : "high ") + "xyz".charAt(blocked.axis(slot)) + " side";
            leaks.add(new Leak(opening.place().centreM(), where));
        }
    }

    /** The true area in place of the projected one: flow sees the hole, not its shadow. */
    private static SortedMap<Integer, Double> scaled(SortedMap<Integer, Double> areas, double areaM2) {
        double sum = 0;
        for (double a : areas.values()) {
            sum += a;
        }
        double factor = areaM2 / sum;
        areas.replaceAll((slot, a) -> a * factor);
        return areas;
    }

    private SortedMap<Integer, Double> spread(Opening opening, OpeningFootprint foot, int rank) {
        int b0 = Math.max(0, foot.firstB - STAND_IN_REACH);
        int b1 = Math.min(lattice.count(foot.axisB) - 1, foot.lastB + STAND_IN_REACH);
        int c0 = Math.max(0, foot.firstC - STAND_IN_REACH);
        int c1 = Math.min(lattice.count(foot.axisC) - 1, foot.lastC + STAND_IN_REACH);
        int wide = b1 - b0 + 1;
        int[] best = new int[wide * (c1 - c0 + 1)];
        for (int c = c0; c <= c1; c++) {
            for (int b = b0; b <= b1; b++) {
                best[b - b0 + wide * (c - c0)] = bestInColumn(opening, foot, b, c, rank);
            }
        }
        SortedMap<Integer, Double> areas = new TreeMap<>();
        for (int c = foot.firstC; c <= foot.lastC; c++) {
            for (int b = foot.firstB; b <= foot.lastB; b++) {
                double area = foot.overlapM2(b, c);
                int slot = area > 0 ? nearestColumn(best, wide, b - b0, c - c0, foot) : -1;
                if (slot >= 0) {
                    areas.merge(slot, area, Double::sum);
                }
            }
        }
        return areas;
    }

    private int nearestColumn(int[] best, int wide, int b, int c, OpeningFootprint foot) {
        if (best[b + wide * c] >= 0) {
            return best[b + wide * c];
        }
        double nearest = Double.POSITIVE_INFINITY;
        int slot = -1;
        for (int at = 0; at < best.length; at++) {
            if (best[at] >= 0) {
                double db = (at % wide - b) * lattice.pitchM(foot.axisB);
                double dc = (at / wide - c) * lattice.pitchM(foot.axisC);
                if (db * db + dc * dc < nearest) {
                    nearest = db * db + dc * dc;
                    slot = best[at];
                }
            }
        }
        return slot;
    }

    /** Slot of the part's blocked face nearest to the opening's plane in a column, or -1. */
    private int bestInColumn(Opening opening, OpeningFootprint foot, int b, int c, int rank) {
        int axis = foot.axis;
        double plane = foot.planeAt(lattice.centre(foot.axisB, b), lattice.centre(foot.axisC, c));
        double window =
                2 * lattice.pitchM(axis) + 0.5 * opening.place().outline().reachM();
        int from = Math.max(0, lattice.locate(axis, plane - window) - 1);
        int to = Math.min(lattice.count(axis) - 2, lattice.locate(axis, plane + window));
        int best = -1;
        double bestGap = Double.POSITIVE_INFINITY;
        for (int k = from; k <= to; k++) {
            int cell = axis == 0 ? lattice.index(k, b, c) : axis == 1 ? lattice.index(b, k, c) : lattice.index(b, c, k);
            int slot = blocked.slot(axis * lattice.cells() + cell);
            int view = slot < 0 ? -1 : viewOfPart(opening, slot);
            if (view < 0 || rank(opening, slot) != rank) {
                continue;
            }
            double at = lattice.centre(axis, k) + blocked.position(view) * lattice.pitchM(axis);
            double gap = Math.abs(at - plane);
            if (gap < bestGap) {
                best = slot;
                bestGap = gap;
            }
        }
        return best;
    }

    /**
     * The view of the face that sees the opening's sheet, or -1. A gap lies in its cap, which belongs to no part; a cap so
     * small that no face sees it is stood in for by the part round it.
     */
    private int viewOfPart(Opening opening, int slot) {
        for (int view = 2 * slot; view <= 2 * slot + 1; view++) {
            int triangle = blocked.triangle(view);
            boolean cap = cavity.partOfSheet(triangle) < 0 && cavity.gapOfSheet(triangle) == seenCap;
            boolean part = cavity.partOfSheet(triangle) == opening.part();
            boolean capped = opening.kind() == Opening.Kind.GAP && seenCap != NO_CAP;
            boolean mine = capped ? cap : part;
            if (mine) {
                return view;
            }
        }
        return -1;
    }

    /** How the cap of a gap is known in the sheets: by the gap's number, as a cap without one (-1), or not seen at all. */
    private int capOf(int openingIndex) {
        int cap = NO_CAP;
        for (int view = 0; view < 2 * blocked.count(); view++) {
            int triangle = blocked.triangle(view);
            if (cavity.partOfSheet(triangle) < 0) {
                int gap = cavity.gapOfSheet(triangle);
                if (gap == openingIndex) {
                    return gap;
                }
                cap = gap < 0 ? -1 : cap;
            }
        }
        return cap;
    }

    private int rank(Opening opening, int slot) {
        int low = blocked.lowCell(slot);
        int high = low + lattice.stride(blocked.axis(slot));
        int inside = (enclosure.encloses(low) ? 1 : 0) + (enclosure.encloses(high) ? 1 : 0);
        if (inside == 0) {
            return OUTSIDE_AIR_ONLY;
        }
        boolean several = severalSheets(slot);
        if (several && liesAcross(opening, slot)) {
            return TOO_THIN;
        }
        boolean capped = opening.kind() == Opening.Kind.GAP && seenCap != NO_CAP;
        boolean asStated = capped || inside == (opening.exterior() ? 1 : 2);
        return asStated ? AS_STATED : several ? NO_USE : USABLE;
    }

    /** Whether sheets lie apart between the two centres, by more than their gauges (a lap or a doubler is one sheet). */
    private boolean severalSheets(int slot) {
        double spreadM = blocked.spread(slot) * lattice.pitchM(blocked.axis(slot));
        return spreadM > BlockedFaces.TOUCHING_M + gaugeM(2 * slot) + gaugeM(2 * slot + 1);
    }

    private double gaugeM(int view) {
        int part = cavity.partOfSheet(blocked.triangle(view));
        return part < 0 ? 0 : cavity.parts().get(part).gaugeM();
    }

    private boolean liesAcross(Opening opening, int slot) {
        int other = viewOfPart(opening, slot) ^ 1;
        Vec3 n = cavity.sheets().normal(blocked.triangle(other));
        return Math.abs(n.dot(opening.place().normal())) > ACROSS;
    }

    private int nearestOfPart(Opening opening, int rank) {
        Vec3 centre = opening.place().centreM();
        // a stand-in must be near; only the search for leaks looks at the whole part
        double longest = Math.max(lattice.pitchM(0), Math.max(lattice.pitchM(1), lattice.pitchM(2)));
        double nearest = rank == OUTSIDE_AIR_ONLY
                ? Double.POSITIVE_INFINITY
                : opening.place().outline().reachM() + (STAND_IN_REACH + 1) * longest;
        int best = -1;
        for (int slot = 0; slot < blocked.count(); slot++) {
            int view = viewOfPart(opening, slot);
            if (view >= 0 && rank(opening, slot) == rank) {
                int axis = blocked.axis(slot);
                double[] at = {0, 0, 0};
                at[axis] = blocked.position(view) * lattice.pitchM(axis);
                Vec3 p = lattice.centre(blocked.lowCell(slot)).plus(new Vec3(at[0], at[1], at[2]));
                double gap = p.distance(centre);
                if (gap < nearest) {
                    nearest = gap;
                    best = slot;
                }
            }
        }
        return best;
    }
}
