package baymist.explain;

/** What a change touches; in order of effort, least first. */
public enum ChangeKind {
    TURN_PIN("turn the pin", Cause.PATTERN),
    MOVE("start, stop or stand elsewhere", Cause.DISTANCE),
    SLOWER("draw back slower", Cause.QUANTITY),
    MORE_HANG("let it hang longer", Cause.TIME),
    FINER("finer setting", Cause.SETTLING),
    COARSER("coarser setting", Cause.DISTANCE),
    MORE_PRODUCT("more product", Cause.QUANTITY),
    KEEP_OPEN("keep a panel open", Cause.CLOSED_EARLY),
    MASK_OFF("mask, tape or plug off", Cause.MASKED),
    OPEN_VENT("open another vent", Cause.DEAD_END),
    OTHER_WAND("another wand at the same entry", Cause.PATTERN),
    LONGER_WAND("a longer wand", Cause.ACCESS),
    OTHER_ENTRY("another entry", Cause.ACCESS),
    WIDER_HOLE("a wider hole", Cause.HOLE_TOO_SMALL),
    DRILL_VENT("a new vent", Cause.DEAD_END),
    DRILL_ENTRY("a new hole for the wand", Cause.ACCESS);

    private final String word;
    private final Cause usual;

    ChangeKind(String word, Cause usual) {
        this.word = word;
        this.usual = usual;
    }

    /** As it is written in reports and JSON. */
    public String word() {
        return word;
    }

    /** The cause that it speaks for where no fact does. */
    Cause usual() {
        return usual;
    }

    /** Whether it takes metal away. */
    public boolean drills() {
        return this == WIDER_HOLE || this == DRILL_VENT || this == DRILL_ENTRY;
    }
}
