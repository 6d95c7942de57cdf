package baymist.scene;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.units.Air;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A small valid scene for tests, with one method for each thing that a test would change. A block of 1 x 0.2 x 0.15 m with one round
 * opening in its aft wall, a ring wand through it, one pass.
 */
public final class SceneFixtures {
    public static final SourcePlace HERE = new SourcePlace("fixture.yaml", 1, "");

    private CavitySpec cavity = block(new Vec3(1, 0.2, 0.15));
    private List<OpeningSpec> cuts = List.of(round("hole", "aft wall", 0.02, new Vec3(1, 0.1, 0.075)));
    private Map<String, PhaseStates> states = Map.of();
    private List<WandSpec> wands = List.of(new WandSpec("rod", 1.2, 0.00635, 0.002, ring(8, 0.0005)));
    private ProductSpec product = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15);
    private SupplySpec supply =
            new SupplySpec.Pressure(551_580.58, 0.85, 3.7e-4, new DropletSpec.RosinRammler(30e-6, 2));
    private List<EntrySpec> entries = List.of(new EntrySpec("aft", "hole", null, HERE));
    private List<PassSpec> passes = List.of(new PassSpec("pass 1", "aft", "rod", 0.8, 0.05, 0.1, 0, 0, 0, HERE));
    private double hangS = 300;
    private Vec3 gravity = new Vec3(0, 0, -1);
    private double gravityMPerS2 = 9.80665;
    private VoxelSpec voxel = VoxelSpec.AUTO;
    private AirSpec air = AirSpec.DEFAULT;
    private @Nullable InitialFog fog;
    private int sizeBins = 4;
    private int raysPerJet = 32;
    private List<ProtectedItem> protectedItems = List.of();
    private List<Obstacle> obstacles = List.of();
    private List<BayLabel> bayLabels = List.of();
    private WallFinish walls = WallFinish.SMOOTH;

    private SceneFixtures() {}

    public static SceneFixtures minimal() {
        return new SceneFixtures();
    }

    /** A block from the origin on, 1 mm sheet. */
    public static CavitySpec.Block block(Vec3 sizeM) {
        return new CavitySpec.Block("box", sizeM, Vec3.ZERO, Vec3.ZERO, 0.001, List.of(), HERE);
    }

    public static OpeningSpec round(String name, String part, double diameterM, Vec3 centreM) {
        return new OpeningSpec(
                name, part, new Outline.Circle(diameterM / 2), centreM, null, PhaseStates.ALWAYS_OPEN, HERE);
    }

    /** Equal jets square to the wand, the first at the pin. */
    public static TipSpec ring(int jets, double orificeM) {
        List<TipSpec.Jet> list = new ArrayList<>();
        for (int i = 0; i < jets; i++) {
            list.add(new TipSpec.Jet(Math.PI / 2, 2 * Math.PI * i / jets, orificeM, 1.0 / jets, 1.0 / jets));
        }
        return new TipSpec("ring", list);
    }

    public SceneFixtures withCavity(CavitySpec value) {
        cavity = value;
        return this;
    }

    public SceneFixtures withCuts(OpeningSpec... value) {
        cuts = List.of(value);
        return this;
    }

    public SceneFixtures withStates(Map<String, PhaseStates> value) {
        states = value;
        return this;
    }

    public SceneFixtures withWands(WandSpec... value) {
        wands = List.of(value);
        return this;
    }

    public SceneFixtures withProduct(ProductSpec value) {
        product = value;
        return this;
    }

    public SceneFixtures withSupply(SupplySpec value) {
        supply = value;
        return this;
    }

    public SceneFixtures withEntries(EntrySpec... value) {
        entries = List.of(value);
        return this;
    }

    public SceneFixtures withPasses(PassSpec... value) {
        passes = List.of(value);
        return this;
    }

    public SceneFixtures withHangS(double value) {
        hangS = value;
        return this;
    }

    public SceneFixtures withGravity(Vec3 unit, double mPerS2) {
        gravity = unit;
        gravityMPerS2 = mPerS2;
        return this;
    }

    public SceneFixtures withVoxel(double xM, double yM, double zM) {
        voxel = new VoxelSpec(xM, yM, zM);
        return this;
    }

    public SceneFixtures withAir(AirSpec value) {
        air = value;
        return this;
    }

    public SceneFixtures withFog(InitialFog value) {
        fog = value;
        return this;
    }

    public SceneFixtures withNumerics(int bins, int rays) {
        sizeBins = bins;
        raysPerJet = rays;
        return this;
    }

    public SceneFixtures withProtected(ProtectedItem... value) {
        protectedItems = List.of(value);
        return this;
    }

    public SceneFixtures withObstacles(Obstacle... value) {
        obstacles = List.of(value);
        return this;
    }

    public SceneFixtures withBayLabels(BayLabel... value) {
        bayLabels = List.of(value);
        return this;
    }

    public SceneFixtures withWalls(WallFinish value) {
        walls = value;
        return this;
    }

    public Scene build() {
        Map<String, WandSpec> byName = new LinkedHashMap<>();
        wands.forEach(w -> byName.put(w.name(), w));
        return new Scene(
                "fixture.yaml",
                "0".repeat(64),
                "fixture",
                "",
                cavity,
                cuts,
                states,
                byName,
                product,
                supply,
                entries,
                passes,
                hangS,
                TargetSpec.DEFAULT,
                gravity,
                gravityMPerS2,
                voxel,
                air,
                fog,
                sizeBins,
                raysPerJet,
                0,
                Air.STANDARD,
                protectedItems,
                obstacles,
                bayLabels,
                walls,
                Transport.AUTO,
                0,
                null,
                Studies.USUAL);
    }

    /** A structure and a supply, five minutes of hang and nothing else: no openings, wands and passes. */
    public static Scene bare(String file, CavitySpec cavity, SupplySpec supply) {
        return new Scene(
                file,
                "0".repeat(64),
                "bare",
                "",
                cavity,
                List.of(),
                Map.of(),
                Map.of(),
                new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15),
                supply,
                List.of(),
                List.of(),
                300,
                TargetSpec.DEFAULT,
                new Vec3(0, 0, -1),
                9.80665,
                VoxelSpec.AUTO,
                AirSpec.DEFAULT,
                null,
                8,
                128,
                0,
                Air.STANDARD,
                List.of(),
                List.of(),
                List.of(),
                WallFinish.SMOOTH,
                Transport.AUTO,
                0,
                null,
                Studies.USUAL);
    }
}
