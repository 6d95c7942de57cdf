package baymist.export;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A named array of a VTK XML file.
 *
 * @param name with the unit at its end
 * @param type the format's own word: Float32, Float64, Int32, Int64, UInt8 or String
 * @param components numbers of one tuple: 1 for a scalar, 3 for a vector
 * @param tuples number of tuples
 * @param bytes little-endian, tuple after tuple; of strings UTF-8, a zero after each
 */
record VtkArray(String name, String type, int components, int tuples, byte[] bytes) {
    /** Numbers to the last bit. */
    static VtkArray doubles(String name, int components, double[] values) {
        byte[] b = bytes(8L * values.length);
        little(b).asDoubleBuffer().put(values);
        return new VtkArray(name, "Float64", components, values.length / components, b);
    }

    /** Numbers to seven digits. */
    static VtkArray floats(String name, int components, double[] values) {
        byte[] b = bytes(4L * values.length);
        ByteBuffer into = little(b);
        for (double v : values) {
            into.putFloat((float) v);
        }
        return new VtkArray(name, "Float32", components, values.length / components, b);
    }

    static VtkArray floats(String name, int components, float[] values) {
        byte[] b = bytes(4L * values.length);
        little(b).asFloatBuffer().put(values);
        return new VtkArray(name, "Float32", components, values.length / components, b);
    }

    static VtkArray ints(String name, int[] values) {
        byte[] b = bytes(4L * values.length);
        little(b).asIntBuffer().put(values);
        return new VtkArray(name, "Int32", 1, values.length, b);
    }

    static VtkArray bytes(String name, byte[] values) {
        return new VtkArray(name, "UInt8", 1, values.length, values);
    }

    static VtkArray strings(String name, List<String> values) {
        byte[] bytes = (String.join("\0", values) + (values.isEmpty() ? "" : "\0")).getBytes(StandardCharsets.UTF_8);
        return new VtkArray(name, "String", 1, values.size(), bytes);
    }

    private static byte[] bytes(long count) {
        if (count > Integer.MAX_VALUE - 64) {
            throw new IllegalArgumentException("an array of " + count + " bytes is too large for one file");
        }
        return new byte[(int) count];
    }

    private static ByteBuffer little(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
