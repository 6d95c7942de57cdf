package baymist.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.zip.Deflater;

/**
 * Writes the XML of VTK files: elements, and arrays as base64 text of zlib blocks.
 *
 * <p>Format: VTK File Formats, section "XML file formats" (Kitware, from The VTK User's Guide, 11th edition, 2010): a compressed array is
 * the base64 of [blocks, block size, size of the last block if it is a part, compressed size of each block] as 64-bit numbers, then
 * the base64 of the blocks. One writer, one thread; the {@link Writer} is left open.
 */
final class VtkXml {
    /** Bytes before compression of all blocks of an array but the last. */
    static final int BLOCK = 1 << 20;

    private final Writer out;
    private final List<String> open = new ArrayList<>();

    VtkXml(Writer out) {
        this.out = out;
    }

    /** Writes the head of a file of a type such as ImageData. */
    void begin(String type) throws IOException {
        out.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        start(
                "VTKFile type=\"" + type
                        + "\" version=\"1.0\" byte_order=\"LittleEndian\" header_type=\"UInt64\" compressor=\"vtkZLibDataCompressor\"");
    }

    /** Opens an element; {@code head} is its name and attributes as they stand between the angle brackets. */
    void start(String head) throws IOException {
        out.write("  ".repeat(open.size()) + "<" + head + ">\n");
        int blank = head.indexOf(' ');
        open.add(blank < 0 ? head : head.substring(0, blank));
    }

    /** Closes the last open element. */
    void end() throws IOException {
        String name = open.remove(open.size() - 1);
        out.write("  ".repeat(open.size()) + "</" + name + ">\n");
    }

    /** Writes an element without content. */
    void empty(String head) throws IOException {
        out.write("  ".repeat(open.size()) + "<" + head + "/>\n");
    }

    /** Closes whatever is open. */
    void finish() throws IOException {
        while (!open.isEmpty()) {
            end();
        }
        out.flush();
    }

    /** An element with arrays in it. */
    void arrays(String head, List<VtkArray> arrays) throws IOException {
        start(head);
        for (VtkArray a : arrays) {
            array(a);
        }
        end();
    }

    private void array(VtkArray a) throws IOException {
        String tag = a.type().equals("String") ? "Array" : "DataArray";
        String pad = "  ".repeat(open.size());
        out.write(
                pad + "<" + tag + " type=\"" + a.type() + "\" Name=\"" + escaped(a.name()) + "\" NumberOfComponents=\""
                        + a.components() + "\" NumberOfTuples=\"" + a.tuples() + "\" format=\""
                        + (a.type().equals("String") ? "ascii" : "binary") + "\">\n");
        out.write(pad + "  ");
        if (a.type().equals("String")) {
            codes(a.bytes());
        } else {
            packed(a.bytes());
        }
        out.write("\n" + pad + "</" + tag + ">\n");
    }

    /** Strings as the numbers of their bytes. */
    private void codes(byte[] bytes) throws IOException {
        StringBuilder text = new StringBuilder();
        for (byte b : bytes) {
            text.append(b & 0xFF).append(' ');
        }
        out.write(text.toString().strip());
    }

    private void packed(byte[] bytes) throws IOException {
        int blocks = (bytes.length + BLOCK - 1) / BLOCK;
        ByteBuffer head = ByteBuffer.allocate(8 * (3 + blocks)).order(ByteOrder.LITTLE_ENDIAN);
        head.putLong(blocks).putLong(BLOCK).putLong(bytes.length % BLOCK);
        ByteArrayOutputStream body = new ByteArrayOutputStream(bytes.length / 2 + 64);
        for (int from = 0; from < bytes.length; from += BLOCK) {
            head.putLong(deflate(bytes, from, Math.min(BLOCK, bytes.length - from), body));
        }
        Base64.Encoder text = Base64.getEncoder();
        out.write(text.encodeToString(head.array()));
        out.write(text.encodeToString(body.toByteArray()));
    }

    private static int deflate(byte[] bytes, int from, int length, ByteArrayOutputStream into) {
        Deflater zlib = new Deflater();
        try {
            zlib.setInput(bytes, from, length);
            zlib.finish();
            byte[] piece = new byte[1 << 16];
            int size = 0;
            while (!zlib.finished()) {
                int n = zlib.deflate(piece);
                into.write(piece, 0, n);
                size += n;
            }
            return size;
        } finally {
            zlib.end();
        }
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
