package baymist.run;

import baymist.access.Insertion;
import baymist.access.PassPlan;
import baymist.access.Station;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;

/** The job cut into moments: one a spray station, and hanging times in pieces that grow as the air calms down. */
final class Timeline {
    /** First piece of a hanging time, s: turbulence dies within a second (docs/theory/air.md). */
    private static final double FIRST_HANG_S = 0.25;

    /** Longest piece of a hanging time, s: gives a curve over time and keeps progress honest. */
    private static final double LONGEST_HANG_S = 10;

    private final List<Moment> moments;

    private Timeline(List<Moment> moments) {
        this.moments = List.copyOf(moments);
    }

    static Timeline of(Scene scene, Cavity cavity, List<Insertion> insertions, PassPlan plan) {
        List<Moment> moments = new ArrayList<>();
        double[] hanging = OpenFractions.hang(cavity.openings());
        double time = 0;
        for (int p = 0; p < scene.passes().size(); p++) {
            PassSpec pass = scene.passes().get(p);
            double rod = Approach.wand(scene, pass).outerM();
            double[] open =
                    OpenFractions.pass(cavity.openings(), insertions.get(p).openingIndex(), rod);
            for (Station s : plan.stations()) {
                if (s.pass() == p) {
                    moments.add(new Moment(s.startS(), s.durationS(), s, open));
                    time = s.startS() + s.durationS();
                }
            }
            time = hang(moments, time, pass.hangS(), hanging);
        }
        hang(moments, time, scene.hangS(), hanging);
        return new Timeline(moments);
    }

    private static double hang(List<Moment> moments, double fromS, double durationS, double[] open) {
        double time = fromS;
        double piece = FIRST_HANG_S;
        double left = durationS;
        while (left > 0) {
            double length = left < 1.5 * piece ? left : piece;
            moments.add(new Moment(time, length, null, open));
            time += length;
            left -= length;
            piece = Math.min(2 * piece, LONGEST_HANG_S);
        }
        return fromS + durationS;
    }

    int count() {
        return moments.size();
    }

    Moment moment(int m) {
        return moments.get(m);
    }

    List<Moment> moments() {
        return moments;
    }

    /** Share of the run done after moment {@code m}: a spray station weighs as four pieces of hanging. */
    double progress(int m) {
        double done = 0;
        double all = 0;
        for (int i = 0; i < moments.size(); i++) {
            double weight = moments.get(i).station() == null ? 1 : 4;
            all += weight;
            done += i <= m ? weight : 0;
        }
        return done / all;
    }
}
