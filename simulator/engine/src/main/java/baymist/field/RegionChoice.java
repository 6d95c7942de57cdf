package baymist.field;

import baymist.geom.Vec3;

/** Which surfaces a reach field is asked for. */
public sealed interface RegionChoice {
    /**
     * A bare region of the scene's own run.
     *
     * @param name its number as the run counts it, 1 = largest, or its label, such as 3.7c
     */
    record Bare(String name) implements RegionChoice {
        /** By its number. */
        public Bare(int id) {
            this(String.valueOf(id));
        }
    }

    /**
     * The sheet round a point, on its side of it.
     *
     * @param pointM any point near the sheet, m
     * @param withinM distance along which it counts, m, above 0
     */
    record At(Vec3 pointM, double withinM) implements RegionChoice {
        /** Distance where nothing is stated, m (ASSUMED: a hand's breadth round the place). */
        public static final double WITHIN_M = 0.06;
    }

    /** The inside of a whole part. */
    record OfPart(String name) implements RegionChoice {}
}
