package baymist.coverage;

/**
 * Where a region lies along one axis between the two ends of the surface that it is on.
 *
 * @param lowM,highM extent of the region, m
 * @param start,end the same as shares of the way from the low end to the high end, 0..1
 * @param middle area-weighted middle, as a share
 * @param lowEnd,highEnd member at either end, or null where none bounds the surface
 * @param touchesLow,touchesHigh whether the region comes up to that end
 */
record Span(
        int axis,
        double lowM,
        double highM,
        double start,
        double end,
        double middle,
        Ends.@org.jspecify.annotations.Nullable Member lowEnd,
        Ends.@org.jspecify.annotations.Nullable Member highEnd,
        boolean touchesLow,
        boolean touchesHigh) {
    /** Where a region is along an axis. */
    enum Place {
        FULL,
        AT_LOW_END,
        AT_HIGH_END,
        LOW_PART,
        HIGH_PART,
        MIDDLE
    }

    /** A region is full length from this share on. ASSUMED, as are the other limits: the way people round. */
    private static final double FULL_SHARE = 0.8;

    private static final double OFF_MIDDLE = 0.1;

    double extent() {
        return end - start;
    }

    Place place() {
        if (extent() >= FULL_SHARE) {
            return Place.FULL;
        }
        if (touchesLow && middle < 0.5) {
            return Place.AT_LOW_END;
        }
        if (touchesHigh && middle > 0.5) {
            return Place.AT_HIGH_END;
        }
        if (middle < 0.5 - OFF_MIDDLE) {
            return Place.LOW_PART;
        }
        return middle > 0.5 + OFF_MIDDLE ? Place.HIGH_PART : Place.MIDDLE;
    }

    boolean isAtEnd() {
        return place() == Place.AT_LOW_END || place() == Place.AT_HIGH_END;
    }

    /** Whether the region lies towards larger coordinates; only for places that are off the middle. */
    boolean isHigh() {
        return place() == Place.AT_HIGH_END || place() == Place.HIGH_PART;
    }
}
