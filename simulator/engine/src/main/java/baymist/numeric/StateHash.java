package baymist.numeric;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 over the exact bits of a run's fields, to tell whether two runs agree bit for bit. */
public final class StateHash {
    private final MessageDigest digest;

    public StateHash() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Adds the values in order. Zero and minus zero differ, as do the bits of different not-a-numbers. */
    public StateHash add(double[] values) {
        ByteBuffer buffer = ByteBuffer.allocate(8 * Math.min(values.length, 4096));
        for (double v : values) {
            if (buffer.remaining() < 8) {
                digest.update(buffer.flip());
                buffer.clear();
            }
            buffer.putLong(Double.doubleToRawLongBits(v));
        }
        digest.update(buffer.flip());
        return this;
    }

    /** First 16 hexadecimal digits of the digest. */
    public String hex() {
        return HexFormat.of().formatHex(digest.digest(), 0, 8);
    }
}
