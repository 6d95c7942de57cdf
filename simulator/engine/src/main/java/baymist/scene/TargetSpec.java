package baymist.scene;

/** Film thresholds, m: haze 1 µm (reached), target build 10 µm (protected), excess 50 µm by default. */
public record TargetSpec(double hazeM, double buildM, double excessM) {
    public static final TargetSpec DEFAULT = new TargetSpec(1e-6, 10e-6, 50e-6);
}
