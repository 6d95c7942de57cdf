package baymist.cavity;

/** What a sheet is in the structure. */
public enum PartKind {
    SKIN,
    SPAR,
    RIB,
    STRINGER,
    WALL,
    OTHER
}
