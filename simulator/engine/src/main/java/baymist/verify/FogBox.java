package baymist.verify;

import baymist.airflow.AirField;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.Transport;
import baymist.scene.VoxelSpec;
import baymist.scene.WallFinish;
import baymist.spray.Droplet;
import baymist.spray.SizeBins;
import baymist.units.Air;
import baymist.units.Dimension;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Fog of one droplet size in a closed box of still air with one eddy diffusivity and one friction speed at all walls: what the
 * exact solutions of diffusion and settling assume and no scene can state.
 */
final class FogBox {
    private final Inputs in;
    private final Vec3 size;
    private final VoxelGrid grid;

    private FogBox(Inputs in, Vec3 size, VoxelGrid grid) {
        this.in = in;
        this.size = size;
        this.grid = grid;
    }

    /** Box of {@code size} (three numbers, m) in {@code cells} (three numbers) cells. */
    static FogBox of(Inputs in) {
        Vec3 size = in.vector("size");
        Vec3 cells = in.vector("cells");
        return new FogBox(in, size, grid(size, cells));
    }

    /** Cells of a box, numbers of cells along x, y, z. */
    static VoxelGrid grid(Vec3 size, Vec3 cells) {
        CavitySpec.Block block = new CavitySpec.Block(
                "box", size, Vec3.ZERO, Vec3.ZERO, 1e-3, List.of(), SourcePlace.of("verification"));
        Cavity cavity = CavityBuilder.build(block, List.of(), Map.of(), List.of());
        VoxelSpec voxel = new VoxelSpec(size.x() / cells.x(), size.y() / cells.y(), size.z() / cells.z());
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, voxel, workers);
        }
    }

    /** Fog on smooth walls with transport of a stated order. */
    static FogStepper stepper(
            VoxelGrid grid,
            SizeBins bins,
            double density,
            Air air,
            Vec3 gravity,
            Transport transport,
            Workers workers) {
        return new FogStepper(grid, bins, density, air, gravity, WallFinish.SMOOTH, transport, workers);
    }

    /** Concentration of a tracer at {@code at} after {@code time}, over its mean; all of it starts in the cell of {@code source}. */
    double concentrationOverMean() {
        FogStepper fog = stepper(0, 1, Vec3.ZERO);
        fog.release(cell("source"), 1);
        advance(fog, in.timeS("time"));
        return fog.concentrationKgPerM3(cell("at")) * grid.totalVolumeM3();
    }

    /** Relative change of a tracer's mass over {@code time}. */
    double massDrift() {
        FogStepper fog = stepper(0, 1, Vec3.ZERO);
        fog.release(cell("source"), 1);
        advance(fog, in.timeS("time"));
        return Math.abs(fog.airborneKg() - 1);
    }

    /** Rate at which fog that fills the box is lost over {@code time}, 1/s. */
    double lossRatePerS() {
        FogStepper fog = stepper(in.lengthM("diameter"), FogQuantities.density(in), down());
        fog.addUniform(1e-3);
        double start = fog.airborneKg();
        advance(fog, in.timeS("time"));
        return Math.log(start / fog.airborneKg()) / in.timeS("time");
    }

    /** Late rate of loss by settling against eddies of K = V H/Pe, in units of V/H. */
    double lateDecay() {
        double d = in.lengthM("diameter");
        double speed = Droplet.settlingSpeedMPerS(d, FogQuantities.density(in), in.air(), in.gravityMPerS2());
        double height = size.z();
        FogStepper fog = stepper(d, FogQuantities.density(in), down());
        fog.addUniform(1e-3);
        double unit = height / speed;
        double diffusivity = speed * height / in.number("peclet");
        runWindows(fog, diffusivity, 0, 6 * unit);
        double start = fog.airborneKg();
        runWindows(fog, diffusivity, 0, unit);
        return Math.log(start / fog.airborneKg());
    }

    private Vec3 down() {
        return new Vec3(0, 0, -in.gravityMPerS2());
    }

    private int cell(String input) {
        int cell = grid.cellHolding(in.vector(input));
        if (cell < 0) {
            throw new IllegalArgumentException("input \"" + input + "\" lies outside the box");
        }
        return cell;
    }

    private FogStepper stepper(double diameterM, double densityKgPerM3, Vec3 gravity) {
        SizeBins bins = new SizeBins(new double[] {diameterM}, new double[] {1});
        // one bin is one piece of work: threads would have nothing to share
        return new FogStepper(grid, bins, densityKgPerM3, in.air(), gravity, new Workers(1));
    }

    private void advance(FogStepper fog, double timeS) {
        runWindows(fog, in.si("diffusivity", Dimension.DIFFUSIVITY), in.si("friction", Dimension.SPEED, 0), timeS);
    }

    /** Advances in {@code windows} equal windows: the scheme is of first order in time where it steps implicitly. */
    private void runWindows(FogStepper fog, double diffusivity, double friction, double timeS) {
        int windows = in.has("windows") ? in.whole("windows") : 1;
        for (int w = 0; w < windows; w++) {
            run(fog, diffusivity, friction, timeS / windows);
        }
    }

    private void run(FogStepper fog, double diffusivity, double friction, double timeS) {
        double[] mixing = new double[grid.cellCount()];
        Arrays.fill(mixing, diffusivity);
        double[] walls = new double[grid.surfels().count()];
        Arrays.fill(walls, friction);
        AirField field = new AirField(
                new double[grid.faces().count()],
                new double[0],
                new double[grid.cellCount()],
                0,
                mixing,
                walls,
                new double[0],
                0);
        fog.advance(field, null, timeS);
    }
}
