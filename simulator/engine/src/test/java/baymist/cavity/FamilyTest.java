package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.PhaseStates;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;

class FamilyTest {
    /** Volume by the divergence theorem over outward triangles. */
    private static double volume(TriangleMesh mesh, IntPredicate use, IntPredicate flip) {
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (use.test(t)) {
                double six = mesh.point(t, 0).dot(mesh.point(t, 1).cross(mesh.point(t, 2)));
                sum += flip.test(t) ? -six / 6 : six / 6;
            }
        }
        return sum;
    }

    private static double partArea(Cavity cavity, String part) {
        return CavityHealth.of(cavity).parts().stream()
                .filter(p -> p.part().equals(part))
                .mapToDouble(CavityHealth.PartArea::wholeM2)
                .findFirst()
                .orElseThrow();
    }

    private static Cavity round(double length, double radius, int segments) {
        return CavityFixtures.build(new CavitySpec.Round(
                "round", length, radius, segments, Vec3.ZERO, Vec3.ZERO, 0.001, List.of(), CavityFixtures.PLACE));
    }

    @Test
    void blockHasSixNamedClosedWalls() {
        Cavity cavity = CavityFixtures.build(CavityFixtures.block(new Vec3(0.4, 0.3, 0.2)));
        assertEquals(2 * (0.12 + 0.08 + 0.06), CavityFixtures.area(cavity.sheets()), 1e-15);
        assertEquals(0.024, volume(cavity.sheets(), t -> true, t -> false), 1e-15);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
        assertEquals(0.12, partArea(cavity, "floor"), 1e-15);
        assertEquals(0.08, partArea(cavity, "left wall"), 1e-15);
        assertEquals(0.06, partArea(cavity, "aft wall"), 1e-15);
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            String part = cavity.parts().get(cavity.partOfSheet(t)).name();
            Vec3 n = cavity.sheets().normal(t);
            Vec3 expected = Map.of(
                            "forward wall",
                            Vec3.X.negate(),
                            "aft wall",
                            Vec3.X,
                            "left wall",
                            Vec3.Y.negate(),
                            "right wall",
                            Vec3.Y,
                            "floor",
                            Vec3.Z.negate(),
                            "ceiling",
                            Vec3.Z)
                    .get(part);
            assertNotNull(expected);
            assertEquals(0, n.distance(expected), 1e-15, part);
        }
    }

    @Test
    void rotationTurnsAboutXThenYThenZ() {
        Cavity cavity = CavityFixtures.build(new CavitySpec.Block(
                "b",
                new Vec3(3, 2, 1),
                new Vec3(90, 0, 90),
                new Vec3(10, 0, 0),
                0.001,
                List.of(),
                CavityFixtures.PLACE));
        // about x: y -> z, z -> -y; then about z: x -> y, y -> -x: size (1, 3, 2) from (10, 0, 0) to (11, 3, 2)
        assertEquals(new Vec3(10, 0, 0), cavity.sheets().bounds().min());
        assertEquals(new Vec3(11, 3, 2), cavity.sheets().bounds().max());
        Vec3 p = SolidFamilies.pose(new Vec3(0, 30, 0), Vec3.ZERO).apply(Vec3.X);
        assertEquals(0, p.distance(new Vec3(Math.sqrt(0.75), 0, -0.5)), 1e-15);
    }

    @Test
    void cylinderIsThePrismOverTheInscribedPolygon() {
        // inscribed n-gon: perimeter 2 n r sin(pi/n), area n/2 r^2 sin(2 pi/n) (Euclid IV; textbook)
        int n = 24;
        Cavity cavity = round(0.8, 0.25, n);
        double perimeter = 2 * n * 0.25 * Math.sin(Math.PI / n);
        double end = n / 2.0 * 0.0625 * Math.sin(2 * Math.PI / n);
        assertEquals(perimeter * 0.8, partArea(cavity, "shell"), 1e-14);
        assertEquals(end, partArea(cavity, "aft end"), 1e-15);
        assertEquals(end * 0.8, volume(cavity.sheets(), t -> true, t -> false), 1e-14);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void sphereAndCylinderConvergeToArchimedes() {
        // Archimedes, On the Sphere and Cylinder: sphere 4 pi r^2 and 4/3 pi r^3; second order in the facet size
        double r = 0.3;
        double[] areaError = new double[2];
        double[] volumeError = new double[2];
        for (int i = 0; i < 2; i++) {
            TriangleMesh mesh = round(0, r, 48 << i).sheets();
            areaError[i] = 1 - CavityFixtures.area(mesh) / (4 * Math.PI * r * r);
            volumeError[i] = 1 - volume(mesh, t -> true, t -> false) / (4.0 / 3 * Math.PI * r * r * r);
        }
        assertTrue(areaError[1] > 0 && areaError[1] < 2e-3);
        assertEquals(4, areaError[0] / areaError[1], 0.1);
        assertEquals(4, volumeError[0] / volumeError[1], 0.1);
        assertEquals(0, CavityHealth.of(round(0, r, 48)).freeEdges());
    }

    @Test
    void sphereBandsFollowPappus() {
        // Pappus-Guldin: a line turned about an axis sweeps length x path of its middle; with chords around, the path
        // of the
        // middle of a band is the polygon 2 n rho sin(pi/n) at the mean radius rho, and the slant is taken to the chord
        int n = 32;
        double r = 1;
        TriangleMesh mesh = round(0, r, n).sheets();
        double sum = 0;
        int rows = n / 2;
        for (int j = 0; j < rows; j++) {
            double a = Math.PI * j / rows;
            double b = Math.PI * (j + 1) / rows;
            double rho = (Math.sin(a) + Math.sin(b)) / 2;
            double dx = Math.cos(a) - Math.cos(b);
            double dr = (Math.sin(b) - Math.sin(a)) * Math.cos(Math.PI / n);
            sum += 2 * n * rho * Math.sin(Math.PI / n) * Math.hypot(dx, dr);
        }
        assertEquals(sum, CavityFixtures.area(mesh), 1e-12);
    }

    @Test
    void wingBoxIsClosedAndItsVolumeIsThePrismatoids() {
        CavitySpec.WingBox spec = CavityFixtures.wingBoxSpec();
        Cavity cavity = CavityFixtures.build(spec);
        TriangleMesh mesh = cavity.sheets();
        double volume = volume(
                mesh,
                t -> {
                    String part = cavity.parts().get(cavity.partOfSheet(t)).name();
                    return !part.contains("stringer") && !part.equals("rib 2");
                },
                t -> cavity.parts().get(cavity.partOfSheet(t)).name().equals("rib 3"));
        // sections scale with the chord, so section area is quadratic along y and Simpson's (the prismatoid) rule is
        // exact
        double root = partArea(cavity, "rib 1");
        double middle = partArea(cavity, "rib 2");
        double tip = partArea(cavity, "rib 3");
        assertEquals(1.2 / 6 * (root + 4 * middle + tip), volume, 1e-12);
        assertEquals(Math.pow(1.05 / 1.2, 2), middle / root, 1e-12);
        assertEquals(Math.pow(0.9 / 1.2, 2), tip / root, 1e-12);
        // rib between the spars by quadrature of the section; the 26 chords fall short by 4e-4 at most
        Naca4 naca = Naca4.of("2412");
        double area = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double x = 0.15 + 0.5 * (i + 0.5) / n;
            area += (naca.height(x, 1) - naca.height(x, -1)) * 0.5 / n * 1.44;
        }
        assertTrue(root < area);
        assertEquals(1, root / area, 5e-4);
    }

    @Test
    void wingBoxSheetsMeetVertexForVertex() {
        Cavity cavity = CavityFixtures.build(CavityFixtures.wingBoxSpec());
        // free edges: top and the two ends of three blades, in two lengths each: (2 + 2) x 3
        CavityHealth health = CavityHealth.of(cavity);
        assertEquals(12, health.freeEdges());
        assertEquals(0, health.gaps());
        List<String> names = cavity.parts().stream().map(Part::name).toList();
        assertEquals(
                List.of(
                        "upper skin",
                        "lower skin",
                        "front spar",
                        "rear spar",
                        "rib 1",
                        "rib 2",
                        "rib 3",
                        "upper stringer 1",
                        "upper stringer 2",
                        "lower stringer 1"),
                names);
        double blade = partArea(cavity, "upper stringer 1");
        // foot length: y 1.2 m, aft and up offsets by sweep, taper and dihedral at a third of the box
        double f = 0.15 + 0.5 / 3;
        double aft = 0.1 + (0.9 - 1.2) * f;
        double up = 0.05 + (0.9 - 1.2) * Naca4.of("2412").height(f, 1);
        // blade stands square to the skin in the section's plane; the foot line leaves that plane, height counts across
        // it
        double foot = Math.sqrt(1.44 + aft * aft + up * up);
        assertEquals(0.02 * foot, blade, 0.02 * foot * 0.01);
    }

    @Test
    void sparsStandAtTheirChordFractionsWithTheSectionsHeight() {
        Cavity cavity = CavityFixtures.build(CavityFixtures.wingBoxSpec());
        Naca4 naca = Naca4.of("2412");
        double front = 1.2 * (naca.height(0.15, 1) - naca.height(0.15, -1));
        double frontTip = front * 0.75;
        // the front spar's web is a plane trapezoid: mean height times length of its run in plan
        double run = Math.hypot(1.2, 0.1 + (0.9 - 1.2) * 0.15);
        assertEquals((front + frontTip) / 2 * run, partArea(cavity, "front spar"), 1e-9);
        assertEquals(0.15 * 1.2, cavity.sheets().bounds().min().x(), 1e-12);
    }

    @Test
    void wedgeIsClosedAndItsVolumeIsThePrismatoids() {
        Cavity cavity = CavityFixtures.wedge();
        TriangleMesh mesh = cavity.sheets();
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
        double volume = volume(
                mesh,
                t -> !cavity.parts().get(cavity.partOfSheet(t)).name().equals("rib 2"),
                t -> cavity.parts().get(cavity.partOfSheet(t)).name().equals("rib 3"));
        double simpson = 1.0 / 6 * (0.5 * 0.3 * 0.06 + 4 * 0.5 * 0.25 * 0.05 + 0.5 * 0.2 * 0.04);
        assertEquals(simpson, volume, 1e-12);
        assertEquals(0.5 * 0.25 * 0.05, partArea(cavity, "rib 2"), 1e-15);
        assertEquals(1 * 0.05, partArea(cavity, "spar"), 1e-15);
    }

    @Test
    void warpedSkinIsRuledWithinATwentiethOfAMillimetre() {
        CavitySpec.ControlSurface spec = new CavitySpec.ControlSurface(
                "warped",
                1,
                0.3,
                0.3,
                0.08,
                0.03,
                0.01,
                0.001,
                List.of(new Rib(0, 0, List.of()), new Rib(1, 0, List.of())),
                List.of(),
                CavityFixtures.PLACE);
        Cavity cavity = CavityFixtures.build(spec);
        assertTrue(cavity.parts().stream().anyMatch(p -> p.name().equals("trailing edge")));
        TriangleMesh mesh = cavity.sheets();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (cavity.partOfSheet(t) != 0) {
                continue;
            }
            Vec3 c = mesh.centroid(t);
            double s = c.x() / 0.3;
            double half = 0.5 * (0.08 - 0.05 * c.y());
            assertEquals(half + s * (0.005 - half), c.z(), 5e-5);
        }
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void endRibsShortOfTheSpanAreRemarked() {
        CavitySpec.ControlSurface w = CavityFixtures.wedgeSpec();
        Cavity cavity = CavityFixtures.build(new CavitySpec.ControlSurface(
                "w", 1, 0.3, 0.2, 0.06, 0.04, 0, 0.001, w.ribs().subList(0, 2), List.of(), w.place()));
        assertTrue(
                cavity.remarks().get(0).contains("closed by its end ribs"),
                cavity.remarks().toString());
    }

    @Test
    void impossibleMeasuresAreToldInSentences() {
        CavitySpec.WingBox g = CavityFixtures.wingBoxSpec();
        refused("CAV-005", wing(g, "24", 0.15, 0.65, 0.02, g.ribs()));
        refused("CAV-002", wing(g, "2412", 0.65, 0.15, 0.02, g.ribs()));
        refused("CAV-006", wing(g, "2412", 0.15, 0.65, 0.5, g.ribs()));
        refused("CAV-001", wing(g, "2412", 0.15, 0.65, Double.NaN, g.ribs()));
        refused("CAV-007", wing(g, "2412", 0.15, 0.65, 0.02, g.ribs().subList(0, 1)));
        refused(
                "CAV-008",
                wing(
                        g,
                        "2412",
                        0.15,
                        0.65,
                        0.02,
                        List.of(g.ribs().get(1), g.ribs().get(0))));
        refused("CAV-004", wing(g, "2412", 0.15, 0.65, 0.02, List.of(g.ribs().get(0), new Rib(1.2, 0.1, List.of()))));
        List<Rib> ends = List.of(new Rib(0, 0, List.of()), new Rib(1, 0.4, List.of()));
        refused(
                "CAV-010",
                new CavitySpec.ControlSurface("w", 1, 0.3, 0.2, 0.06, 0.04, 0, 0.001, ends, List.of(), g.place()));
        refused(
                "CAV-009",
                new CavitySpec.ControlSurface("w", 1, 0.3, 0.2, 0.06, 0.04, 0.05, 0.001, ends, List.of(), g.place()));
        refused("CAV-011", new CavitySpec.Round("r", 1, 1, 3, Vec3.ZERO, Vec3.ZERO, 0.001, List.of(), g.place()));
        refused(
                "CAV-012",
                new CavitySpec.Block(
                        "b", new Vec3(1, 1, 1), new Vec3(0, 900, 0), Vec3.ZERO, 0.001, List.of(), g.place()));
        refused("CAV-001", CavityFixtures.block(new Vec3(0, 1, 1)));
    }

    @Test
    void aPolygonHoleStandsUprightInEveryRib() {
        // A triangle with its apex up and its shorter side aft, so that neither mirror image looks the same.
        Outline apexUp = new Outline.Polygon(
                List.of(new double[] {-0.012, -0.005}, new double[] {0.006, -0.005}, new double[] {0.006, 0.01}));
        RibHole hole = new RibHole(null, apexUp, 0.1, 0, PhaseStates.ALWAYS_OPEN);
        CavitySpec.ControlSurface g = CavityFixtures.wedgeSpec();
        Cavity cavity = CavityFixtures.build(new CavitySpec.ControlSurface(
                "w",
                1,
                0.3,
                0.3,
                0.06,
                0.06,
                0,
                0.0006,
                List.of(new Rib(0, 0, List.of(hole)), new Rib(0.5, 0, List.of(hole)), new Rib(1, 0, List.of(hole))),
                List.of(),
                g.place()));
        for (int rib = 1; rib <= 3; rib++) {
            PlacedOutline placed = cavity.openings()
                    .get(cavity.openingIndex("rib " + rib + " hole 1"))
                    .place();
            Vec3 c = placed.centreM();
            assertTrue(placed.contains(c.plus(new Vec3(0.0055, 0, 0.008))), "apex of rib " + rib);
            assertFalse(placed.contains(c.plus(new Vec3(0.0055, 0, -0.008))), "upside down in rib " + rib);
            assertFalse(placed.contains(c.plus(new Vec3(-0.0055, 0, 0.008))), "turned fore and aft in rib " + rib);
        }
    }

    private static CavitySpec wing(
            CavitySpec.WingBox g, String naca, double front, double rear, double stringer, List<Rib> ribs) {
        return new CavitySpec.WingBox(
                "w", naca, 1.2, 1.2, 0.9, 0.1, 0.05, front, rear, 0.001, 2, 1, stringer, ribs, List.of(), g.place());
    }

    private static void refused(String id, CavitySpec spec) {
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
        assertFalse(e.getMessage().contains("Exception"));
    }
}
