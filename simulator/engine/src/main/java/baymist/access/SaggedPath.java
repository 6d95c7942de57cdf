package baymist.access;

import baymist.geom.Vec3;
import java.util.HashMap;
import java.util.Map;

/**
 * The way of a straight rod that sags: at each depth the bent rod and the tip where it hangs. Equal ways are equal: the same line,
 * tube and gravity.
 */
public final class SaggedPath implements WandPath {
    private final Straight line;
    private final TubeSection tube;
    private final Vec3 gravity;
    private final Sag sag;
    /** Depths asked for so far; a pass asks for place, axis and body of the same few. Guarded by itself. */
    private final Map<Double, SagResult> known = new HashMap<>();

    public SaggedPath(
            Surroundings around, int entry, Straight line, TubeSection tube, Vec3 gravity, double gravityMPerS2) {
        this.line = line;
        this.tube = tube;
        this.gravity = gravity.times(gravityMPerS2);
        this.sag = new Sag(around, entry, line, tube, gravity, gravityMPerS2);
    }

    /** How the rod hangs at a depth, m. */
    public SagResult at(double depthM) {
        synchronized (known) {
            return known.computeIfAbsent(depthM, sag::at);
        }
    }

    @Override
    public double maxDepthM() {
        return line.maxDepthM();
    }

    @Override
    public WandPose body(double depthM) {
        return new WandPose(at(depthM).centrelineM(), line.radiusM(), depthM);
    }

    @Override
    public Vec3 tipAxis(double depthM) {
        return at(depthM).tipAxis();
    }

    @Override
    public Vec3 tipM(double depthM) {
        return at(depthM).tipM();
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof SaggedPath other
                && line.equals(other.line)
                && tube.equals(other.tube)
                && gravity.equals(other.gravity);
    }

    @Override
    public int hashCode() {
        return 31 * line.hashCode() + tube.hashCode();
    }
}
