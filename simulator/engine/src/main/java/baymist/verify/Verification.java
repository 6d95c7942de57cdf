package baymist.verify;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import java.nio.file.Path;

/** Stand-in to be dropped at merge. */
public final class Verification {
    private Verification() {}

    /** Stand-in: cases of a folder; {@code caseId} empty = all. */
    public static VerificationReport run(Path folder, String caseId, RunOptions options, RunObserver observer) {
        throw new UnsupportedOperationException("no verification on this branch");
    }
}
