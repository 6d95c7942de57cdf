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
        ByteBuffer b = buffer(8L * values.length);
        b.asDoubleBuffer().put(values);
        return new VtkArray(name, "Float64", components, values.length / components, b.array());
    }

    /** Numbers to seven digits. */
    static VtkArray floats(String name, int components, double[] values) {
        ByteBuffer b = buffer(4L * values.length);
        for (double v : values) {
            b.putFloat((float) v);
        }
        return new VtkArray(name, "Float32", components, values.length / components, b.array());
    }

    static VtkArray floats(String name, int components, float[] values) {
        ByteBuffer b = buffer(4L * values.length);
        b.asFloatBuffer().put(values);
        return new VtkArray(name, "Float32", components, values.length / components, b.array());
    }

    static VtkArray ints(String name, int[] values) {
        ByteBuffer b = buffer(4L * values.length);
        b.asIntBuffer().put(values);
        return new VtkArray(name, "Int32", 1, values.length, b.array());
    }

    static VtkArray bytes(String name, byte[] values) {
        return new VtkArray(name, "UInt8", 1, values.length, values);
    }

    static VtkArray strings(String name, List<String> values) {
        byte[] bytes = (String.join("\0", values) + (values.isEmpty() ? "" : "\0")).getBytes(StandardCharsets.UTF_8);
        return new VtkArray(name, "String", 1, values.size(), bytes);
    }

    private static ByteBuffer buffer(long bytes) {
        if (bytes > Integer.MAX_VALUE - 64) {
            throw new IllegalArgumentException("an array of " + bytes + " bytes is too large for one file");
        }
        return ByteBuffer.allocate((int) bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
