package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.CavitySpec;
import baymist.scene.ControlSurfaceDetail;
import baymist.scene.WingBoxDetail;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Details of wing boxes and control surfaces as they are read from the project's models. */
class WingAndSurfaceReaderTest {
    private static final Path MODELS = Path.of("../../models").toAbsolutePath().normalize();

    @TempDir
    private Path folder;

    private CavitySpec read(String model, String entry) throws IOException {
        Path scene = folder.resolve("scene.yaml");
        Files.writeString(
                scene,
                String.join(
                        "\n",
                        "baymist: 1",
                        "title: model",
                        "cavity: " + MODELS.resolve("cavities").resolve(model),
                        "wands: [" + MODELS.resolve("wands/ring-5-16-8ft.yaml") + "]",
                        "product: " + MODELS.resolve("products/ambergale-40.yaml"),
                        "supply: {pressure: 80 psi, liquid: 60 mL/min, "
                                + "droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}}",
                        "entries: [{name: e, opening: " + entry + "}]",
                        "passes: [{entry: e, wand: ring 5/16 in x 8 ft, from: 0.2 m, to: 50 mm, draw_back: 75 mm/s}]",
                        ""));
        return SceneReader.read(scene).cavity();
    }

    @Test
    void sweptBoxIsReadWithItsAnglesFractionsAndFlanges() throws IOException {
        CavitySpec.WingBox box =
                assertInstanceOf(CavitySpec.WingBox.class, read("curlew-outer-panel.yaml", "hose hole"));
        assertEquals(1.8 * Math.tan(Math.toRadians(8)), box.sweepM(), 1e-12);
        assertEquals(1.8 * Math.tan(Math.toRadians(3)), box.dihedralM(), 1e-12);
        WingBoxDetail detail = box.detail();
        assertTrue(detail.measured() && detail.openTip() && !detail.openRoot() && !detail.straight());
        assertEquals(0.30 * 0.95, detail.root().get(1).aftM(), 1e-12, "fractions are of the chord there");
        assertEquals(0.11, detail.tip().get(0).aftM(), 1e-15, "lengths are from the leading edge");
        assertEquals(-0.038, detail.root().get(0).lowerM(), 1e-15);
        assertNotNull(detail.notch());
        assertEquals(0.004, detail.notch().clearanceM(), 1e-15);
        WingBoxDetail.FalseSpar spar = detail.falseSpars().get(0);
        assertEquals(1, spar.fromRib());
        assertEquals(4, spar.toRib());
        CavitySpec.Flange straight = spar.holes().get(0).flange();
        CavitySpec.Flange cone = spar.holes().get(2).flange();
        assertNotNull(straight);
        assertNotNull(cone);
        assertEquals(Math.PI / 2, straight.angleRad(), 1e-15);
        assertEquals(Math.PI / 4, cone.angleRad(), 1e-15);
        assertTrue(cone.forward(), "aft of the spar unless stated");
        assertEquals("pulley rib", box.ribs().get(2).name());
        assertNull(box.ribs().get(2).holes().get(1).flange());
        CavitySpec.Flange inboard = box.ribs().get(3).holes().get(0).flange();
        assertNotNull(inboard);
        assertTrue(!inboard.forward());
    }

    @Test
    void beadedElevatorIsReadWithNoseAndHorn() throws IOException {
        CavitySpec.ControlSurface surface =
                assertInstanceOf(CavitySpec.ControlSurface.class, read("linnet-elevator.yaml", "wand hole"));
        ControlSurfaceDetail.Beads beads = surface.detail().upper();
        assertNotNull(beads);
        assertEquals(beads, surface.detail().lower());
        assertEquals(ControlSurfaceDetail.Run.CHORDWISE, beads.run());
        assertEquals(ControlSurfaceDetail.Form.TRAPEZOID, beads.form());
        assertEquals(0.006, beads.flankM(), 1e-15);
        assertEquals(0.004, beads.depthM(), 1e-15);
        ControlSurfaceDetail.Nose nose = surface.detail().nose();
        assertNotNull(nose);
        assertEquals(0.052, nose.tipLengthM(), 1e-15);
        assertEquals(2, nose.ribs().size());
        ControlSurfaceDetail.Horn horn = surface.detail().horn();
        assertNotNull(horn);
        assertEquals(0.12, horn.bulkheadM(), 1e-15);
        assertEquals(1, horn.bulkheadHoles().size());
        assertEquals(
                "inboard hinge cut-out", surface.detail().sparHoles().get(0).name());
    }

    @Test
    void plainModelsHaveNoDetails() throws IOException {
        CavitySpec.WingBox box =
                assertInstanceOf(CavitySpec.WingBox.class, read("moorhen-wing-box.yaml", "rib 1 hole 1"));
        assertEquals(WingBoxDetail.PLAIN, box.detail());
        CavitySpec.ControlSurface surface =
                assertInstanceOf(CavitySpec.ControlSurface.class, read("larkfield-elevator.yaml", "wand hole"));
        assertEquals(ControlSurfaceDetail.PLAIN, surface.detail());
    }
}
