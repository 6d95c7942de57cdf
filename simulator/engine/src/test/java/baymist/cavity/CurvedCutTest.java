package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.units.Dimension;
import baymist.units.Quantities;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Openings cut into a faceted tube that comes as a mesh. */
class CurvedCutTest {
    @TempDir
    Path dir;

    private static final double RADIUS = 0.25;
    private static final int FACETS = 36;
    private static final double LENGTH = 1.2;

    private Path tube() throws IOException {
        CavitySpec.Round round = new CavitySpec.Round(
                "tube", LENGTH, RADIUS, FACETS, Vec3.ZERO, Vec3.ZERO, 1e-3, List.of(), CavityFixtures.PLACE);
        Cavity c = CavityFixtures.build(round);
        StringBuilder obj = new StringBuilder();
        for (int v = 0; v < c.sheets().vertexCount(); v++) {
            Vec3 p = c.sheets().vertex(v);
            obj.append("v " + p.x() + " " + p.y() + " " + p.z() + "\n");
        }
        for (int t = 0; t < c.sheets().triangleCount(); t++) {
            obj.append("g " + c.parts().get(c.partOfSheet(t)).name() + "\nf "
                    + (c.sheets().corner(t, 0) + 1) + " " + (c.sheets().corner(t, 1) + 1) + " "
                    + (c.sheets().corner(t, 2) + 1) + "\n");
        }
        return MeshFiles.text(dir, "tube.obj", obj.toString());
    }

    private Cavity cut(OpeningSpec... cuts) throws IOException {
        return CavityBuilder.build(MeshFiles.spec(tube()), List.of(cuts), Map.of(), List.of());
    }

    private static Vec3 onShell(double x, double clock) {
        return new Vec3(x, RADIUS * Math.cos(clock), RADIUS * Math.sin(clock));
    }

    /** Area of an opening's closure seen along its normal, m². */
    private static double seen(Cavity c, int opening) {
        double sum = 0;
        for (int t = 0; t < c.closures().triangleCount(); t++) {
            if (c.openingOfClosure(t) == opening) {
                sum += Math.abs(c.closures()
                                .doubleAreaVector(t)
                                .dot(c.openings().get(opening).place().normal()))
                        / 2;
            }
        }
        return sum;
    }

    @Test
    void everyOutlineIsCutToItsExactAreaAcrossFacets() throws IOException {
        Random random = new Random(17);
        List<OpeningSpec> cuts = new ArrayList<>();
        Outline[] outlines = {
            new Outline.Circle(0.03),
            new Outline.Slot(0.1, 0.03),
            new Outline.RoundedRectangle(0.09, 0.05, 0.01),
            new Outline.Polygon(List.of(
                    new double[] {-0.04, -0.02},
                    new double[] {0.04, -0.02},
                    new double[] {0.04, 0.02},
                    new double[] {0, 0},
                    new double[] {-0.04, 0.02}))
        };
        for (int i = 0; i < outlines.length; i++) {
            for (int turn = 0; turn < 2; turn++) {
                Vec3 at = onShell(0.2 + 0.25 * i, 0.3 + 3 * turn + 0.1 * random.nextDouble());
                cuts.add(CavityFixtures.opening("cut " + cuts.size(), "shell", outlines[i], at, Vec3.X));
            }
        }
        Cavity c = cut(cuts.toArray(OpeningSpec[]::new));
        for (int o = 0; o < c.openings().size(); o++) {
            Opening opening = c.openings().get(o);
            assertEquals(Opening.Kind.PORT, opening.kind());
            assertTrue(opening.exterior());
            assertEquals(opening.areaM2(), seen(c, o), 1e-9 * opening.areaM2(), opening.name());
            // into the tube
            Vec3 in = new Vec3(
                    0,
                    -opening.place().centreM().y(),
                    -opening.place().centreM().z());
            assertTrue(opening.place().normal().dot(in.unit()) > 0.99);
        }
        double whole = CavityFixtures.area(c.sheets());
        assertEquals(whole, CavityFixtures.area(c.cutSheets()) + CavityFixtures.area(c.closures()), 1e-9 * whole);
        assertEquals(
                2 * FACETS * RADIUS * Math.sin(Math.PI / FACETS) * LENGTH
                        + FACETS * RADIUS * RADIUS * Math.sin(2 * Math.PI / FACETS),
                whole,
                1e-12);
    }

    @Test
    void aDrilledHoleHasTheAreaOfItsDrillAndItsPlugIsAState() throws IOException {
        // number drill 30 is 0.1285 in (ASME B94.11M, number drill sizes)
        double drill = Quantities.parse("#30 drill", Dimension.LENGTH);
        assertEquals(0.1285 * 0.0254, drill, 1e-15);
        PhaseStates plugged = new PhaseStates(OpeningState.OPEN, OpeningState.OPEN, OpeningState.PLUGGED);
        OpeningSpec hole = new OpeningSpec(
                "drilled hole",
                "shell",
                new Outline.Circle(drill / 2),
                onShell(0.6, 1.7),
                null,
                plugged,
                CavityFixtures.PLACE);
        Cavity c = cut(hole);
        assertEquals(Math.PI * drill * drill / 4, c.openings().get(0).areaM2(), 1e-18);
        assertEquals(Math.PI * drill * drill / 4, seen(c, 0), 1e-15);
        assertEquals(OpeningState.PLUGGED, c.openings().get(0).states().after());
    }

    @Test
    void aHoleTooLargeForTheCurveIsRefusedInOneSentence() throws IOException {
        OpeningSpec hole = CavityFixtures.round("window", "shell", 0.6, onShell(0.6, 1));
        SceneException e = assertThrows(SceneException.class, () -> cut(hole));
        assertTrue(e.getMessage().contains("window"), e.getMessage());
        assertEquals(1, e.findings().size());
        SceneException unknown =
                assertThrows(SceneException.class, () -> cut(CavityFixtures.round("a", "shel", 0.01, onShell(0.6, 1))));
        assertTrue(unknown.getMessage().contains("did you mean 'shell'"));
    }

    @Test
    void partsMayBeNamedAsTheFileDoes() throws IOException {
        Cavity c = cut(CavityFixtures.round("a", "Forward_END", 0.01, new Vec3(0, 0.02, 0.03)));
        assertEquals("forward end", c.parts().get(c.openings().get(0).part()).name());
        assertEquals(c.openings().get(0).part(), c.partIndex("FORWARD_end"));
        assertEquals(-1, c.partIndex("nothing"));
    }
}
