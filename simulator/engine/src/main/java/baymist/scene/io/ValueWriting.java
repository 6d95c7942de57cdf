package baymist.scene.io;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Writes decoded values again as they were written, by the shapes of the format that they were decoded by. Values that a default
 * filled in are
 * left out, and what came from a file of its own becomes the name of that file as seen from the new place.
 */
final class ValueWriting {
    private final Path folder;

    /** @param folder where the new file goes */
    ValueWriting(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    /** The value of a field, or null if the default stands for it. */
    @Nullable
    Object field(Shape.Field field, Value value, String file) {
        Object written = of(value, field.shape(), file);
        boolean isDefault = field.defaultText().equals("{}")
                ? written instanceof Map<?, ?> map && map.isEmpty()
                : !field.required() && text(value).equals(field.defaultText());
        return isDefault ? null : written;
    }

    /** A value in a list of the file. */
    Object item(Value value, Shape shape, String file) {
        return of(value, shape, file);
    }

    private static String text(Value value) {
        return value instanceof Value.Num n ? n.written() : value instanceof Value.Word w ? w.text() : "\n";
    }

    /** @param file that the value is written in */
    private Object of(Value value, Shape shape, String file) {
        String own = value.place().file();
        if (!own.equals(file)) {
            return relative(Path.of(own));
        }
        if (value instanceof Value.Num n) {
            return n.unitOf().isEmpty() ? number(n.written()) : n.written();
        }
        if (value instanceof Value.Word w) {
            return w.text();
        }
        if (value instanceof Value.Items items) {
            Shape.ListOf list = (Shape.ListOf) option(shape, Shape.ListOf.class, "");
            return Written.list(items.values(), v -> of(v, list.item(), file));
        }
        if (value instanceof Value.Fields f) {
            return fields(f, shape, file);
        }
        throw new IllegalStateException("a broken value at " + value.place());
    }

    private static Object number(String text) {
        return text.matches("[+-]?\\d{1,18}") ? (Object) Long.valueOf(text) : (Object) Double.valueOf(text);
    }

    private Object fields(Value.Fields f, Shape shape, String file) {
        Map<String, Object> map = new LinkedHashMap<>();
        if (f.group().isEmpty()) {
            Shape.MapOf of = (Shape.MapOf) option(shape, Shape.MapOf.class, "");
            f.values().forEach((name, v) -> map.put(name, of(v, of.value(), file)));
            return map;
        }
        Shape.Group group = group(shape, f.group(), map);
        for (Shape.Field field : group.fields()) {
            Value v = f.get(field.key());
            if (v == null) {
                continue;
            }
            Object written = field(field, v, file);
            if (written != null) {
                map.put(field.key(), written);
            }
        }
        if (group.name().equals("mesh")) {
            map.computeIfPresent("file", (k, v) -> relative(Path.of(file).resolveSibling(v.toString())));
        }
        return map;
    }

    /** The group of this name within a shape; puts the word that chooses it into the mapping. */
    private static Shape.Group group(Shape shape, String name, Map<String, Object> into) {
        Shape found = option(shape, Shape.Group.class, name);
        if (found instanceof Shape.Family family) {
            into.put(family.key(), name);
            Shape.Group member = family.members().get(name);
            return member == null ? missing(name) : member;
        }
        return (Shape.Group) found;
    }

    private static Shape.Group missing(String name) {
        throw new IllegalStateException("the format has no group " + name + " here");
    }

    /** The option of this kind, for groups of this name (or the family that holds it). */
    private static Shape option(Shape shape, Class<? extends Shape> kind, String name) {
        if (shape instanceof Shape.FileOr f) {
            return option(f.content(), kind, name);
        }
        if (shape instanceof Shape.Either e) {
            for (Shape o : e.options()) {
                if (fits(o, kind, name)) {
                    return option(o, kind, name);
                }
            }
        }
        return fits(shape, kind, name) ? shape : missing(name);
    }

    private static boolean fits(Shape shape, Class<? extends Shape> kind, String name) {
        if (shape instanceof Shape.FileOr f) {
            return fits(f.content(), kind, name);
        }
        if (shape instanceof Shape.Either e) {
            return e.options().stream().anyMatch(o -> fits(o, kind, name));
        }
        return shape instanceof Shape.Family family
                ? family.members().containsKey(name)
                : kind.isInstance(shape)
                        && (!(shape instanceof Shape.Group g) || g.name().equals(name));
    }

    private String relative(Path file) {
        Path to = file.toAbsolutePath().normalize();
        boolean sameRoot = to.getRoot() != null && to.getRoot().equals(folder.getRoot());
        return (sameRoot ? folder.relativize(to) : to).toString().replace('\\', '/');
    }
}
