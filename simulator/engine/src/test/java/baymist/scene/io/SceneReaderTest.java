package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.AirSpec;
import baymist.scene.CavitySpec;
import baymist.scene.DropletSpec;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import baymist.scene.TargetSpec;
import baymist.scene.TipSpec;
import baymist.scene.VoxelSpec;
import baymist.units.Air;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SceneReaderTest {
    private static final Path ROOT = Path.of("../..");
    private static final Path WHOLE = Path.of("src/test/resources/broken/whole.yaml");

    @TempDir
    Path folder;

    private Scene scene(String... changes) throws IOException {
        String text = Files.readString(WHOLE);
        for (int i = 0; i < changes.length; i += 2) {
            assertTrue(text.contains(changes[i]), changes[i]);
            text = text.replace(changes[i], changes[i + 1]);
        }
        return SceneReader.read(Files.writeString(folder.resolve("scene.yaml"), text));
    }

    private Scene sceneWith(String more) throws IOException {
        return SceneReader.read(Files.writeString(folder.resolve("scene.yaml"), Files.readString(WHOLE) + more));
    }

    @Test
    void elevatorScenesDifferInThePinAlone() {
        Scene forward = SceneReader.read(ROOT.resolve("scenes/control-surface-pin-forward.yaml"));
        Scene aft = SceneReader.read(ROOT.resolve("scenes/control-surface-pin-aft.yaml"));
        PassSpec f = forward.passes().get(0);
        PassSpec a = aft.passes().get(0);
        assertEquals(Math.toRadians(270), f.clockRad(), 1e-12);
        assertEquals(Math.toRadians(90), a.clockRad(), 1e-12);
        assertEquals(
                f,
                new PassSpec(
                        a.name(),
                        a.entry(),
                        a.wand(),
                        a.fromDepthM(),
                        a.toDepthM(),
                        a.drawBackMPerS(),
                        f.clockRad(),
                        a.holdS(),
                        a.hangS(),
                        f.place()));
        assertEquals(forward.wands(), aft.wands());
        assertEquals(forward.supply(), aft.supply());
        assertEquals(forward.product(), aft.product());
        assertNotEquals(forward.hash(), aft.hash());
        CavitySpec.ControlSurface c = assertInstanceOf(CavitySpec.ControlSurface.class, forward.cavity());
        assertEquals(0.3, c.tipChordM(), "the tip chord is the root's when left out");
        assertEquals(5, c.ribs().size());
        assertEquals(0.048, c.ribs().get(2).shortOfEdgeM());
        // the wand hole leaves the 1/4 in wand its way past the short ribs: check of the drawing, not of the reader
        CavitySpec.RibHole hole = c.ribs().get(0).holes().get(1);
        double wandRadius = forward.wands().values().iterator().next().outerM() / 2;
        assertTrue(hole.aftM() - wandRadius > c.rootChordM() - 0.048);
        assertTrue(hole.outline().clearanceM(0, 0) > wandRadius);
    }

    @Test
    void wingBoxSceneOverridesAnOpeningAndLinesUpItsHoles() {
        Scene s = SceneReader.read(ROOT.resolve("scenes/wing-box.yaml"));
        CavitySpec.WingBox box = assertInstanceOf(CavitySpec.WingBox.class, s.cavity());
        assertEquals(0.15, box.frontSpar());
        assertEquals(0.65, box.rearSpar());
        assertEquals(3, box.ribs().get(3).holes().size());
        assertTrue(box.ribs().get(4).holes().isEmpty());
        assertEquals(
                new PhaseStates(OpeningState.OPEN, OpeningState.TAPED, OpeningState.CLOSED),
                s.states().get("bay 4 port"));
        assertEquals(OpeningState.CLOSED, box.ports().get(0).states().hang());
        // ASME B94.11M: number 10 drill 0.1935 in
        assertEquals(0.1935 * 0.0254, 2 * ((Outline.Circle) box.ports().get(3).outline()).radiusM(), 1e-15);
        assertEquals(8, s.wands().get("ring 5/16 in x 8 ft").tip().jets().size());
    }

    @Test
    void meshSceneIsReadWhereTheMeshIsAtHand() {
        assumeTrue(
                Files.exists(ROOT.resolve("../shared/data/wingbox-coarse.bdf")), "mesh of others, not in the project");
        Scene s = SceneReader.read(ROOT.resolve("scenes/open-wing-box-mesh.yaml"));
        assertEquals(1.0, assertInstanceOf(CavitySpec.Mesh.class, s.cavity()).unitM());
    }

    @Test
    void meshIsNamedRelativeToItsModelAndCountsInTheHash() throws IOException {
        Files.createDirectories(folder.resolve("m"));
        Files.writeString(
                folder.resolve("m/c.yaml"),
                "family: mesh\nname: m\nfile: part.stl\nunit: in\ninside: [1 in, 0, 0]\ngauge: 0.032 in\n");
        Files.writeString(folder.resolve("m/part.stl"), "solid a\nendsolid a\n");
        String inline = "{family: block, name: box, size: [1 m, 200 mm, 150 mm]}";
        Scene one = scene(inline, "m/c.yaml");
        CavitySpec.Mesh mesh = assertInstanceOf(CavitySpec.Mesh.class, one.cavity());
        assertEquals(folder.resolve("m/part.stl"), mesh.file());
        assertEquals(0.0254, mesh.unitM());
        assertEquals(new Vec3(0.0254, 0, 0), mesh.inside());
        assertEquals(folder.resolve("m/c.yaml").toString(), mesh.place().file());
        Files.writeString(folder.resolve("m/part.stl"), "solid b\nendsolid b\n");
        assertNotEquals(one.hash(), scene(inline, "m/c.yaml").hash());
    }

    @Test
    void hashIsThatOfTheContentsWhereverTheyLie() throws IOException {
        Scene here = scene();
        assertEquals(here.hash(), SceneReader.read(WHOLE).hash());
        assertEquals(64, here.hash().length());
        assertNotEquals(here.hash(), scene("0.8 m", "0.7 m").hash());
    }

    @Test
    void liquidByVolumeIsTurnedToMassWithTheDensity() throws IOException {
        // 25 mL/min of 880 kg/m3: 25e-6/60*880
        SupplySpec.Pressure p = assertInstanceOf(SupplySpec.Pressure.class, scene().supply());
        assertEquals(25e-6 / 60 * 880, p.liquidKgPerS(), 1e-15);
        assertEquals(0.85, p.dischargeCoefficient());
        assertEquals(6894.757293168 * 80, p.gaugePa(), 1e-6); // NIST SP 811
        double byCup = scene("liquid: 25 mL/min", "catch_cup: {volume: 12.5 mL, time: 30 s}")
                .supply()
                .liquidKgPerS();
        assertEquals(p.liquidKgPerS(), byCup, 1e-18);
        assertEquals(
                4e-4, scene("liquid: 25 mL/min", "liquid: 0.4 g/s").supply().liquidKgPerS(), 1e-18);
        SupplySpec exit = scene("pressure: 80 psi", "exit_speed: 100 m/s").supply();
        assertEquals(100, assertInstanceOf(SupplySpec.ExitSpeed.class, exit).speedMPerS());
    }

    @Test
    void viscosityComesFromOneValueOrFromAstmD341() throws IOException {
        assertEquals(40e-6 * 880, scene().product().viscosityPaS(), 1e-12);
        assertEquals(0.04, scene("40 cSt", "40 cP").product().viscosityPaS(), 1e-15);
        // worked example of ASTM D341 (olezol.com): 404 cSt at 40 degC, 28 cSt at 100 degC, so 132.126 cSt at 60 degC
        Scene s = scene(
                "viscosity: 40 cSt",
                "temperature: 60 degC, viscosity: [{at: 40 degC, value: 404 cSt}, {at: 212 degF, value: 28 cSt}]");
        assertEquals(132.126e-6 * 880, s.product().viscosityPaS(), 0.002 * 132.126e-6 * 880);
        assertEquals(333.15, s.product().temperatureK());
        assertEquals(1.0, s.product().nonVolatile());
    }

    @Test
    void whatIsLeftOutTakesItsDefault() throws IOException {
        Scene s = scene();
        assertEquals(300, s.hangS());
        assertEquals(TargetSpec.DEFAULT, s.targets());
        assertEquals(new Vec3(0, 0, -1), s.gravity());
        assertEquals(9.80665, s.gravityMPerS2()); // CGPM 1901
        assertEquals(VoxelSpec.AUTO, s.voxel());
        assertEquals(AirSpec.DEFAULT, s.air());
        assertNull(s.initialFog());
        assertEquals(Air.STANDARD, s.ambient());
        assertEquals(10, s.sizeBins());
        assertEquals(128, s.raysPerJet());
        assertEquals(0, s.stationSpacingM());
        assertEquals("", s.story());
        PassSpec p = s.passes().get(0);
        assertEquals("pass 1", p.name());
        assertEquals(0, p.clockRad());
        assertEquals(0, p.hangS());
        assertNull(s.entries().get(0).direction());
        assertEquals(PhaseStates.ALWAYS_OPEN, s.cuts().get(0).states());
    }

    @Test
    void everythingOptionalIsRead() throws IOException {
        Scene s = sceneWith("""
                voxel: [12 mm, 6 mm, 3 mm]
                air: {mode: still, quiet_diffusivity: 1e-4 m2/s, spray_diffusivity: 1 cm2/s, pressure_limit: 1 psi}
                initial_fog: {point: [10 mm, 0, 0], mass: 1 mg}
                numerics: {size_bins: 4, rays_per_jet: 16, station_spacing: 25 mm}
                openings: {hole: {hang: closed}, "3": taped}
                targets: {haze: 0.05 mil, build: 12 um, excess: 2 mil}
                ambient: {temperature: 0 degC, viscosity: 0.02 mPa.s}
                """);
        assertEquals(new VoxelSpec(0.012, 0.006, 0.003), s.voxel());
        assertEquals(AirSpec.Mode.STILL, s.air().mode());
        assertEquals(
                new AirSpec(AirSpec.Mode.RESOLVED, -1, -1, 10_000),
                sceneWith("air: resolved\n").air());
        assertEquals(
                new AirSpec(AirSpec.Mode.AUTO, -1, -1, 10_000, 2),
                sceneWith("air: {mode: auto, block: 2}\n").air());
        assertEquals(1e-4, s.air().sprayDiffusivityM2PerS());
        assertEquals(1e-6, s.initialFog().pointMassKg());
        assertEquals(0.01, s.initialFog().pointM().x());
        assertEquals(2e-5, s.ambient().viscosityPaS(), 1e-20);
        assertEquals(Air.at(273.15, 101_325).densityKgPerM3(), s.ambient().densityKgPerM3());
        assertEquals(4, s.sizeBins());
        assertEquals(0.025, s.stationSpacingM());
        assertEquals(
                new PhaseStates(OpeningState.OPEN, OpeningState.CLOSED, OpeningState.CLOSED),
                s.states().get("hole"));
        assertEquals(OpeningState.TAPED, s.states().get("3").pass());
        assertEquals(1.27e-6, s.targets().hazeM(), 1e-18);
        assertEquals(
                new VoxelSpec(0.01, 0.01, 0.01), sceneWith("voxel: 10 mm\n").voxel());
        assertEquals(
                1.2e-5,
                sceneWith("initial_fog: {concentration: 12 mg/m3}\n")
                        .initialFog()
                        .concentrationKgPerM3(),
                1e-18);
        Scene hold = scene(
                "from: 0.8 m, to: 50 mm, draw_back: 100 mm/s", "from: 50 mm, to: 50 mm, hold: 3 s, clock: -90 deg");
        assertEquals(3, hold.passes().get(0).holdS());
        assertEquals(Math.toRadians(270), hold.passes().get(0).clockRad(), 1e-12);
        assertTrue(Double.isInfinite(scene("from: 0.8 m, ", "").passes().get(0).fromDepthM()));
    }

    @Test
    void verificationSceneNeedsNeitherWandNorSupplyOfAir() throws IOException {
        Scene s = SceneReader.read(Files.writeString(folder.resolve("v.yaml"), """
                baymist: 1
                title: still box
                cavity: {family: round, name: ball, radius: 100 mm, rotation: [90 deg, 0, -45 deg], origin: [1 m, 0, 0]}
                product: {name: oil, density: 1 g/mL, viscosity: 1 cP, surface_tension: 72 mN/m}
                supply: {droplets: {classes: [{diameter: 5 um, share: 1/3}, {diameter: 10 um, share: 0.67}]}}
                air: {mode: still}
                initial_fog: {concentration: 1 g/m3}
                gravity: {g: 9.8 m/s2}
                """));
        DropletSpec.Classes c =
                assertInstanceOf(DropletSpec.Classes.class, s.supply().droplets());
        assertEquals(1.0, c.share()[0] + c.share()[1], 1e-15);
        CavitySpec.Round r = assertInstanceOf(CavitySpec.Round.class, s.cavity());
        assertEquals(new Vec3(90, 0, -45), r.rotationDeg());
        assertEquals(0, r.lengthM());
        assertEquals(64, r.segments());
        assertEquals(9.8, s.gravityMPerS2());
        assertEquals(0, s.supply().liquidKgPerS());
    }

    @Test
    void everyOutlineIsRead() throws IOException {
        assertEquals(Math.PI * 1e-4, scene().cuts().get(0).outline().areaM2(), 1e-15);
        String circle = "{circle: 20 mm}";
        assertEquals(
                new Outline.Slot(0.04, 0.02),
                scene(circle, "{slot: {length: 40 mm, width: 20 mm}}")
                        .cuts()
                        .get(0)
                        .outline());
        assertEquals(
                new Outline.RoundedRectangle(0.04, 0.02, 0),
                scene(circle, "{rectangle: {length: 40 mm, width: 20 mm}}")
                        .cuts()
                        .get(0)
                        .outline());
        Outline polygon = scene(circle, "{polygon: [[0, 0], [0, 10 mm], [10 mm, 0]]}, lengthwise: [0, 3, 0]")
                .cuts()
                .get(0)
                .outline();
        assertEquals(50e-6, polygon.areaM2(), 1e-15); // clockwise corners are turned round
    }

    @Test
    void jetSharesSumToOneHoweverTheyAreStated() throws IOException {
        String ring = "{ring: {jets: 8, orifice: 0.5 mm}}";
        for (String tip : List.of(
                ring,
                "{one_sided: {jets: 5, orifice: 0.5 mm}}",
                "{forward: {jets: 3, cone: 40 deg, orifice: 1 mm}}",
                "{jets: [{off_axis: 0 deg, orifice: 1 mm}, {off_axis: 90 deg, orifice: 2 mm}]}",
                "{jets: [{off_axis: 0 deg, orifice: 1 mm, air_share: 0.33}, {off_axis: 90 deg, orifice: 2 mm, air_share: 0.66}]}")) {
            TipSpec t = scene(ring, tip).wands().get("rod").tip();
            assertEquals(1, t.jets().stream().mapToDouble(TipSpec.Jet::airShare).sum(), 1e-12, tip);
            assertEquals(
                    1, t.jets().stream().mapToDouble(TipSpec.Jet::liquidShare).sum(), 1e-12, tip);
        }
        // by orifice area: 1 to 4
        TipSpec two = scene(ring, "{jets: [{off_axis: 0 deg, orifice: 1 mm}, {off_axis: 90 deg, orifice: 2 mm}]}")
                .wands()
                .get("rod")
                .tip();
        assertEquals(0.2, two.jets().get(0).airShare(), 1e-12);
    }

    @Test
    void patternsOfTipsStandWhereTheirNamesSay() throws IOException {
        String ring = "{ring: {jets: 8, orifice: 0.5 mm}}";
        List<TipSpec.Jet> fan = scene(ring, "{one_sided: {jets: 5, arc: 60 deg, orifice: 0.5 mm}}")
                .wands()
                .get("rod")
                .tip()
                .jets();
        assertEquals(Math.toRadians(-30), fan.get(0).clockRad(), 1e-12);
        assertEquals(0, fan.get(2).clockRad(), 1e-12);
        assertEquals(Math.toRadians(30), fan.get(4).clockRad(), 1e-12);
        assertEquals(Math.PI / 2, fan.get(1).offAxisRad(), 1e-12);
        TipSpec round = scene().wands().get("rod").tip();
        double x =
                round.jets().stream().mapToDouble(j -> Math.cos(j.clockRad())).sum();
        double y =
                round.jets().stream().mapToDouble(j -> Math.sin(j.clockRad())).sum();
        assertEquals(0, Math.hypot(x, y), 1e-12, "a ring has no side");
        assertEquals(
                0,
                scene(ring, "{forward: {orifice: 1 mm}}")
                        .wands()
                        .get("rod")
                        .tip()
                        .jets()
                        .get(0)
                        .offAxisRad());
        List<TipSpec.Jet> cone = scene(ring, "{forward: {jets: 3, cone: 40 deg, orifice: 1 mm}}")
                .wands()
                .get("rod")
                .tip()
                .jets();
        assertEquals(Math.toRadians(20), cone.get(1).offAxisRad(), 1e-12);
    }

    // Etkin, Dynamics of Flight (weight in body axes, -sin pitch, cos pitch sin roll, cos pitch cos roll; from memory)
    @Test
    void gravityFollowsTheAttitudeOfTheStructure() {
        assertVector(new Vec3(1, 0, 0), SceneAssembler.gravity(0, Math.PI / 2)); // nose up: down is aft
        assertVector(new Vec3(0, 1, 0), SceneAssembler.gravity(Math.PI / 2, 0)); // right side down
        assertVector(new Vec3(0, 0, 1), SceneAssembler.gravity(Math.PI, 0)); // on its back
        double c = Math.cos(Math.toRadians(30));
        assertVector(new Vec3(0.5, c * 0.5, -c * c), SceneAssembler.gravity(Math.toRadians(30), Math.toRadians(30)));
    }

    private static void assertVector(Vec3 expected, Vec3 actual) {
        assertEquals(0, expected.distance(actual), 1e-12, actual.toString());
    }

    @Test
    void filesThatAreNoFilesAreToldClearly() throws IOException {
        assertProblem("SCN-001", "there is no file", folder.resolve("nothing.yaml"));
        assertProblem("SCN-002", "is a folder", folder);
        Path big = folder.resolve("big.yaml");
        try (OutputStream out = Files.newOutputStream(big)) {
            out.write(new byte[SourceFiles.MOST_BYTES + 1]);
        }
        assertProblem("SCN-004", "larger than 1 MiB", big);
        Path mebibyte = Files.writeString(folder.resolve("wide.yaml"), "a: [" + "x,".repeat(500_000) + "x]");
        assertProblem("SCN-010", "more than 50000 values", mebibyte);
        Path deep = Files.writeString(folder.resolve("deep.yaml"), "[".repeat(1_000_000));
        assertProblem("SCN-009", "nested deeper", deep);
        if (Files.exists(Path.of("/dev/zero"))) {
            assertProblem("SCN-002", "no regular file", Path.of("/dev/zero"));
        }
        Path odd = Files.writeString(
                folder.resolve("odd.yaml"), Files.readString(WHOLE).replaceAll("product: .*", "product: \"a\\\\0b\""));
        assertProblem("SCN-001", "can't be the name of a file", odd);
    }

    private static void assertProblem(String id, String part, Path file) {
        SceneException e = assertThrows(SceneException.class, () -> SceneReader.read(file));
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
        assertTrue(e.getMessage().contains(part), e.getMessage());
    }

    @Test
    void fixtureIsTheBlockThatTheReaderMakes() throws IOException {
        Scene made = SceneFixtures.minimal().build();
        assertEquals(
                made.passes().get(0).drawBackMPerS(), scene().passes().get(0).drawBackMPerS());
        assertEquals(
                ((CavitySpec.Block) made.cavity()).sizeM().x(),
                ((CavitySpec.Block) scene().cavity()).sizeM().x());
        assertEquals(
                made.wands().get("rod").outerM(), scene().wands().get("rod").outerM());
    }

    @Test
    void byteOrderMarkAndWindowsLineEndsAreNoFault() throws IOException {
        String text = "\uFEFF" + Files.readString(WHOLE).replace("\n", "\r\n");
        Path file = Files.write(folder.resolve("w.yaml"), text.getBytes(StandardCharsets.UTF_8));
        assertEquals("rod", SceneReader.read(file).passes().get(0).wand());
    }

    /** Whatever a file holds, it is read or refused with sentences. Seeds are fixed; a failure prints the text. */
    @Test
    void damagedScenesNeverEndInAnotherException() throws IOException {
        String[] pieces = {
            ":", "[", "]", "{", "}", "- ", "\n", "\t", "#", "&a ", "*a", "!", "|", ">", "'", "\"", "%", "0", "~", "?",
            ","
        };
        String good = Files.readString(WHOLE);
        Path file = folder.resolve("damaged.yaml");
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20_261_125);
        int refused = 0;
        for (int run = 0; run < 500; run++) {
            StringBuilder text = new StringBuilder(good);
            for (int k = 1 + random.nextInt(3); k > 0; k--) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(3)) {
                    case 0 -> text.insert(at, pieces[random.nextInt(pieces.length)]);
                    case 1 -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(6)));
                    default -> text.setCharAt(at, (char) (32 + random.nextInt(95)));
                }
            }
            Files.writeString(file, text);
            try {
                SceneReader.read(file);
            } catch (SceneException e) {
                refused++;
                assertTrue(e.findings().size() > 0);
            } catch (RuntimeException e) {
                throw new AssertionError("run " + run + ":\n" + text, e);
            }
        }
        assertTrue(refused > 250, "only " + refused + " were refused");
    }
}
