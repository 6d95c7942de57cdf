package baymist.scene.io;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.units.Dimension;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes product and supply: what {@link SupplyAssembler} reads, the other way round. */
final class SupplyWriting {
    /** Time that a catch-cup test is told for, s. */
    private static final double CUP_S = 60;

    private SupplyWriting() {}

    static Object product(ProductSpec p) {
        return Written.group()
                .put("name", p.name())
                .put("density", Written.of(p.densityKgPerM3(), Dimension.DENSITY))
                .put("viscosity", Written.of(p.viscosityPaS(), Dimension.DYNAMIC_VISCOSITY))
                .put("surface_tension", Written.of(p.surfaceTensionNPerM(), Dimension.SURFACE_TENSION))
                .put("non_volatile", p.nonVolatile())
                .put("temperature", Written.of(p.temperatureK(), Dimension.TEMPERATURE))
                .put("residual_film", Written.length(p.residualFilmM()))
                .put("yield_stress", Written.of(p.yieldStressPa(), Dimension.PRESSURE))
                .put(
                        "creep",
                        Written.group()
                                .put("distance", Written.length(p.creepM()))
                                .put("time", Written.time(p.creepS()))
                                .map(),
                        p.creepM() > 0)
                .put("setting_time", Written.time(p.settingS()), Double.isFinite(p.settingS()))
                .map();
    }

    static Object supply(SupplySpec s, double densityKgPerM3) {
        if (s instanceof SupplySpec.ExitSpeed e) {
            return Written.group()
                    .put("exit_speed", Written.of(e.speedMPerS(), Dimension.SPEED), e.speedMPerS() > 0)
                    .put("liquid", liquid(e.liquidKgPerS(), densityKgPerM3), e.liquidKgPerS() > 0)
                    .put("droplets", droplets(e.droplets()))
                    .map();
        }
        SupplySpec.Pressure p = (SupplySpec.Pressure) s;
        SupplySpec.Feed feed = p.feed();
        return Written.group()
                .put("pressure", Written.of(p.gaugePa(), Dimension.PRESSURE))
                .put("discharge_coefficient", p.dischargeCoefficient())
                .put(
                        "liquid",
                        liquid(p.liquidKgPerS(), densityKgPerM3),
                        p.cups().isEmpty())
                .put(
                        "catch_cup",
                        Written.list(p.cups(), c -> cup(c, densityKgPerM3)),
                        !p.cups().isEmpty())
                .put("feed", feed == null ? null : feed(feed))
                .put("droplets", droplets(p.droplets()))
                .map();
    }

    /** By volume where a short number says it, else by mass. */
    private static String liquid(double kgPerS, double densityKgPerM3) {
        double volume = kgPerS / densityKgPerM3;
        String text = Quantities.format(volume, Dimension.VOLUME_FLOW, "mL/min", 7);
        double read = Quantities.parse(text, Dimension.VOLUME_FLOW) * densityKgPerM3;
        return Math.abs(read - kgPerS) <= 1e-13 * kgPerS ? text : Written.of(kgPerS, Dimension.MASS_FLOW);
    }

    private static Object feed(SupplySpec.Feed f) {
        return Written.group()
                .put("air_bore", Written.length(f.airBoreM()))
                .put("length", Written.length(f.lengthM()), f.lengthM() > 0)
                .put("friction", f.friction())
                .map();
    }

    private static Object cup(SupplySpec.CatchCup c, double densityKgPerM3) {
        return Written.group()
                .put("volume", Written.of(c.liquidKgPerS() / densityKgPerM3 * CUP_S, Dimension.VOLUME))
                .put("time", Written.time(CUP_S))
                .put("pressure", Written.of(c.gaugePa(), Dimension.PRESSURE))
                .put("length", Written.length(c.lengthM()), c.lengthM() > 0)
                .put("bore", Written.length(c.boreM()), c.boreM() > 0)
                .map();
    }

    private static Object droplets(DropletSpec d) {
        if (d instanceof DropletSpec.Tracer) {
            return "tracer";
        }
        if (d instanceof DropletSpec.Adjusted a) {
            return sizes(a.sizes())
                    .put("setting", a.setting(), a.setting() != 1 || a.dv50Factor() == 0)
                    .put("dv50_within", a.dv50Factor(), a.dv50Factor() > 0)
                    .map();
        }
        return sizes(d).map();
    }

    private static Written.Group sizes(DropletSpec d) {
        Written.Group g = Written.group();
        if (d instanceof DropletSpec.RosinRammler r) {
            return g.put("rosin_rammler", two("dv50", Written.length(r.dv50M()), "spread", r.spread()));
        }
        if (d instanceof DropletSpec.LogNormal l) {
            return g.put("log_normal", two("dv50", Written.length(l.dv50M()), "deviation", l.geometricDeviation()));
        }
        if (d instanceof DropletSpec.Sheet s) {
            return g.put(
                    "sheet",
                    Written.group()
                            .put("dv10", Written.length(s.dv10M()))
                            .put("dv50", Written.length(s.dv50M()))
                            .put("dv90", Written.length(s.dv90M()))
                            .map());
        }
        if (d instanceof DropletSpec.Correlation c) {
            return g.put(
                    "correlation",
                    Written.group()
                            .put("form", c.form().name().toLowerCase(Locale.ROOT))
                            .put("spread", c.spread())
                            .put("outside_range", c.outsideRange() ? "allow" : "refuse")
                            .map());
        }
        if (d instanceof DropletSpec.Classes c) {
            List<Object> all = new ArrayList<>();
            for (int i = 0; i < c.diameterM().length; i++) {
                all.add(two("diameter", Written.length(c.diameterM()[i]), "share", c.share()[i]));
            }
            return g.put("classes", all);
        }
        throw new IllegalArgumentException("droplets of no stated sizes: " + d);
    }

    private static Map<String, Object> two(String a, @Nullable Object first, String b, @Nullable Object second) {
        return Written.group().put(a, first).put(b, second).map();
    }
}
