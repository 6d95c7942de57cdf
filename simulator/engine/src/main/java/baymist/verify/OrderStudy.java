package baymist.verify;

import baymist.airflow.AirField;
import baymist.cavity.CavityBuilder;
import baymist.film.FilmAgeing;
import baymist.film.FilmFormulas;
import baymist.film.FilmRuns;
import baymist.film.FilmSettings;
import baymist.film.FilmState;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.ProductSpec;
import baymist.scene.Transport;
import baymist.scene.VoxelSpec;
import baymist.scene.WallFinish;
import baymist.spray.Droplet;
import baymist.spray.SizeBins;
import baymist.units.Air;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;

/**
 * Order of accuracy of the operators: each is run on ever finer grids against an exact solution, and the slope of its error over the grid size is
 * what it delivers, beside what its page in docs/theory claims.
 */
public final class OrderStudy {
    private static final Path NOWHERE = Path.of("order");

    private OrderStudy() {}

    /**
     * One operator.
     *
     * @param name operator and exact solution
     * @param claimed order that its theory page claims
     * @param cells cells along the side that counts, rising
     * @param error relative error on each grid
     */
    public record Row(String name, double claimed, int[] cells, double[] error) {
        /** Slope of the error between the two finest grids. */
        public double order() {
            int n = cells.length;
            return Math.log(error[n - 2] / error[n - 1]) / Math.log((double) cells[n - 1] / cells[n - 2]);
        }

        /**
         * Whether the measured order is what is claimed, less a fifth: on finite grids a fan of waves from an edge (the running film) costs
         * a logarithm, h ln(1/h), which is 0.8 between 120 and 240 cells.
         */
        public boolean asClaimed() {
            return order() >= claimed - 0.2;
        }
    }

    /** All operators; some seconds. */
    public static List<Row> run() {
        List<Row> rows = new ArrayList<>();
        rows.add(row("eddies: point release in a sealed rod, cosine series", 2, OrderStudy::rod, 10, 30, 90));
        rows.add(row("settling against eddies, Pe 2: slowest decay", 2, OrderStudy::decay, 5, 10, 20));
        rows.add(row("settling alone: a smooth layer sinks, limited slopes", 2, OrderStudy::layer, 50, 100, 200));
        rows.add(row("the same with donor cells (first order)", 1, OrderStudy::layerByDonors, 50, 100, 200, 400));
        rows.add(
                row("front between air and fog, Ogata and Banks, limited slopes", 2, OrderStudy::front, 100, 200, 400));
        rows.add(row("a hump turns once round, limited slopes, levels of steps", 2, TurnedHump::error, 40, 80));
        rows.add(row("running film: upright plate, Jeffreys", 1, OrderStudy::plate, 30, 60, 120));
        return rows;
    }

    private static Row row(String name, double claimed, IntToDoubleFunction error, int... cells) {
        return new Row(
                name, claimed, cells, Arrays.stream(cells).mapToDouble(error).toArray());
    }

    /** Concentration at 0.75 m after 20 s of a release at 0.25 m; cell middles lie there for odd multiples of ten cells. */
    private static double rod(int n) {
        Inputs in = Inputs.parse(
                "size=1 0.02 0.02; cells=" + n
                        + " 1 1; source=0.25 0.01 0.01; at=0.75 0.01 0.01; diffusivity=0.01 m2/s;"
                        + " time=20 s; windows=60000",
                NOWHERE);
        double exact = 1;
        for (int m = 1; m < 60; m++) {
            exact += 2
                    * Math.exp(-0.01 * m * m * Math.PI * Math.PI * 20)
                    * Math.cos(m * Math.PI * 0.25)
                    * Math.cos(m * Math.PI * 0.75);
        }
        return Math.abs(FogBox.of(in).concentrationOverMean() / exact - 1);
    }

    /** Root of tan k = 2 a k/(k² - a²) at a = 1 gives 1.353526 V/H. */
    private static double decay(int n) {
        Inputs in = Inputs.parse(
                "size=0.01 0.01 0.15; cells=1 1 " + n + "; diameter=10 um; density=880 kg/m3; peclet=2; windows=4000",
                NOWHERE);
        double a = 1;
        double low = 1;
        double high = 1.5;
        for (int i = 0; i < 100; i++) {
            double k = 0.5 * (low + high);
            // k sits where 2 a k cos k = (k² - a²) sin k; the difference falls with k here.
            if (2 * a * k * Math.cos(k) - (k * k - a * a) * Math.sin(k) > 0) {
                low = k;
            } else {
                high = k;
            }
        }
        double exact = (low * low + a * a) / (2 * a);
        return Math.abs(FogBox.of(in).lateDecay() / exact - 1);
    }

    private static VoxelGrid column(int n, double heightM, double sideM) {
        CavitySpec.Block block = new CavitySpec.Block(
                "column",
                new Vec3(sideM, sideM, heightM),
                Vec3.ZERO,
                Vec3.ZERO,
                1e-3,
                List.of(),
                SourcePlace.of("verification"));
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(
                    CavityBuilder.build(block, List.of(), Map.of(), List.of()),
                    new VoxelSpec(sideM, sideM, heightM / n),
                    workers);
        }
    }

    /** A Gaussian layer of 60 mm deviation in a column of 1 m that sinks by 0.2 m: L1 error over its mass. */
    private static double layer(int n) {
        return layer(n, Transport.SECOND_ORDER);
    }

    private static double layerByDonors(int n) {
        return layer(n, Transport.FIRST_ORDER);
    }

    /**
     * Ogata and Banks (1961): 0.45 m from the end after 5 s at 0.1 m/s and 0.001 m²/s,
     * {@code (erfc((x - v t)/(2 sqrt(D t))) + exp(v x/D) erfc((x + v t)/(2 sqrt(D t))))/2}.
     */
    private static double front(int n) {
        Inputs in = Inputs.parse(
                "length=3 m; cells=" + n + "; speed=0.1 m/s; diffusivity=0.001 m2/s; time=5 s; at=0.45 m; windows=1000",
                NOWHERE);
        return Math.abs(FogFront.of(in) / 0.7281242846999714 - 1);
    }

    private static double layer(int n, Transport transport) {
        VoxelGrid grid = column(n, 1, 0.02);
        double d = 20e-6;
        double speed = Droplet.settlingSpeedMPerS(d, 880, Air.STANDARD, Air.GRAVITY);
        SizeBins bins = new SizeBins(new double[] {d}, new double[] {1});
        FogStepper fog = new FogStepper(
                grid,
                bins,
                880,
                Air.STANDARD,
                new Vec3(0, 0, -Air.GRAVITY),
                WallFinish.SMOOTH,
                transport,
                new Workers(1));
        for (int c = 0; c < grid.cellCount(); c++) {
            fog.release(c, gauss(grid.centre(c).z(), 0.65) / n);
        }
        AirField still = new AirField(
                new double[grid.faces().count()],
                new double[0],
                new double[grid.cellCount()],
                0,
                new double[grid.cellCount()],
                new double[grid.surfels().count()],
                new double[0],
                0);
        fog.advance(still, null, 0.2 / speed);
        double off = 0;
        double all = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            double exact = gauss(grid.centre(c).z(), 0.45) / n;
            off += Math.abs(fog.concentrationKgPerM3(c) * grid.volumeM3(c) - exact);
            all += exact;
        }
        return off / all;
    }

    private static double gauss(double z, double middle) {
        double x = (z - middle) / 0.06;
        return Math.exp(-0.5 * x * x);
    }

    /** Film of 1 mm on an upright plate of 0.3 m after 600 s: mean relative error from 0.1 m below the edge on. */
    private static double plate(int n) {
        VoxelGrid grid = column(n, 0.3, 0.01);
        ProductSpec oil = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293, 0, 0, 0, 1, Double.POSITIVE_INFINITY);
        FilmState film = new FilmState(grid.surfels(), oil);
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            if (f.direction()[s] == 0) {
                film.addDirect(s, 1e-3 * f.areaM2()[s] * oil.densityKgPerM3());
            }
        }
        FilmRuns runs = new FilmRuns(grid, oil, new Vec3(0, 0, -9.81), new FilmSettings(0, 5, 20_000));
        FilmState later = FilmAgeing.after(film, runs, null, new double[0], 600);
        double off = 0;
        int count = 0;
        for (int s = 0; s < f.count(); s++) {
            double below = 0.3 - f.centreZ()[s];
            if (f.direction()[s] == 0 && below > 0.1 && below < 0.28) {
                double exact = FilmFormulas.jeffreysM(1e-3, below, 600, 0.04 / 880, 9.81);
                off += Math.abs(later.wetBuildM(s) / exact - 1);
                count++;
            }
        }
        return off / count;
    }
}
