package baymist.report;

import baymist.geom.Vec3;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;

/** Small helpers over the JSON library: numbers that JSON can hold, vectors, one way of printing. */
final class Json {
    private Json() {}

    static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    static ArrayNode array() {
        return JsonNodeFactory.instance.arrayNode();
    }

    /** Puts a number; JSON has no infinity, so a number that is not finite becomes null. */
    static void number(ObjectNode into, String key, double value) {
        if (Double.isFinite(value)) {
            into.put(key, value);
        } else {
            into.putNull(key);
        }
    }

    static ArrayNode vector(Vec3 v) {
        return JsonNodeFactory.instance.arrayNode().add(v.x()).add(v.y()).add(v.z());
    }

    /** Prints with two blanks of indent and line feeds, whatever the platform, and a last line feed. */
    static void write(ObjectNode root, Writer out) throws IOException {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        printer.indentObjectsWith(indenter);
        printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
        ObjectMapper mapper = new ObjectMapper();
        mapper.configure(JsonGenerator.Feature.AUTO_CLOSE_TARGET, false);
        mapper.writer(printer).writeValue(out, root);
        out.write("\n");
        out.flush();
    }
}
