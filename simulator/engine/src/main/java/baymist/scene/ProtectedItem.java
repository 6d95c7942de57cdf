package baymist.scene;

import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * Something in the cavity that the product must not reach, or only so much: a servo clutch, an oxygen fitting, a belt.
 *
 * @param body its shape, or null if it is a part of the structure's own model
 * @param part name of that part, or null if {@code body} is stated
 * @param limitM film above which the item counts as exceeded, m, 0 or more
 * @param mask what covers it during the job; a masked item takes no film, the product on the mask is masked product
 */
public record ProtectedItem(
        String name, @Nullable BodySpec body, @Nullable String part, double limitM, Mask mask, SourcePlace place) {
    /** What covers an item. */
    public enum Mask {
        NONE,
        BAG,
        TAPE
    }

    public boolean masked() {
        return mask != Mask.NONE;
    }

    /** Name of its part in the built cavity. */
    public String partName() {
        return part == null ? name : part;
    }

    /** The same item under another mask. */
    public ProtectedItem withMask(Mask other) {
        return new ProtectedItem(name, body, part, limitM, other, place);
    }
}
