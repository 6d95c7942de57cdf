package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.BodySpec;
import baymist.scene.CavitySpec;
import baymist.scene.MeshPose;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ItemFormatTest {
    @TempDir
    Path dir;

    private static final String HEAD = """
            baymist: 1
            title: t
            product: {name: oil, density: 880 kg/m3, viscosity: 40 mPa s, surface_tension: 30 mN/m, non_volatile: 100 %}
            supply: {pressure: 80 psi, liquid: 1 mL/min, droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}}
            """;

    private static final String BLOCK = "cavity: {family: block, name: b, size: [1 m, 1 m, 1 m]}\n";

    private Scene read(String text) throws IOException {
        return SceneReader.read(Files.writeString(dir.resolve("s.yaml"), HEAD + text));
    }

    @Test
    void protectedItemsAndObstaclesAreRead() throws IOException {
        Scene s = read(BLOCK + """
                protected:
                  - {name: clutch, sphere: {at: [0.5 m, 0.5 m, 0.5 m], diameter: 100 mm}}
                  - {name: fitting, box: {at: [0.2 m, 0.2 m, 0.2 m], size: [10 mm, 20 mm, 30 mm], rotate: [0, 0, 90 deg]}, limit: 0 um, mask: bag}
                  - {name: belt, cylinder: {from: [0.1 m, 0.1 m, 0.9 m], to: [0.9 m, 0.1 m, 0.9 m], diameter: 20 mm}, mask: tape}
                  - {name: seal, part: ceiling, limit: 5 um}
                obstacles:
                  - {name: hangar wall, box: {at: [3 m, 0 m, 0 m], size: [1 m, 9 m, 9 m]}}
                """);
        assertEquals(4, s.protectedItems().size());
        ProtectedItem clutch = s.protectedItems().get(0);
        assertEquals(new BodySpec.Sphere(new Vec3(0.5, 0.5, 0.5), 0.05), clutch.body());
        assertEquals(1e-6, clutch.limitM());
        assertEquals(ProtectedItem.Mask.NONE, clutch.mask());
        BodySpec.Cuboid box = assertInstanceOf(
                BodySpec.Cuboid.class, s.protectedItems().get(1).body());
        assertEquals(Vec3.Y, box.xAxis());
        assertTrue(s.protectedItems().get(1).masked());
        assertEquals(ProtectedItem.Mask.TAPE, s.protectedItems().get(2).mask());
        assertEquals("ceiling", s.protectedItems().get(3).part());
        assertEquals(5e-6, s.protectedItems().get(3).limitM(), 1e-18);
        assertEquals("hangar wall", s.obstacles().get(0).name());
    }

    @Test
    void brokenItemsAreToldWithTheirField() throws IOException {
        told("SCN-025", BLOCK + "protected: [{name: a, limit: 1 um}]\n");
        told("SCN-025", BLOCK + "protected: [{name: a, part: floor, sphere: {at: [0,0,0], diameter: 1 mm}}]\n");
        told("SCN-025", BLOCK + "obstacles: [{name: a}]\n");
        told("SCN-040", BLOCK + "protected: [{name: a, part: floor}, {name: a, part: ceiling}]\n");
        told("SCN-024", BLOCK + "protected: [{name: a, part: floor, mask: foil}]\n");
        told("SCN-034", BLOCK + "protected: [{name: a, part: floor, limit: -1 um}]\n");
        told(
                "SCN-091",
                BLOCK + "obstacles: [{name: a, cylinder: {from: [1 m, 0, 0], to: [1 m, 0, 0], diameter: 1 m}}]\n");
    }

    private void told(String id, String text) {
        SceneException e = assertThrows(SceneException.class, () -> read(text));
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
        assertEquals(1, e.findings().size(), e.getMessage());
    }

    @Test
    void aMeshIsOrientedScaledTurnedAndMoved() throws IOException {
        Files.writeString(dir.resolve("m.obj"), "v 0 0 0\n");
        String mesh = "cavity: {family: mesh, name: m, file: m.obj, unit: mm, close_gaps: 2 mm, scale: 0.1, "
                + "rotation: [0, 0, 90 deg], origin: [1 m, 0, 0], orientation: {x: left, y: up, z: forward}}\n";
        CavitySpec.Mesh spec =
                assertInstanceOf(CavitySpec.Mesh.class, read(mesh).cavity());
        assertEquals(
                new MeshPose(
                        new Vec3(0, -1, 0), Vec3.Z, new Vec3(-1, 0, 0), new Vec3(0, 0, 90), new Vec3(1, 0, 0), 0.1),
                spec.pose());
        assertEquals(2e-3, spec.closeGapsM());
        CavitySpec.Mesh plain = assertInstanceOf(
                CavitySpec.Mesh.class,
                read("cavity: {family: mesh, name: m, file: m.obj}\n").cavity());
        assertEquals(MeshPose.AS_IS, plain.pose());
        assertTrue(Double.isNaN(plain.unitM()));
        assertEquals(0, plain.closeGapsM());
        told("SCN-090", mesh.replace("z: forward", "z: aft"));
        told("SCN-090", mesh.replace("z: forward", "z: down"));
    }
}
