package baymist.scene.io;

import baymist.units.Dimension;
import baymist.units.Quantities;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Turns shapes into JSON Schema; named groups, families and dimensions become {@code $defs}. */
final class SchemaWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final Map<String, ObjectNode> definitions = new TreeMap<>();

    ObjectNode schema(Shape root) {
        ObjectNode schema = NODES.objectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        ObjectNode reference = of(root);
        String name = reference.get("$ref").textValue();
        schema.put("title", "Baymist " + name.substring(name.lastIndexOf('/') + 1));
        schema.setAll(reference);
        ObjectNode defs = schema.putObject("$defs");
        definitions.forEach(defs::set);
        return schema;
    }

    private ObjectNode of(Shape shape) {
        if (shape instanceof Shape.Measure m) {
            return measure(m);
        }
        if (shape instanceof Shape.Real r) {
            return real(r);
        }
        if (shape instanceof Shape.Count c) {
            return NODES.objectNode()
                    .put("type", "integer")
                    .put("minimum", c.low())
                    .put("maximum", c.high());
        }
        if (shape instanceof Shape.Text t) {
            return text(t);
        }
        if (shape instanceof Shape.Choice c) {
            ObjectNode node = NODES.objectNode();
            ArrayNode words = node.putArray("enum");
            c.words().forEach(words::add);
            return node;
        }
        if (shape instanceof Shape.ListOf l) {
            ObjectNode node = NODES.objectNode()
                    .put("type", "array")
                    .put("minItems", l.fewest())
                    .put("maxItems", l.most());
            node.set("items", of(l.item()));
            return node;
        }
        if (shape instanceof Shape.MapOf m) {
            ObjectNode node = NODES.objectNode().put("type", "object");
            node.set("additionalProperties", of(m.value()));
            return node;
        }
        if (shape instanceof Shape.Either e) {
            ObjectNode node = NODES.objectNode();
            ArrayNode any = node.putArray("anyOf");
            e.options().forEach(o -> any.add(of(o)));
            return node;
        }
        if (shape instanceof Shape.FileOr f) {
            ObjectNode node = NODES.objectNode();
            ArrayNode any = node.putArray("anyOf");
            any.addObject().put("type", "string").put("description", "a file, relative to the one that names it");
            any.add(of(f.content()));
            return node;
        }
        return shape instanceof Shape.Group g ? reference(g, null) : family((Shape.Family) shape);
    }

    private ObjectNode measure(Shape.Measure m) {
        ObjectNode node = NODES.objectNode();
        if (m.dimensions().size() == 1) {
            node.setAll(dimension(m.dimensions().get(0)));
        } else {
            ArrayNode any = node.putArray("anyOf");
            m.dimensions().forEach(d -> any.add(dimension(d)));
        }
        return node.put("description", m.range().words());
    }

    private ObjectNode dimension(Dimension d) {
        String name = d.name().toLowerCase(Locale.ROOT);
        if (!definitions.containsKey(name)) {
            ObjectNode node = NODES.objectNode();
            node.put("description", d.nounWithArticle() + " in " + String.join(", ", Quantities.units(d)));
            ArrayNode any = node.putArray("anyOf");
            any.addObject().put("type", "string").put("pattern", Quantities.pattern(d));
            if (d == Dimension.FRACTION) {
                any.addObject().put("type", "number");
            } else if (d.zeroNeedsNoUnit()) {
                any.addObject().put("const", 0);
            }
            ArrayNode examples = node.putArray("examples");
            d.examples().forEach(examples::add);
            definitions.put(name, node);
        }
        return NODES.objectNode().put("$ref", "#/$defs/" + name);
    }

    private static ObjectNode real(Shape.Real r) {
        ObjectNode node = NODES.objectNode().put("type", "number");
        node.put(r.range().lowIn() ? "minimum" : "exclusiveMinimum", r.range().low());
        node.put(r.range().highIn() ? "maximum" : "exclusiveMaximum", r.range().high());
        return node;
    }

    /** A text may look like a number or truth value to YAML; the reader takes it as it is written. */
    private static ObjectNode text(Shape.Text t) {
        ObjectNode node = NODES.objectNode();
        ArrayNode types = node.putArray("type");
        types.add("string").add("number").add("boolean");
        return node.put("pattern", "^(?:" + t.regex() + ")$").put("description", t.wanted());
    }

    private ObjectNode family(Shape.Family family) {
        if (!definitions.containsKey(family.name())) {
            ObjectNode node = NODES.objectNode();
            definitions.put(family.name(), node);
            node.put("description", family.doc()).put("type", "object");
            node.putArray("required").add(family.key());
            ArrayNode words =
                    node.putObject("properties").putObject(family.key()).putArray("enum");
            family.members().keySet().forEach(words::add);
            ArrayNode all = node.putArray("allOf");
            family.members().forEach((word, group) -> {
                ObjectNode branch = all.addObject();
                branch.putObject("if")
                        .putObject("properties")
                        .putObject(family.key())
                        .put("const", word);
                branch.set("then", reference(group, family.key()));
            });
        }
        return NODES.objectNode().put("$ref", "#/$defs/" + family.name());
    }

    private ObjectNode reference(Shape.Group group, @Nullable String familyKey) {
        if (!definitions.containsKey(group.name())) {
            ObjectNode node = NODES.objectNode();
            definitions.put(group.name(), node);
            node.put("description", group.doc()).put("type", "object");
            ObjectNode properties = node.putObject("properties");
            if (familyKey != null) {
                properties.putObject(familyKey).put("const", group.name());
            }
            ArrayNode required = NODES.arrayNode();
            for (Shape.Field field : group.fields()) {
                ObjectNode value = of(field.shape());
                String range = value.has("description")
                        ? " (" + value.get("description").textValue() + ")"
                        : "";
                value.put("description", field.doc() + range);
                if (!field.defaultText().isEmpty() && !field.defaultText().equals("{}")) {
                    putDefault(value, field);
                }
                properties.set(field.key(), value);
                if (field.required()) {
                    required.add(field.key());
                }
            }
            node.set("required", required);
            node.put("additionalProperties", false);
            picks(node, group);
        }
        return NODES.objectNode().put("$ref", "#/$defs/" + group.name());
    }

    private static void putDefault(ObjectNode value, Shape.Field field) {
        if (field.shape() instanceof Shape.Count) {
            value.put("default", Long.parseLong(field.defaultText()));
        } else {
            value.put("default", field.defaultText());
        }
    }

    /** Of some keys exactly one, or one at most. */
    private static void picks(ObjectNode node, Shape.Group group) {
        if (group.picks().isEmpty()) {
            return;
        }
        ArrayNode all = node.putArray("allOf");
        for (Shape.Pick pick : group.picks()) {
            ArrayNode one = all.addObject().putArray("oneOf");
            for (String key : pick.keys()) {
                one.addObject().putArray("required").add(key);
            }
            if (!pick.required()) {
                ArrayNode none = one.addObject().putObject("not").putArray("anyOf");
                pick.keys().forEach(key -> none.addObject().putArray("required").add(key));
            }
        }
    }
}
