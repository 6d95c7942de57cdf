package baymist.coverage;

/** Verdict on one surfel. Reached = THIN, PROTECTED or EXCESS; protected = PROTECTED or EXCESS. */
public enum Verdict {
    UNREACHED,
    THIN,
    PROTECTED,
    EXCESS
}
