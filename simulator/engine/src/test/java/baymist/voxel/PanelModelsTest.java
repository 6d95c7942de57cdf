package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.Opening;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The models of doors, voids, plates and bodies that come with the program. */
class PanelModelsTest {
    @TempDir
    Path folder;

    private Cavity cavity(String model) throws IOException {
        Path file = Path.of("../../models/cavities", model).toAbsolutePath().normalize();
        String scene = """
                baymist: 1
                title: model
                cavity: %s
                wands: []
                product: {name: oil, density: 880 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
                supply: {pressure: 80 psi, liquid: 25 mL/min, droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}}
                entries: []
                passes: []
                """.formatted(file);
        Scene read = SceneReader.read(Files.writeString(folder.resolve("scene.yaml"), scene));
        return CavityBuilder.build(read);
    }

    private static VoxelGrid voxels(Cavity cavity, double size) {
        try (Workers workers = new Workers(2)) {
            return Voxelizer.voxelize(cavity, new VoxelSpec(size, size, size), workers);
        }
    }

    private static Opening opening(Cavity cavity, String name) {
        return cavity.openings().get(cavity.openingIndex(name));
    }

    @Test
    void doorHasItsPanelsBeamAndOpenings() throws IOException {
        Cavity c = cavity("fernbeck-door.yaml");
        VoxelGrid grid = voxels(c, 0.01);
        ClosedBodyCheck.openingsAreExact(c, grid, "door");
        // panel spacing times panel area, and 2/3 of crown times area for the flat arc (parabola, Archimedes)
        double volume = 0.98 * (0.12 * 0.42 + 0.07 * 0.22 + 2.0 / 3 * 0.012 * 0.64);
        assertEquals(volume, grid.totalVolumeM3(), 2e-3 * volume);
        assertEquals(2, grid.bays().size());
        assertEquals(0.98 * 0.06 * 0.025, smallestBay(grid), 0.01 * 0.98 * 0.06 * 0.025);
        assertEquals(0.86 * 0.018, opening(c, "window slot").areaM2(), 1e-12);
        assertTrue(opening(c, "speaker hole").exterior());
    }

    private static double smallestBay(VoxelGrid grid) {
        return grid.bays().stream().mapToDouble(Bay::volumeM3).min().orElseThrow();
    }

    @Test
    void voidHasThreeBaysBetweenItsFrames() throws IOException {
        Cavity c = cavity("cranmere-void.yaml");
        VoxelGrid grid = voxels(c, 0.05);
        ClosedBodyCheck.openingsAreExact(c, grid, "void");
        assertEquals(3 * 1.8 * 1.1, grid.totalVolumeM3(), 1e-6);
        assertEquals(3, grid.bays().size());
        // ellipse: pi a b / 4
        assertEquals(Math.PI / 4 * 0.42 * 0.34, opening(c, "aft manhole").areaM2(), 1e-12);
        List<String> parts = c.parts().stream().map(p -> p.name()).toList();
        assertTrue(
                parts.containsAll(List.of("floor longitudinal 3", "right longitudinal 2", "frame 2", "deck beam 3")));
    }

    @Test
    void gussetBayIsATriangularPrism() throws IOException {
        Cavity c = cavity("heathcote-gusset-bay.yaml");
        VoxelGrid grid = voxels(c, 0.01);
        ClosedBodyCheck.openingsAreExact(c, grid, "gusset");
        assertEquals(0.5 * 0.4 * 0.3 * 0.25, grid.totalVolumeM3(), 1e-6);
        double web = 0.5 * 0.35 * 0.2625 - Math.PI * 0.03 * 0.03;
        double want = 0.4 * 0.25 + 0.3 * 0.25 + 0.5 * 0.25 + 2 * 0.5 * 0.4 * 0.3 + 2 * web;
        want -= Math.PI * (0.01 * 0.01 + 0.003 * 0.003);
        assertEquals(want, ClosedBodyCheck.area(grid), 1e-9);
        assertEquals(
                "web hole 1",
                c.openings().stream()
                        .map(Opening::name)
                        .filter(n -> n.startsWith("web"))
                        .findFirst()
                        .orElseThrow());
    }

    @Test
    void twinBaysHangTogetherThroughTheirJoint() throws IOException {
        Cavity c = cavity("lapwing-twin-bays.yaml");
        VoxelGrid grid = voxels(c, 0.02);
        ClosedBodyCheck.openingsAreExact(c, grid, "twin");
        assertEquals(0.8 * 0.4 * 0.3 + 0.3 * 0.5 * 0.24, grid.totalVolumeM3(), 1e-6);
        assertEquals(2, grid.bays().size());
        assertEquals(
                List.of("front bay: wand hole", "joint hole", "rear bay: drain"),
                c.openings().stream().map(Opening::name).toList());
    }
}
