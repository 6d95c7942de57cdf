package baymist.problem;

/** How much a finding weighs: an error stops the run, a warning is shown, a note is kept in the record. */
public enum Severity {
    ERROR,
    WARNING,
    NOTE
}
