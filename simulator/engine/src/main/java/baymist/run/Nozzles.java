package baymist.run;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.DropletSpec;
import baymist.scene.DropletSpec.Correlation;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.spray.AtomisedSizes;
import baymist.spray.Atomiser;
import baymist.spray.TipFlow;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What the tips of a job get from the supply, and the droplets that come of it; refuses what can't be. */
public final class Nozzles {
    /** Factor either way within which a correlation beyond its range is taken to hold where the scene says nothing (ASSUMED). */
    static final double FACTOR_OUTSIDE_RANGE = 2;

    /** Catch-cup tests that differ by more from the rate fitted to them are told (ASSUMED: a careful test repeats within it). */
    private static final double MISFIT_TOLD = 0.10;

    /** Share of the supply's pressure lost along the bores from which it is told. */
    private static final double LOSS_TOLD = 0.10;

    /** Sizes of two tips that differ by more need scenes of their own. */
    private static final double SIZES_APART = 0.10;

    private Nozzles() {}

    /**
     * State at the tip of each wand that the passes use, by wand in the order of the passes.
     *
     * @throws SceneException RUN-005 if a catch-cup test can't be
     */
    public static Map<String, TipFlow> flows(Scene scene) {
        Map<String, TipFlow> flows = new LinkedHashMap<>();
        scene.passes().forEach(pass -> {
            WandSpec wand = Approach.wand(scene, pass);
            if (!flows.containsKey(wand.name())) {
                try {
                    flows.put(wand.name(), TipFlow.of(scene.supply(), wand, scene.product(), scene.ambient()));
                } catch (IllegalArgumentException e) {
                    throw new SceneException(
                            "RUN-005",
                            new SourcePlace(scene.file(), 0, "supply.catch_cup"),
                            "a catch-cup test can't be: with the bore of wand '" + wand.name() + "' " + e.getMessage()
                                    + "; state the length and bore of the wand that the test was made with");
                }
            }
        });
        return flows;
    }

    /**
     * Droplet sizes as they are used: a correlation becomes a distribution, everything else stays as it is.
     *
     * @throws SceneException RUN-005 as {@link #flows}, RUN-006 if a correlation is asked for beyond its range, RUN-007 if the tips' sizes differ
     */
    public static DropletSpec sizes(Scene scene) {
        DropletSpec stated = scene.supply().droplets();
        DropletSpec inner = stated instanceof DropletSpec.Adjusted a ? a.sizes() : stated;
        Map<String, TipFlow> flows = flows(scene);
        if (!(inner instanceof Correlation law) || flows.isEmpty()) {
            return inner instanceof Correlation ? new DropletSpec.Tracer() : stated;
        }
        AtomisedSizes first = null;
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (TipFlow tip : flows.values()) {
            AtomisedSizes sizes = AtomisedSizes.of(law, tip, scene.product(), scene.ambient());
            refuseOutside(scene, law, sizes);
            first = first == null ? sizes : first;
            least = Math.min(least, sizes.estimate().sauterM());
            most = Math.max(most, sizes.estimate().sauterM());
        }
        if (first == null || most > (1 + SIZES_APART) * least) {
            throw new SceneException(
                    "RUN-007",
                    place(scene),
                    String.format(
                            Locale.ROOT,
                            "the correlation gives a Sauter diameter of %.1f um for one wand's tip and of %.1f um for another's;"
                                    + " spray them in scenes of their own, or state the sizes",
                            1e6 * least,
                            1e6 * most));
        }
        double setting = stated instanceof DropletSpec.Adjusted a ? a.setting() : 1;
        double factor = stated instanceof DropletSpec.Adjusted a && a.dv50Factor() > 0
                ? a.dv50Factor()
                : first.estimate().inRange() ? DropletSpec.USUAL_FACTOR : FACTOR_OUTSIDE_RANGE;
        return new DropletSpec.Adjusted(first.sizes(), setting, factor);
    }

    private static SourcePlace place(Scene scene) {
        return new SourcePlace(scene.file(), 0, "supply.droplets.correlation");
    }

    private static void refuseOutside(Scene scene, Correlation law, AtomisedSizes sizes) {
        if (!sizes.estimate().inRange() && !law.outsideRange()) {
            throw new SceneException(
                    "RUN-006",
                    place(scene),
                    outside(law, sizes)
                            + "; state sizes from a data sheet or a catch plate, or set `outside_range: allow`");
        }
    }

    private static String outside(Correlation law, AtomisedSizes sizes) {
        Atomiser.Conditions c = sizes.conditions();
        return String.format(
                Locale.ROOT,
                "the correlation is asked for beyond the range that it was fitted to (%s), with air at %.0f m/s, %.2g kg of air"
                        + " per kg of liquid and %.0f mPa.s",
                Atomiser.range(law.form()),
                c.speedMPerS(),
                c.airLiquidRatio(),
                1e3 * c.viscosityPaS());
    }

    /** Remarks on supply and sizes, each with its figure. */
    static List<Finding> findings(Scene scene) {
        List<Finding> findings = new ArrayList<>();
        SourcePlace supply = new SourcePlace(scene.file(), 0, "supply");
        flows(scene).forEach((wand, tip) -> {
            double gauge = scene.supply() instanceof SupplySpec.Pressure p ? p.gaugePa() : 0;
            if (tip.airLossPa() > LOSS_TOLD * gauge && gauge > 0) {
                findings.add(new Finding(
                        "SPR-002",
                        Severity.NOTE,
                        supply,
                        String.format(
                                Locale.ROOT,
                                "%.0f %% of the supply's pressure is lost along the air bore of '%s': %.0f kPa of %.0f kPa gauge reach"
                                        + " the tip",
                                100 * tip.airLossPa() / gauge,
                                wand,
                                1e-3 * (gauge - tip.airLossPa()),
                                1e-3 * gauge)));
            }
            if (tip.meterMisfit() > MISFIT_TOLD) {
                findings.add(new Finding(
                        "SPR-003",
                        Severity.WARNING,
                        supply,
                        String.format(
                                Locale.ROOT,
                                "a catch-cup test differs by %.0f %% from the rate that is fitted to all of them; test again",
                                100 * tip.meterMisfit())));
            }
        });
        DropletSpec stated = scene.supply().droplets();
        DropletSpec inner = stated instanceof DropletSpec.Adjusted a ? a.sizes() : stated;
        if (inner instanceof Correlation law) {
            for (TipFlow tip : flows(scene).values()) {
                AtomisedSizes sizes = AtomisedSizes.of(law, tip, scene.product(), scene.ambient());
                if (!sizes.estimate().inRange()) {
                    findings.add(new Finding("SPR-004", Severity.WARNING, place(scene), outside(law, sizes)));
                    break;
                }
            }
        }
        return findings;
    }
}
