package baymist.cavity;

/**
 * NACA four-digit section, chord 1, leading edge at the origin.
 *
 * <p>Source: Jacobs, Ward and Pinkerton (1933), The characteristics of 78 related airfoil sections from tests in the
 * variable-density wind tunnel, NACA Report 460: thickness polynomial with the coefficients 0.29690, -0.12600, -0.35160,
 * 0.28430, -0.10150 (its trailing edge stays open by 0.21 % of chord at 10 % thickness, which does not matter here since the
 * spars cut the section), parabolic camber line in two arcs, thickness laid off <em>square to the camber line</em>.
 *
 * @param camber largest camber, fraction of chord
 * @param camberAt its position, fraction of chord
 * @param thickness largest thickness, fraction of chord
 */
record Naca4(double camber, double camberAt, double thickness) {
    /** @throws IllegalArgumentException with a sentence if the designation is not one of the family */
    static Naca4 of(String digits) {
        if (!digits.matches("[0-9]{4}")) {
            throw new IllegalArgumentException("'" + digits + "' is not a NACA 4-digit section such as 2412");
        }
        Naca4 section = new Naca4(
                (digits.charAt(0) - '0') / 100.0,
                (digits.charAt(1) - '0') / 10.0,
                Integer.parseInt(digits.substring(2)) / 100.0);
        if (section.thickness == 0) {
            throw new IllegalArgumentException("NACA section '" + digits + "' has no thickness; 2412 would be right");
        }
        if ((section.camber == 0) != (section.camberAt == 0)) {
            throw new IllegalArgumentException("NACA section '" + digits
                    + "' needs camber and its position both zero or both above zero, such as 0012 or 2412");
        }
        return section;
    }

    /** Half thickness at x, both fractions of chord. */
    double halfThickness(double x) {
        return thickness
                / 0.2
                * (0.29690 * Math.sqrt(x) + x * (-0.12600 + x * (-0.35160 + x * (0.28430 - 0.10150 * x))));
    }

    /** Height of the camber line at x. */
    double camberLine(double x) {
        if (camber == 0) {
            return 0;
        }
        double p = camberAt;
        return x < p
                ? camber / (p * p) * (2 * p * x - x * x)
                : camber / ((1 - p) * (1 - p)) * (1 - 2 * p + 2 * p * x - x * x);
    }

    /** Slope of the camber line at x. */
    double camberSlope(double x) {
        if (camber == 0) {
            return 0;
        }
        double p = camberAt;
        return x < p ? 2 * camber / (p * p) * (p - x) : 2 * camber / ((1 - p) * (1 - p)) * (p - x);
    }

    /** Leading-edge radius, fraction of chord (NACA Report 460: 1.1019 t squared). */
    double leadingEdgeRadius() {
        return 1.1019 * thickness * thickness;
    }

    /** Point {x, z} of the upper (sign +1) or lower (-1) surface that belongs to camber station x. */
    double[] surface(double x, int sign) {
        double angle = Math.atan(camberSlope(x));
        double half = halfThickness(x);
        return new double[] {x - sign * half * Math.sin(angle), camberLine(x) + sign * half * Math.cos(angle)};
    }

    /**
     * Height of the upper (+1) or lower (-1) surface at the true chordwise position.
     *
     * @param chordwise 0.01 to 0.99, where the surface is a function of it
     */
    double height(double chordwise, int sign) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (surface(middle, sign)[0] < chordwise) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return surface(0.5 * (low + high), sign)[1];
    }
}
