package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.SparHole;
import baymist.scene.ControlSurfaceDetail;
import baymist.scene.ControlSurfaceDetail.Beads;
import baymist.scene.ControlSurfaceDetail.Form;
import baymist.scene.ControlSurfaceDetail.Horn;
import baymist.scene.ControlSurfaceDetail.Nose;
import baymist.scene.ControlSurfaceDetail.Run;
import baymist.scene.PhaseStates;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Beads, noses, horns and holes in spars against closed forms. */
class ControlSurfaceDetailTest {
    private static final double SPAN = 1;
    private static final double CHORD = 0.4;
    private static final double DEPTH = 0.08;

    private static double partArea(Cavity cavity, String part) {
        return CavityHealth.of(cavity).parts().stream()
                .filter(p -> p.part().equals(part))
                .mapToDouble(CavityHealth.PartArea::wholeM2)
                .findFirst()
                .orElseThrow();
    }

    /** A box of 1 m x 400 mm x 80 mm with ribs at 0, 0.5 and 1 m. */
    private static CavitySpec.ControlSurface surface(
            double edge, @Nullable Beads upper, @Nullable Nose nose, @Nullable Horn horn, SparHole... holes) {
        return new CavitySpec.ControlSurface(
                "surface",
                SPAN,
                CHORD,
                CHORD,
                DEPTH,
                DEPTH,
                edge,
                5e-4,
                List.of(new Rib(0, 0, List.of()), new Rib(0.5, 0, List.of()), new Rib(1, 0, List.of())),
                List.of(),
                CavityFixtures.PLACE,
                new ControlSurfaceDetail(upper, null, nose, horn, List.of(holes)));
    }

    private static Beads spanwise(Form form, double pitch, double width, double depth, double flank) {
        return new Beads(Run.SPANWISE, form, pitch, width, depth, flank, 0, CHORD, 0, 0);
    }

    private static double mainVolume(Cavity cavity) {
        Set<String> hull = Set.of("upper skin", "lower skin", "spar", "trailing edge", "rib 1", "rib 3");
        return FamilyLaw.hullVolume(cavity, hull::contains, "rib 3"::equals);
    }

    /** Complete elliptic integral of the second kind by the arithmetic-geometric mean (Abramowitz and Stegun 1964, 17.6). */
    private static double ellipticE(double m) {
        double a = 1;
        double b = Math.sqrt(1 - m);
        double c = Math.sqrt(m);
        double sum = c * c / 2;
        double power = 1;
        for (int i = 0; i < 30 && c > 1e-17; i++) {
            double next = (a + b) / 2;
            c = (a - b) / 2;
            b = Math.sqrt(a * b);
            a = next;
            sum += power * c * c;
            power *= 2;
        }
        return Math.PI / (2 * a) * (1 - sum);
    }

    @Test
    void ellipticIntegralIsTheTabulatedOne() {
        // Abramowitz and Stegun (1964), table 17.1: E(0) = pi/2, E(0.5) = 1.350643881, E(1) = 1 (from memory)
        assertEquals(Math.PI / 2, ellipticE(0), 1e-15);
        assertEquals(1.350643881, ellipticE(0.5), 1e-9);
    }

    @Test
    void corrugatedSheetHasItsDevelopedLength() {
        // arc length of z = d/2 cos(2 pi x / p) over a pitch: (2 p / pi) sqrt(1 + k^2) E(k^2 / (1 + k^2)), k = pi d / p
        double pitch = 0.04;
        double depth = 0.012;
        Cavity cavity = CavityFixtures.build(surface(DEPTH, spanwise(Form.SINE, pitch, pitch, depth, 0), null, null));
        double k = Math.PI * depth / pitch;
        double length = 2 * pitch / Math.PI * Math.sqrt(1 + k * k) * ellipticE(k * k / (1 + k * k));
        double found = partArea(cavity, "upper skin") / SPAN / (CHORD / pitch);
        double quadrature = 0;
        for (int i = 0; i < 20_000; i++) {
            double x = (i + 0.5) / 20_000;
            quadrature += pitch / 20_000 * Math.sqrt(1 + Math.pow(k * Math.sin(2 * Math.PI * x), 2));
        }
        assertEquals(quadrature, length, 1e-9 * length);
        assertTrue(found < length);
        // 16 chords a wave
        assertEquals(1, found / length, 2e-3);
        // a full wave's mean height is half of its depth; chords of equal steps keep the mean of a cosine exactly
        double plain = SPAN * CHORD * DEPTH;
        assertEquals(plain + SPAN * CHORD * depth / 2, mainVolume(cavity), 1e-12);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void trapezoidBeadsAddTheirFlanksAndVolume() {
        double width = 0.03;
        double depth = 0.005;
        double flank = 0.008;
        Cavity cavity =
                CavityFixtures.build(surface(DEPTH, spanwise(Form.TRAPEZOID, 0.05, width, depth, flank), null, null));
        // floor((400 - 30) / 50) + 1 = 8 beads; each flank is longer than its foot by hypot(f, d) - f
        double developed = CHORD + 8 * 2 * (Math.hypot(flank, depth) - flank);
        assertEquals(developed * SPAN, partArea(cavity, "upper skin"), 1e-12);
        assertEquals(CHORD * SPAN, partArea(cavity, "lower skin"), 1e-12);
        assertEquals(CHORD * DEPTH * SPAN + 8 * depth * (width - flank) * SPAN, mainVolume(cavity), 1e-12);
        // they run through the ribs, whose outline follows them
        assertEquals(CHORD * DEPTH + 8 * depth * (width - flank), partArea(cavity, "rib 2"), 1e-12);
    }

    @Test
    void beadsThatFadeLeaveRibsAndSparPlain() {
        Beads beads = new Beads(Run.CHORDWISE, Form.TRAPEZOID, 0.06, 0.03, -0.004, 0.005, 0.03, 0.35, 0.02, 0.01);
        Cavity cavity = CavityFixtures.build(surface(0, beads, null, null));
        assertEquals(CHORD * DEPTH / 2, partArea(cavity, "rib 2"), 1e-14);
        assertEquals(SPAN * DEPTH, partArea(cavity, "spar"), 1e-14);
        // in each bay floor((480 - 30) / 60) + 1 = 8 beads; profile d (w - f) times length less one run-out; triangles
        // take
        // a sixth or a third of a corner where both slopes meet, not a quarter
        double volume = 16 * 0.004 * (0.03 - 0.005) * (0.32 - 0.02);
        double corners = 16 * 4 * 0.005 * 0.02 * 0.004 / 12;
        assertEquals(CHORD * DEPTH / 2 * SPAN - volume, mainVolume(cavity), corners + 1e-12);
        assertTrue(cavity.remarks().contains("the upper skin has 16 beads"));
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void beadsClearOfRibsEndBetweenThem() {
        Beads beads = new Beads(Run.SPANWISE, Form.SINE, 0.05, 0.04, 0.006, 0, 0.02, 0.3, 0.03, 0.05);
        Cavity cavity = CavityFixtures.build(surface(0, beads, null, null));
        assertEquals(CHORD * DEPTH / 2, partArea(cavity, "rib 2"), 1e-14);
        assertTrue(mainVolume(cavity) > CHORD * DEPTH / 2 * SPAN);
    }

    @Test
    void roundNoseIsHalfACylinder() {
        double h = DEPTH / 2;
        double length = 0.06;
        Cavity cavity = CavityFixtures.build(surface(0, null, new Nose(length, length, h, List.of()), null));
        // radius = half depth: flats of 60 - 40 mm and a half circle in 22 chords
        int n = 2 * (NoseShape.CHORDS - 1);
        double girth = 2 * (length - h) + 2 * h * n * Math.sin(Math.PI / 2 / n);
        double section = (length - h) * DEPTH + n / 2.0 * h * h * Math.sin(Math.PI / n);
        assertEquals(girth * SPAN, partArea(cavity, "nose skin"), 1e-12);
        assertEquals(section, partArea(cavity, "nose root rib"), 1e-13);
        assertEquals(section, partArea(cavity, "nose tip rib"), 1e-13);
        assertEquals(Math.PI * h * h / 2 + (length - h) * DEPTH, section, 0.005 * section);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
    }

    @Test
    void sharpNoseHasItsFlatsTangentToTheLeadingEdge() {
        double h = DEPTH / 2;
        double r = 0.01;
        double length = 0.1;
        Cavity cavity = CavityFixtures.build(surface(0, null, new Nose(length, length, r, List.of()), null));
        // belt over one pulley: two tangents of sqrt(D^2 - r^2) and the arc between them (textbook)
        double far = Math.hypot(length - r, h);
        double tangent = Math.sqrt(far * far - r * r);
        double half = Math.PI - Math.atan2(h, length - r) - Math.acos(r / far);
        double girth = 2 * tangent + 2 * r * half;
        assertEquals(1, partArea(cavity, "nose skin") / (girth * SPAN), 1e-4);
        assertTrue(partArea(cavity, "nose skin") < girth * SPAN);
    }

    @Test
    void ellipticNoseHasItsArea() {
        // half an ellipse: pi/2 a b; 24 chords of equal parameter steps make n/2 a b sin(pi/n)
        double length = 0.07;
        Cavity cavity = CavityFixtures.build(surface(0, null, new Nose(length, length, 0, List.of()), null));
        int n = 2 * NoseShape.CHORDS;
        double inscribed = n / 2.0 * length * DEPTH / 2 * Math.sin(Math.PI / n);
        assertEquals(inscribed, partArea(cavity, "nose root rib"), 1e-14);
        assertEquals(1, inscribed / (Math.PI / 2 * length * DEPTH / 2), 3e-3);
    }

    @Test
    void hornIsAWedgeWithItsBays() {
        double width = 0.2;
        double length = 0.25;
        SparHole way = new SparHole("way", new Outline.Circle(0.015), 0.9, 0, PhaseStates.ALWAYS_OPEN, null);
        SparHole bulk = new SparHole(null, new Outline.Circle(0.01), 0.9, 0.002, PhaseStates.ALWAYS_OPEN, null);
        Horn horn = new Horn(width, length, 0.03, 0.15, List.of(bulk));
        Cavity cavity = CavityFixtures.build(surface(0, null, null, horn, way));
        assertEquals(length * (DEPTH + 0.03) / 2, partArea(cavity, "horn inner rib"), 1e-14);
        assertEquals(width * Math.hypot(length, 0.025), partArea(cavity, "horn upper skin"), 1e-13);
        assertEquals(width * 0.03, partArea(cavity, "horn front"), 1e-15);
        assertEquals(width * (DEPTH - 0.05 * 0.6), partArea(cavity, "horn bulkhead"), 1e-14);
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
        assertFalse(cavity.openings().get(cavity.openingIndex("way")).exterior());
        try (Workers workers = new Workers(1)) {
            VoxelGrid grid = Voxelizer.voxelize(cavity, new VoxelSpec(0.01, 0.02, 0.008), workers);
            assertTrue(grid.leaks().isEmpty());
            // two bays of the wedge, the horn behind its bulkhead, the counterweight's bay
            assertEquals(4, grid.bays().size());
            double horns = width * length * (DEPTH + 0.03) / 2;
            assertEquals(CHORD * DEPTH / 2 * SPAN + horns, grid.totalVolumeM3(), 5e-3 * grid.totalVolumeM3());
        }
    }

    @Test
    void hingeCutOutLeadsOutsideUnlessANoseCoversIt() {
        SparHole hinge = new SparHole(
                "hinge", new Outline.RoundedRectangle(0.05, 0.03, 0.004), 0.3, 0, PhaseStates.ALWAYS_OPEN, null);
        Cavity open = CavityFixtures.build(surface(0, null, null, null, hinge));
        Opening cutOut = open.openings().get(open.openingIndex("hinge"));
        assertTrue(cutOut.exterior());
        assertEquals(1, cutOut.place().normal().x(), 0, "into the cavity");
        assertEquals(0.05 * 0.03 - (4 - Math.PI) * 16e-6, cutOut.areaM2(), 1e-15);
        Cavity closed = CavityFixtures.build(surface(0, null, new Nose(0.06, 0.06, 0.02, List.of()), null, hinge));
        assertFalse(closed.openings().get(closed.openingIndex("hinge")).exterior());
    }

    @Test
    void noseEndsOnTheHornThatCoversIt() {
        Nose nose = new Nose(0.06, 0.05, 0.005, List.of(new Rib(0.3, 0, List.of(), "hinge rib")));
        Cavity cavity = CavityFixtures.build(surface(0, null, nose, new Horn(0.2, 0.25, 0.05, 0, List.of())));
        List<String> names = cavity.parts().stream().map(Part::name).toList();
        assertTrue(names.contains("hinge rib"));
        assertFalse(names.contains("nose tip rib"));
        refused("CAV-034", surface(0, null, nose, new Horn(0.2, 0.04, 0.05, 0, List.of())));
        Nose bulging = new Nose(0.06, 0.05, 0, List.of());
        refused("CAV-034", surface(0, null, bulging, new Horn(0.2, 0.1, 0, 0, List.of()), hole(0.1)));
    }

    private static SparHole hole(double along) {
        return new SparHole(null, new Outline.Circle(0.01), along, 0, PhaseStates.ALWAYS_OPEN, null);
    }

    @Test
    void impossibleDetailsAreToldInSentences() {
        refused("CAV-033", surface(DEPTH, spanwise(Form.SINE, 0.03, 0.05, 0.01, 0), null, null));
        refused("CAV-033", surface(DEPTH, spanwise(Form.TRAPEZOID, 0.05, 0.03, 0.01, 0.02), null, null));
        refused("CAV-033", surface(0, beads(0.2, 0.5, 0.01), null, null));
        refused("CAV-033", surface(0, beads(0.1, 0.3, 0), null, null));
        refused("CAV-033", surface(0, beads(0.1, 0.12, 0.02), null, null));
        // pressed in deeper than the wedge is at its edge
        Beads deep = new Beads(Run.CHORDWISE, Form.SINE, 0.06, 0.05, -0.03, 0, 0.05, 0.38, 0.01, 0);
        refused("CAV-033", surface(0, deep, null, null));
        refused("CAV-033", surface(DEPTH, spanwise(Form.SINE, 1e-6, 1e-6, 1e-7, 0), null, null));
        Beads fine = new Beads(Run.CHORDWISE, Form.SINE, 0.0011, 0.0011, 1e-4, 0, 0.01, 0.39, 1e-3, 0);
        CavitySpec.ControlSurface g = surface(DEPTH, spanwise(Form.SINE, 0.0011, 0.0011, 1e-4, 0), null, null);
        refused(
                "CAV-033",
                new CavitySpec.ControlSurface(
                        "fine",
                        SPAN,
                        CHORD,
                        CHORD,
                        DEPTH,
                        DEPTH,
                        DEPTH,
                        5e-4,
                        g.ribs(),
                        List.of(),
                        g.place(),
                        new ControlSurfaceDetail(g.detail().upper(), fine, null, null, List.of())));
        refused("CAV-001", surface(0, spanwise(Form.SINE, Double.NaN, 0.05, 0.01, 0), null, null));
        refused("CAV-034", surface(0, null, new Nose(0.06, 0.06, 0.05, List.of()), null));
        refused("CAV-034", surface(0, null, new Nose(0.06, 0.06, 0.01, List.of(new Rib(1, 0, List.of()))), null));
        refused("CAV-034", surface(0, null, null, new Horn(1, 0.2, 0, 0, List.of())));
        refused("CAV-034", surface(0, null, null, new Horn(0.2, 0.2, 0.1, 0, List.of())));
        refused("CAV-034", surface(0, null, null, new Horn(0.2, 0.2, 0.01, 0.3, List.of())));
        refused("CAV-034", surface(0, null, null, new Horn(0.5 - 5e-7, 0.2, 0.01, 0, List.of())));
        Beads through = new Beads(Run.CHORDWISE, Form.SINE, 0.06, 0.05, 0.005, 0, 0, CHORD, 0, 0);
        refused("CAV-034", surface(0.02, through, new Nose(0.06, 0.06, 0.01, List.of()), null));
        refused("CAV-034", surface(0.02, through, null, new Horn(0.2, 0.2, 0.01, 0, List.of())));
        refused("CAV-033", surface(0, through, null, null));
        refused("CAV-035", surface(0, null, null, null, hole(1.5)));
        refused("CAV-036", surface(0, null, new Nose(0.06, 0.06, 0, List.of(rib("rib 1"))), null));
    }

    private static Rib rib(String name) {
        return new Rib(0.3, 0, List.of(), name);
    }

    private static Beads beads(double from, double to, double runOut) {
        return new Beads(Run.CHORDWISE, Form.SINE, 0.06, 0.05, 0.005, 0, from, to, runOut, 0);
    }

    private static void refused(String id, CavitySpec spec) {
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
    }
}
