package baymist.verify;

import baymist.airflow.AirField;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.Transport;
import baymist.spray.SizeBins;
import baymist.units.Air;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * A smooth hump of a tracer that turns once round in a slab of air with a rigid middle, as Zalesak (1979), J. Comput. Phys. 31, 335-362, turned his
 * bodies: the exact solution is what there was. The flux comes from a stream function: rigid within 0.4 m of the middle, at rest beyond 0.48 m.
 */
final class TurnedHump {
    private TurnedHump() {}

    /** Error of second-order transport on n x n cells: L1 over the mass. */
    static double error(int n) {
        double h = 1.0 / n;
        VoxelGrid grid = FogBox.grid(new Vec3(1, h, 1), new Vec3(n, 1, n));
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        for (int e = 0; e < flux.length; e++) {
            double x = (grid.i(faces.low()[e]) + 1) * h;
            double z = (grid.k(faces.low()[e]) + 1) * h;
            double corner = stream(x, z);
            flux[e] = h * (faces.axis()[e] == 0 ? corner - stream(x, z - h) : stream(x - h, z) - corner);
        }
        SizeBins tracer = new SizeBins(new double[] {0}, new double[] {1});
        FogStepper fog =
                FogBox.stepper(grid, tracer, 880, Air.STANDARD, Vec3.ZERO, Transport.SECOND_ORDER, new Workers(1));
        for (int c = 0; c < grid.cellCount(); c++) {
            fog.release(c, hump(grid.centre(c)) * grid.volumeM3(c));
        }
        AirField air = new AirField(
                flux,
                new double[0],
                new double[grid.cellCount()],
                0,
                new double[grid.cellCount()],
                new double[grid.surfels().count()],
                new double[0],
                0);
        fog.advance(air, null, 1);
        double off = 0;
        double all = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            double exact = hump(grid.centre(c));
            off += Math.abs(fog.concentrationKgPerM3(c) - exact);
            all += exact;
        }
        return off / all;
    }

    /** m²/s: one turn a second in the middle. */
    private static double stream(double x, double z) {
        double r = Math.min(0.48, Math.hypot(x - 0.5, z - 0.5));
        double rigid = Math.min(r, 0.4);
        double slow = r - rigid;
        return Math.PI * (rigid * rigid + 0.8 * slow * (1 - slow / 0.16));
    }

    private static double hump(Vec3 at) {
        double r = Math.hypot(at.x() - 0.62, at.z() - 0.5) / 0.26;
        return r < 1 ? Math.pow(Math.cos(0.5 * Math.PI * r), 4) : 0;
    }
}
