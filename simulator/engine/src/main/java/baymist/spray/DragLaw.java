package baymist.spray;

/** Drag coefficient of a rigid sphere as a function of its Reynolds number {@code Re = ρ |u - v| d / μ}. */
@FunctionalInterface
public interface DragLaw {
    /** Drag coefficient; {@code reynolds} above 0. */
    double coefficient(double reynolds);

    /** Stokes (1851): 24/Re; 2 to 3 % low already at Re = 0.1. */
    DragLaw STOKES = re -> 24 / re;

    /** Schiller and Naumann (1935): (24/Re)(1 + 0.15 Re^0.687), Re below 800 to 1000. */
    DragLaw SCHILLER_NAUMANN = re -> 24 / re * (1 + 0.15 * Math.pow(re, 0.687));

    /** Clift and Gauvin, constants of 1970: valid to Re = 2e5. The set of 1971 differs by 2.4 % at Re = 200. */
    DragLaw CLIFT_GAUVIN_1970 =
            re -> 24 / re * (1 + 0.152 * Math.pow(re, 0.677)) + 0.417 / (1 + 5070 * Math.pow(re, -0.94));

    /** A drag coefficient that does not depend on the Reynolds number (exact solutions exist). */
    static DragLaw constant(double coefficient) {
        return re -> coefficient;
    }
}
