package baymist.access;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * All lines through an entry, cell by cell (branch and bound over offset and tilt; Land and Doig 1960). The space of lines is split in
 * three along the coordinate in which the lines of a cell part most; {@link LineProbe} tries the middle lines exactly, {@link Beam}
 * bounds what the others can reach. First the widest cells are split, which spreads lines evenly over where the wand can go; then those
 * that may hold a better line for the aim, until none is left or the cells are as small as the resolution.
 *
 * <p>Complete to the resolution: a cell that is given up unsplit has been bounded away, or strays by no more than the resolution; a rod with
 * that much more room all round would have been found along its middle line. If the budget ends first, the resolution is that of the
 * widest cell left.
 */
final class RigidSearch {
    /** Tangent of the largest tilt looked at, 80 degrees (ASSUMED: nobody feeds a rod in flatter). */
    private static final double MOST_TANGENT = Math.tan(Math.toRadians(80));

    private final ReachProblem problem;
    private final LineProbe probe;
    private final Beam beam;
    private final List<RodLine> lines = new ArrayList<>();
    private List<LineCell> frontier = new ArrayList<>();
    private int tried;

    /** What to look for: a score of lines and an upper bound for cells; larger is better. */
    interface Goal {
        double score(RodLine line);

        double bound(LineCell cell);

        /** Difference of scores that is not worth looking for. */
        double tolerance();
    }

    /**
     * The outcome for a goal.
     *
     * @param line best line
     * @param resolutionM cells left unsplit stray by no more, m
     */
    record Find(RodLine line, double score, double resolutionM) {}

    RigidSearch(ReachProblem problem) {
        this.problem = problem;
        this.probe = new LineProbe(problem);
        this.beam = new Beam(problem, probe);
    }

    LineProbe probe() {
        return probe;
    }

    /** Lines tried so far that pass the entry, in order of trial. */
    List<RodLine> lines() {
        return lines;
    }

    /** Number of lines tried so far, whether they pass or not. */
    int tried() {
        return tried;
    }

    /** Spreads lines over everything that the entry allows until a share of the budget is spent. */
    void spread(int most) {
        double length = problem.wand().lengthM();
        double r = 0.5 * probe.rodM();
        double reach = Math.max(1e-6, probe.room().place().outline().reachM() - r);
        double tangent = EntryRoom.largestTangent(probe.room().place(), probe.rodM(), MOST_TANGENT);
        RodLine middle = attempt(0, 0, 0, 0);
        PriorityQueue<LineCell> widest = new PriorityQueue<>(
                Comparator.comparingDouble((LineCell c) -> -c.strayM()).thenComparingDouble(c -> -c.depthM()));
        add(beam.cell(middle, new double[] {reach, reach, tangent, tangent}, length, length), widest);
        double resolution = problem.settings().resolutionM();
        while (!widest.isEmpty() && tried < most && widest.peek().strayM() > resolution) {
            for (LineCell child : split(widest.poll())) {
                add(child, widest);
            }
        }
        frontier = new ArrayList<>(widest);
    }

    /** Tries a line that is known to be worth it. */
    RodLine attempt(double u, double v, double tu, double tv) {
        tried++;
        RodLine line = probe.lineFed(u, v, tu, tv);
        if (line.passes()) {
            lines.add(line);
        }
        return line;
    }

    /** Best line for a goal; goes on from where earlier searches ended. */
    Find best(Goal goal) {
        RodLine best = null;
        double score = Double.NEGATIVE_INFINITY;
        for (RodLine line : lines) {
            double s = goal.score(line);
            if (s > score) {
                score = s;
                best = line;
            }
        }
        if (best == null) {
            return new Find(attempt(0, 0, 0, 0), score, resolutionLeft(List.of()));
        }
        PriorityQueue<Ranked> queue = new PriorityQueue<>(RANK);
        List<LineCell> kept = new ArrayList<>();
        int number = 0;
        for (LineCell c : frontier) {
            queue.add(rank(goal, c, number++));
        }
        double fine = problem.settings().resolutionM();
        while (!queue.isEmpty() && tried < problem.settings().budget()) {
            Ranked r = queue.poll();
            if (r.bound <= score + goal.tolerance() || r.cell.strayM() <= fine) {
                kept.add(r.cell);
                continue;
            }
            int before = lines.size();
            for (LineCell child : split(r.cell)) {
                if (worth(child)) {
                    queue.add(rank(goal, child, number++));
                }
            }
            for (RodLine line : lines.subList(before, lines.size())) {
                double s = goal.score(line);
                if (s > score) {
                    score = s;
                    best = line;
                }
            }
        }
        List<LineCell> left = new ArrayList<>();
        for (Ranked r : queue) {
            kept.add(r.cell);
            if (r.bound > score + goal.tolerance()) {
                left.add(r.cell);
            }
        }
        frontier = kept;
        return new Find(best, score, resolutionLeft(left));
    }

    private double resolutionLeft(List<LineCell> left) {
        return left.stream()
                .mapToDouble(LineCell::strayM)
                .reduce(problem.settings().resolutionM(), Math::max);
    }

    private record Ranked(LineCell cell, double bound, double promise, int number) {}

    private static final Comparator<Ranked> RANK =
            Comparator.comparingDouble((Ranked r) -> -r.promise).thenComparingInt(Ranked::number);

    /** What a cell promises: half its bound, half what its middle line gives. */
    private static Ranked rank(Goal goal, LineCell c, int number) {
        double bound = goal.bound(c);
        double own = c.middle().passes() ? goal.score(c.middle()) : Double.NEGATIVE_INFINITY;
        double promise = own > Double.NEGATIVE_INFINITY ? 0.5 * (bound + own) : bound - Math.abs(bound);
        return new Ranked(c, bound, promise, number);
    }

    private void add(LineCell c, PriorityQueue<LineCell> queue) {
        if (worth(c)) {
            queue.add(c);
        }
    }

    /** Whether a line of the cell may pass the hole at all. */
    private boolean worth(LineCell c) {
        RodLine m = c.middle();
        double turn = Math.hypot(c.half()[2], c.half()[3]);
        double up = probe.room().upperM(m.u(), m.v(), m.tu(), m.tv(), probe.rodM());
        return c.depthM() > 0 && up + probe.room().growthM(Math.hypot(c.half()[0], c.half()[1]), turn) >= 0;
    }

    private List<LineCell> split(LineCell c) {
        int i = c.widest();
        double[] half = c.half().clone();
        half[i] /= 3;
        RodLine m = c.middle();
        List<LineCell> children = new ArrayList<>(3);
        children.add(beam.cell(m, half, c.heightM(), c.depthM()));
        for (int side = -1; side <= 1; side += 2) {
            double step = 2 * side * half[i];
            RodLine line = attempt(
                    m.u() + (i == 0 ? step : 0),
                    m.v() + (i == 1 ? step : 0),
                    m.tu() + (i == 2 ? step : 0),
                    m.tv() + (i == 3 ? step : 0));
            children.add(beam.cell(line, half, c.heightM(), c.depthM()));
        }
        return children;
    }
}
