package baymist.verify;

/** What a case came out as. {@code failure} is empty or says why no value could be computed. */
public record Outcome(VerificationCase verificationCase, double value, String failure) {
    public boolean passed() {
        return failure.isEmpty() && verificationCase.accepts(value);
    }
}
