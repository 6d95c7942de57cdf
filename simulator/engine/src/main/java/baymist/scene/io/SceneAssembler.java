package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.AirSpec;
import baymist.scene.BayLabel;
import baymist.scene.CavitySpec;
import baymist.scene.EntrySpec;
import baymist.scene.HingeLine;
import baymist.scene.InitialFog;
import baymist.scene.Obstacle;
import baymist.scene.OpeningSpec;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.ProductSpec;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.Studies;
import baymist.scene.SupplySpec;
import baymist.scene.TargetSpec;
import baymist.scene.Transport;
import baymist.scene.VoxelSpec;
import baymist.scene.WallFinish;
import baymist.scene.WandSpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Air;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Makes the scene from decoded fields. Runs through to its end whatever is broken, so that one reading tells every problem; the
 * result counts only when there is none.
 */
final class SceneAssembler {
    private final SourceFiles files;
    private final Problems problems;
    private final OpeningAssembler openings;
    private final PassAssembler passes;

    SceneAssembler(SourceFiles files, Problems problems) {
        this.files = files;
        this.problems = problems;
        this.openings = new OpeningAssembler(problems);
        this.passes = new PassAssembler(problems, openings);
    }

    /** The scene, or null when problems are on the list. */
    @Nullable
    Scene scene(Path file, Fields f) {
        Fields cavityFields = f.fields("cavity");
        CavitySpec cavity =
                cavityFields == null ? null : new CavityAssembler(files, problems, openings).cavity(cavityFields);
        List<OpeningSpec> cuts = openings.openings(f.list("cut"));
        Map<String, WandSpec> wands = wands(f);
        SupplyAssembler supplies = new SupplyAssembler(problems);
        Fields productFields = f.fields("product");
        ProductSpec product = productFields == null ? null : supplies.product(productFields);
        Fields supplyFields = f.fields("supply");
        boolean sprays =
                f.get("passes") instanceof Value.Items items && !items.values().isEmpty();
        SupplySpec supply = supplyFields == null
                ? null
                : supplies.supply(supplyFields, product == null ? Double.NaN : product.densityKgPerM3(), sprays);
        List<EntrySpec> entries = passes.entries(f.list("entries"));
        List<PassSpec> done =
                passes.passes(f.list("passes"), entries, wands, allNamed(f, "entries"), allNamed(f, "wands"));
        TargetSpec targets = targets(f.fields("targets"));
        Fields gravity = f.fields("gravity");
        Fields numerics = f.fields("numerics");
        AirSpec air = air(f.get("air"));
        InitialFog fog = fog(f.fields("initial_fog"));
        ItemAssembler items = new ItemAssembler(problems);
        List<ProtectedItem> protectedItems = items.protectedItems(f.list("protected"));
        List<Obstacle> obstacles = items.obstacles(f.list("obstacles"));
        List<BayLabel> bayLabels = items.bayLabels(f.list("bays"));
        HingeLine hinge = items.hinge(f.fields("hinge"));
        Studies studies = new StudyAssembler(problems, openings).studies(f, entries, wands);
        if (problems.any()
                || cavity == null
                || product == null
                || supply == null
                || gravity == null
                || numerics == null) {
            return null;
        }
        return new Scene(
                file.toString(),
                files.hash(),
                f.text("title"),
                f.text("story").strip(),
                cavity,
                cuts,
                states(f.fields("openings")),
                wands,
                product,
                supply,
                entries,
                done,
                f.si("hang"),
                targets,
                gravity(gravity.si("roll"), gravity.si("pitch")),
                gravity.si("g"),
                voxel(f.get("voxel")),
                air,
                fog,
                numerics.whole("size_bins"),
                numerics.whole("rays_per_jet"),
                numerics.si("station_spacing", 0),
                ambient(f.fields("ambient")),
                protectedItems,
                obstacles,
                bayLabels,
                WallFinish.valueOf(f.text("walls").toUpperCase(Locale.ROOT)),
                Transport.valueOf(numerics.text("fog").toUpperCase(Locale.ROOT)),
                numerics.whole("ray_seed"),
                hinge,
                studies);
    }

    /**
     * Whether every item of a list has a name to be called by. If not, or if the list is absent while something else is wrong (a
     * misspelt key), a name that is not found tells nothing new.
     */
    private boolean allNamed(Fields f, String key) {
        if (f.get(key) instanceof Value.Items items) {
            return items.values().stream()
                    .allMatch(
                            v -> v instanceof Fields item && !item.text("name").isEmpty());
        }
        return !f.has(key) && !problems.any();
    }

    private Map<String, WandSpec> wands(Fields f) {
        Map<String, WandSpec> wands = new LinkedHashMap<>();
        Map<String, SourcePlace> seen = new HashMap<>();
        WandAssembler assembler = new WandAssembler(problems);
        for (Fields w : f.list("wands")) {
            WandSpec wand = assembler.wand(w);
            passes.once("wand", wand.name(), w.at("name"), seen);
            wands.putIfAbsent(wand.name(), wand);
        }
        return wands;
    }

    private Map<String, PhaseStates> states(@Nullable Fields f) {
        Map<String, PhaseStates> states = new LinkedHashMap<>();
        if (f != null) {
            f.values().forEach((name, value) -> states.put(name, openings.states(value)));
        }
        return states;
    }

    private TargetSpec targets(@Nullable Fields f) {
        if (f == null) {
            return TargetSpec.DEFAULT;
        }
        TargetSpec t = new TargetSpec(
                f.si("haze"), f.si("build"), f.si("excess"), f.si("seam_creep"), f.si("bridge"), f.si("spot"));
        if (t.hazeM() > t.buildM() || t.buildM() >= t.excessM()) {
            problems.add(
                    SceneProblem.TARGETS,
                    f.place(),
                    "haze " + f.written("haze") + ", build " + f.written("build") + " and excess " + f.written("excess")
                            + " are out of order; wanted: haze <= build < excess");
        }
        return t;
    }

    /**
     * Unit vector along gravity in structure axes (x aft, y right, z up). Pitch lifts the front, roll lowers the right side: weight in
     * body axes of flight mechanics (Etkin, Dynamics of Flight: {@code g (-sin θ, cos θ sin φ, cos θ cos φ)} for x forward, z
     * down), with x and z turned about.
     */
    static Vec3 gravity(double rollRad, double pitchRad) {
        return new Vec3(
                clean(Math.sin(pitchRad)),
                clean(Math.cos(pitchRad) * Math.sin(rollRad)),
                clean(-Math.cos(pitchRad) * Math.cos(rollRad)));
    }

    /** Right angles give whole components: what a sine leaves of zero there is rounding. */
    private static double clean(double component) {
        return Math.abs(component) < 1e-15 ? 0 : component;
    }

    private static VoxelSpec voxel(@Nullable Value value) {
        if (value instanceof Value.Num n) {
            return new VoxelSpec(n.si(), n.si(), n.si());
        }
        if (value instanceof Value.Items items) {
            return new VoxelSpec(items.number(0), items.number(1), items.number(2));
        }
        return VoxelSpec.AUTO;
    }

    private static AirSpec air(@Nullable Value value) {
        if (value instanceof Value.Word w) {
            return AirSpec.DEFAULT.withMode(airMode(w.text()), 0);
        }
        if (!(value instanceof Fields f)
                || f.text("mode").isEmpty()
                || f.text("block").isEmpty()) {
            return AirSpec.DEFAULT;
        }
        String block = f.text("block");
        return new AirSpec(
                airMode(f.text("mode")),
                f.si("quiet_diffusivity", -1),
                f.si("spray_diffusivity", -1),
                f.si("pressure_limit"),
                block.equals("auto") ? 0 : Integer.parseInt(block));
    }

    private static AirSpec.Mode airMode(String word) {
        return AirSpec.Mode.valueOf(word.toUpperCase(Locale.ROOT));
    }

    /** What the scene leaves open follows from temperature and pressure. */
    private static Air ambient(@Nullable Fields f) {
        if (f == null) {
            return Air.STANDARD;
        }
        double pressure = Air.STANDARD.pressurePa() + f.si("pressure");
        Air air = Air.at(f.si("temperature"), pressure);
        return new Air(
                f.si("density", air.densityKgPerM3()),
                f.si("viscosity", air.viscosityPaS()),
                f.si("mean_free_path", air.meanFreePathM()),
                air.temperatureK(),
                pressure);
    }

    private @Nullable InitialFog fog(@Nullable Fields f) {
        if (f == null) {
            return null;
        }
        if (f.has("point") != f.has("mass")) {
            problems.add(
                    SceneProblem.MISSING_KEY,
                    f.place(),
                    f.has("point")
                            ? "`mass` is missing beside `point`; a mass such as `1 mg` is wanted"
                            : "`mass` belongs to a `point`; `concentration` needs none");
        }
        return new InitialFog(f.si("concentration", 0), f.vector("point"), f.si("mass", 0));
    }
}
