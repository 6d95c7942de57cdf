package baymist.scene.io;

import baymist.problem.SourcePlace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * Decodes the nodes of one file by the shapes of the format. Never stops at a problem: what can't be decoded becomes
 * {@link Value.Broken} and the rest goes on.
 */
final class Decoder {
    private final SourceFiles files;
    private final Problems problems;
    private final Path path;
    private final ScalarDecoder scalars;

    Decoder(SourceFiles files, Problems problems, Path path) {
        this.files = files;
        this.problems = problems;
        this.path = path;
        this.scalars = new ScalarDecoder(problems);
    }

    /** Reads the file and decodes its root; the place that names the file takes the problems of finding it. */
    Value decodeFile(Shape shape, SourcePlace namedAt) {
        byte[] bytes = files.read(path, namedAt);
        Node root = bytes == null ? null : YamlTree.parse(bytes, path.toString(), problems);
        return root == null ? new Value.Broken(SourcePlace.of(path.toString())) : decode(root, shape, "");
    }

    private Value decode(Node node, Shape shape, String field) {
        SourcePlace place = new SourcePlace(path.toString(), YamlTree.lineOf(node), field);
        if (node.getTag().equals(Tag.NULL)) {
            problems.add(
                    SceneProblem.NO_VALUE,
                    place,
                    "no value stands here; " + ShapeWords.of(shape)
                            + " is wanted"
                            + (shape instanceof Shape.Measure
                                    ? " (a `#` after a space begins a comment: write \"#30 drill\" in quotes)"
                                    : ""));
            return new Value.Broken(place);
        }
        if (shape instanceof Shape.Either either) {
            return decodeEither(node, either, place);
        }
        if (shape instanceof Shape.FileOr choice) {
            return node instanceof ScalarNode scalar
                    ? decodeNamed(scalar, choice.content(), place)
                    : decode(node, choice.content(), field);
        }
        if (shape instanceof Shape.Group group && node instanceof MappingNode mapping) {
            return decodeGroup(mapping, group, "", place);
        }
        if (shape instanceof Shape.Family family && node instanceof MappingNode mapping) {
            return decodeFamily(mapping, family, place);
        }
        if (shape instanceof Shape.MapOf map && node instanceof MappingNode mapping) {
            return decodeMap(mapping, map, place);
        }
        if (shape instanceof Shape.ListOf list && node instanceof SequenceNode sequence) {
            return decodeList(sequence, list, place);
        }
        if (ScalarDecoder.isScalar(shape) && node instanceof ScalarNode scalar) {
            return scalars.decode(scalar, shape, place);
        }
        problems.add(
                SceneProblem.WRONG_KIND,
                place,
                "found " + ShapeWords.kindOf(node) + "; " + ShapeWords.of(shape) + " is wanted");
        return new Value.Broken(place);
    }

    private Value decodeEither(Node node, Shape.Either either, SourcePlace place) {
        Shape option = optionFor(node, either);
        boolean wordMeant = node instanceof ScalarNode scalar
                && option instanceof Shape.Measure
                && scalar.getValue().chars().noneMatch(Character::isDigit);
        if (wordMeant) {
            String text = SourceFiles.printable(((ScalarNode) node).getValue());
            List<String> words = new ArrayList<>();
            for (Shape o : either.options()) {
                words.addAll(o instanceof Shape.Choice choice ? choice.words() : List.of());
            }
            String near = Suggestion.nearest(text, words);
            problems.add(
                    SceneProblem.UNKNOWN_WORD,
                    place,
                    "`" + text + "` is not known here"
                            + (near == null ? "; " : ", did you mean `" + near + "`? Wanted: ")
                            + ShapeWords.of(either));
            return new Value.Broken(place);
        }
        return decode(node, option, place.field());
    }

    /** The option of the node's own kind; for a scalar a choice that has the word, else the first scalar option. */
    private static Shape optionFor(Node node, Shape.Either either) {
        Shape scalarOption = null;
        for (Shape option : either.options()) {
            if (node instanceof ScalarNode scalar) {
                if (option instanceof Shape.Choice choice && choice.words().contains(scalar.getValue())) {
                    return option;
                }
                if (ScalarDecoder.isScalar(option) && (scalarOption == null || scalarOption instanceof Shape.Choice)) {
                    scalarOption = option;
                }
            } else if (node instanceof SequenceNode && option instanceof Shape.ListOf) {
                return option;
            } else if (node instanceof MappingNode
                    && !ScalarDecoder.isScalar(option)
                    && !(option instanceof Shape.ListOf)) {
                return option;
            }
        }
        return scalarOption == null ? either.options().get(0) : scalarOption;
    }

    private Value decodeNamed(ScalarNode scalar, Shape content, SourcePlace place) {
        Path named = files.resolve(path, scalar.getValue(), place);
        return named == null ? new Value.Broken(place) : new Decoder(files, problems, named).decodeFile(content, place);
    }

    private Value decodeFamily(MappingNode mapping, Shape.Family family, SourcePlace place) {
        List<String> words = List.copyOf(family.members().keySet());
        Node chosen = find(mapping, family.key());
        if (!(chosen instanceof ScalarNode scalar)) {
            problems.add(
                    SceneProblem.MISSING_KEY,
                    place,
                    "`" + family.key() + "` is missing; it is one of " + String.join(", ", words));
            return new Value.Broken(place);
        }
        Shape.Group member = family.members().get(scalar.getValue());
        if (member == null) {
            problems.add(
                    SceneProblem.UNKNOWN_WORD,
                    new SourcePlace(place.file(), YamlTree.lineOf(scalar), join(place.field(), family.key())),
                    "`" + SourceFiles.printable(scalar.getValue()) + "` is no " + family.key()
                            + Suggestion.of(scalar.getValue(), words));
            return new Value.Broken(place);
        }
        return decodeGroup(mapping, member, family.key(), place);
    }

    private static @Nullable Node find(MappingNode mapping, String key) {
        for (NodeTuple tuple : mapping.getValue()) {
            if (tuple.getKeyNode() instanceof ScalarNode scalar
                    && scalar.getValue().equals(key)) {
                return tuple.getValueNode();
            }
        }
        return null;
    }

    private Value decodeGroup(MappingNode mapping, Shape.Group group, String familyKey, SourcePlace place) {
        Map<String, Value> values = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)
                    || key.getValue().equals(familyKey)) {
                continue; // a key that is no word has been told by YamlTree
            }
            Shape.Field field = fieldOf(group, key.getValue());
            if (field == null) {
                List<String> known = new ArrayList<>(group.keys());
                problems.add(
                        SceneProblem.UNKNOWN_KEY,
                        new SourcePlace(place.file(), YamlTree.lineOf(key), place.field()),
                        "unknown key `" + SourceFiles.printable(key.getValue()) + "`"
                                + (key.getValue().matches("\\d.*")
                                        ? "; a comma parts two entries here, so write decimals with a point"
                                        : Suggestion.of(key.getValue(), known)));
            } else {
                values.put(field.key(), decode(tuple.getValueNode(), field.shape(), join(place.field(), field.key())));
            }
        }
        fillGaps(group, values, place);
        return new Value.Fields(place, group.name(), values);
    }

    private void fillGaps(Shape.Group group, Map<String, Value> values, SourcePlace place) {
        for (Shape.Field field : group.fields()) {
            if (values.containsKey(field.key())) {
                continue;
            }
            if (field.required()) {
                problems.add(
                        SceneProblem.MISSING_KEY,
                        place,
                        "`" + field.key() + "` is missing; " + ShapeWords.of(field.shape()) + " is wanted: "
                                + field.doc());
                values.put(field.key(), new Value.Broken(place));
            } else if (field.shape() instanceof Shape.Group inner
                    && field.defaultText().equals("{}")) {
                Map<String, Value> defaults = new LinkedHashMap<>();
                SourcePlace at = new SourcePlace(place.file(), place.line(), join(place.field(), field.key()));
                fillGaps(inner, defaults, at);
                values.put(field.key(), new Value.Fields(at, inner.name(), defaults));
            } else if (!field.defaultText().isEmpty()) {
                values.put(field.key(), scalars.decodeDefault(field, place));
            }
        }
        for (Shape.Pick pick : group.picks()) {
            List<String> given =
                    pick.keys().stream().filter(values::containsKey).toList();
            if (given.size() > 1 || (pick.required() && given.isEmpty())) {
                String found = given.isEmpty() ? "none is there" : "found `" + String.join("` and `", given) + "`";
                problems.add(
                        SceneProblem.ONE_OF,
                        place,
                        "one of `" + String.join("`, `", pick.keys()) + "` is wanted, " + found);
            }
        }
    }

    private static Shape.@Nullable Field fieldOf(Shape.Group group, String key) {
        for (Shape.Field field : group.fields()) {
            if (field.key().equals(key)) {
                return field;
            }
        }
        return null;
    }

    private Value decodeMap(MappingNode mapping, Shape.MapOf map, SourcePlace place) {
        Map<String, Value> values = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            if (tuple.getKeyNode() instanceof ScalarNode key) {
                String name = key.getValue();
                values.put(
                        name,
                        decode(tuple.getValueNode(), map.value(), join(place.field(), SourceFiles.printable(name))));
            }
        }
        return new Value.Fields(place, "", values);
    }

    private Value decodeList(SequenceNode sequence, Shape.ListOf list, SourcePlace place) {
        List<Value> values = new ArrayList<>();
        int size = sequence.getValue().size();
        if (size < list.fewest() || size > list.most()) {
            String wanted = list.fewest() == list.most()
                    ? list.fewest() + " values are wanted"
                    : size < list.fewest()
                            ? "at least " + list.fewest() + " are wanted"
                            : "at most " + list.most() + " are allowed";
            problems.add(
                    SceneProblem.LIST_LENGTH,
                    place,
                    "found " + size + (size == 1 ? " value; " : " values; ") + wanted + ": "
                            + ShapeWords.of(list.item()));
            return new Value.Broken(place);
        }
        for (Node item : sequence.getValue()) {
            values.add(decode(item, list.item(), place.field() + "[" + (values.size() + 1) + "]"));
        }
        return new Value.Items(place, values);
    }

    private static String join(String field, String key) {
        return field.isEmpty() ? key : field + "." + key;
    }
}
