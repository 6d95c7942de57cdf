package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.BoxSectionSpec;
import baymist.scene.CavitySpec;
import baymist.scene.ShellSpec;
import baymist.scene.TubeFrameSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Models of the families shell, box section and tube frame come out of their files as they were measured. */
class FamilyModelsTest {
    private static final Path MODELS =
            Path.of("../../models/cavities").toAbsolutePath().normalize();

    @TempDir
    Path folder;

    private CavitySpec read(String cavity) throws IOException {
        String scene = """
                baymist: 1
                title: a model
                cavity: %s
                product: {name: oil, density: 880 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
                supply: {pressure: 80 psi, liquid: 25 mL/min, droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}}
                """;
        return SceneReader.read(Files.writeString(folder.resolve("scene.yaml"), scene.formatted(cavity)))
                .cavity();
    }

    @Test
    void tailConeIsReadWithStationsFramesAndFloor() throws IOException {
        CavitySpec.Shell shell = assertInstanceOf(
                CavitySpec.Shell.class,
                read(MODELS.resolve("fenlark-tail-cone.yaml").toString()));
        ShellSpec s = shell.shape();
        assertEquals(4, s.stations().size());
        ShellSpec.Oval first =
                assertInstanceOf(ShellSpec.Oval.class, s.stations().get(0));
        assertEquals(0.48, first.halfWidthM(), 1e-15);
        assertEquals(0.52, first.aboveM(), 1e-15);
        assertEquals(0.5, first.belowM(), 1e-15);
        assertEquals(2.4, first.roundness(), 1e-15);
        assertEquals(0, first.centreUpM());
        assertEquals(2, ((ShellSpec.Oval) s.stations().get(2)).roundness());
        assertEquals(12, s.stringers());
        assertEquals(0.018, s.stringerHeightM(), 1e-15);
        assertEquals(4, s.frames().size());
        assertEquals(0.05, s.frames().get(0).depthM(), 1e-15);
        assertEquals(-0.378, s.frames().get(0).holes().get(0).upM(), 1e-15);
        assertEquals(2, s.forwardEnd().holes().size());
        assertEquals(0, s.aftEnd().depthM());
        assertEquals(1, s.floors().size());
        assertEquals(-0.2, s.floors().get(0).holes().get(0).rightM(), 1e-15);
        assertEquals(0, s.segments());
        assertEquals(4, shell.ports().size());
        assertEquals(0.0008, shell.gaugeM(), 1e-15);
    }

    @Test
    void halfBreadthsAreReadFromTheKeelUp() throws IOException {
        CavitySpec.Shell shell = assertInstanceOf(CavitySpec.Shell.class, read("""

                  family: shell
                  name: tub
                  segments: 40
                  stations:
                    - {at: 0, half_breadths: [{up: -100 mm, half: 50 mm}, {up: 0, half: 90 mm}, {up: 80 mm, half: 0}]}
                    - {at: 1 m, half_width: 120 mm}
                """));
        ShellSpec.Measured m = assertInstanceOf(
                ShellSpec.Measured.class, shell.shape().stations().get(0));
        assertEquals(new ShellSpec.HalfBreadth(-0.1, 0.05), m.breadths().get(0));
        ShellSpec.Oval round =
                assertInstanceOf(ShellSpec.Oval.class, shell.shape().stations().get(1));
        assertEquals(0.12, round.aboveM());
        assertEquals(0.12, round.belowM());
        assertEquals(40, shell.shape().segments());
        assertEquals(0, shell.shape().stringers());
    }

    @Test
    void sillIsReadWithItsBendBafflesPlateAndDrains() throws IOException {
        CavitySpec.BoxSection box = assertInstanceOf(
                CavitySpec.BoxSection.class,
                read(MODELS.resolve("brackmoor-sill.yaml").toString()));
        BoxSectionSpec s = box.shape();
        assertEquals(0.09, s.topM(), 1e-15);
        assertEquals(0.12, s.bottomM(), 1e-15);
        assertEquals(0.13, s.heightM(), 1e-15);
        assertEquals(0.3, s.line().get(1).radiusM(), 1e-15);
        assertEquals(new Vec3(1.7, 0, 0.26), s.line().get(2).atM());
        assertEquals(Vec3.Z, s.up());
        assertEquals(0.35, s.baffles().get(0).alongM(), 1e-15);
        assertEquals(BoxSectionSpec.Wall.RIGHT, s.plates().get(0).wall());
        assertEquals(0, s.plates().get(0).widthM());
        assertEquals(0.014, s.plates().get(0).gapM(), 1e-15);
        assertEquals(5, s.holes().size());
        assertEquals(new Outline.Circle(0.004), s.holes().get(2).outline());
        assertEquals(false, s.start().open());
    }

    @Test
    void rectangleWithOpenEndIsRead() throws IOException {
        CavitySpec.BoxSection box = assertInstanceOf(CavitySpec.BoxSection.class, read("""

                  family: box_section
                  name: tray
                  rectangle: {width: 60 mm, height: 40 mm}
                  up: [0, 2, 0]
                  line: [{at: [0, 0, 0]}, {at: [1 m, 0, 0], bend_radius: 80 mm, facets: 3}, {at: [1 m, 0, 1 m]}]
                  start: {holes: [{shape: {circle: 10 mm}, up: 5 mm}]}
                  end: {cap: open}
                """));
        assertEquals(0.06, box.shape().bottomM());
        assertEquals(3, box.shape().line().get(1).facets());
        assertEquals(Vec3.Y, box.shape().up());
        assertEquals(true, box.shape().end().open());
        assertNull(box.shape().start().holes().get(0).name());
    }

    @Test
    void frameIsReadWithItsNodesByName() throws IOException {
        CavitySpec.TubeFrame frame = assertInstanceOf(
                CavitySpec.TubeFrame.class,
                read(MODELS.resolve("sedgemere-triangle.yaml").toString()));
        TubeFrameSpec s = frame.shape();
        assertEquals(3, s.nodes().size());
        assertEquals(24, s.segments());
        TubeFrameSpec.Tube last = s.tubes().get(2);
        assertEquals("front strut", last.name());
        assertEquals(0, last.from());
        assertEquals(2, last.to());
        assertEquals(0.0125, last.innerRadiusM(), 1e-15);
        assertEquals(0.012, last.toHoleM(), 1e-15);
        assertEquals(0, s.tubes().get(0).fromHoleM());
        assertEquals(2, frame.ports().size());
    }
}
