package baymist.coverage;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Opening;
import baymist.cavity.PartKind;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.scene.PhaseStates;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoverageAssessorTest {
    private static final double MIL_M = 25.4e-6;

    private static LatticeCavity.Built box() {
        return new LatticeCavity(10, 12, 6, new Vec3(0.01, 0.02, 0.015))
                .box()
                .wall(1, 6, "rib 2", PartKind.RIB, (i, k) -> i > 3 && i < 7 && k > 1 && k < 4)
                .build();
    }

    private static double[] randomFilm(int count, long seed) {
        Random random = new Random(seed);
        double[] film = new double[count];
        Arrays.setAll(film, i -> random.nextDouble() < 0.2 ? 0 : 1e-6 * Math.exp(random.nextGaussian(2, 1.5)));
        return film;
    }

    // ---- closed forms -------------------------------------------------------------------------------------------

    /** Archimedes, On the Sphere and Cylinder: a cap of half-angle t holds (1 - cos t)/2 of a sphere's area. */
    @ParameterizedTest
    @ValueSource(doubles = {10, 30, 60, 90, 120})
    void filmWithinAConeReachesTheShareOfTheCap(double degrees) {
        SphereOfSurfels sphere = SphereOfSurfels.of(0.5, 720, 60);
        double[] film = sphere.film((p) -> Math.acos(p.unit().x()) < Math.toRadians(degrees) ? 20e-6 : 0);
        double reached = CoverageAssessor.assess(sphere.cavity(), sphere.grid(), film, TargetSpec.DEFAULT)
                .total()
                .reached();
        // rings of 0.25 degrees that lie wholly inside or outside the cone, so the sum telescopes exactly
        assertEquals((1 - Math.cos(Math.toRadians(degrees))) / 2, reached, 1e-12);
    }

    /** Archimedes: the surface centroid of a hemisphere lies R/2 from its centre; its area is half of 4 pi R^2. */
    @Test
    void bareHemisphereHasItsCentroidAtHalfTheRadius() {
        double radius = 0.3;
        SphereOfSurfels sphere = SphereOfSurfels.of(radius, 720, 60);
        UnreachedRegion region = CoverageAssessor.assess(
                        sphere.cavity(), sphere.grid(), sphere.film(p -> p.x() > 0 ? 0 : 20e-6), TargetSpec.DEFAULT)
                .unreached()
                .get(0);
        assertEquals(2 * Math.PI * radius * radius, region.areaM2(), 1e-12);
        assertEquals(radius / 2, region.centroidM().x(), 1e-5 * radius);
        assertEquals(0, region.centroidM().y(), 1e-12);
        assertTrue(region.where().contains("aft part"), region.where());
    }

    /** 45 degree caps hold (1 - cos 45)/2 each: floors and ceilings of a sphere are 14.64 % each, the rest is upright. */
    @Test
    void facingsOfASphereAreTheSharesOfTheirCaps() {
        SphereOfSurfels sphere = SphereOfSurfels.aboutZ(0.5, 720, 60);
        Coverage c =
                CoverageAssessor.assess(sphere.cavity(), sphere.grid(), sphere.film(p -> 20e-6), TargetSpec.DEFAULT);
        double cap = (1 - Math.sqrt(0.5)) / 2;
        double whole = Math.PI;
        assertEquals(
                cap * whole, named(c.byFacing(), CoverageAssessor.FACING_UP).areaM2(), 1e-9);
        assertEquals(
                cap * whole, named(c.byFacing(), CoverageAssessor.FACING_DOWN).areaM2(), 1e-9);
        assertEquals(
                (1 - 2 * cap) * whole,
                named(c.byFacing(), CoverageAssessor.UPRIGHT).areaM2(),
                1e-9);
    }

    /** Similar triangles: a disc of radius r at a from a point source shades a radius r L/a on a wall at L. */
    @Test
    void shadowOfADiscIsTheUnreachedRegionOfSimilarTriangles() {
        double sourceToDisc = 0.2;
        double sourceToWall = 0.5;
        double discRadius = 0.06;
        LatticeCavity.Built b = new LatticeCavity(4, 400, 400, new Vec3(0.01, 0.001, 0.001))
                .tank()
                .build();
        SurfelSet s = b.grid().surfels();
        double[] film = new double[s.count()];
        for (int i = 0; i < film.length; i++) {
            boolean wall = s.direction()[i] == 1;
            Vec3 ray = new Vec3(sourceToWall, s.centreY()[i] - 0.2, s.centreZ()[i] - 0.2);
            Vec3 atDisc = ray.times(sourceToDisc / sourceToWall);
            boolean shaded = wall && Math.hypot(atDisc.y(), atDisc.z()) < discRadius;
            film[i] = shaded ? 0 : 20e-6;
        }
        List<UnreachedRegion> regions = CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT)
                .unreached();
        double shadow = discRadius * sourceToWall / sourceToDisc;
        assertEquals(1, regions.size());
        assertEquals(Math.PI * shadow * shadow, regions.get(0).areaM2(), 0.005 * Math.PI * shadow * shadow);
        assertEquals(0.2, regions.get(0).centroidM().y(), 1e-9);
    }

    /** 1 mil = 25.4 um exactly (international inch, 1959), so a 1 mil film over 1 m2 is 25.4 mL; 0.4 mil is protected. */
    @Test
    void milsAreProtectedWhereTheirMicrometresAre() {
        assertEquals(Verdict.PROTECTED, CoverageAssessor.verdict(MIL_M, TargetSpec.DEFAULT));
        assertEquals(Verdict.PROTECTED, CoverageAssessor.verdict(0.4 * MIL_M, TargetSpec.DEFAULT));
        assertEquals(Verdict.EXCESS, CoverageAssessor.verdict(2 * MIL_M, TargetSpec.DEFAULT));
        LatticeCavity.Built b = box();
        double[] film = new double[b.grid().surfels().count()];
        Arrays.fill(film, MIL_M);
        Fractions total = CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT)
                .total();
        assertEquals(25.4e-6, total.meanFilmM(), 1e-18);
        assertEquals(25.4, total.meanFilmM() * 1 * 1e6, 1e-9); // mL on 1 m2
    }

    /** A film that falls linearly from b to 0 along a floor: the shares are 1 - t/b for each threshold t. */
    @Test
    void linearFilmGivesSharesThatAreLinearInTheThreshold() {
        int n = 1000;
        LatticeCavity.Built b =
                new LatticeCavity(n, 4, 4, new Vec3(0.001, 0.01, 0.01)).tank().build();
        SurfelSet s = b.grid().surfels();
        double[] film = new double[s.count()];
        Arrays.setAll(film, i -> 100e-6 * (1 - s.centreX()[i]));
        Fractions floor = named(
                CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT)
                        .byPart(),
                "floor");
        assertEquals(0.99, floor.reached(), 1e-9);
        assertEquals(0.90, floor.protectedShare(), 1e-9);
        assertEquals(0.09, floor.thin(), 1e-9);
        assertEquals(0.50, floor.excess(), 1e-9);
        assertEquals(50e-6, floor.meanFilmM(), 1e-12);
    }

    // ---- laws ---------------------------------------------------------------------------------------------------

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void partsBaysAndFacingsEachAddUpToTheWhole(long seed) {
        LatticeCavity.Built b = box();
        Coverage c = CoverageAssessor.assess(
                b.cavity(), b.grid(), randomFilm(b.grid().surfels().count(), seed), TargetSpec.DEFAULT);
        for (List<Fractions> table : List.of(c.byPart(), c.byBay(), c.byFacing())) {
            double area = table.stream().mapToDouble(Fractions::areaM2).sum();
            assertEquals(c.total().areaM2(), area, 1e-12);
            assertEquals(c.total().reached(), weighted(table, Fractions::reached) / area, 1e-12);
            assertEquals(c.total().protectedShare(), weighted(table, Fractions::protectedShare) / area, 1e-12);
            assertEquals(c.total().thin(), weighted(table, Fractions::thin) / area, 1e-12);
            assertEquals(c.total().excess(), weighted(table, Fractions::excess) / area, 1e-12);
            assertEquals(c.total().meanFilmM(), weighted(table, Fractions::meanFilmM) / area, 1e-15);
        }
        double bare =
                c.unreached().stream().mapToDouble(UnreachedRegion::areaM2).sum();
        assertEquals((1 - c.total().reached()) * c.total().areaM2(), bare, 1e-12);
    }

    @ParameterizedTest
    @ValueSource(longs = {4, 5})
    void higherThresholdsNeverRaiseAShareAndMoreFilmNeverLowersOne(long seed) {
        LatticeCavity.Built b = box();
        double[] film = randomFilm(b.grid().surfels().count(), seed);
        double[] more = Arrays.stream(film).map(f -> 1.3 * f).toArray();
        double last = 2;
        for (double haze : new double[] {0.5e-6, 1e-6, 2e-6, 5e-6, 10e-6}) {
            TargetSpec target = new TargetSpec(haze, 10e-6, 50e-6);
            Fractions less =
                    CoverageAssessor.assess(b.cavity(), b.grid(), film, target).total();
            Fractions after =
                    CoverageAssessor.assess(b.cavity(), b.grid(), more, target).total();
            assertTrue(less.reached() <= last);
            assertTrue(after.reached() >= less.reached() && after.protectedShare() >= less.protectedShare());
            assertTrue(less.excess() <= less.protectedShare() && less.protectedShare() <= less.reached());
            assertEquals(less.reached(), less.thin() + less.protectedShare(), 1e-15);
            last = less.reached();
        }
    }

    @Test
    void thresholdsThemselvesCountAsMet() {
        TargetSpec t = TargetSpec.DEFAULT;
        assertEquals(Verdict.UNREACHED, CoverageAssessor.verdict(Math.nextDown(t.hazeM()), t));
        assertEquals(Verdict.THIN, CoverageAssessor.verdict(t.hazeM(), t));
        assertEquals(Verdict.THIN, CoverageAssessor.verdict(Math.nextDown(t.buildM()), t));
        assertEquals(Verdict.PROTECTED, CoverageAssessor.verdict(t.buildM(), t));
        assertEquals(Verdict.PROTECTED, CoverageAssessor.verdict(t.excessM(), t));
        assertEquals(Verdict.EXCESS, CoverageAssessor.verdict(Math.nextUp(t.excessM()), t));
    }

    @Test
    void closuresHaveNoVerdictAndNoShare() {
        PlacedOutline place = PlacedOutline.of(new Outline.Circle(0.004), Vec3.ZERO, Vec3.X, Vec3.Y);
        LatticeCavity.Built b = new LatticeCavity(20, 15, 10, new Vec3(0.02, 0.02, 0.02))
                .tank()
                .opening(new Opening("port", 0, Opening.Kind.PORT, place, PhaseStates.ALWAYS_OPEN, true))
                .build();
        SurfelSet s = b.grid().surfels();
        int[] closure = s.closure().clone();
        closure[5] = 0;
        VoxelGrid g = SphereOfSurfels.withSurfels(
                b.grid(),
                new SurfelSet(
                        s.cell(),
                        s.direction(),
                        s.part(),
                        closure,
                        s.areaM2(),
                        s.normalX(),
                        s.normalY(),
                        s.normalZ(),
                        s.centreX(),
                        s.centreY(),
                        s.centreZ(),
                        s.neighbourStart(),
                        s.neighbour()));
        double[] film = new double[s.count()];
        Coverage c = CoverageAssessor.assess(b.cavity(), g, film, TargetSpec.DEFAULT);
        assertNull(c.verdict()[5]);
        double all = Arrays.stream(s.areaM2()).sum();
        assertEquals(all - s.areaM2()[5], c.total().areaM2(), 1e-12);
        assertTrue(c.unreached().stream()
                .flatMapToInt(r -> Arrays.stream(r.surfels()))
                .noneMatch(i -> i == 5));
    }

    @Test
    void withoutBridgesRegionsAreTheComponentsThatALabelSpreadFinds() {
        LatticeCavity.Built b = box();
        double[] film = randomFilm(b.grid().surfels().count(), 11);
        TargetSpec plain = new TargetSpec(1e-6, 10e-6, 50e-6, 5e-3, 0, 20e-3);
        Coverage c = CoverageAssessor.assess(b.cavity(), b.grid(), film, plain);
        int[] label = slowLabels(b.grid().surfels(), c.verdict());
        for (UnreachedRegion r : c.unreached()) {
            if (!r.where().startsWith("scattered")) {
                int first = label[r.surfels()[0]];
                assertTrue(Arrays.stream(r.surfels()).allMatch(s -> label[s] == first));
                assertEquals(
                        r.surfels().length,
                        Arrays.stream(label).filter(l -> l == first).count());
            }
        }
        assertArrayEquals(
                java.util.stream.IntStream.rangeClosed(1, c.unreached().size()).toArray(),
                c.unreached().stream().mapToInt(UnreachedRegion::id).toArray());
    }

    @Test
    void wrongInputIsRefused() {
        LatticeCavity.Built b = box();
        int count = b.grid().surfels().count();
        double[] negative = new double[count];
        negative[3] = -1e-9;
        double[] unknown = new double[count];
        unknown[3] = Double.NaN;
        double[] good = new double[count];
        TargetSpec upsideDown = new TargetSpec(10e-6, 1e-6, 50e-6);
        for (double[] film : List.of(negative, unknown, new double[2])) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT));
        }
        assertThrows(
                IllegalArgumentException.class, () -> CoverageAssessor.assess(b.cavity(), b.grid(), good, upsideDown));
    }

    /** Slow oracle: every bare surfel takes the lowest label next to it until nothing changes. */
    private static int[] slowLabels(SurfelSet s, Verdict[] verdict) {
        int[] label = new int[s.count()];
        Arrays.setAll(label, i -> verdict[i] == Verdict.UNREACHED ? i : -1);
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = 0; i < label.length; i++) {
                for (int e = s.neighbourStart()[i]; label[i] >= 0 && e < s.neighbourStart()[i + 1]; e++) {
                    int l = label[s.neighbour()[e]];
                    if (l >= 0 && l < label[i]) {
                        label[i] = l;
                        changed = true;
                    }
                }
            }
        }
        return label;
    }

    private static double weighted(List<Fractions> table, java.util.function.ToDoubleFunction<Fractions> share) {
        return table.stream()
                .mapToDouble(f -> f.areaM2() * share.applyAsDouble(f))
                .sum();
    }

    private static Fractions named(List<Fractions> table, String name) {
        return table.stream().filter(f -> f.name().equals(name)).findFirst().orElseThrow();
    }
}
