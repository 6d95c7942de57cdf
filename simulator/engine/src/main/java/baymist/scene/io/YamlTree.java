package baymist.scene.io;

import baymist.problem.SourcePlace;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/**
 * From bytes to a tree of YAML nodes that is safe to walk: UTF-8, one document, bounded depth and size after aliases are followed,
 * no recursion, no key twice, no foreign tags.
 */
final class YamlTree {
    /** Deepest nesting; the format itself needs 9 levels. */
    static final int DEEPEST = 40;

    /** Most nodes of a file, aliases followed; a rich scene has about 500. */
    static final int MOST_NODES = 50_000;

    private static final Set<Tag> PLAIN_TAGS =
            Set.of(Tag.STR, Tag.INT, Tag.FLOAT, Tag.BOOL, Tag.NULL, Tag.MAP, Tag.SEQ);

    private final String file;
    private final Problems problems;
    private final Set<Node> onPath = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Set<Node> checked = Collections.newSetFromMap(new IdentityHashMap<>());
    private int visited;

    private YamlTree(String file, Problems problems) {
        this.file = file;
        this.problems = problems;
    }

    /** The root node, or null after adding a problem. */
    static @Nullable Node parse(byte[] bytes, String file, Problems problems) {
        YamlTree tree = new YamlTree(file, problems);
        String text = tree.decode(bytes);
        if (text == null) {
            return null;
        }
        if (text.isBlank()) {
            problems.add(
                    SceneProblem.EMPTY,
                    tree.at(1),
                    "the file is empty; it must start with `baymist: 1` or be a model file");
            return null;
        }
        try {
            Optional<Node> root = tree.compose(text);
            if (root.isEmpty()) {
                problems.add(SceneProblem.EMPTY, tree.at(1), "the file holds comments only; it states nothing");
                return null;
            }
            return tree.walk(root.get(), 1) ? root.get() : null;
        } catch (GuardedParser.LimitException e) {
            tree.limit(e.problem(), e.line());
            return null;
        } catch (MarkedYamlEngineException e) {
            tree.syntax(e, text);
            return null;
        } catch (ReaderException e) {
            problems.add(
                    SceneProblem.NOT_YAML,
                    tree.at(lineOfIndex(text, e.getPosition())),
                    String.format("the control character U+%04X is not allowed in YAML; remove it", e.getCodePoint()));
            return null;
        } catch (YamlEngineException e) {
            problems.add(SceneProblem.NOT_YAML, tree.at(0), "not valid YAML: " + SourceFiles.oneLine(e.getMessage()));
            return null;
        }
    }

    private @Nullable String decode(byte[] bytes) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = decoder.decode(in, out, true);
        out.flip();
        String text = out.toString();
        if (result.isError()) {
            problems.add(
                    SceneProblem.NOT_UTF8,
                    at(lineOfIndex(text, text.length())),
                    String.format(
                            "byte 0x%02X is not UTF-8 text; save the file as UTF-8", bytes[in.position()] & 0xff));
            return null;
        }
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    private Optional<Node> compose(String text) {
        LoadSettings settings = LoadSettings.builder()
                .setSchema(new CoreSchema())
                .setCodePointLimit(SourceFiles.MOST_BYTES)
                .setMaxAliasesForCollections(MOST_NODES) // walk() counts what they expand to, and tells the line
                .setAllowNonScalarKeys(true) // checkKeys() tells the line
                .setLabel(file)
                .build();
        ParserImpl parser = new ParserImpl(settings, new StreamReader(settings, text));
        return new Composer(settings, new GuardedParser(parser, DEEPEST, MOST_NODES)).getSingleNode();
    }

    /** Visits every node as the decoder may, aliases followed. False when the tree is not safe to walk. */
    private boolean walk(Node node, int depth) {
        if (onPath.contains(node)) {
            problems.add(
                    SceneProblem.RECURSIVE,
                    at(lineOf(node)),
                    "the anchor contains itself; write the content out instead");
            return false;
        }
        if (depth > DEEPEST || ++visited > MOST_NODES) {
            limit(depth > DEEPEST ? SceneProblem.TOO_DEEP : SceneProblem.TOO_MANY_NODES, lineOf(node));
            return false;
        }
        boolean first = checked.add(node);
        if (first && !PLAIN_TAGS.contains(node.getTag())) {
            problems.add(
                    SceneProblem.TAGGED,
                    at(lineOf(node)),
                    "the tag `" + node.getTag() + "` has no meaning here; remove it");
        }
        onPath.add(node);
        boolean safe = true;
        if (node instanceof MappingNode mapping) {
            if (first) {
                checkKeys(mapping);
            }
            for (NodeTuple tuple : mapping.getValue()) {
                safe = safe && walk(tuple.getKeyNode(), depth + 1) && walk(tuple.getValueNode(), depth + 1);
            }
        } else if (node instanceof SequenceNode sequence) {
            for (Node item : sequence.getValue()) {
                safe = safe && walk(item, depth + 1);
            }
        }
        onPath.remove(node);
        return safe;
    }

    private void checkKeys(MappingNode mapping) {
        Map<String, Integer> lines = new HashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            Node key = tuple.getKeyNode();
            if (!(key instanceof ScalarNode scalar)) {
                problems.add(
                        SceneProblem.WRONG_KIND,
                        at(lineOf(key)),
                        "a key must be a word, found a list or mapping before the colon");
                continue;
            }
            Integer before = lines.putIfAbsent(scalar.getValue(), lineOf(key));
            if (before != null) {
                problems.add(
                        SceneProblem.DUPLICATE_KEY,
                        at(lineOf(key)),
                        "key `" + scalar.getValue() + "` stands twice in one mapping, first in line " + before
                                + "; keep one of them");
            }
        }
    }

    private void limit(SceneProblem problem, int line) {
        String text = problem == SceneProblem.TOO_DEEP
                ? "nested deeper than " + DEEPEST + " levels; a scene needs fewer than 10"
                : "more than " + MOST_NODES + " values once anchors are followed; a scene needs some hundreds";
        problems.add(problem, at(line), text);
    }

    private void syntax(MarkedYamlEngineException e, String text) {
        int line = e.getProblemMark().map(Mark::getLine).orElse(-1) + 1;
        String problem = SourceFiles.oneLine(e.getProblem() == null ? e.getMessage() : e.getProblem());
        if (problem.contains("found another document")) {
            problems.add(
                    SceneProblem.SEVERAL_DOCUMENTS,
                    at(line),
                    "a second document starts here (`---`); one file holds one document");
            return;
        }
        String[] lines = text.split("\n", -1);
        String source = line >= 1 && line <= lines.length ? lines[line - 1] : "";
        if (source.strip().length() < source.length()
                && source.stripTrailing().matches("^ *\\t.*|.*:\\s*\\t.*|.*- *\\t.*")) {
            problems.add(SceneProblem.TAB, at(line), "a tab stands where YAML wants spaces; indent with spaces");
            return;
        }
        problems.add(
                SceneProblem.NOT_YAML,
                at(line),
                "not valid YAML: " + problem
                        + "; check colons, quotes, brackets and indentation of this line and the one above");
    }

    /** 1-based line of a node. */
    static int lineOf(Node node) {
        return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
    }

    private static int lineOfIndex(String text, int index) {
        int line = 1;
        for (int i = 0; i < Math.min(index, text.length()); i++) {
            line += text.charAt(i) == '\n' ? 1 : 0;
        }
        return line;
    }

    private SourcePlace at(int line) {
        return new SourcePlace(file, line, "");
    }
}
