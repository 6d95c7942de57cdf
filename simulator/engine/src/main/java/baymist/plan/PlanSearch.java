package baymist.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * From times on stations to strokes that a hand can make, then a search by small changes of them, each judged by the matrix. Deterministic.
 */
final class PlanSearch {
    /** Rates tried for new strokes, m/s, within the limits of a plan. */
    private static final double[] RATES = {0.05, 0.1, 0.2, 0.4};

    private static final double[] FACTORS = {0.5, 0.7, 0.85, 1.18, 1.4, 2};
    private static final int[] SHIFTS = {-8, -3, -1, 1, 3, 8};

    /** A change must be worth this much, else the search goes round in circles. */
    private static final double WORTHWHILE = 1e-6;

    private static final int MOST_ROUNDS = 60;

    private final DoseMatrix matrix;
    private final PlanLimits limits;

    PlanSearch(DoseMatrix matrix, PlanLimits limits) {
        this.matrix = matrix;
        this.limits = limits;
    }

    /** The best plan found from several beginnings. */
    List<Stroke> best(List<List<Stroke>> beginnings) {
        List<Stroke> best = List.of();
        double most = worth(best);
        for (List<Stroke> begin : beginnings) {
            List<Stroke> found = improved(begin);
            if (worth(found) > most) {
                most = worth(found);
                best = found;
            }
        }
        return best;
    }

    /** Strokes where the program puts time: neighbouring stations in one stroke at the rate that gives their time. */
    List<Stroke> strokes(double[][] seconds) {
        List<Stroke> all = new ArrayList<>();
        for (int l = 0; l < seconds.length; l++) {
            double spacing = matrix.lines().get(l).spacingM();
            double least = 0.25 * spacing / limits.fastestMPerS();
            int k = 0;
            while (k < seconds[l].length) {
                if (seconds[l][k] < least) {
                    k++;
                    continue;
                }
                int first = k;
                double time = 0;
                // a station without time between two with time is drawn over
                while (k < seconds[l].length
                        && (seconds[l][k] >= least || (k + 1 < seconds[l].length && seconds[l][k + 1] >= least))) {
                    time += seconds[l][k++];
                }
                all.add(new Stroke(l, first, k - 1, limits.held((k - first) * spacing / time)));
            }
        }
        return all;
    }

    /** Each whole line as one stroke: beginnings of their own. */
    List<List<Stroke>> wholeLines() {
        List<List<Stroke>> all = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            for (double rate : RATES) {
                Stroke s = new Stroke(l, 0, matrix.lines().get(l).stations() - 1, limits.held(rate));
                if (matrix.triggerS(s) <= limits.triggerS()) {
                    all.add(List.of(s));
                }
            }
        }
        // the best few alone: improving each would take long and end alike
        all.sort((a, b) -> Double.compare(worth(b), worth(a)));
        return List.copyOf(all.subList(0, Math.min(2, all.size())));
    }

    private double worth(List<Stroke> plan) {
        return matrix.score(plan).worth(limits.triggerS()) - PlanScore.PASS_WORTH * plan.size();
    }

    private List<Stroke> improved(List<Stroke> begin) {
        List<Stroke> plan = new ArrayList<>(begin);
        while (trigger(plan) > limits.triggerS() && !plan.isEmpty()) {
            plan = faster(plan);
        }
        State state = new State(plan);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean moved = false;
            for (int i = 0; i < state.plan.size(); i++) {
                moved |= state.tryEach(i, changes(state.plan.get(i)));
            }
            for (int i = state.plan.size() - 1; i >= 0; i--) {
                moved |= state.tryWithout(i);
            }
            for (int i = state.plan.size() - 1; i > 0; i--) {
                moved |= state.tryJoined(i);
            }
            if (state.plan.size() < limits.passes()) {
                moved |= state.tryMore(additions());
            }
            if (!moved) {
                break;
            }
        }
        return List.copyOf(state.plan);
    }

    /** All strokes as much faster as the trigger time wants; where the fastest is not enough, without the last. */
    private List<Stroke> faster(List<Stroke> plan) {
        double factor = 1.0001 * trigger(plan) / limits.triggerS();
        List<Stroke> next = new ArrayList<>();
        for (Stroke s : plan) {
            next.add(new Stroke(s.line(), s.first(), s.last(), limits.held(s.rateMPerS() * factor)));
        }
        if (trigger(next) > limits.triggerS() && trigger(next) > 0.999 * trigger(plan)) {
            next.remove(next.size() - 1);
        }
        return next;
    }

    private double trigger(List<Stroke> plan) {
        return plan.stream().mapToDouble(matrix::triggerS).sum();
    }

    private List<Stroke> changes(Stroke s) {
        List<Stroke> all = new ArrayList<>();
        for (double f : FACTORS) {
            all.add(new Stroke(s.line(), s.first(), s.last(), limits.held(f * s.rateMPerS())));
        }
        int stations = matrix.lines().get(s.line()).stations();
        for (int d : SHIFTS) {
            int first = Math.max(0, Math.min(s.last(), s.first() + d));
            int last = Math.min(stations - 1, Math.max(s.first(), s.last() + d));
            all.add(new Stroke(s.line(), first, s.last(), s.rateMPerS()));
            all.add(new Stroke(s.line(), s.first(), last, s.rateMPerS()));
        }
        for (int l = 0; l < matrix.lines().size(); l++) {
            if (l != s.line() && matrix.lines().get(l).stations() > s.first()) {
                int last = Math.min(s.last(), matrix.lines().get(l).stations() - 1);
                all.add(new Stroke(l, s.first(), last, s.rateMPerS()));
            }
        }
        return all;
    }

    private List<Stroke> additions() {
        List<Stroke> all = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            int n = matrix.lines().get(l).stations();
            for (double rate : RATES) {
                all.add(new Stroke(l, 0, n - 1, limits.held(rate)));
                int part = Math.max(1, n / 4);
                for (int from = 0; from < n; from += part) {
                    all.add(new Stroke(l, from, Math.min(n, from + part) - 1, limits.held(rate)));
                }
            }
        }
        return all;
    }

    /** A plan with its film, so that a change costs no more than the strokes that change. */
    private final class State {
        final List<Stroke> plan;
        private double[] film;
        private double worth;

        State(List<Stroke> plan) {
            this.plan = new ArrayList<>(plan);
            this.film = matrix.filmM(plan);
            this.worth = worthOf(film, trigger(plan), plan.size());
        }

        private double worthOf(double[] f, double time, int passes) {
            return time <= limits.triggerS() * (1 + 1e-9)
                    ? matrix.score(f, time).worth(limits.triggerS()) - PlanScore.PASS_WORTH * passes
                    : Double.NEGATIVE_INFINITY;
        }

        boolean tryEach(int i, List<Stroke> others) {
            Stroke now = plan.get(i);
            double[] without = film.clone();
            matrix.add(now, -1, without);
            double time = trigger(plan) - matrix.triggerS(now);
            return take(i, without, time, others);
        }

        boolean tryMore(List<Stroke> others) {
            return take(plan.size(), film, trigger(plan), others);
        }

        private boolean take(int i, double[] without, double time, List<Stroke> others) {
            Stroke best = null;
            for (Stroke other : others) {
                double after = time + matrix.triggerS(other);
                if (after > limits.triggerS() * (1 + 1e-9)) {
                    continue;
                }
                double[] with = without.clone();
                matrix.add(other, 1, with);
                double w = worthOf(with, after, Math.max(plan.size(), i + 1));
                if (w > worth + WORTHWHILE) {
                    worth = w;
                    best = other;
                    film = with;
                }
            }
            if (best == null) {
                return false;
            }
            if (i < plan.size()) {
                plan.set(i, best);
            } else {
                plan.add(best);
            }
            return true;
        }

        /** One stroke in place of two of one line, over both and what lies between, in the time of both. */
        boolean tryJoined(int i) {
            Stroke a = plan.get(i);
            for (int j = 0; j < i; j++) {
                Stroke b = plan.get(j);
                if (a.line() != b.line()) {
                    continue;
                }
                int first = Math.min(a.first(), b.first());
                int last = Math.max(a.last(), b.last());
                double time = matrix.triggerS(a) + matrix.triggerS(b);
                double length =
                        (last - first + 1) * matrix.lines().get(a.line()).spacingM();
                Stroke both = new Stroke(a.line(), first, last, limits.held(length / time));
                double[] joined = film.clone();
                matrix.add(a, -1, joined);
                matrix.add(b, -1, joined);
                matrix.add(both, 1, joined);
                double w = worthOf(joined, trigger(plan) - time + matrix.triggerS(both), plan.size() - 1);
                if (w > worth + WORTHWHILE) {
                    worth = w;
                    film = joined;
                    plan.set(j, both);
                    plan.remove(i);
                    return true;
                }
            }
            return false;
        }

        boolean tryWithout(int i) {
            double[] without = film.clone();
            matrix.add(plan.get(i), -1, without);
            double w = worthOf(without, trigger(plan) - matrix.triggerS(plan.get(i)), plan.size() - 1);
            if (w > worth - WORTHWHILE) {
                worth = w;
                film = without;
                plan.remove(i);
                return true;
            }
            return false;
        }
    }
}
