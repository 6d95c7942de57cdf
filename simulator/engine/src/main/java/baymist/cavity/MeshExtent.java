package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Whether a mesh has the size of a structure, and what a unit would make of it. */
final class MeshExtent {
    /** Extent of a structure, m; outside of this the unit of the file is most likely stated wrongly. */
    private static final double SMALLEST_M = 2e-3;

    private static final double FARTHEST_M = 100_000;

    /** A unit and its exact length, m. */
    private record Unit(String name, double lengthM) {}

    private static final List<Unit> UNITS = List.of(
            new Unit("m", 1),
            new Unit("cm", 0.01),
            new Unit("mm", 0.001),
            new Unit("in", 0.0254),
            new Unit("ft", 0.3048));

    private MeshExtent() {}

    /** Longest side of the bounding box and largest distance of a coordinate from zero, file units. */
    private static double[] extent(RawMesh raw) {
        double[] low = new double[3];
        double[] high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int t = 0; t < raw.triangles(); t++) {
            for (int k = 0; k < 9; k++) {
                double c = raw.coordinate(t, k / 3, k % 3);
                low[k % 3] = Math.min(low[k % 3], c);
                high[k % 3] = Math.max(high[k % 3], c);
            }
        }
        double extent = 0;
        double farthest = 0;
        for (int axis = 0; axis < 3; axis++) {
            extent = Math.max(extent, high[axis] - low[axis]);
            farthest = Math.max(farthest, Math.max(Math.abs(low[axis]), Math.abs(high[axis])));
        }
        return new double[] {extent, farthest};
    }

    static void check(RawMesh raw, double unitM, SourcePlace source) {
        double extent = extent(raw)[0] * unitM;
        double farthest = extent(raw)[1] * unitM;
        if (!(extent >= SMALLEST_M && extent <= SpecCheck.LARGEST_M)) {
            throw new SceneException(
                    "MSH-015",
                    source,
                    "with a unit of " + unitM + " m the mesh is " + extent
                            + " m long; 2 mm to 1000 m expected: is the unit right?");
        }
        if (!(farthest <= FARTHEST_M)) {
            throw new SceneException(
                    "MSH-015",
                    source,
                    "with a unit of " + unitM + " m the mesh lies " + farthest
                            + " m from the origin; at most 100 km expected: is the unit right?");
        }
    }

    /** Asks for the unit, with the length that each would give. */
    static String question(RawMesh raw) {
        double extent = extent(raw)[0];
        String lengths = UNITS.stream()
                .map(u -> String.format(Locale.ROOT, "%s = %s", u.name(), length(extent * u.lengthM())))
                .collect(Collectors.joining(", "));
        return String.format(
                Locale.ROOT,
                "which length unit do the mesh's coordinates have? Its longest side is %s of them, that is: %s;"
                        + " state the right one as `unit`",
                digits(extent),
                lengths);
    }

    private static String length(double m) {
        return m >= 1 ? digits(m) + " m" : digits(1000 * m) + " mm";
    }

    /** Four significant digits, no zeros after them. */
    private static String digits(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }
}
