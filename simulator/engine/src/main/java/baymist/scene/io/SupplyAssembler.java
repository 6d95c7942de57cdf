package baymist.scene.io;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.ViscosityTemperature;
import java.util.List;
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
        return f.has("pressure")
                ? new SupplySpec.Pressure(f.si("pressure"), f.si("discharge_coefficient"), liquid, droplets)
                : new SupplySpec.ExitSpeed(f.si("exit_speed", 0), liquid, droplets);
    }

    private static double liquidKgPerS(Fields f, double density) {
        Fields cup = f.fields("catch_cup");
        if (cup != null) {
            return cup.si("volume") / cup.si("time") * density;
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
        Fields rosin = f.fields("rosin_rammler");
        if (rosin != null) {
            return new DropletSpec.RosinRammler(rosin.si("dv50"), rosin.si("spread"));
        }
        Fields log = f.fields("log_normal");
        if (log != null) {
            return new DropletSpec.LogNormal(log.si("dv50"), log.si("deviation"));
        }
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
