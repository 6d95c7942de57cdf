package baymist.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Search by small changes of strokes, each judged by the matrix. Deterministic. Where a change takes more than the limits leave, all other strokes are drawn as
 * much faster as it needs: what one place gets more, others give.
 */
final class PlanSearch {
    private static final double[] FACTORS = {0.5, 0.7, 0.85, 1.18, 1.4, 2};
    private static final int[] SHIFTS = {-8, -3, -1, 1, 3, 8};

    /** A change must be worth this much, else the search goes round in circles. */
    private static final double WORTHWHILE = 1e-5;

    private static final int MOST_ROUNDS = 40;

    private final DoseMatrix matrix;
    private final PlanLimits limits;
    private final Beginnings beginnings;

    PlanSearch(DoseMatrix matrix, PlanLimits limits) {
        this.matrix = matrix;
        this.limits = limits;
        this.beginnings = new Beginnings(matrix, limits);
    }

    /** What a plan is worth by the matrix. */
    double worth(List<Stroke> plan) {
        return matrix.score(plan).worth(limits, plan.size());
    }

    /** The best plan on the way from a beginning. */
    List<Stroke> improved(List<Stroke> begin) {
        List<List<Stroke>> path = path(begin);
        return path.get(path.size() - 1);
    }

    /** All plans on the way from a beginning to where no change helps any more, each better than the one before by the matrix. */
    List<List<Stroke>> path(List<Stroke> begin) {
        State state = new State(beginnings.within(begin));
        List<List<Stroke>> path = new ArrayList<>();
        path.add(List.copyOf(state.plan));
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean moved = false;
            for (int i = 0; i < state.plan.size(); i++) {
                moved |= noted(path, state, state.tryEach(i, changes(state.plan.get(i))));
            }
            for (int i = state.plan.size() - 1; i >= 0; i--) {
                moved |= noted(path, state, state.tryWithout(i));
            }
            for (int i = state.plan.size() - 1; i > 0; i--) {
                moved |= noted(path, state, state.tryJoined(i));
            }
            if (state.plan.size() < limits.passes()) {
                moved |= noted(path, state, state.trySplit());
                moved |= noted(path, state, state.tryMore(beginnings.additions()));
            }
            if (!moved) {
                break;
            }
        }
        return path;
    }

    /** Plans one change away, the best by the matrix first, whether better or not: what to run where the matrix knows nothing better. */
    List<List<Stroke>> around(List<Stroke> plan, int most) {
        List<List<Stroke>> all = new ArrayList<>();
        for (int i = 0; i < plan.size(); i++) {
            for (Stroke other : changes(plan.get(i))) {
                List<Stroke> next = new ArrayList<>(plan);
                next.set(i, other);
                all.add(beginnings.within(next));
            }
        }
        for (Stroke more : beginnings.additions()) {
            if (plan.size() < limits.passes()) {
                List<Stroke> next = new ArrayList<>(plan);
                next.add(more);
                all.add(beginnings.within(next));
            }
        }
        record Judged(List<Stroke> plan, double worth) {}
        return all.stream()
                .distinct()
                .filter(p -> !p.isEmpty() && !p.equals(plan))
                .map(p -> new Judged(p, worth(p)))
                .sorted(Comparator.comparingDouble(j -> -j.worth()))
                .limit(most)
                .map(Judged::plan)
                .toList();
    }

    private static boolean noted(List<List<Stroke>> path, State state, boolean moved) {
        if (moved) {
            path.add(List.copyOf(state.plan));
        }
        return moved;
    }

    private List<Stroke> changes(Stroke s) {
        List<Stroke> all = new ArrayList<>();
        for (double f : FACTORS) {
            all.add(new Stroke(s.line(), s.first(), s.last(), limits.held(f * s.rateMPerS())));
        }
        int n = matrix.lines().get(s.line()).stations();
        for (int d : SHIFTS) {
            int first = Math.max(0, Math.min(s.last(), s.first() + d));
            int last = Math.max(s.first(), Math.min(n - 1, s.last() + d));
            all.add(new Stroke(s.line(), first, s.last(), s.rateMPerS()));
            all.add(new Stroke(s.line(), s.first(), last, s.rateMPerS()));
        }
        for (int l = 0; l < matrix.lines().size(); l++) {
            int m = matrix.lines().get(l).stations();
            int first = Math.min(s.first(), m - 1);
            all.add(new Stroke(l, first, Math.max(first, Math.min(s.last(), m - 1)), s.rateMPerS()));
        }
        return all;
    }

    /** A plan with its film, so that a change costs no more than the strokes that change. */
    private final class State {
        final List<Stroke> plan;

        /** Film of the strokes, without what is there anyway, m. */
        private double[] film;

        private double worth;
        private double[] scratch;

        State(List<Stroke> plan) {
            this.plan = new ArrayList<>(plan);
            this.film = sum(plan);
            this.scratch = new double[film.length];
            this.worth = PlanSearch.this.worth(plan);
        }

        private double[] sum(List<Stroke> strokes) {
            double[] all = new double[matrix.grid().surfels().count()];
            strokes.forEach(s -> matrix.add(s, 1, all));
            return all;
        }

        /** Worth of some strokes' film times a factor, with another stroke. */
        private double worth(double[] others, double factor, Stroke with, PlanScore used, int passes) {
            for (int s = 0; s < others.length; s++) {
                scratch[s] = matrix.offsetM(s) + factor * others[s];
            }
            matrix.add(with, 1, scratch);
            return matrix.score(scratch, used.triggerS(), used.productM3()).worth(limits, passes);
        }

        private PlanScore used(List<Stroke> strokes) {
            return new PlanScore(
                    0,
                    0,
                    strokes.stream().mapToDouble(matrix::triggerS).sum(),
                    strokes.stream().mapToDouble(matrix::productM3).sum());
        }

        boolean tryEach(int i, List<Stroke> others) {
            List<Stroke> rest = new ArrayList<>(plan);
            rest.remove(i);
            double[] without = film.clone();
            matrix.add(plan.get(i), -1, without);
            return take(i, rest, without, others);
        }

        boolean tryMore(List<Stroke> others) {
            return take(plan.size(), plan, film, others);
        }

        private boolean take(int at, List<Stroke> rest, double[] without, List<Stroke> others) {
            PlanScore of = used(rest);
            double slowest = rest.stream().mapToDouble(Stroke::rateMPerS).max().orElse(0);
            List<Stroke> next = null;
            double most = worth + WORTHWHILE;
            for (Stroke other : others) {
                PlanScore one = used(List.of(other));
                double faster = fasterFor(of, one);
                if (!(faster * slowest <= limits.fastestMPerS())) {
                    continue;
                }
                PlanScore all = new PlanScore(
                        0, 0, of.triggerS() / faster + one.triggerS(), of.productM3() / faster + one.productM3());
                double w = worth(without, 1 / faster, other, all, Math.max(plan.size(), at + 1));
                if (w > most) {
                    List<Stroke> candidate = new ArrayList<>();
                    rest.forEach(s -> candidate.add(drawn(s, faster)));
                    candidate.add(Math.min(at, candidate.size()), other);
                    most = w;
                    next = candidate;
                }
            }
            return next != null && accept(next);
        }

        /** How much faster the rest must be drawn so that one more stroke keeps the limits, 1 or more; infinite where nothing helps. */
        private double fasterFor(PlanScore rest, PlanScore one) {
            double left = 1 - limits.use(one.triggerS(), one.productM3());
            double need = limits.use(rest.triggerS(), rest.productM3());
            if (need <= left) {
                return 1;
            }
            return left > 0 ? need / left : Double.POSITIVE_INFINITY;
        }

        private Stroke drawn(Stroke s, double faster) {
            return faster == 1 ? s : new Stroke(s.line(), s.first(), s.last(), limits.rounded(s.rateMPerS() * faster));
        }

        /** Takes a plan if it is better as it would be written. */
        private boolean accept(List<Stroke> next) {
            double[] with = sum(next);
            double[] all = new double[with.length];
            for (int s = 0; s < all.length; s++) {
                all[s] = with[s] + matrix.offsetM(s);
            }
            PlanScore used = used(next);
            double w = matrix.score(all, used.triggerS(), used.productM3()).worth(limits, next.size());
            if (!limits.keeps(used.triggerS(), used.productM3()) || w <= worth + WORTHWHILE) {
                return false;
            }
            plan.clear();
            plan.addAll(next);
            film = with;
            worth = w;
            return true;
        }

        /** One stroke in place of two of one line, over both and what lies between, in the time of both. */
        boolean tryJoined(int i) {
            for (int j = 0; j < i; j++) {
                Stroke a = plan.get(i);
                Stroke b = plan.get(j);
                if (a.line() == b.line()) {
                    int first = Math.min(a.first(), b.first());
                    int last = Math.max(a.last(), b.last());
                    double time = matrix.triggerS(a) + matrix.triggerS(b);
                    double length =
                            (last - first + 1) * matrix.lines().get(a.line()).spacingM();
                    List<Stroke> next = new ArrayList<>(plan);
                    next.set(j, new Stroke(a.line(), first, last, limits.rounded(length / time)));
                    next.remove(i);
                    if (accept(next)) {
                        return true;
                    }
                }
            }
            return false;
        }

        /** One stroke parted in two, the one drawn faster and the other slower in the same time. */
        boolean trySplit() {
            for (int i = 0; i < plan.size(); i++) {
                Stroke s = plan.get(i);
                int n = s.last() - s.first() + 1;
                for (int part : new int[] {n / 4, n / 2, 3 * n / 4}) {
                    for (double f : new double[] {0.6, 1.6}) {
                        if (part > 0 && part < n && accept(parted(i, part, f))) {
                            return true;
                        }
                    }
                }
            }
            return false;
        }

        private List<Stroke> parted(int i, int part, double factor) {
            Stroke s = plan.get(i);
            int n = s.last() - s.first() + 1;
            double rate = s.rateMPerS();
            double one = limits.rounded(rate * factor);
            double left = n / rate - part / one;
            double other = left > 0 ? limits.rounded((n - part) / left) : limits.fastestMPerS();
            List<Stroke> next = new ArrayList<>(plan);
            next.set(i, new Stroke(s.line(), s.first(), s.first() + part - 1, one));
            next.add(i + 1, new Stroke(s.line(), s.first() + part, s.last(), other));
            return next;
        }

        boolean tryWithout(int i) {
            List<Stroke> next = new ArrayList<>(plan);
            next.remove(i);
            return accept(next);
        }
    }
}
