package baymist.recording;

import java.util.Arrays;

/** Finds its way in ascending times. */
final class Times {
    private Times() {}

    /** What is made of the two neighbours of a time. */
    interface Between<T> {
        /** Made of both, {@code w} being the share of {@code high}, 0..1. */
        T of(int low, int high, double w);
    }

    /** Last place at or before a time; 0 before the first. */
    static int at(double[] times, double timeS) {
        int found = Arrays.binarySearch(times, timeS);
        if (found < 0) {
            return Math.max(0, -found - 2);
        }
        while (found + 1 < times.length && times[found + 1] == timeS) {
            found++;
        }
        return found;
    }

    static <T> T mix(double[] times, double timeS, Between<T> between) {
        int low = at(times, timeS);
        int high = Math.min(low + 1, times.length - 1);
        double span = times[high] - times[low];
        double w = span > 0 ? Math.max(0, Math.min(1, (timeS - times[low]) / span)) : 0;
        return between.of(low, high, w);
    }
}
