package baymist.fog;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/** Air fields, sprays and droplets for tests. */
final class Fields {
    /** Share by which steps in single precision (24 bits) may be off after some thousand steps. */
    static final double SINGLE = 5e-6;

    static final Workers ONE = new Workers(1);
    static final Vec3 WEIGHTLESS = Vec3.ZERO;

    /** Gravity of the reference table, 9.81 m/s² downwards. */
    static final Vec3 DOWN = new Vec3(0, 0, -9.81);

    /** Air of the reference table. */
    static final Air AIR = new Air(1.205, 1.81e-5, 0.066e-6, 293, 101_325);

    private Fields() {}

    static AirField still(VoxelGrid grid, double diffusivity, double frictionSpeed, double openFraction) {
        double[] k = new double[grid.cellCount()];
        double[] u = new double[grid.surfels().count()];
        double[] open = new double[16];
        Arrays.fill(k, diffusivity);
        Arrays.fill(u, frictionSpeed);
        Arrays.fill(open, openFraction);
        return new AirField(
                new double[grid.faces().count()],
                new double[grid.faces().vents()],
                new double[grid.cellCount()],
                0,
                k,
                u,
                open,
                0);
    }

    static AirField still(VoxelGrid grid, double diffusivity) {
        return still(grid, diffusivity, 0, 1);
    }

    static SizeBins one(double diameterM) {
        return new SizeBins(new double[] {diameterM}, new double[] {1});
    }

    /** One droplet with a given settling speed and the default law on still walls. */
    static FogDroplet[] falling(double settlingMPerS) {
        return new FogDroplet[] {new FogDroplet(10e-6, 1, 1e-4, settlingMPerS)};
    }

    /** Stepper of one bin with a given settling speed along gravity and walls that take what settles on them. */
    static FogStepper settling(VoxelGrid grid, double settlingMPerS, Vec3 gravity) {
        return new FogStepper(grid, one(10e-6), falling(settlingMPerS), AIR, gravity, ONE);
    }

    static FogStepper tracer(VoxelGrid grid) {
        return new FogStepper(grid, one(0), 880, AIR, WEIGHTLESS, ONE);
    }

    static SprayHits fogSource(int[] cells, double[] kgPerS) {
        int[] none = {};
        double[] zero = {};
        return new SprayHits(
                none, zero, cells, kgPerS, 0, none, zero, zero, zero, none, none, zero, zero, 0, -1, 0, 0, -1, 0, 0);
    }

    static SprayHits scour(int cell, int surfel, double m3PerS, double... efficiency) {
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
                new int[] {cell},
                new int[] {surfel},
                new double[] {m3PerS},
                efficiency,
                0,
                -1,
                0,
                0,
                -1,
                0,
                0);
    }

    /** Divergence-free swirl: the curl of a stream function about y that vanishes on the walls, m³/s through each face. */
    static double[] swirl(VoxelGrid grid, double strengthM3PerS) {
        double[] flux = new double[grid.faces().count()];
        for (int e = 0; e < flux.length; e++) {
            int c = grid.faces().low()[e];
            int i = grid.i(c);
            int k = grid.k(c);
            int axis = grid.faces().axis()[e];
            if (axis == 0) {
                flux[e] = strengthM3PerS * (psi(grid, i + 1, k + 1) - psi(grid, i + 1, k));
            } else if (axis == 2) {
                flux[e] = -strengthM3PerS * (psi(grid, i + 1, k + 1) - psi(grid, i, k + 1));
            }
        }
        return flux;
    }

    private static double psi(VoxelGrid grid, int i, int k) {
        return Math.sin(Math.PI * i / grid.nx()) * Math.sin(Math.PI * k / grid.nz());
    }

    static AirField withFlux(AirField f, double[] flux) {
        return new AirField(
                flux,
                f.ventFluxM3PerS(),
                f.sourceM3PerS(),
                f.expansionPerS(),
                f.eddyDiffusivityM2PerS(),
                f.frictionSpeedMPerS(),
                f.openFraction(),
                f.residual());
    }

    static double deposited(FogStepper fog, VoxelGrid grid, int direction) {
        double sum = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            if (grid.surfels().direction()[s] == direction) {
                sum += fog.depositedKg(s);
            }
        }
        return sum;
    }

    static double depositedAll(FogStepper fog) {
        return Arrays.stream(fog.depositedKg()).sum();
    }

    /** Relative error of airborne + walls + overspray against what was put in. */
    static double closure(FogStepper fog) {
        double in = fog.releasedKg() + fog.sourcedKg();
        return (fog.airborneKg() + depositedAll(fog) + fog.oversprayKg() - in) / in;
    }
}
