package baymist.coverage;

import baymist.coverage.Span.Place;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Puts spans along the axes of a surface into words: "aft corner at rib 3", "along the front spar from rib 1 to rib 2". */
final class Places {
    /** Up to this share of the way a region along a member is a strip beside it; then a half; above, the larger part. */
    private static final double STRIP = 0.45;

    private static final double HALF = 0.65;

    private final Compass compass;

    Places(Compass compass) {
        this.compass = compass;
    }

    /**
     * Words for a flat surface.
     *
     * @param across the axis whose bounding member is named as "along"
     * @param lengthwise the other in-plane axis
     * @param filled share of the surface within the extents that belongs to the region, 0..1
     * @param edgeName name of an end of {@code across} that no member bounds, or null
     */
    String flat(Span across, Span lengthwise, double filled, @Nullable String edgeName) {
        if (across.place() == Place.FULL && lengthwise.place() == Place.FULL) {
            return whole(filled);
        }
        if (across.isAtEnd() && lengthwise.isAtEnd() && across.extent() <= HALF && lengthwise.extent() <= HALF) {
            return corner(across, lengthwise, edgeName);
        }
        if (lengthwise.isAtEnd() && across.place() == Place.FULL) {
            return beside(lengthwise, across, null);
        }
        return beside(across, lengthwise, edgeName);
    }

    /** Words for a curved surface: the sides that it keeps to. */
    String curved(List<Span> spans, double filled) {
        StringBuilder words = new StringBuilder();
        for (int axis : new int[] {2, 0, 1}) {
            Span span = spans.get(axis);
            if (span.place() != Place.FULL && span.place() != Place.MIDDLE) {
                words.append(words.isEmpty() ? "" : " ").append(compass.word(axis, span.isHigh()));
            }
        }
        if (!words.isEmpty()) {
            return words + " part";
        }
        boolean middle = spans.stream().anyMatch(s -> s.place() == Place.MIDDLE);
        return middle ? "middle part" : whole(filled);
    }

    static String whole(double filled) {
        return filled >= 0.9 ? "whole surface" : filled >= 0.5 ? "most of the surface" : "in patches from end to end";
    }

    private String corner(Span across, Span lengthwise, @Nullable String edgeName) {
        String side = compass.word(across.axis(), across.isHigh());
        Ends.Member member = end(lengthwise);
        if (member != null) {
            return side + " corner at " + withArticle(member.name());
        }
        String second = compass.word(lengthwise.axis(), lengthwise.isHigh());
        String at = edgeName == null || end(across) != null ? "" : " at the " + edgeName;
        return side + " " + second + " corner" + at;
    }

    /** A strip, half or larger part at one end of {@code first}; then where it lies along {@code second}. */
    private String beside(Span first, Span second, @Nullable String edgeName) {
        String head = head(first, edgeName);
        return switch (second.place()) {
            case FULL -> head.startsWith("along") ? head + " " + fromTo(second) : head;
            case MIDDLE -> head + ", " + between(second);
            case AT_LOW_END, AT_HIGH_END -> head + ", " + part(second) + at(end(second));
            case LOW_PART, HIGH_PART -> head + ", " + part(second);
        };
    }

    private String head(Span span, @Nullable String edgeName) {
        return switch (span.place()) {
            case FULL -> "full " + (span.axis() == 2 ? "height" : "width");
            case MIDDLE -> "middle";
            case LOW_PART, HIGH_PART -> part(span);
            case AT_LOW_END, AT_HIGH_END -> {
                if (span.extent() > STRIP) {
                    yield part(span);
                }
                Ends.Member member = end(span);
                String name = member != null
                        ? withArticle(member.name())
                        : edgeName != null
                                ? "the " + edgeName
                                : "the " + compass.word(span.axis(), span.isHigh()) + " edge";
                yield "along " + name;
            }
        };
    }

    private String part(Span span) {
        String word = compass.word(span.axis(), span.isHigh());
        double e = span.extent();
        boolean half = e > STRIP && e <= HALF;
        return e > HALF ? word + " two thirds" : word + (half ? " half" : " part");
    }

    /** From the member at one end to the one at the other. */
    String fromTo(Span span) {
        Ends.Member low = span.lowEnd();
        Ends.Member high = span.highEnd();
        if (low == null || high == null) {
            return "from end to end";
        }
        return "from " + withArticle(low.name()) + " to " + withArticle(high.name());
    }

    private static String between(Span span) {
        Ends.Member low = span.lowEnd();
        Ends.Member high = span.highEnd();
        if (low == null || high == null) {
            return "middle";
        }
        return "midway between " + withArticle(low.name()) + " and " + withArticle(high.name());
    }

    private static String at(Ends.@Nullable Member member) {
        return member == null ? "" : " at " + withArticle(member.name());
    }

    private static Ends.@Nullable Member end(Span span) {
        return span.isHigh() ? span.highEnd() : span.lowEnd();
    }

    /** "rib 3" stays, "front spar" becomes "the front spar": a name that ends in a number is a proper name. */
    static String withArticle(String name) {
        boolean numbered = !name.isEmpty() && Character.isDigit(name.charAt(name.length() - 1));
        return numbered || name.toLowerCase(Locale.ROOT).startsWith("the ") ? name : "the " + name;
    }
}
