package baymist.export;

import baymist.run.ForwardingObserver;
import baymist.run.RunMoment;
import baymist.run.RunObserver;
import baymist.scene.Scene;
import baymist.spray.SprayHits;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Looks on while a job runs and keeps what a result alone does not hold: fog and air at certain times, and what arrived on each surfel
 * before it ran or crept on. Changes nothing about the run. One run, one thread.
 */
public final class RunWatch extends ForwardingObserver {
    private final Scene scene;
    private final List<Double> timesS;
    private final List<FogSnapshot> kept = new ArrayList<>();
    private double[] arrivedKg = new double[0];
    private double[] depositedKg = new double[0];
    private int asked;
    private int pass = -1;
    private @Nullable FogSnapshot last;

    /**
     * @param timesS job times to keep fog and air at, s, in any order: of each the first moment that ends at or after it; none = the end
     *     of each pass and of the job
     * @param next who else looks on
     */
    public RunWatch(Scene scene, List<Double> timesS, RunObserver next) {
        super(next);
        this.scene = scene;
        this.timesS = timesS.stream().sorted().toList();
    }

    @Override
    public void moment(RunMoment moment) {
        super.moment(moment);
        arrivals(moment);
        int now = moment.station() == null ? -1 : moment.station().pass();
        if (timesS.isEmpty() && pass >= 0 && now != pass) {
            keep(last, "end of pass \"" + scene.passes().get(pass).name() + "\"");
        }
        pass = now;
        last = FogSnapshot.of(moment, "");
        while (asked < timesS.size() && moment.endS() >= timesS.get(asked) - 1e-9) {
            keep(last, String.format(Locale.ROOT, "asked for %.4g s", timesS.get(asked)));
            asked++;
        }
    }

    private void keep(@Nullable FogSnapshot snapshot, String words) {
        if (snapshot != null && (kept.isEmpty() || kept.get(kept.size() - 1).timeS() < snapshot.timeS())) {
            kept.add(snapshot.called(words));
        }
    }

    private void arrivals(RunMoment moment) {
        int surfels = moment.grid().surfels().count();
        if (arrivedKg.length == 0) {
            arrivedKg = new double[surfels];
            depositedKg = new double[surfels];
        }
        SprayHits hits = moment.hits();
        if (hits != null) {
            for (int i = 0; i < hits.hitSurfel().length; i++) {
                arrivedKg[hits.hitSurfel()[i]] += hits.hitKgPerS()[i] * moment.durationS();
            }
        }
        for (int s = 0; s < surfels; s++) {
            depositedKg[s] = moment.depositedKg(s);
        }
    }

    /** What arrived on a surfel by jets and fog, before anything ran or crept, kg, [surfels]. */
    double[] arrivedKg() {
        double[] all = arrivedKg.clone();
        for (int s = 0; s < all.length; s++) {
            all[s] += depositedKg[s];
        }
        return all;
    }

    /** The times kept, ascending; the end of the job is one of them where no times were asked for. */
    List<FogSnapshot> snapshots() {
        List<FogSnapshot> all = new ArrayList<>(kept);
        if (timesS.isEmpty() && last != null) {
            if (!all.isEmpty() && all.get(all.size() - 1).timeS() >= last.timeS()) {
                all.remove(all.size() - 1);
            }
            all.add(last.called("end of the job"));
        }
        return all;
    }

    /** Job time at which the run ended, s; 0 before it has begun. */
    public double endS() {
        return last == null ? 0 : last.timeS();
    }
}
