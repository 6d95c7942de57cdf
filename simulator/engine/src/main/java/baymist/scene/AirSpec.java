package baymist.scene;

/**
 * How the air is treated.
 *
 * @param mode PROJECTED = fast mass-consistent field; STILL = no air motion at all (verification)
 * @param quietDiffusivityM2PerS eddy diffusivity when the trigger is off; negative = from the bay's size and a 1 K wall difference
 * @param sprayDiffusivityM2PerS eddy diffusivity while the trigger is on; negative = from the jets' power balance
 * @param pressureLimitPa gauge pressure in the cavity above which the run is refused
 */
public record AirSpec(Mode mode, double quietDiffusivityM2PerS, double sprayDiffusivityM2PerS, double pressureLimitPa) {
    /** Air model. */
    public enum Mode {
        PROJECTED,
        STILL
    }

    public static final AirSpec DEFAULT = new AirSpec(Mode.PROJECTED, -1, -1, 10_000);
}
