package baymist.verify;

/**
 * Outcome of the verification cases. Stand-in to be dropped at merge.
 *
 * @param table plain text, one row a case
 * @param passed whether every case is within its tolerance
 */
public record VerificationReport(String table, boolean passed) {}
