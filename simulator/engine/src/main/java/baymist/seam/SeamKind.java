package baymist.seam;

import java.util.Locale;

/** How two sheets meet along a seam. */
public enum SeamKind {
    /** One sheet lies on the other, and ends there: within 15° of parallel. */
    LAP,
    /** Both sheets end at the line, at whatever angle; edges butted in line too. */
    CORNER,
    /** A sheet stands on, or passes through, the inside of the other. */
    TEE;

    /** As it is said: lap, corner, T. */
    public String word() {
        return this == TEE ? "T" : name().toLowerCase(Locale.ROOT);
    }
}
