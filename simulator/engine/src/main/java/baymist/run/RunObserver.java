package baymist.run;

/** Hears how a run gets on. Calls come from one thread, in order; nothing that an observer does changes the numbers. */
public interface RunObserver {
    /** Hears nothing and never cancels. */
    RunObserver NONE = new RunObserver() {
        @Override
        public void stage(String name) {}

        @Override
        public void progress(double done, double jobTimeS) {}

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    /** A stage begins; {@code name} in the words of the user. */
    void stage(String name);

    /** Something worth knowing before the work begins, such as what it will take; one line in the words of the user. */
    default void note(String text) {}

    /**
     * The run has got this far.
     *
     * @param done share of the run that is done, 0..1, never falling
     * @param jobTimeS simulated time reached, s
     */
    void progress(double done, double jobTimeS);

    /** The job is begun anew with more bays: moments seen so far don't count. */
    default void again() {}

    /** Looks on at the end of a moment of the job, see {@link RunMoment}. */
    default void moment(RunMoment moment) {}

    /** Asked between steps: whether the run should stop. */
    boolean cancelled();
}
