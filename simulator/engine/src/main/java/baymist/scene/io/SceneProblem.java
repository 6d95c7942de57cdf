package baymist.scene.io;

/**
 * Stable ids of what can be wrong with a scene or model file. The text of a finding is written where it is found, since it
 * carries the value; docs/troubleshooting.md has a paragraph for each id.
 */
enum SceneProblem {
    FILE_MISSING("SCN-001"),
    NOT_A_FILE("SCN-002"),
    UNREADABLE("SCN-003"),
    TOO_BIG("SCN-004"),
    EMPTY("SCN-005"),
    NOT_UTF8("SCN-006"),
    NOT_YAML("SCN-007"),
    TAB("SCN-008"),
    TOO_DEEP("SCN-009"),
    TOO_MANY_NODES("SCN-010"),
    RECURSIVE("SCN-011"),
    DUPLICATE_KEY("SCN-012"),
    SEVERAL_DOCUMENTS("SCN-013"),
    TAGGED("SCN-014"),
    WRONG_KIND("SCN-020"),
    UNKNOWN_KEY("SCN-021"),
    MISSING_KEY("SCN-022"),
    NO_VALUE("SCN-023"),
    UNKNOWN_WORD("SCN-024"),
    ONE_OF("SCN-025"),
    LIST_LENGTH("SCN-026"),
    VERSION("SCN-027"),
    NOT_A_NUMBER("SCN-028"),
    TEXT_FORM("SCN-029"),
    MISSING_UNIT("SCN-030"),
    UNKNOWN_UNIT("SCN-031"),
    WRONG_UNIT("SCN-032"),
    BAD_QUANTITY("SCN-033"),
    OUT_OF_RANGE("SCN-034"),
    NAME_TWICE("SCN-040"),
    UNKNOWN_WAND("SCN-041"),
    UNKNOWN_ENTRY("SCN-042"),
    DEPTHS("SCN-043"),
    BORE("SCN-044"),
    SHARES("SCN-045"),
    SPARS("SCN-046"),
    RIBS("SCN-047"),
    HOLE_TOO_BIG("SCN-048"),
    OUTLINE("SCN-049"),
    NO_DIRECTION("SCN-050"),
    TARGETS("SCN-051"),
    WAND_TOO_SHORT("SCN-052"),
    VISCOSITY("SCN-053"),
    NO_DRAW_BACK("SCN-054"),
    SECTION("SCN-055"),
    STRINGERS("SCN-056"),
    NO_SPRAY("SCN-057"),
    PART_TWICE("SCN-060"),
    STATIONS("SCN-061"),
    FALSE_SPAR("SCN-062"),
    OPEN_END("SCN-063"),
    BEADS("SCN-064"),
    NOSE("SCN-065"),
    HORN("SCN-066"),
    SLOPE("SCN-067"),
    SPAR_HOLE("SCN-068"),
    FLANGE_SIDE("SCN-069"),
    NODE("SCN-070"),
    STATION("SCN-071"),
    PLATE_FORM("SCN-080"),
    BODY_NAME("SCN-081"),
    JOIN("SCN-082"),
    DOOR_FORM("SCN-083"),
    ORIENTATION("SCN-090"),
    BODY("SCN-091"),
    BEND_TIGHT("SCN-100"),
    BENDS_OVERLAP("SCN-101"),
    FLEX_TIGHT("SCN-102"),
    COUPLING("SCN-103"),
    TIP_THIN("SCN-104"),
    TIP_LONG("SCN-105"),
    AIM("SCN-106"),
    SECOND_PLATE("SCN-107");

    private final String id;

    SceneProblem(String id) {
        this.id = id;
    }

    String id() {
        return id;
    }
}
