package baymist.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.DrillingSpec;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HoleRulesTest {
    @TempDir
    Path folder;

    /**
     * Rules as FAA AC 43.13-1B, chapter 4, gives them for rivet holes (edge distance 2 D, pitch 3 D; from memory), judged by
     * sampling the sheets
     * rather than by the distances that the code under test uses.
     */
    @Test
    void noPlaceEverBreaksARule() throws IOException {
        Random random = new Random(4313);
        int places = 0;
        for (int draw = 0; draw < 12; draw++) {
            Scene scene = draw(random, draw);
            DrillingSpec spec = java.util.Objects.requireNonNull(scene.studies().drilling());
            Cavity cavity = CavityBuilder.build(scene);
            VoxelGrid grid = voxels(cavity, scene);
            Map<String, List<Vec3>> samples = samples(cavity);
            for (DrillSize drill : DrillSize.allowed(spec)) {
                List<HoleSite> sites = new HoleRules(scene, spec, cavity, grid).sites(drill);
                places += sites.size();
                for (HoleSite s : sites) {
                    judge(scene, spec, cavity, samples, s, "draw " + draw + ": " + s.words());
                }
            }
        }
        assertTrue(places > 150, "only " + places + " places: the draws test nothing");
    }

    private static void judge(
            Scene scene, DrillingSpec spec, Cavity cavity, Map<String, List<Vec3>> samples, HoleSite s, String what) {
        double d = s.drill().diameterM();
        assertTrue(spec.parts().contains(s.part()), what);
        assertFalse(spec.primary().contains(s.part()), what);
        assertFalse(spec.pressurised().contains(s.part()), what);
        samples.forEach((other, points) -> {
            double least = other.equals(s.part())
                    ? Double.POSITIVE_INFINITY
                    : points.stream()
                            .mapToDouble(p -> p.distance(s.centreM()))
                            .min()
                            .orElse(1);
            assertTrue(least >= 3 * d + 0.010 - 1e-9, what + " is " + least + " from " + other);
            assertTrue(least >= 0.020 + d / 2 - 1e-9, what + " is on a flange of " + other);
        });
        for (Opening o : cavity.openings()) {
            if (cavity.parts().get(o.part()).name().equals(s.part())) {
                for (double[] q : o.place().outline().polygon(64)) {
                    double rim = o.place().point(q[0], q[1]).distance(s.centreM());
                    assertTrue(rim >= 2 * d - 1e-5, what + " " + rim + " from " + o.name());
                }
                assertFalse(o.place().contains(s.centreM()), what + " lies in " + o.name());
            }
        }
        for (ProtectedItem item : scene.protectedItems()) {
            for (int k = 0; k <= 30; k++) {
                Vec3 along = s.centreM().plus(0.005 * k, s.inward());
                double gap = java.util.Objects.requireNonNull(item.body()).distanceM(along);
                assertTrue(gap >= 0.025 - 1e-9, what + " drills at " + item.name());
            }
        }
    }

    /** Points all over each part. */
    private static Map<String, List<Vec3>> samples(Cavity cavity) {
        Map<String, List<Vec3>> all = new TreeMap<>();
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            String part = cavity.parts().get(cavity.partOfSheet(t)).name();
            all.computeIfAbsent(part, k -> new java.util.ArrayList<>()).addAll(samples(cavity.sheets(), t));
        }
        return all;
    }

    private static List<Vec3> samples(TriangleMesh m, int t) {
        List<Vec3> all = new java.util.ArrayList<>();
        int n = 8;
        for (int i = 0; i <= n; i++) {
            for (int j = 0; j + i <= n; j++) {
                double a = (double) i / n;
                double b = (double) j / n;
                all.add(m.point(t, 0).times(a).plus(b, m.point(t, 1)).plus(1 - a - b, m.point(t, 2)));
            }
        }
        return all;
    }

    /** A box section with baffles, holes and an item, all drawn. */
    private Scene draw(Random random, int draw) throws IOException {
        double width = 80 + 200 * random.nextDouble();
        double height = 60 + 120 * random.nextDouble();
        double length = 300 + 500 * random.nextDouble();
        StringBuilder text =
                new StringBuilder("baymist: 1\ntitle: drawn\ncavity:\n  family: box_section\n  name: drawn\n");
        text.append(format("  rectangle: {width: %.1f mm, height: %.1f mm}\n", width, height));
        text.append(format("  line: [{at: [0, 0, 0]}, {at: [%.1f mm, 0, 0]}]\n", length));
        text.append(format("  baffles: [{along: %.1f mm}]\n", length * (0.3 + 0.4 * random.nextDouble())));
        text.append("  holes:\n");
        String[] walls = {"left wall", "right wall", "top", "bottom"};
        for (int h = 0; h < 4; h++) {
            text.append(format(
                    "    - {name: hole %d, wall: %s, shape: {circle: %.1f mm}, along: %.1f mm}\n",
                    h, walls[h], 5 + 30 * random.nextDouble(), 30 + (length - 60) * random.nextDouble()));
        }
        text.append(format(
                "protected: [{name: servo, sphere: {at: [%.1f mm, 0, 0], diameter: 30 mm}}]\n",
                length * random.nextDouble() * 0.8 + 40));
        text.append("product: ")
                .append(root().resolve("models/products/ambergale-40.yaml"))
                .append('\n');
        text.append("supply: {droplets: tracer}\nvoxel: 10 mm\n");
        text.append("drilling: {parts: [left wall, top, bottom, right wall], primary: [")
                .append(walls[draw % 4]);
        text.append("], pressurised: [").append(walls[(draw + 1) % 4]).append("], drills: [30, 11], grid: 25 mm}\n");
        Path file = folder.resolve("drawn-" + draw + ".yaml");
        Files.writeString(file, text);
        return SceneReader.read(file);
    }

    private static String format(String text, Object... values) {
        return String.format(Locale.ROOT, text, values);
    }

    private static VoxelGrid voxels(Cavity cavity, Scene scene) {
        try (Workers one = new Workers(1)) {
            return Voxelizer.voxelize(cavity, scene.voxel(), one);
        }
    }

    /** Check row GE-03. ASME B94.11M number drills: #40 0.0980 in, #30 0.1285 in, #21 0.1590 in, #11 0.1910 in (Machinery's Handbook, from memory). */
    @Test
    void drillsOfRivetsHaveTheStandardsDiameters() {
        assertEquals(0.0980 * 0.0254, DrillSize.of(40).diameterM(), 1e-9);
        assertEquals(0.1285 * 0.0254, DrillSize.of(30).diameterM(), 1e-9);
        assertEquals(0.1590 * 0.0254, DrillSize.of(21).diameterM(), 1e-9);
        assertEquals(0.1910 * 0.0254, DrillSize.of(11).diameterM(), 1e-9);
        assertTrue(
                DrillSize.of(30).rivet().contains("AD4 (1/8 in)"),
                DrillSize.of(30).rivet());
        // check rows GE-04, GE-05: 2 D of the 0.1285 in hole is 0.257 in, 3 D of a 1/8 in rivet 0.375 in (FAA AC
        // 43.13-1B, from memory)
        assertEquals(0.257 * 0.0254, HoleRules.EDGE_DIAMETERS * DrillSize.of(30).diameterM(), 1e-9);
        assertEquals(0.375, HoleRules.PITCH_DIAMETERS / 8, 1e-12);
    }

    @Test
    void aWandThickerThanEveryDrillGetsNoHole() {
        Scene scene = SceneReader.read(root().resolve("scenes/blind-bay-drill.yaml"));
        DrillingSpec spec = java.util.Objects.requireNonNull(scene.studies().drilling());
        var thin = java.util.Objects.requireNonNull(scene.wands().get("needle 1/8 in all round"));
        var thick = SceneReader.readWand(root().resolve("models/wands/ring-5-16-8ft.yaml"));
        assertEquals(
                30,
                java.util.Objects.requireNonNull(DrillSize.passing(spec, thin)).number());
        assertNull(DrillSize.passing(spec, thick));
    }

    @Test
    void holesOfOneSheetKeepThreeDiametersApart() {
        HoleSite a = at(0);
        assertFalse(HoleRules.apart(a, at(2.9 * a.drill().diameterM())));
        assertTrue(HoleRules.apart(a, at(3.1 * a.drill().diameterM())));
        assertNotEquals(a, at(1));
    }

    private static HoleSite at(double x) {
        return new HoleSite("skin", new Vec3(x, 0, 0), Vec3.Z, DrillSize.of(30), 1, 1, "");
    }

    private static Path root() {
        Path at = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(at.resolve("scenes"))) {
            at = java.util.Objects.requireNonNull(at.getParent());
        }
        return at;
    }
}
