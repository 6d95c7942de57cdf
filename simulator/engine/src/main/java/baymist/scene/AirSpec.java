package baymist.scene;

/**
 * How the air is treated.
 *
 * @param mode RESOLVED = transient flow, the default; PROJECTED = fast mass-consistent field; STILL = no air motion at all (verification);
 *     AUTO = resolved where it is affordable, else projected
 * @param quietDiffusivityM2PerS eddy diffusivity when the trigger is off; negative = from the bay's size and a 1 K wall difference
 * @param sprayDiffusivityM2PerS eddy diffusivity while the trigger is on; negative = from the jets' power balance
 * @param pressureLimitPa gauge pressure in the cavity above which the run is refused
 * @param blockCells voxels along each side of a cell of the resolved air: 1 to 4, or 0 = by cost
 */
public record AirSpec(
        Mode mode,
        double quietDiffusivityM2PerS,
        double sprayDiffusivityM2PerS,
        double pressureLimitPa,
        int blockCells) {
    /** Air model. */
    public enum Mode {
        AUTO,
        RESOLVED,
        PROJECTED,
        STILL
    }

    public static final AirSpec DEFAULT = new AirSpec(Mode.RESOLVED, -1, -1, 10_000);

    public AirSpec {
        if (blockCells < 0 || blockCells > 4) {
            throw new IllegalArgumentException("air blocks of " + blockCells + " voxels; 0 to 4 expected");
        }
    }

    /** With blocks chosen by cost. */
    public AirSpec(Mode mode, double quietDiffusivityM2PerS, double sprayDiffusivityM2PerS, double pressureLimitPa) {
        this(mode, quietDiffusivityM2PerS, sprayDiffusivityM2PerS, pressureLimitPa, 0);
    }

    /** The same treatment by another model. */
    public AirSpec withMode(Mode other, int blocks) {
        return new AirSpec(other, quietDiffusivityM2PerS, sprayDiffusivityM2PerS, pressureLimitPa, blocks);
    }
}
