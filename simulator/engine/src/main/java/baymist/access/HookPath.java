package baymist.access;

import baymist.geom.Vec3;

/**
 * A hook tube at each depth: at the clock angle nearest to the wanted one that it can be turned to there. Depths between the steps of the search are rounded to
 * the step below, so that every body has been tried.
 */
final class HookPath implements WandPath {
    private final HookThread thread;
    private final int deepest;
    private final double wantedRad;

    HookPath(HookThread thread, int deepest, double wantedRad) {
        this.thread = thread;
        this.deepest = deepest;
        this.wantedRad = wantedRad;
    }

    @Override
    public double maxDepthM() {
        return thread.slideM(deepest);
    }

    @Override
    public WandPose body(double depthM) {
        return at(depthM, wantedRad).pose();
    }

    @Override
    public WandPose body(double depthM, double clockRad) {
        return at(depthM, clockRad).pose();
    }

    @Override
    public Vec3 tipAxis(double depthM) {
        return at(depthM, wantedRad).tip().axis();
    }

    @Override
    public Vec3 tipM(double depthM) {
        return at(depthM, wantedRad).tip().positionM();
    }

    /** @param clockRad clock angle of the pin at the entry, where a hook's handle shows it */
    @Override
    public TipPose tip(double depthM, double clockRad) {
        return at(depthM, clockRad).tip();
    }

    private HookPlace at(double depthM, double clockRad) {
        int i = (int) Math.floor(depthM / thread.slideM(1) + 1e-9);
        i = Math.max(1, Math.min(deepest, i));
        int j = thread.nearestClock(i, clockRad);
        while (j < 0 && i > 0) {
            i--;
            j = thread.nearestClock(i, clockRad);
        }
        return thread.place(i, Math.max(0, j));
    }
}
