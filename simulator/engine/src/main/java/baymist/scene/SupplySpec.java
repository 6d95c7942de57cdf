package baymist.scene;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** How air and liquid are driven to the tip. */
public sealed interface SupplySpec {
    DropletSpec droplets();

    /** Liquid sprayed by the whole tip, kg/s; with {@link Pressure#cups} what the first of them caught. */
    double liquidKgPerS();

    /** The same supply with other droplets. */
    SupplySpec withDroplets(DropletSpec other);

    /** The same supply with this many times the liquid; catch-cup tests are scaled alike. */
    SupplySpec withLiquidTimes(double factor);

    /**
     * Air from a regulated supply.
     *
     * @param gaugePa pressure above ambient, Pa: at the tip, or with a {@code feed} where the hose ends
     * @param dischargeCoefficient of the air orifices, 0..1
     * @param feed bores between the gauge and the tip, or null where the pressure holds at the tip
     * @param cups catch-cup tests that the liquid rate is fitted to; empty = the stated rate holds as it is
     */
    record Pressure(
            double gaugePa,
            double dischargeCoefficient,
            double liquidKgPerS,
            DropletSpec droplets,
            @Nullable Feed feed,
            List<CatchCup> cups)
            implements SupplySpec {
        public Pressure {
            cups = List.copyOf(cups);
        }

        /** Pressure and liquid rate as they are at the tip. */
        public Pressure(double gaugePa, double dischargeCoefficient, double liquidKgPerS, DropletSpec droplets) {
            this(gaugePa, dischargeCoefficient, liquidKgPerS, droplets, null, List.of());
        }

        @Override
        public SupplySpec withDroplets(DropletSpec other) {
            return new Pressure(gaugePa, dischargeCoefficient, liquidKgPerS, other, feed, cups);
        }

        @Override
        public SupplySpec withLiquidTimes(double factor) {
            List<CatchCup> scaled = cups.stream()
                    .map(c -> new CatchCup(factor * c.liquidKgPerS(), c.gaugePa(), c.lengthM(), c.boreM()))
                    .toList();
            return new Pressure(gaugePa, dischargeCoefficient, factor * liquidKgPerS, droplets, feed, scaled);
        }
    }

    /** Each jet stated by its exit speed through its own orifice, air at ambient density (for outside cases). */
    record ExitSpeed(double speedMPerS, double liquidKgPerS, DropletSpec droplets) implements SupplySpec {
        @Override
        public SupplySpec withDroplets(DropletSpec other) {
            return new ExitSpeed(speedMPerS, liquidKgPerS, other);
        }

        @Override
        public SupplySpec withLiquidTimes(double factor) {
            return new ExitSpeed(speedMPerS, factor * liquidKgPerS, droplets);
        }
    }

    /**
     * Bores from where the pressure is read to the tip, of a wand that mixes at its tip: liquid and air each have their own.
     *
     * @param airBoreM diameter of the air's way, m; of another section its hydraulic diameter
     * @param lengthM length of both bores, m; 0 = that of the wand
     * @param friction Darcy's friction factor of the air's way
     */
    record Feed(double airBoreM, double lengthM, double friction) {}

    /**
     * One catch-cup test.
     *
     * @param liquidKgPerS liquid caught per time, kg/s, above 0
     * @param gaugePa pressure that drove it, Pa above ambient
     * @param lengthM length of the wand's bore in the test, m; 0 = that of the wand sprayed with
     * @param boreM its diameter, m; 0 = that of the wand sprayed with
     */
    record CatchCup(double liquidKgPerS, double gaugePa, double lengthM, double boreM) {}
}
