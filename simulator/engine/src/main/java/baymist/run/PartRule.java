package baymist.run;

/**
 * Whether a run may leave out bays that its jets don't stand in (docs/decisions/0009-computed-part.md).
 *
 * @param rings neighbours kept round the sprayed bays, one opening apart each; {@link #WHOLE} and {@link #BY_MEMORY} have numbers of their own
 */
public record PartRule(int rings) {
    /** All bays, or a refusal (RUN-008). */
    public static final PartRule WHOLE = new PartRule(-2);

    /** All bays where they have room, else as many as are needed and have room. */
    public static final PartRule BY_MEMORY = new PartRule(-1);

    /** Most rings that can be asked for. */
    public static final int MOST = 1000;

    public PartRule {
        if (rings < -2 || rings == 0 || rings > MOST) {
            throw new IllegalArgumentException("rings of bays " + rings + ", 1 to " + MOST + " expected");
        }
    }

    /** So many rings, whether or not the whole has room. */
    public static PartRule rings(int count) {
        if (count < 1) {
            throw new IllegalArgumentException("rings of bays " + count + ", 1 to " + MOST + " expected");
        }
        return new PartRule(count);
    }

    boolean isWhole() {
        return equals(WHOLE);
    }

    boolean isByMemory() {
        return equals(BY_MEMORY);
    }
}
