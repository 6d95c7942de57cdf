package baymist.cli;

/** Exit codes of every command. */
final class Exit {
    static final int DONE = 0;
    static final int BAD_INPUT = 2;
    static final int FAILED = 3;
    static final int NOT_ACCEPTABLE = 4;

    private Exit() {}
}
