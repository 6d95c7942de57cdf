package baymist.units;

/** Stand-in to be dropped at merge. */
public enum Dimension {
    LENGTH
}
