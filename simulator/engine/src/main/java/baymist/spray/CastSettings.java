package baymist.spray;

import baymist.geom.Vec3;

/**
 * How jets are sampled, and what pulls at the drops.
 *
 * @param raysPerJet rays that sample a jet at one station, at least 1: so many for the air and as many for the liquid
 * @param seed shifts the sets of rays; results of other seeds differ by the error of sampling alone
 * @param gravityMPerS2 acceleration of gravity in structure axes, m/s²; zero = drops fly straight
 */
public record CastSettings(int raysPerJet, long seed, Vec3 gravityMPerS2) {
    /** Straight flight, seed 0. */
    public static CastSettings rays(int raysPerJet) {
        return new CastSettings(raysPerJet, 0, Vec3.ZERO);
    }
}
