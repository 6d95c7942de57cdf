package baymist.verify;

import baymist.airflow.AirField;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.Transport;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.units.Dimension;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * A front that drifts and spreads along a channel, Ogata and Banks (1961), USGS Professional Paper 411-A, by its complement: fog fills the channel, clean
 * air comes in at the end x = 0, which takes what reaches it by spreading. Both ends are beams that draw fog in: the near one takes what the exact flux
 * over half a cell brings to clean air, the far one what drifts out.
 */
final class FogFront {
    private FogFront() {}

    /** One less the concentration at {@code at} after {@code time}, over that at the start. */
    static double of(Inputs in) {
        int n = in.whole("cells");
        double length = in.lengthM("length");
        double h = length / n;
        double speed = in.si("speed", Dimension.SPEED);
        double diffusivity = in.si("diffusivity", Dimension.DIFFUSIVITY);
        VoxelGrid grid = FogBox.grid(new Vec3(length, h, h), new Vec3(n, 1, 1));
        double[] flux = new double[grid.faces().count()];
        Arrays.fill(flux, speed * h * h);
        double[] mixing = new double[grid.cellCount()];
        Arrays.fill(mixing, diffusivity);
        double[] source = new double[grid.cellCount()];
        source[0] = speed * h * h;
        AirField air = new AirField(
                flux,
                new double[0],
                source,
                0,
                mixing,
                new double[grid.surfels().count()],
                new double[0],
                0);
        SizeBins tracer = new SizeBins(new double[] {0}, new double[] {1});
        double peclet = speed * h / (2 * diffusivity);
        double end = speed / Math.expm1(peclet) * h * h;
        SprayHits ends = beams(n - 1, end, speed * h * h);
        Transport transport =
                "first".equals(in.word("order", "second")) ? Transport.FIRST_ORDER : Transport.SECOND_ORDER;
        FogStepper fog = FogBox.stepper(grid, tracer, 880, Air.STANDARD, Vec3.ZERO, transport, new Workers(1));
        fog.addUniform(1);
        int windows = in.whole("windows");
        for (int w = 0; w < windows; w++) {
            fog.advance(air, ends, in.timeS("time") / windows);
        }
        int right = (int) Math.round(in.lengthM("at") / h);
        return 1 - 0.5 * (fog.concentrationKgPerM3(right - 1, 0) + fog.concentrationKgPerM3(right, 0));
    }

    private static SprayHits beams(int last, double nearM3PerS, double farM3PerS) {
        int[] none = {};
        double[] zero = {};
        return new SprayHits(
                none,
                zero,
                none,
                zero,
                0,
                none,
                zero,
                zero,
                zero,
                new int[] {0, last},
                new int[] {0, 0},
                new double[] {nearM3PerS, farM3PerS},
                new double[] {1, 1},
                0,
                -1,
                0,
                0,
                -1,
                0,
                0);
    }
}
