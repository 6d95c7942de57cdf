package baymist.run;

/** Passes on all that it hears; extended by those who look at moments of a run that somebody else follows. */
public abstract class ForwardingObserver implements RunObserver {
    private final RunObserver next;

    /** Passes on to {@code next}. */
    protected ForwardingObserver(RunObserver next) {
        this.next = next;
    }

    @Override
    public void stage(String name) {
        next.stage(name);
    }

    @Override
    public void note(String text) {
        next.note(text);
    }

    @Override
    public void progress(double done, double jobTimeS) {
        next.progress(done, jobTimeS);
    }

    @Override
    public void moment(RunMoment moment) {
        next.moment(moment);
    }

    @Override
    public boolean cancelled() {
        return next.cancelled();
    }

    @Override
    public void again() {
        next.again();
    }
}
