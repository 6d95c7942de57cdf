package baymist.explain;

import baymist.scene.DropletSpec;
import baymist.scene.SupplySpec;
import java.util.ArrayList;
import java.util.List;

/** Changes of pace, time, amount and droplet size. */
final class SupplyTrials {
    /** More product, and more time for the same way: enough to more than double a film that grows with either. */
    static final double MORE = 2.5;
    /** Hang time is tried at so many times its length ... */
    private static final double LONGER = 4;
    /** ... and no less than this, s. */
    private static final double LEAST_HANG_S = 600;
    /** Below this share of its peak, fog at the end can do nothing more. */
    private static final double LEFT = 0.01;

    private static final double FINE = 0.6;
    private static final double COARSE = 1.6;

    private final Situation at;

    SupplyTrials(Situation at) {
        this.at = at;
    }

    List<Trial> all() {
        List<Trial> trials = new ArrayList<>();
        trials.add(new Trial(
                ChangeKind.MORE_PRODUCT,
                "Spray 2.5 times as much product in the same time",
                List.of("supply: 2.5 times the liquid"),
                d -> d.supply = d.supply.withLiquidTimes(MORE)));
        if (!at.base().scene().passes().isEmpty()) {
            trials.add(new Trial(
                    ChangeKind.SLOWER,
                    "Take 2.5 times as long over every pass",
                    List.of("passes: draw_back divided by 2.5, hold times 2.5"),
                    d -> {
                        for (int p = 0; p < d.passes.size(); p++) {
                            PassEdit.of(d.passes.get(p)).slower(MORE).into(d, p);
                        }
                    }));
        }
        hang(trials);
        if (!(at.base().scene().supply().droplets() instanceof DropletSpec.Tracer)) {
            trials.add(setting(ChangeKind.FINER, FINE));
            trials.add(setting(ChangeKind.COARSER, COARSE));
        }
        return trials;
    }

    private void hang(List<Trial> trials) {
        double now = at.base().scene().hangS();
        double hang = Math.max(LEAST_HANG_S, LONGER * now);
        if (at.fog().endShare() > LEFT && hang > now) {
            trials.add(new Trial(
                    ChangeKind.MORE_HANG,
                    "Let the fog hang, and oil creep, for " + Words.time(hang) + " instead of " + Words.time(now),
                    List.of("hang: " + Yaml.time(hang)),
                    d -> d.hangS = hang));
        }
    }

    private static Trial setting(ChangeKind kind, double by) {
        return new Trial(
                kind,
                kind == ChangeKind.FINER
                        ? "Set the nozzle finer: droplets 0.6 times their size"
                        : "Set the nozzle coarser: droplets 1.6 times their size",
                List.of("supply: droplets: setting times " + by),
                d -> d.supply = adjusted(d.supply, by));
    }

    /** The supply with its droplets times a factor beyond the setting that it has. */
    private static SupplySpec adjusted(SupplySpec s, double by) {
        DropletSpec now = s.droplets();
        return s.withDroplets(
                now instanceof DropletSpec.Adjusted a
                        ? new DropletSpec.Adjusted(a.sizes(), by * a.setting(), a.dv50Factor())
                        : new DropletSpec.Adjusted(
                                now, by, now instanceof DropletSpec.Correlation ? 0 : now.dv50Factor()));
    }
}
