package baymist.verify;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.spray.Atomiser;
import baymist.spray.BoreLoss;
import baymist.spray.ChokedOrifice;
import baymist.spray.DropletBins;
import baymist.spray.FeedTube;
import baymist.spray.Impaction;
import baymist.spray.JetMerging;
import baymist.spray.LiquidMeter;
import baymist.spray.RoundJet;
import baymist.spray.SizeBins;
import baymist.spray.VolumeDistribution;
import baymist.spray.WallShear;
import baymist.units.Air;
import baymist.units.Dimension;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Orifice, jet, impaction, droplet sizes and the wand's bore. */
final class NozzleQuantities {
    private NozzleQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put("orificeMassFlow", in -> orifice(in).massKgPerS());
        // free air at the density of the inputs' own temperature and pressure
        all.put("orificeFreeAirFlow", in -> orifice(in).massKgPerS() / gasDensity(in.air()));
        all.put("orificeThrust", in -> orifice(in).thrustN());
        all.put("criticalPressureRatio", in -> ChokedOrifice.CRITICAL_RATIO);
        all.put("feedTubeFlowShare", in -> FeedTube.flowFactor(in.number("frictionLength")));
        all.put("jetCentreSpeed", in -> jet(in).centreSpeedMPerS(in.lengthM("distance")));
        all.put("jetHalfWidth", in -> jet(in).halfWidthM(in.lengthM("distance")));
        all.put("jetFlow", in -> jet(in).flowM3PerS(in.lengthM("distance")));
        all.put("jetEnergyFlux", in -> jet(in).energyFluxW(in.lengthM("distance")));
        all.put("impactorEfficiency", in -> Impaction.efficiency(in.number("stokes")));
        all.put(
                "impactorCut",
                in -> Impaction.cutM(
                        in.si("density", Dimension.DENSITY),
                        in.si("speed", Dimension.SPEED),
                        in.lengthM("jet"),
                        in.air()));
        all.put(
                "impactorCutTimesRootSlip",
                in -> Impaction.cutTimesRootSlipM(
                        in.si("density", Dimension.DENSITY),
                        in.si("speed", Dimension.SPEED),
                        in.lengthM("jet"),
                        in.air()));
        all.put("freeJetCut", NozzleQuantities::freeJetCut);
        all.put(
                "nukiyamaTanasawa",
                in -> Atomiser.nukiyamaTanasawa(conditions(in)).sauterM());
        all.put(
                "rizkLefebvre",
                in -> Atomiser.rizkLefebvre(conditions(in), in.lengthM("orifice"))
                        .sauterM());
        all.put(
                "elShanawanyLefebvre",
                in -> Atomiser.elShanawanyLefebvre(conditions(in), in.lengthM("orifice"), in.lengthM("orifice"))
                        .sauterM());
        all.put("sauterOverMedian", in -> sizes(in).sauterM() / sizes(in).medianM());
        all.put("relativeSpan", in -> sizes(in).span());
        all.put(
                "quantileOverMedian",
                in -> sizes(in).quantileM(in.number("share")) / sizes(in).medianM());
        all.put("shareFinerThan", in -> sizes(in).below(in.lengthM("size")));
        all.put("binMeanOverMedian", NozzleQuantities::binMean);
        all.put("boreLoss", in -> bore(in).pressurePa());
        all.put(
                "countMedianOverMedian",
                in -> new VolumeDistribution.LogNormal(1, Math.log(in.number("deviation"))).countMedianM());
        all.put("fogOverSpeedWidth", in -> RoundJet.FOG_WIDTH);
        all.put("wallShearPeak", in -> WallShear.peakPa(orifice(in).thrustN(), in.lengthM("distance")));
        all.put("stagnationForceShare", in -> WallShear.stagnationForceOverThrust());
        all.put("mergedSpeedRatio", in -> JetMerging.ratioOnAxis(in.whole("jets"), in.si("angle", Dimension.ANGLE)));
        all.put("feedTubeMassFlow", in -> feed(in).massKgPerS());
        all.put("feedTubeLoss", in -> in.si("supply", Dimension.PRESSURE) - feed(in).tipGaugePa());
        all.put("meteredFlow", NozzleQuantities::metered);
        all.put("boreReynolds", in -> bore(in).reynolds());
        return all;
    }

    private static ChokedOrifice orifice(Inputs in) {
        Air air = in.air();
        return ChokedOrifice.of(
                in.lengthM("orifice"),
                in.si("coefficient", Dimension.FRACTION),
                in.si("supply", Dimension.PRESSURE),
                air.temperatureK(),
                air.pressurePa());
    }

    private static FeedTube.Flow feed(Inputs in) {
        double bore = in.lengthM("bore");
        return FeedTube.through(
                bore,
                in.number("friction") * in.lengthM("length") / bore,
                in.lengthM("orifice"),
                in.si("coefficient", Dimension.FRACTION),
                in.si("supply", Dimension.PRESSURE),
                in.air().temperatureK(),
                in.air().pressurePa());
    }

    /** Liquid at a pressure from a catch-cup test at another. */
    private static double metered(Inputs in) {
        ProductSpec oil = new ProductSpec(
                "oil",
                in.si("density", Dimension.DENSITY),
                in.si("viscosity", Dimension.DYNAMIC_VISCOSITY),
                0.03,
                1,
                in.air().temperatureK());
        SupplySpec.CatchCup cup =
                new SupplySpec.CatchCup(in.si("caught", Dimension.MASS_FLOW), in.si("at", Dimension.PRESSURE), 0, 0);
        double length = in.lengthM("length");
        double bore = in.lengthM("bore");
        return LiquidMeter.fit(List.of(cup), oil, length, bore)
                .rateKgPerS(in.si("supply", Dimension.PRESSURE), oil, length, bore);
    }

    private static double gasDensity(Air air) {
        return air.pressurePa() / (Air.GAS_CONSTANT * air.temperatureK());
    }

    /** A jet by its orifice and supply, or by exit speed and nozzle. */
    private static RoundJet jet(Inputs in) {
        double density = in.air().densityKgPerM3();
        if (in.has("supply")) {
            ChokedOrifice o = orifice(in);
            return new RoundJet(o.thrustN(), o.effectiveSpeedMPerS(), density);
        }
        double speed = in.si("speed", Dimension.SPEED);
        double d = in.lengthM("nozzle");
        return new RoundJet(density * Math.PI / 4 * d * d * speed * speed, speed, density);
    }

    /** Cut diameter where a free jet meets a wall: centre speed, jet diameter 2b, without slip as in the closed form. */
    private static double freeJetCut(Inputs in) {
        RoundJet jet = jet(in);
        double x = in.lengthM("distance");
        return Impaction.cutTimesRootSlipM(
                in.si("density", Dimension.DENSITY), jet.centreSpeedMPerS(x), 2 * jet.halfWidthM(x), in.air());
    }

    private static Atomiser.Conditions conditions(Inputs in) {
        return new Atomiser.Conditions(
                in.si("density", Dimension.DENSITY),
                in.si("viscosity", Dimension.DYNAMIC_VISCOSITY),
                in.si("tension", Dimension.SURFACE_TENSION),
                in.air().densityKgPerM3(),
                in.si("speed", Dimension.SPEED),
                in.number("airLiquidRatio"));
    }

    private static VolumeDistribution sizes(Inputs in) {
        return in.has("deviation")
                ? VolumeDistribution.of(new DropletSpec.LogNormal(median(in), in.number("deviation")))
                : VolumeDistribution.of(new DropletSpec.RosinRammler(median(in), in.number("spread")));
    }

    private static double median(Inputs in) {
        return in.si("dv50", Dimension.LENGTH, 1e-4);
    }

    /** Mass-weighted mean diameter of the bins over the volume median. */
    private static double binMean(Inputs in) {
        DropletSpec spec = in.has("deviation")
                ? new DropletSpec.LogNormal(median(in), in.number("deviation"))
                : new DropletSpec.RosinRammler(median(in), in.number("spread"));
        SizeBins bins = DropletBins.of(spec, in.whole("bins"));
        double sum = 0;
        for (int b = 0; b < bins.count(); b++) {
            sum += bins.share()[b] * bins.diameterM()[b];
        }
        return sum / median(in);
    }

    private static BoreLoss bore(Inputs in) {
        return BoreLoss.of(
                in.lengthM("length"),
                in.lengthM("bore"),
                in.si("flow", Dimension.MASS_FLOW),
                in.si("density", Dimension.DENSITY),
                in.si("viscosity", Dimension.DYNAMIC_VISCOSITY));
    }
}
