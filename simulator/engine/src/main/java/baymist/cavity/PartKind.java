package baymist.cavity;

/** What a sheet is in the structure. */
public enum PartKind {
    SKIN,
    SPAR,
    RIB,
    STRINGER,
    WALL,
    OTHER,
    /** A protected item: no structure to be treated, film on it is dose. */
    PROTECTED
}
