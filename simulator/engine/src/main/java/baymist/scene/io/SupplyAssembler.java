package baymist.scene.io;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.ViscosityTemperature;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Makes the product at its temperature of use and the supply, whose liquid may be stated by volume. */
final class SupplyAssembler {
    private static final double SHARE_SLACK = 0.015;

    private final Problems problems;

    SupplyAssembler(Problems problems) {
        this.problems = problems;
    }

    ProductSpec product(Fields f) {
        double density = f.si("density");
        double temperature = f.si("temperature");
        Fields creep = f.fields("creep");
        return new ProductSpec(
                f.text("name"),
                density,
                viscosityPaS(f, density, temperature),
                f.si("surface_tension"),
                f.si("non_volatile"),
                temperature,
                f.si("residual_film"),
                f.si("yield_stress"),
                creep == null ? 0 : creep.si("distance"),
                creep == null ? 1 : creep.si("time"),
                f.si("setting_time", Double.POSITIVE_INFINITY));
    }

    private double viscosityPaS(Fields f, double density, double temperatureK) {
        if (f.get("viscosity") instanceof Value.Num n) {
            return dynamic(n, density);
        }
        List<Fields> points = f.list("viscosity");
        if (points.size() != 2) {
            return Double.NaN;
        }
        double[] v = new double[2];
        double[] t = new double[2];
        for (int i = 0; i < 2; i++) {
            v[i] = points.get(i).get("value") instanceof Value.Num n ? dynamic(n, density) / density : Double.NaN;
            t[i] = points.get(i).si("at");
        }
        if (Double.isNaN(v[0] + v[1] + t[0] + t[1] + temperatureK)) {
            return Double.NaN;
        }
        try {
            double kinematic =
                    ViscosityTemperature.through(t[0], v[0], t[1], v[1]).kinematicM2PerS(temperatureK);
            if (!(kinematic >= ViscosityTemperature.MIN_M2_PER_S && kinematic <= ViscosityTemperature.MAX_M2_PER_S)) {
                throw new IllegalArgumentException("at " + f.written("temperature") + " the line gives "
                        + Quantities.format(kinematic, Dimension.KINEMATIC_VISCOSITY, "cSt", 3)
                        + ", outside 0.21 to 2e7 cSt");
            }
            return kinematic * density;
        } catch (IllegalArgumentException e) {
            problems.add(
                    SceneProblem.VISCOSITY,
                    f.at("viscosity"),
                    "the viscosities " + points.get(0).written("value") + " at "
                            + points.get(0).written("at") + " and "
                            + points.get(1).written("value") + " at "
                            + points.get(1).written("at")
                            + " make no line of ASTM D341: " + e.getMessage());
            return Double.NaN;
        }
    }

    private static double dynamic(Value.Num n, double density) {
        return n.unitOf().equals(Dimension.KINEMATIC_VISCOSITY.name()) ? n.si() * density : n.si();
    }

    /**
     * @param sprays whether the scene has passes, so that air and liquid must be stated
     */
    SupplySpec supply(Fields f, double densityKgPerM3, boolean sprays) {
        DropletSpec droplets = droplets(f.get("droplets"));
        double liquid = liquidKgPerS(f, densityKgPerM3);
        if (sprays && !f.has("pressure") && !f.has("exit_speed")) {
            problems.add(
                    SceneProblem.NO_SPRAY,
                    f.place(),
                    "the scene has passes but no air; state `pressure` (or `exit_speed`)");
        }
        if (sprays && !f.has("liquid") && !f.has("catch_cup")) {
            problems.add(
                    SceneProblem.NO_SPRAY,
                    f.place(),
                    "the scene has passes but no liquid; state `liquid` or `catch_cup`");
        }
        if (!f.has("pressure")) {
            refuseFeed(f);
            return new SupplySpec.ExitSpeed(f.si("exit_speed", 0), liquid, droplets);
        }
        return new SupplySpec.Pressure(
                f.si("pressure"), f.si("discharge_coefficient"), liquid, droplets, feed(f), cups(f, densityKgPerM3));
    }

    private void refuseFeed(Fields f) {
        for (String key : List.of("feed", "catch_cup")) {
            boolean scaled = key.equals("feed")
                    ? f.has(key)
                    : tests(f).size() > 1 || tests(f).stream().anyMatch(SupplyAssembler::scaled);
            if (scaled) {
                problems.add(
                        SceneProblem.FEED,
                        f.at(key),
                        "`" + key
                                + "` tells how pressure is spent on the way to the tip, but the supply states no `pressure`"
                                + (key.equals("feed")
                                        ? ""
                                        : "; one test without `pressure`, `length` and `bore` will do"));
            }
        }
    }

    private static SupplySpec.@Nullable Feed feed(Fields f) {
        Fields feed = f.fields("feed");
        return feed == null
                ? null
                : new SupplySpec.Feed(feed.si("air_bore"), feed.si("length", 0), feed.si("friction"));
    }

    /** Catch-cup tests that the rate depends on pressure or bore by; none where one test was made as the job is done. */
    private static List<SupplySpec.CatchCup> cups(Fields f, double density) {
        List<Fields> tests = tests(f);
        if (tests.size() < 2 && tests.stream().noneMatch(SupplyAssembler::scaled)) {
            return List.of();
        }
        return tests.stream()
                .map(t -> new SupplySpec.CatchCup(
                        caught(t, density), t.si("pressure", f.si("pressure")), t.si("length", 0), t.si("bore", 0)))
                .toList();
    }

    private static boolean scaled(Fields test) {
        return test.has("pressure") || test.has("length") || test.has("bore");
    }

    private static List<Fields> tests(Fields f) {
        Fields one = f.fields("catch_cup");
        return one != null ? List.of(one) : f.list("catch_cup");
    }

    private static double caught(Fields test, double density) {
        return test.si("volume") / test.si("time") * density;
    }

    private static double liquidKgPerS(Fields f, double density) {
        List<Fields> tests = tests(f);
        if (!tests.isEmpty()) {
            return caught(tests.get(0), density);
        }
        if (f.get("liquid") instanceof Value.Num n) {
            return n.unitOf().equals(Dimension.VOLUME_FLOW.name()) ? n.si() * density : n.si();
        }
        return f.has("liquid") || f.has("catch_cup") ? Double.NaN : 0;
    }

    private DropletSpec droplets(@Nullable Value value) {
        if (!(value instanceof Fields f)) {
            return new DropletSpec.Tracer();
        }
        DropletSpec sizes = sizes(f);
        if (!f.has("setting") && !f.has("dv50_within")) {
            return sizes;
        }
        double usual = sizes instanceof DropletSpec.Correlation ? 0 : sizes.dv50Factor();
        return new DropletSpec.Adjusted(sizes, setting(f), f.si("dv50_within", usual));
    }

    /** One click of a nozzle's setting is taken as the square root of 2 (ASSUMED; a number says it better). */
    private static double setting(Fields f) {
        if (!f.has("setting")) {
            return 1;
        }
        return switch (f.text("setting")) {
            case "finer" -> Math.sqrt(0.5);
            case "coarser" -> Math.sqrt(2);
            default -> f.si("setting");
        };
    }

    private DropletSpec sizes(Fields f) {
        Fields sheet = f.fields("sheet");
        if (sheet != null) {
            return sheet(sheet);
        }
        Fields law = f.fields("correlation");
        if (law != null) {
            String form = law.text("form");
            return form.isEmpty()
                    ? new DropletSpec.Tracer()
                    : new DropletSpec.Correlation(
                            DropletSpec.Correlation.Form.valueOf(form.toUpperCase(Locale.ROOT)),
                            law.si("spread"),
                            law.text("outside_range").equals("allow"));
        }
        Fields rosin = f.fields("rosin_rammler");
        if (rosin != null) {
            return new DropletSpec.RosinRammler(rosin.si("dv50"), rosin.si("spread"));
        }
        Fields log = f.fields("log_normal");
        if (log != null) {
            return new DropletSpec.LogNormal(log.si("dv50"), log.si("deviation"));
        }
        return classes(f);
    }

    private DropletSpec sheet(Fields f) {
        DropletSpec.Sheet sheet = new DropletSpec.Sheet(f.si("dv10"), f.si("dv50"), f.si("dv90"));
        if (sheet.dv10M() >= sheet.dv50M() || sheet.dv50M() >= sheet.dv90M()) {
            problems.add(
                    SceneProblem.SIZES,
                    f.place(),
                    "Dv10 " + f.written("dv10") + ", Dv50 " + f.written("dv50") + " and Dv90 " + f.written("dv90")
                            + " do not ascend; Dv10 < Dv50 < Dv90 is wanted");
        }
        return sheet;
    }

    private DropletSpec classes(Fields f) {
        List<Fields> classes = f.list("classes");
        double[] diameter = classes.stream().mapToDouble(c -> c.si("diameter")).toArray();
        double[] share = classes.stream().mapToDouble(c -> c.si("share")).toArray();
        double sum = 0;
        for (double s : share) {
            sum += s;
        }
        if (Math.abs(sum - 1) > SHARE_SLACK) {
            problems.add(
                    SceneProblem.SHARES,
                    f.at("classes"),
                    "the shares of all sizes sum to " + Quantities.number(sum, 4) + "; they must sum to 1");
        }
        for (int i = 0; i < share.length; i++) {
            share[i] /= sum;
        }
        return new DropletSpec.Classes(diameter, share);
    }
}
