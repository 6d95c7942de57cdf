package baymist.viewer.draw;

import baymist.recording.FogCells;
import java.util.Arrays;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Fog as dots, each of which stands for the same mass of oil in the air: where the fog is twice as dense there are twice as many. A block's
 * dots keep their places while their number changes, so that the cloud does not flicker.
 *
 * @param kgPerDot oil that a dot stands for, kg
 */
public record FogDots(FogCells cells, double kgPerDot) {
    /** Dots such that the densest time of a job has so many. */
    public static FogDots of(FogCells cells, double peakAirborneKg, int most) {
        return new FogDots(cells, Math.max(peakAirborneKg, 1e-12) / most);
    }

    /**
     * Places of the dots, m, [3 * dots].
     *
     * @param fogKgPerM3 fog in each block
     * @param cut a plane that takes dots away, or null
     */
    public float[] places(float[] fogKgPerM3, @Nullable Cut cut) {
        float[] places = new float[3 * 1024];
        int size = 0;
        for (int b = 0; b < cells.count(); b++) {
            double wanted = fogKgPerM3[b] * cells.volumeM3()[b] / kgPerDot;
            int count = (int) Math.floor(wanted + unit(b, -1, 0));
            for (int k = 0; k < count; k++) {
                if (size + 3 > places.length) {
                    places = Arrays.copyOf(places, 2 * places.length);
                }
                for (int a = 0; a < 3; a++) {
                    places[size + a] = cells.centreM()[3 * b + a] + cells.sizeM()[a] * (unit(b, k, a) - 0.5f);
                }
                boolean away = cut != null && cut.beyondM(places[size], places[size + 1], places[size + 2]) > 0;
                size += away ? 0 : 3;
            }
        }
        return Arrays.copyOf(places, size);
    }

    /** What a dot stands for, in words. */
    public String sentence() {
        return String.format(Locale.ROOT, "Each dot stands for %s of oil in the air.", mass(kgPerDot));
    }

    private static String mass(double kg) {
        double ug = kg * 1e9;
        return ug >= 999.5 ? RoundNumbers.plain(ug / 1000) + " mg" : RoundNumbers.plain(ug) + " µg";
    }

    /** A number in 0..1 that belongs to a dot for good. Mixing: Steele, Lea and Flood (2014), the finaliser of SplitMix64. */
    private static float unit(int block, int dot, int axis) {
        long z = 0x9E3779B97F4A7C15L * (block * 4_000_037L + dot * 4L + axis + 17);
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return ((z ^ (z >>> 31)) >>> 40) * 0x1p-24f;
    }
}
