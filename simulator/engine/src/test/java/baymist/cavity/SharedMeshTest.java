package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.geom.Box3;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Open shell meshes that stay outside of the repository; skipped where they are missing. */
class SharedMeshTest {
    private static Path data(String name) {
        Path at = Path.of(System.getProperty("user.dir")).toAbsolutePath();
        while (at != null && !Files.isRegularFile(at.resolve("shared/data").resolve(name))) {
            at = at.getParent();
        }
        assumeTrue(at != null, "shared data not at hand");
        return at.resolve("shared/data").resolve(name);
    }

    @Test
    void wingBoxIsClosedWithNamedParts() {
        Cavity c = CavityFixtures.build(MeshFiles.spec(data("wingbox-coarse.bdf")));
        assertEquals(91, c.parts().size());
        assertEquals(0, c.openings().size());
        assertEquals(0.01, c.parts().get(0).gaugeM());
        assertTrue(c.parts().stream().anyMatch(p -> p.name().equals("wing u skin 000") && p.kind() == PartKind.SKIN));
        CavityHealth health = CavityHealth.of(c);
        assertEquals(0, health.freeEdges());
        Box3 box = c.sheets().bounds();
        assertEquals(13.8, box.size().z(), 0.01);
    }

    @Test
    void fuselageIsClosedByTheGapsAtItsEnds() {
        Cavity c = CavityFixtures.build(MeshFiles.spec(data("fuselage-frames.bdf")));
        assertEquals(259, c.parts().size());
        assertEquals("cargo floor/seg.00", c.parts().get(0).name());
        assertEquals(
                75, c.parts().stream().filter(p -> p.kind() == PartKind.SKIN).count());
        MeshHealth health = MeshHealth.of(c);
        assertEquals(1, health.bodies().size());
        assertEquals(6, health.gaps());
        assertEquals(0, health.edgeJoints().count() + health.nearJoints().count());
        assertEquals(9.144, c.sheets().bounds().size().z(), 1e-9);
        assertTrue(c.openings().size() >= 2, c.remarks().toString());
        double ends = c.openings().stream()
                .filter(o -> Math.abs(o.place().normal().z()) > 0.99)
                .mapToDouble(Opening::areaM2)
                .sum();
        // both ends are full sections of a cylinder of about 3.1 m radius
        assertEquals(2 * Math.PI * 3.0985 * 3.0985, ends, 0.01 * ends);
        for (int t = 0; t < c.sheets().triangleCount(); t++) {
            assertEquals(c.partOfSheet(t) < 0, c.gapOfSheet(t) >= 0);
        }
        double whole = CavityFixtures.area(c.sheets());
        assertEquals(whole, CavityFixtures.area(c.cutSheets()) + CavityFixtures.area(c.closures()), 1e-9 * whole);
    }
}
