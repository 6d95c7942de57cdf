package baymist.viewer.draw;

import java.util.Arrays;

/** Orders see-through things for drawing: the farthest first, equals by number, so that the order is the same every time. */
public final class DrawOrder {
    private DrawOrder() {}

    /** A number that sorts as {@code value} does, carrying an index. */
    static long key(float value, int index) {
        int bits = Float.floatToIntBits(value);
        int ordered = bits ^ (bits >> 31 & Integer.MAX_VALUE);
        return (long) ordered << 32 | index;
    }

    static int index(long key) {
        return (int) key;
    }

    /**
     * Indices in drawing order.
     *
     * @param depth distance ahead of the eye
     */
    public static int[] farthestFirst(float[] depth) {
        long[] keys = new long[depth.length];
        for (int i = 0; i < keys.length; i++) {
            keys[i] = key(-depth[i], i);
        }
        Arrays.sort(keys);
        int[] order = new int[keys.length];
        for (int i = 0; i < order.length; i++) {
            order[i] = index(keys[i]);
        }
        return order;
    }
}
