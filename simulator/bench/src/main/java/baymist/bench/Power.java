package baymist.bench;

/** Exponents of growth: time as size to some power. */
final class Power {
    private Power() {}

    /** Between two of the sizes. */
    static double between(double[] size, double[] time, int a, int b) {
        return Math.log(time[b] / time[a]) / Math.log(size[b] / size[a]);
    }

    /** Slope of the least-squares line through the logarithms of all of them. */
    static double fitted(double[] size, double[] time) {
        double x = 0;
        double y = 0;
        for (int i = 0; i < size.length; i++) {
            x += Math.log(size[i]) / size.length;
            y += Math.log(time[i]) / size.length;
        }
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < size.length; i++) {
            double dx = Math.log(size[i]) - x;
            xx += dx * dx;
            xy += dx * (Math.log(time[i]) - y);
        }
        return xy / xx;
    }
}
