package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Flange;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.CavitySpec.SparHole;
import baymist.scene.PhaseStates;
import baymist.scene.WingBoxDetail;
import baymist.scene.WingBoxDetail.FalseSpar;
import baymist.scene.WingBoxDetail.Notch;
import baymist.scene.WingBoxDetail.Station;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Measured sections, notches, flanged holes, false spars and open ends against closed forms. */
class WingBoxDetailTest {
    private static final double FRONT = 0.2;
    private static final double REAR = 0.7;
    private static final double GAUGE = 0.001;

    private static double partArea(Cavity cavity, String part) {
        return CavityHealth.of(cavity).parts().stream()
                .filter(p -> p.part().equals(part))
                .mapToDouble(CavityHealth.PartArea::wholeM2)
                .findFirst()
                .orElseThrow();
    }

    private static double cutArea(Cavity cavity, String part) {
        return CavityHealth.of(cavity).parts().stream()
                .filter(p -> p.part().equals(part))
                .mapToDouble(CavityHealth.PartArea::cutM2)
                .findFirst()
                .orElseThrow();
    }

    private static Opening opening(Cavity cavity, String name) {
        return cavity.openings().get(cavity.openingIndex(name));
    }

    private static WingBoxDetail detail(List<Station> root, List<Station> tip, boolean straight) {
        return new WingBoxDetail(root, tip, straight, List.of(), null, false, false);
    }

    /** Chord 1 m at the root, span 2 m, ribs at 0, 1 and 2 m; the middle one with the given holes. */
    private static CavitySpec.WingBox box(
            double tipChord, int stringers, double height, WingBoxDetail detail, RibHole... holes) {
        return new CavitySpec.WingBox(
                "box",
                detail.measured() ? "" : "0012",
                2,
                1,
                tipChord,
                0.3,
                0.1,
                FRONT,
                REAR,
                GAUGE,
                stringers,
                stringers,
                height,
                List.of(new Rib(0, 0, List.of()), new Rib(1, 0, List.of(holes)), new Rib(2, 0, List.of())),
                List.of(),
                CavityFixtures.PLACE,
                detail);
    }

    private static List<Station> stations(
            double chord, DoubleUnaryOperator upper, DoubleUnaryOperator lower, double... fractions) {
        List<Station> out = new ArrayList<>();
        for (double f : fractions) {
            out.add(new Station(f * chord, upper.applyAsDouble(f), lower.applyAsDouble(f)));
        }
        return out;
    }

    /** 200 mm deep with level skins. */
    private static WingBoxDetail level(Notch notch, boolean openTip, FalseSpar... spars) {
        List<Station> root = stations(1, f -> 0.12, f -> -0.08, FRONT, REAR);
        return new WingBoxDetail(root, List.of(), true, List.of(spars), notch, false, openTip);
    }

    private static RibHole hole(Outline outline, double aft, Flange flange) {
        return new RibHole("hole", outline, aft, 0, PhaseStates.ALWAYS_OPEN, flange);
    }

    @Test
    void areaOfAMeasuredParabolaIsSimpsons() {
        // Simpson's rule, exact for parabolas: c/6 (h1 + 4 h2 + h3); uneven stations lie on the same parabola
        DoubleUnaryOperator upper = f -> 0.06 + 0.3 * (f - FRONT) * (REAR - f);
        DoubleUnaryOperator lower = f -> -0.04 - 0.2 * (f - FRONT) * (REAR - f);
        List<Station> root = stations(1, upper, lower, FRONT, 0.31, 0.5, 0.66, REAR);
        Cavity cavity = CavityFixtures.build(box(1, 0, 0, detail(root, List.of(), false)));
        double middle = 0.5 * (FRONT + REAR);
        double simpson =
                (REAR - FRONT) / 6 * (0.1 + 4 * (upper.applyAsDouble(middle) - lower.applyAsDouble(middle)) + 0.1);
        // the strips' chords fall short by w^3/12 |second derivative| each, 1.0 per m in all
        List<Double> at = new ArrayList<>(List.of(0.31, 0.5, 0.66));
        for (int k = 0; k <= 24; k++) {
            at.add(FRONT + (REAR - FRONT) * k / 24);
        }
        at.sort(null);
        double missing = 0;
        for (int i = 0; i + 1 < at.size(); i++) {
            missing += Math.pow(at.get(i + 1) - at.get(i), 3) / 12 * 1.0;
        }
        // stations nearer than a tenth of a strip to another one may give way
        assertEquals(simpson - missing, partArea(cavity, "rib 1"), 2e-6);
        assertTrue(missing < 1e-4 && partArea(cavity, "rib 1") < simpson);
    }

    @Test
    void curveThroughStationsMeetsEveryParabola() {
        // Hermite interpolation with three-point slopes reproduces polynomials of degree two (de Boor 1978, ch. IV)
        DoubleUnaryOperator p = f -> 0.3 - 1.7 * f + 2.9 * f * f;
        List<Station> list = stations(1.3, p, f -> 0, 0.1, 0.17, 0.4, 0.45, 0.9);
        MeasuredCurve curve = MeasuredCurve.of(list, 1.3, +1, false);
        for (double f = 0.05; f < 0.95; f += 0.013) {
            assertEquals(p.applyAsDouble(f), curve.at(f), 1e-14);
            assertEquals(0.5 * p.applyAsDouble(f), curve.scaled(0.5).at(f), 1e-14);
        }
        MeasuredCurve straight = MeasuredCurve.of(list, 1.3, +1, true);
        assertEquals(0.5 * (p.applyAsDouble(0.4) + p.applyAsDouble(0.45)), straight.at(0.425), 1e-15);
    }

    @Test
    void heightsFromTheTableGiveTheSectionOfThePolynomial() {
        // Abbott and von Doenhoff (1959), appendix I, NACA 0012 ordinates in per cent of chord (from memory), against
        // the
        // integral of the thickness polynomial of NACA Report 460
        double[][] table = {{20, 5.737}, {25, 5.941}, {30, 6.002}, {40, 5.803}, {50, 5.294}, {60, 4.563}, {70, 3.664}};
        List<Station> root = new ArrayList<>();
        for (double[] row : table) {
            root.add(new Station(row[0] / 100, row[1] / 100, -row[1] / 100));
        }
        double rib = partArea(CavityFixtures.build(box(1, 0, 0, detail(root, List.of(), false))), "rib 1");
        assertEquals(1, rib / (2 * (thickness(REAR) - thickness(FRONT))), 2e-4);
        assertEquals(1, rib / partArea(CavityFixtures.build(box(1, 0, 0, WingBoxDetail.PLAIN)), "rib 1"), 2e-4);
    }

    /** Integral of the half thickness of NACA 0012 from 0 to x, term by term. */
    private static double thickness(double x) {
        return 0.6
                * (0.29690 * 2 / 3 * Math.pow(x, 1.5)
                        - 0.12600 / 2 * x * x
                        - 0.35160 / 3 * Math.pow(x, 3)
                        + 0.28430 / 4 * Math.pow(x, 4)
                        - 0.10150 / 5 * Math.pow(x, 5));
    }

    @Test
    void wholeNaca0012SectionHasItsPublishedArea() {
        // 0.0822 c^2: twice the integral of the polynomial of NACA Report 460 from 0 to 1
        assertEquals(0.0822, 2 * thickness(1), 5e-5);
        Naca4 naca = Naca4.of("0012");
        double sum = 0;
        for (int i = 0; i < 100_000; i++) {
            sum += 2 * naca.halfThickness((i + 0.5) / 100_000) / 100_000;
        }
        assertEquals(2 * thickness(1), sum, 1e-8);
    }

    @Test
    void boxBetweenTwoMeasuredSectionsIsAPrismatoid() {
        // the sides are ruled by lines from section to section, so the section's area is quadratic along the span and
        // the
        // prismatoid rule (Simpson 1743, Newton) is exact
        List<Station> root = stations(1, f -> 0.1 - 0.1 * (f - 0.4) * (f - 0.4), f -> -0.05, FRONT, 0.45, REAR);
        List<Station> tip = stations(0.6, f -> 0.05 - 0.04 * f, f -> -0.01 - 0.04 * f, FRONT, 0.3, 0.5, REAR);
        Cavity cavity = CavityFixtures.build(box(0.6, 0, 0, detail(root, tip, false)));
        double a = partArea(cavity, "rib 1");
        double m = partArea(cavity, "rib 2");
        double b = partArea(cavity, "rib 3");
        assertEquals(0.3 * 0.06, b, 1e-12, "the tip's skins are parallel, 60 mm apart over half of 600 mm");
        Set<String> hull = Set.of("upper skin", "lower skin", "front spar", "rear spar", "rib 1", "rib 3");
        double volume = FamilyLaw.hullVolume(cavity, hull::contains, "rib 3"::equals);
        // triangles cut the warped strips a little; they are divided until that is below 0.05 mm
        assertEquals(2.0 / 6 * (a + 4 * m + b), volume, 1e-4 * volume);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void notchIsARectangleWithoutTheBlade() {
        double c = 0.004;
        double h = 0.025;
        Cavity cavity = CavityFixtures.build(box(1, 2, h, level(new Notch(c, PhaseStates.ALWAYS_OPEN), false)));
        // (2 c + t)(h + c) - t h
        double area = (2 * c + GAUGE) * (h + c) - GAUGE * h;
        for (String name : new String[] {"upper notch 1", "upper notch 2", "lower notch 1", "lower notch 2"}) {
            Opening notch = opening(cavity, "rib 2 " + name);
            assertEquals(area, notch.areaM2(), 1e-15, name);
            assertFalse(notch.exterior());
            assertEquals(Opening.Kind.HOLE, notch.kind());
        }
        assertEquals(0.5 * 0.2 - 4 * area, cutArea(cavity, "rib 2"), 1e-12);
        assertEquals(4, cavity.openings().size(), "end ribs have no notches");
        // air passes on both sides of the blade and over its top, not through it
        PlacedOutline place = opening(cavity, "rib 2 lower notch 1").place();
        double x = 0.15 + FRONT + 0.5 / 3;
        double z = 0.05 - 0.08;
        assertTrue(place.contains(new Vec3(x + 0.003, 1, z + 0.01)));
        assertTrue(place.contains(new Vec3(x - 0.003, 1, z + 0.01)));
        assertTrue(place.contains(new Vec3(x, 1, z + h + 0.002)));
        assertFalse(place.contains(new Vec3(x, 1, z + 0.01)));
        assertFalse(place.contains(new Vec3(x + c + GAUGE, 1, z + 0.01)));
    }

    @Test
    void flangeIsTheMantleOfACone() {
        double r = 0.04;
        double d = 0.008;
        Cavity cavity = CavityFixtures.build(box(
                1, 0, 0, level(null, false), hole(new Outline.Circle(r), 0.25, new Flange(d, Math.PI / 4, true))));
        // cone frustum: pi (r1 + r2) slant height (textbook); 96 facets are on an area-matched polygon
        double frustum = Math.PI * (2 * r + d) * d * Math.sqrt(2);
        assertEquals(1, partArea(cavity, "hole flange") / frustum, 1e-3);
        // exactly: trapezoids between the outline's polygon and the same moved outward by d
        int n = 96;
        double area = Math.PI * r * r;
        double perimeter = 2 * Math.sqrt(area * n * Math.tan(Math.PI / n));
        double outer = perimeter + 2 * n * Math.tan(Math.PI / n) * d;
        assertEquals((perimeter + outer) / 2 * d * Math.sqrt(2), partArea(cavity, "hole flange"), 1e-12);
        // the opening keeps its outline, at the free edge; the web ends where the cone begins
        Opening hole = opening(cavity, "hole");
        assertEquals(area, hole.areaM2(), 1e-15);
        assertEquals(1 + d, hole.place().centreM().y(), 1e-15);
        double foot = area * Math.pow(outer / perimeter, 2);
        assertEquals(0.5 * 0.2 - foot, cutArea(cavity, "rib 2"), 1e-12);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void straightFlangeIsPerimeterTimesDepth() {
        Outline outline = new Outline.Polygon(List.of(
                new double[] {-0.05, -0.03}, new double[] {0.05, -0.03}, new double[] {0.05, 0.03}, new double[] {
                    -0.05, 0.03
                }));
        Cavity cavity = CavityFixtures.build(box(
                1, 0, 0, level(null, false), hole(outline, 0.2, new Flange(0.01, Math.PI / 2, false))));
        assertEquals(0.32 * 0.01, partArea(cavity, "hole flange"), 1e-15);
        assertEquals(0.99, opening(cavity, "hole").place().centreM().y(), 1e-15);
        assertEquals(0.1 - 0.006, cutArea(cavity, "rib 2"), 1e-14);
    }

    @Test
    void polygonsInRibsStandUpright() {
        Outline triangle = new Outline.Polygon(
                List.of(new double[] {-0.03, -0.02}, new double[] {0.03, -0.02}, new double[] {0, 0.06}));
        Cavity cavity = CavityFixtures.build(box(1, 0, 0, level(null, false), hole(triangle, 0.2, null)));
        Vec3 centre = opening(cavity, "hole").place().centreM();
        assertTrue(opening(cavity, "hole").place().contains(centre.plus(0.05, Vec3.Z)));
        assertFalse(opening(cavity, "hole").place().contains(centre.plus(-0.05, Vec3.Z)));
    }

    @Test
    void falseSparIsATrapezoidBetweenTheSkins() {
        SparHole wide = new SparHole(
                null, new Outline.Slot(0.12, 0.06), 0.5, 0.01, PhaseStates.ALWAYS_OPEN, new Flange(0.01, 1, true));
        SparHole plain = new SparHole("pipe", new Outline.Circle(0.02), 1.5, 0, PhaseStates.ALWAYS_OPEN, null);
        FalseSpar spar = new FalseSpar("middle spar", 0.5, 1, 3, List.of(wide, plain));
        Cavity cavity = CavityFixtures.build(box(0.5, 0, 0, level(null, false, spar)));
        // heights 200 and 100 mm; in plan the web runs 0.3 + 0.5 (0.5 - 1) = 50 mm aft over 2 m
        double whole = (0.2 + 0.1) / 2 * Math.hypot(2, 0.05);
        double back = 0.01 / Math.tan(1);
        double slot = new Outline.Slot(0.12, 0.06).areaM2();
        double cut = whole - cutArea(cavity, "middle spar") - Math.PI * 4e-4;
        assertEquals(slot + back * (2 * 0.06 + Math.PI * 0.06) + Math.PI * back * back, cut, 1e-5);
        Opening hole = opening(cavity, "middle spar hole 1");
        assertEquals(slot, hole.areaM2(), 1e-15);
        assertFalse(hole.exterior());
        // aft side: normal to the web's plane
        assertEquals(0, hole.place().normal().dot(new Vec3(0.05, 2, 0)), 1e-12);
        assertTrue(hole.place().normal().x() > 0.99);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void openTipIsTheWholeSection() {
        Cavity cavity = CavityFixtures.build(box(0.5, 0, 0, level(null, true)));
        Opening tip = opening(cavity, "open tip");
        assertEquals(0.25 * 0.1, tip.areaM2(), 1e-14);
        assertTrue(tip.exterior());
        assertEquals(Opening.Kind.PORT, tip.kind());
        assertEquals(-1, tip.place().normal().y(), 0, "into the cavity");
        assertEquals(0, cutArea(cavity, "rib 3"), 1e-12);
    }

    @Test
    void impossibleDetailsAreToldInSentences() {
        List<Station> good = stations(1, f -> 0.12, f -> -0.08, FRONT, REAR);
        refused("CAV-032", box(1, 0, 0, detail(good.subList(0, 1), List.of(), true)));
        refused("CAV-032", box(1, 0, 0, detail(stations(1, f -> 0.1, f -> 0, REAR, FRONT), List.of(), true)));
        refused("CAV-032", box(1, 0, 0, detail(stations(1, f -> -0.1, f -> 0, FRONT, REAR), List.of(), true)));
        refused("CAV-032", box(1, 0, 0, detail(stations(1, f -> 0.1, f -> 0, 0.3, REAR), List.of(), true)));
        refused("CAV-032", box(1, 0, 0, detail(good, stations(1, f -> 0.1, f -> 0, FRONT, 0.5), true)));
        // a deep dip between stations lets the curve of the upper skin cross the lower one
        List<Station> dip = stations(1, f -> f == 0.45 ? 0.001 : 0.1, f -> 0, FRONT, 0.3, 0.45, 0.47, REAR);
        refused("CAV-032", box(1, 0, 0, detail(dip, List.of(), false)));
        refused("CAV-031", box(1, 0, 0, level(null, false), hole(new Outline.Circle(0.095), 0.2, lip(0.01))));
        Outline star = new Outline.Polygon(List.of(
                new double[] {-0.05, -0.05}, new double[] {0.05, 0.05}, new double[] {0.05, -0.05}, new double[] {
                    -0.05, 0.06
                }));
        refused("CAV-031", box(1, 0, 0, level(null, false), hole(star, 0.2, lip(0.01))));
        for (double at : new double[] {0.1, 0.8}) {
            refused("CAV-035", box(1, 0, 0, level(null, false, new FalseSpar(null, at, 1, 3, List.of()))));
        }
        refused("CAV-035", box(1, 0, 0, level(null, false, new FalseSpar(null, 0.4, 2, 2, List.of()))));
        refused("CAV-035", box(1, 1, 0.02, level(null, false, new FalseSpar(null, 0.45, 1, 3, List.of()))));
        SparHole beyond = new SparHole(null, new Outline.Circle(0.02), 1.5, 0, PhaseStates.ALWAYS_OPEN, null);
        refused("CAV-035", box(1, 0, 0, level(null, false, new FalseSpar(null, 0.4, 1, 2, List.of(beyond)))));
        refused("CAV-036", box(1, 0, 0, level(null, false, new FalseSpar("rib 2", 0.4, 1, 3, List.of()))));
        CavitySpec.WingBox g = box(1, 0, 0, level(null, true));
        List<Rib> ribs =
                List.of(new Rib(0, 0, List.of()), new Rib(2, 0, List.of(hole(new Outline.Circle(0.02), 0.2, null))));
        refused(
                "CAV-037",
                new CavitySpec.WingBox(
                        "w", "", 2, 1, 1, 0, 0, FRONT, REAR, GAUGE, 0, 0, 0, ribs, List.of(), g.place(), g.detail()));
        refused("CAV-001", box(1, 1, 0.02, level(new Notch(0, PhaseStates.ALWAYS_OPEN), false)));
    }

    private static Flange lip(double depth) {
        return new Flange(depth, Math.PI / 4, true);
    }

    private static void refused(String id, CavitySpec spec) {
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
    }
}
