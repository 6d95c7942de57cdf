package baymist.study;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.VoxelSpec;
import baymist.units.Quantities;
import baymist.voxel.Voxelizer;
import java.util.Locale;

/**
 * How coarsely jobs are computed while they are compared. Everything else of a job stays: its physics, its geometry, its hang times.
 *
 * @param voxelFactor length of a planning voxel over that of the scene (as it comes out for it), 1 to 4
 * @param sizeBins most droplet size bins
 * @param raysPerJet most rays a jet, at least 16
 * @param stationFactor spacing of spray stations over that of the scene, 1 to 8
 */
public record Planning(double voxelFactor, int sizeBins, int raysPerJet, double stationFactor) {
    /** What comparisons are made at: an eighth of the cells, half of the stations. */
    public static final Planning DEFAULT = new Planning(2, 6, 64, 2);

    /** The scene as it stands, its own air included. */
    public static final Planning OWN = new Planning(1, Integer.MAX_VALUE, Integer.MAX_VALUE, 1);

    /** The scene's own resolution with projected air. */
    public static final Planning FULL = new Planning(1, 24, 100_000, 1);

    /** Planning voxels across the cavity, at least; fewer smear film from wall to wall. ASSUMED. */
    private static final int FEWEST = 8;

    /** Spacing of stations where the scene states none, m, that of the engine. */
    private static final double STATION_M = 0.025;

    public Planning {
        if (!(voxelFactor >= 1 && voxelFactor <= 4 && stationFactor >= 1 && stationFactor <= 8)) {
            throw new IllegalArgumentException(
                    "planning with voxels x " + voxelFactor + " and stations x " + stationFactor);
        }
        if (sizeBins < 1 || raysPerJet < 16) {
            throw new IllegalArgumentException("planning with " + sizeBins + " bins and " + raysPerJet + " rays");
        }
    }

    /** The scene at this resolution. The cavity is that of the scene; scenes that differ in holes alone get the same voxels. */
    public Scene of(Scene scene, Cavity cavity) {
        if (equals(OWN)) {
            return scene;
        }
        Vec3 own = Voxelizer.sizeM(cavity, scene.voxel());
        double spacing = scene.stationSpacingM() > 0 ? scene.stationSpacingM() : STATION_M;
        return SceneEdit.of(scene)
                .voxel(
                        voxelFactor == 1
                                ? scene.voxel()
                                : longer(own, cavity.sheets().bounds().size()))
                .air(
                        scene.air().mode() == AirSpec.Mode.STILL
                                ? scene.air()
                                : scene.air().withMode(AirSpec.Mode.PROJECTED, 0))
                .numerics(
                        Math.min(scene.sizeBins(), sizeBins),
                        Math.min(scene.raysPerJet(), raysPerJet),
                        stationFactor == 1 ? scene.stationSpacingM() : stationFactor * spacing)
                .done();
    }

    /** Longer voxels, as long as {@link #FEWEST} of them span the cavity along each axis. */
    private VoxelSpec longer(Vec3 own, Vec3 extent) {
        double[] size = new double[3];
        for (int a = 0; a < 3; a++) {
            size[a] = Math.max(own.get(a), Math.min(voxelFactor * own.get(a), extent.get(a) / FEWEST));
        }
        return new VoxelSpec(size[0], size[1], size[2]);
    }

    /** The resolution in one line, for every output that stands on it. */
    public String words() {
        if (equals(OWN)) {
            return "the resolution and the air of a full run";
        }
        return String.format(
                Locale.ROOT,
                "%sprojected air, at most %d size bins and %d rays a jet%s",
                voxelFactor == 1
                        ? "the voxels of a full run, "
                        : "voxels " + Quantities.number(voxelFactor, 3)
                                + " times as long as in a full run where that leaves " + FEWEST + " across, ",
                sizeBins,
                raysPerJet,
                stationFactor == 1 ? "" : ", stations " + Quantities.number(stationFactor, 3) + " times as far apart");
    }
}
