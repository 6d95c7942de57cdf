package baymist.run;

/** Tells progress that never falls, though a run may begin anew with more bays. */
final class SteadyObserver extends ForwardingObserver {
    private double told;

    SteadyObserver(RunObserver whole) {
        super(whole);
    }

    @Override
    public void progress(double done, double jobTimeS) {
        told = Math.max(told, done);
        super.progress(told, jobTimeS);
    }
}
