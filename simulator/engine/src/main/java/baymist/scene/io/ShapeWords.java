package baymist.scene.io;

import baymist.units.Dimension;
import java.util.List;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** Says in words what a shape wants: in messages ("a list is wanted") and in the tables of docs/formats. */
final class ShapeWords {
    private ShapeWords() {}

    /** A phrase with its article, e.g. "a length (above 0 mm and at most 50 m)". */
    static String of(Shape shape) {
        if (shape instanceof Shape.Measure m) {
            return m.dimensions().stream().map(Dimension::nounWithArticle).collect(Collectors.joining(" or ")) + " ("
                    + m.range().words() + ")";
        }
        if (shape instanceof Shape.Real r) {
            return "a number (" + r.range().words() + ")";
        }
        if (shape instanceof Shape.Count c) {
            return c.low() == c.high() ? "`" + c.low() + "`" : "a whole number (" + c.low() + " to " + c.high() + ")";
        }
        if (shape instanceof Shape.Text t) {
            return t.wanted();
        }
        if (shape instanceof Shape.Choice c) {
            return "`" + String.join("`, `", c.words()) + "`";
        }
        if (shape instanceof Shape.Either e) {
            return e.options().stream().map(ShapeWords::of).collect(Collectors.joining(", or "));
        }
        if (shape instanceof Shape.FileOr f) {
            return "the name of a file with, or in place, " + of(f.content());
        }
        return ofCollection(shape);
    }

    private static String ofCollection(Shape shape) {
        if (shape instanceof Shape.ListOf l) {
            return "a list of " + count(l) + of(l.item());
        }
        if (shape instanceof Shape.MapOf m) {
            return "a mapping from " + m.keys() + " to " + of(m.value());
        }
        if (shape instanceof Shape.Family f) {
            return "a mapping: " + f.doc();
        }
        if (shape instanceof Shape.Group g) {
            return "a mapping with " + keys(g.keys());
        }
        throw new IllegalArgumentException("no words for " + shape);
    }

    private static String keys(List<String> keys) {
        String all = "`" + String.join("`, `", keys) + "`";
        return keys.size() == 1 ? "the key " + all : "keys such as " + all;
    }

    private static String count(Shape.ListOf list) {
        if (list.fewest() == list.most()) {
            return list.fewest() + " values, each ";
        }
        return (list.fewest() > 0 ? "at least " + list.fewest() + " " : "") + "values, each ";
    }

    /** What a node is, with its article, seen by a person. */
    static String kindOf(Node node) {
        return switch (node.getNodeType()) {
            case SCALAR -> "`" + SourceFiles.printable(((ScalarNode) node).getValue()) + "`";
            case SEQUENCE -> "a list";
            default -> "a mapping";
        };
    }
}
