package baymist.scene;

import baymist.geom.Vec3;
import baymist.units.Air;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One complete, validated job in SI units.
 *
 * @param file scene file as the user named it, for messages
 * @param hash SHA-256 (hex) over the scene file and every file that it names
 * @param cuts openings that the scene cuts besides those of the model
 * @param states overrides of the states of named openings (of the model or cut), by opening name
 * @param wands by name
 * @param gravity unit vector along gravity in structure axes, (0, 0, -1) when level
 * @param gravityMPerS2 magnitude, m/s²
 * @param hangS hang time after the last pass, s
 * @param sizeBins number of droplet size bins, 1..24
 * @param raysPerJet rays that sample a jet at one station, at least 16
 * @param stationSpacingM largest spacing of spray stations along a pass, m; 0 = chosen by the engine
 * @param ambient air in and round the cavity
 * @param protectedItems what must not be sprayed, in or on the cavity
 * @param obstacles what stands outside in the way of wands
 * @param bayLabels names of bays, where people have them
 * @param walls finish of the sheet inside
 * @param transport how fog is carried
 * @param raySeed shifts the sets of rays, 0 or more; results of other seeds differ by the error of ray sampling alone
 * @param hinge line that a control surface turns about, or null
 * @param studies what studies over the scene try; no run looks at it
 */
public record Scene(
        String file,
        String hash,
        String title,
        String story,
        CavitySpec cavity,
        List<OpeningSpec> cuts,
        Map<String, PhaseStates> states,
        Map<String, WandSpec> wands,
        ProductSpec product,
        SupplySpec supply,
        List<EntrySpec> entries,
        List<PassSpec> passes,
        double hangS,
        TargetSpec targets,
        Vec3 gravity,
        double gravityMPerS2,
        VoxelSpec voxel,
        AirSpec air,
        @Nullable InitialFog initialFog,
        int sizeBins,
        int raysPerJet,
        double stationSpacingM,
        Air ambient,
        List<ProtectedItem> protectedItems,
        List<Obstacle> obstacles,
        List<BayLabel> bayLabels,
        WallFinish walls,
        Transport transport,
        long raySeed,
        @Nullable HingeLine hinge,
        Studies studies) {
    public Scene {
        cuts = List.copyOf(cuts);
        states = Map.copyOf(states);
        wands = Map.copyOf(wands);
        entries = List.copyOf(entries);
        passes = List.copyOf(passes);
        protectedItems = List.copyOf(protectedItems);
        obstacles = List.copyOf(obstacles);
        bayLabels = List.copyOf(bayLabels);
    }

    /** The same job on other voxels. */
    public Scene withVoxel(VoxelSpec other) {
        return SceneEdit.of(this).voxel(other).done();
    }

    /** The same job with another hang time after its last pass, s. */
    public Scene withHangS(double other) {
        return SceneEdit.of(this).hangS(other).done();
    }

    /** The same job with another number of size bins and of rays a jet. */
    public Scene withNumerics(int otherBins, int otherRays) {
        return SceneEdit.of(this)
                .numerics(otherBins, otherRays, stationSpacingM)
                .done();
    }

    /** The same job with other air. */
    public Scene withAir(AirSpec other) {
        return SceneEdit.of(this).air(other).done();
    }

    /** The same job with fog carried in another way. */
    public Scene withTransport(Transport other) {
        return SceneEdit.of(this).transport(other).done();
    }

    /** The same job with other passes. */
    public Scene withPasses(List<PassSpec> others) {
        return SceneEdit.of(this).passes(others).done();
    }

    /** The same job with other names for its bays. */
    public Scene withBayLabels(List<BayLabel> labels) {
        return SceneEdit.of(this).bayLabels(labels).done();
    }

    /** The same job with its rays shifted. */
    public Scene withRaySeed(long seed) {
        return SceneEdit.of(this).raySeed(seed).done();
    }
}
