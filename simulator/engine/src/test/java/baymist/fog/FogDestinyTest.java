package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.scene.Scene;
import baymist.scene.Transport;
import baymist.scene.VoxelSpec;
import baymist.scene.WallFinish;
import baymist.scene.io.SceneReader;
import baymist.spray.SizeBins;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The transposed fog operator: against the operator itself, against forward releases, against closed forms. */
class FogDestinyTest {
    private static final double DENSITY = 880;

    /** The demo wing box on coarse voxels, with its holes, ports and stringers. */
    private record Box(Cavity cavity, VoxelGrid grid, Scene scene) {
        static Box wing() {
            Path root = Path.of("").toAbsolutePath();
            while (!Files.isDirectory(root.resolve("scenes"))) {
                root = root.getParent();
            }
            Scene scene =
                    SceneReader.read(root.resolve("scenes/wing-box.yaml")).withVoxel(new VoxelSpec(0.03, 0.04, 0.03));
            Cavity cavity = CavityBuilder.build(scene);
            return new Box(cavity, Voxelizer.voxelize(cavity, scene.voxel(), Fields.ONE), scene);
        }

        AirField quiet() {
            AirWindow calm = AirWindow.quiet(0, 1, OpenFractions.hang(cavity.openings()));
            double[] areas = OpenFractions.areasM2(cavity.openings());
            return AirStage.plan(AirSettings.of(scene, scene.ambient()), areas, grid, List.of(calm))
                    .field(0);
        }

        /** The same with air that circulates at random round every edge of the lattice: without divergence. */
        AirField stormy(long seed) {
            AirField q = quiet();
            Random random = new Random(seed);
            double[] flux = new double[grid.faces().count()];
            Map<Integer, Integer> face = new HashMap<>();
            for (int f = 0; f < flux.length; f++) {
                if (grid.faces().opening()[f] < 0) {
                    face.put(3 * grid.faces().low()[f] + grid.faces().axis()[f], f);
                }
            }
            for (int c = 0; c < grid.cellCount(); c++) {
                for (int a = 0; a < 3; a++) {
                    int b = (a + 1) % 3;
                    int alongA = grid.neighbour(c, 2 * a + 1);
                    int alongB = grid.neighbour(c, 2 * b + 1);
                    Integer[] round = {
                        face.get(3 * c + a), face.get(3 * alongA + b), face.get(3 * alongB + a), face.get(3 * c + b)
                    };
                    if (alongA >= 0 && alongB >= 0 && Arrays.stream(round).allMatch(Objects::nonNull)) {
                        double flow = 2e-4 * random.nextGaussian();
                        flux[round[0]] += flow;
                        flux[round[1]] += flow;
                        flux[round[2]] -= flow;
                        flux[round[3]] -= flow;
                    }
                }
            }
            double[] open = new double[cavity.openings().size()];
            Arrays.fill(open, 1);
            return new AirField(
                    flux,
                    q.ventFluxM3PerS(),
                    q.sourceM3PerS(),
                    0,
                    q.eddyDiffusivityM2PerS(),
                    q.frictionSpeedMPerS(),
                    open,
                    0);
        }
    }

    private static FogOperator operator(VoxelGrid grid, AirField air, double diameterM) {
        return FogOperator.of(grid, air, Fields.one(diameterM), 0, DENSITY, Fields.AIR, Fields.DOWN, WallFinish.SMOOTH);
    }

    private static double dot(double[] a, double[] b) {
        return FogBin.sum(
                IntStream.range(0, a.length).mapToDouble(i -> a[i] * b[i]).toArray());
    }

    private static double[] random(int n, Random random) {
        return random.doubles(n, -1, 1).toArray();
    }

    @Test
    void forwardAndAdjointInnerProductsAgreeToRounding() {
        // <A x, y> = <x, A^T y> for any x, y: the definition of the transpose
        Box box = Box.wing();
        for (AirField air : List.of(box.quiet(), box.stormy(7))) {
            for (double d : new double[] {0, 3e-6, 30e-6, 80e-6}) {
                FogOperator a = operator(box.grid, air, d);
                Random random = new Random(11);
                for (int i = 0; i < 5; i++) {
                    double[] x = random(a.cells(), random);
                    double[] y = random(a.cells(), random);
                    double[] ax = a.apply(x);
                    double size = Math.sqrt(dot(ax, ax) * dot(y, y));
                    assertEquals(dot(ax, y), dot(x, a.applyTransposed(y)), 1e-14 * size);
                }
            }
        }
    }

    @Test
    void theOperatorStepsAsTheStepperDoes() {
        // one short explicit step: mass after = mass + h A mass
        Box box = Box.wing();
        AirField air = box.stormy(3);
        FogOperator a = operator(box.grid, air, 20e-6);
        FogStepper fog = new FogStepper(
                box.grid,
                Fields.one(20e-6),
                DENSITY,
                Fields.AIR,
                Fields.DOWN,
                WallFinish.SMOOTH,
                Transport.FIRST_ORDER,
                Fields.ONE);
        Random random = new Random(5);
        double[] mass = random.doubles(a.cells(), 0, 1e-6).toArray();
        for (int c = 0; c < mass.length; c++) {
            fog.release(c, mass[c]);
        }
        double h = 1e-5;
        fog.advance(air, null, h);
        double[] rate = a.apply(mass);
        for (int c = 0; c < mass.length; c++) {
            double now = fog.concentrationKgPerM3(c) * box.grid.volumeM3(c);
            assertEquals(mass[c] + h * rate[c], now, 1e-14 * 1e-6 + 1e-12 * mass[c]);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theFieldIsWhatForwardReleasesFromTwentyCellsDeposit(boolean storm) {
        Box box = Box.wing();
        AirField air = storm ? box.stormy(1) : box.quiet();
        SizeBins bins = Fields.one(40e-6);
        FogOperator a = operator(box.grid, air, 40e-6);
        int[] region = lowerSkinOfBay(box, 1);
        double[] field = new FogDestiny(a).ever(a.rateOfReaching(region));
        Random random = new Random(2);
        int tried = 0;
        double most = 0;
        for (int i = 0; i < 20; i++) {
            int cell = random.nextInt(box.grid.cellCount());
            FogStepper fog = new FogStepper(
                    box.grid,
                    bins,
                    DENSITY,
                    Fields.AIR,
                    Fields.DOWN,
                    WallFinish.SMOOTH,
                    Transport.FIRST_ORDER,
                    Fields.ONE);
            fog.release(cell, 1);
            for (int w = 0; w < 400 && fog.airborneKg() > 1e-9; w++) {
                fog.advance(air, null, 0.5);
            }
            double landed = 0;
            for (int s : region) {
                landed += fog.depositedKg(s);
            }
            // time-integrated explicit steps meet the steady solve exactly; quiet air is stepped in parts (split), of
            // first order in time
            double tolerance = storm ? 1e-7 : 0.01;
            assertEquals(landed, field[cell], tolerance + fog.airborneKg(), "from cell " + cell);
            most = Math.max(most, landed);
            tried++;
        }
        assertEquals(20, tried);
        assertTrue(most > 0.05, "some of the twenty reach the region: " + most);
    }

    private static int[] lowerSkinOfBay(Box box, int bay) {
        SurfelSet s = box.grid.surfels();
        return IntStream.range(0, s.count())
                .filter(i -> s.isStructure(i) && s.normalZ()[i] > 0.5 && box.grid.bayOfCell(s.cell()[i]) == bay)
                .toArray();
    }

    @Test
    void allPlacesTogetherCatchAllThatDoesNotLeave() {
        Box box = Box.wing();
        FogOperator a = operator(box.grid, box.stormy(9), 10e-6);
        int[] all = IntStream.range(0, box.grid.surfels().count()).toArray();
        FogDestiny destiny = new FogDestiny(a);
        double[] walls = destiny.ever(a.rateOfReaching(all));
        double[] out = new double[a.cells()];
        for (int v = 0; v < box.grid.faces().vents(); v++) {
            out[box.grid.faces().ventCell()[v]] += a.ventPerS(v);
        }
        double[] vents = destiny.ever(out);
        for (int c = 0; c < walls.length; c++) {
            assertEquals(1, walls[c] + vents[c], 1e-8, "cell " + c);
        }
    }

    @ParameterizedTest
    @CsvSource({"20e-6, 0.02", "5e-6, 0.02", "1e-6, 0.01"})
    void wellStirredFogIsSharedAsItsRatesOfDeposition(double d, double friction) {
        // Stirred chamber: every wall takes v_d A over the sum of all (Lai and Nazaroff 2000, equation for the loss
        // rate; closed form for K to infinity).
        VoxelGrid grid = BoxGrid.cubes(4, 3, 5, 0.02).build();
        AirField air = Fields.still(grid, 20, friction, 1);
        FogOperator a = operator(grid, air, d);
        DepositionLaw law =
                new DepositionLaw(FogDroplet.of(d, DENSITY, Fields.AIR, 9.81), Fields.AIR, WallFinish.SMOOTH);
        double floorArea = 4 * 3 * 4e-4;
        double sideArea = 2 * (4 + 3) * 5 * 4e-4;
        double floor = law.speedMPerS(friction, 1) * floorArea;
        double all = floor + law.speedMPerS(friction, -1) * floorArea + law.speedMPerS(friction, 0) * sideArea;
        int[] down = facing(grid, 4);
        double[] p = new FogDestiny(a).ever(a.rateOfReaching(down));
        for (double share : p) {
            assertEquals(floor / all, share, 2e-4);
        }
        // within T: the same times 1 - exp(-λ T)
        double volume = grid.totalVolumeM3();
        double time = 1.3 * volume / all;
        for (double share : new FogDestiny(a).within(a.rateOfReaching(down), time)) {
            assertEquals(floor / all * (1 - Math.exp(-1.3)), share, 1e-3);
        }
    }

    private static int[] facing(VoxelGrid grid, int direction) {
        SurfelSet s = grid.surfels();
        return IntStream.range(0, s.count())
                .filter(i -> s.direction()[i] == direction)
                .toArray();
    }

    @Test
    void inStillAirEveryDropletFallsStraightDown() {
        // No eddies, no air: a droplet of any size ends on the floor below it, nowhere else.
        VoxelGrid grid = BoxGrid.cubes(3, 3, 6, 0.02).build();
        FogOperator a = operator(grid, Fields.still(grid, 0), 8e-6);
        SurfelSet s = grid.surfels();
        for (int floor : facing(grid, 4)) {
            double[] p = new FogDestiny(a).ever(a.rateOfReaching(new int[] {floor}));
            int below = s.cell()[floor];
            for (int c = 0; c < p.length; c++) {
                assertEquals(c % 9 == below % 9 ? 1 : 0, p[c], 1e-12);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"2e-4, 0.05", "1e-3, 0.05", "5e-3, 0.1"})
    void settlingAgainstEddiesIsSharedBetweenFloorAndCeilingAsInClosedForm(double k, double friction) {
        // Backward equation of drift and diffusion, K p'' - v p' = 0 with K p'(0) = vf (p(0) - 1) on the floor and
        // -K p'(H) = vc p(H) on the ceiling; solution a + b exp(v z/K). Splitting probability, Gardiner, Handbook of
        // Stochastic Methods, ch. 5 (from memory), with partly catching ends derived here.
        double d = 2e-6;
        double height = 0.1;
        FogDroplet droplet = FogDroplet.of(d, DENSITY, Fields.AIR, 9.81);
        DepositionLaw law = new DepositionLaw(droplet, Fields.AIR, WallFinish.SMOOTH);
        double v = droplet.settlingMPerS();
        double vf = law.speedMPerS(friction, 1);
        double vc = law.speedMPerS(friction, -1);
        double e = Math.exp(v * height / k);
        // vf (a + b - 1) = v b ;  -v b e = vc (a + b e)
        double ratio = -(v + vc) * e / vc; // a = ratio b
        double b = vf / (vf * (ratio + 1) - v);
        double worst = 0;
        int n = 80;
        VoxelGrid grid = new BoxGrid(1, 1, n, 0.1, 0.1, height / n).build();
        double[] field = vertical(grid, k, friction, d);
        for (int c = 0; c < n; c++) {
            double z = (c + 0.5) * height / n;
            double exact = ratio * b + b * Math.exp(v * z / k);
            worst = Math.max(worst, Math.abs(exact - field[c]));
        }
        // a wall takes from the middle of its cell: of first order, v dz/(2K) of the share
        assertTrue(worst < 1.1 * (vf * height / n / (2 * k)), worst + " off");
    }

    /** Share that floor takes of what floor and ceiling take; side walls of the column are no part of the problem. */
    private static double[] vertical(VoxelGrid grid, double k, double friction, double d) {
        AirField air = Fields.still(grid, k, friction, 1);
        double[] u = air.frictionSpeedMPerS();
        // side walls without friction take nothing
        for (int s = 0; s < u.length; s++) {
            u[s] = grid.surfels().direction()[s] < 4 ? 0 : friction;
        }
        FogOperator a = operator(grid, air, d);
        return new FogDestiny(a).ever(a.rateOfReaching(facing(grid, 4)));
    }

    @Test
    void moreHangTimeNeverTakesLess() {
        Box box = Box.wing();
        FogOperator a = operator(box.grid, box.quiet(), 15e-6);
        double[] reaching = a.rateOfReaching(lowerSkinOfBay(box, 2));
        FogDestiny destiny = new FogDestiny(a);
        double[] before = new double[a.cells()];
        for (double time : new double[] {1, 10, 60, 600, 1e5}) {
            double[] now = destiny.within(reaching, time);
            for (int c = 0; c < now.length; c++) {
                assertTrue(now[c] >= before[c] - 1e-9 && now[c] <= 1);
            }
            before = now;
        }
        double[] ever = destiny.ever(reaching);
        for (int c = 0; c < ever.length; c++) {
            assertEquals(ever[c], before[c], 1e-3);
        }
        assertTrue(Arrays.stream(ever).max().orElse(0) > 0.9);
    }
}
