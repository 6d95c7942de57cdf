package baymist.viewer.model;

import baymist.recording.Curves;
import baymist.recording.Recording;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Curves of a run beside the picture.
 *
 * @param endS end of the job, s
 * @param series curves over the same times
 */
public record ChartModel(double endS, List<Series> series) {
    /** Product is told in g up to this mass, above it in kg. */
    private static final double GRAMS_TO_KG = 1;

    public ChartModel {
        series = List.copyOf(series);
    }

    /**
     * One curve. Arrays [points], shared, not to be written to.
     *
     * @param name what it tells, e.g. "coverage"
     * @param unit of {@code value}
     * @param timeS ascending, s
     * @param top a round number not below any value, for the axis; above 0
     */
    public record Series(String name, String unit, String tip, double[] timeS, double[] value, double top) {
        /** Value at a time, straight between points and level beyond the ends. */
        public double at(double atS) {
            int high = 0;
            while (high < timeS.length && timeS[high] <= atS) {
                high++;
            }
            if (high == 0) {
                return value[0];
            }
            if (high == timeS.length) {
                return value[high - 1];
            }
            double w = (atS - timeS[high - 1]) / (timeS[high] - timeS[high - 1]);
            return value[high - 1] + w * (value[high] - value[high - 1]);
        }

        /** Name, value and unit at a time, for the cursor. */
        public String text(double atS) {
            double v = at(atS);
            return String.format(Locale.ROOT, "%s %." + (Math.abs(v) < 10 ? 2 : 1) + "f %s", name, v, unit);
        }
    }

    /** Fog in the air, coverage, product used. */
    public static ChartModel of(Recording recording) {
        Curves c = recording.curves();
        double used = c.count() > 0 ? c.sprayedKg()[c.count() - 1] : 0;
        boolean kg = used > GRAMS_TO_KG;
        return new ChartModel(
                recording.endS(),
                List.of(
                        series(
                                c,
                                "fog in the air",
                                "%",
                                "share of what was sprayed so far that hangs in the air",
                                n -> 100 * c.airborneShare(n)),
                        series(
                                c,
                                "coverage",
                                "%",
                                "share of the structure's surface with at least the haze film",
                                n -> 100 * c.reached()[n]),
                        series(
                                c,
                                "product used",
                                kg ? "kg" : "g",
                                "product that left the tip so far",
                                n -> (kg ? 1 : 1e3) * c.sprayedKg()[n])));
    }

    private static Series series(Curves c, String name, String unit, String tip, IntToDoubleFunction value) {
        double[] values = IntStream.range(0, c.count()).mapToDouble(value).toArray();
        double most = IntStream.range(0, values.length)
                .mapToDouble(n -> values[n])
                .max()
                .orElse(0);
        double top = unit.equals("%") ? 100 : roundUp(most);
        return new Series(name, unit, tip, c.timeS(), values, top);
    }

    /** The next of 1, 2, 5 times a power of ten. */
    static double roundUp(double value) {
        if (!(value > 0)) {
            return 1;
        }
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double step : new double[] {1, 2, 5}) {
            if (value <= step * power * (1 + 1e-12)) {
                return step * power;
            }
        }
        return 10 * power;
    }
}
