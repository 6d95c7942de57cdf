package baymist.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.SceneFixtures;
import baymist.scene.ShellSpec;
import baymist.scene.Turns;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lengths of seams against perimeters in closed form. */
class SeamFinderTest {
    private static double line(List<SeamSegment> seams) {
        return seams.stream().mapToDouble(SeamSegment::lengthM).sum();
    }

    private static double sides(List<SeamSegment> seams) {
        return seams.stream().mapToDouble(s -> s.lengthM() * s.wedges().size()).sum();
    }

    private static double of(List<SeamSegment> seams, SeamKind kind) {
        return line(seams.stream().filter(s -> s.kind() == kind).toList());
    }

    @ParameterizedTest
    @CsvSource({"0,0,0", "30,0,0", "17,-41,63", "90,45,-120"})
    void aBoxHasTwelveEdgesInAnyAttitude(double roll, double pitch, double yaw) {
        Vec3 size = new Vec3(0.4, 0.3, 0.2);
        CavitySpec.Block block = new CavitySpec.Block(
                "box", size, new Vec3(roll, pitch, yaw), new Vec3(1, -2, 0.5), 0.001, List.of(), SceneFixtures.HERE);
        List<SeamSegment> seams = SeamFinder.find(CavityBuilder.build(block, List.of(), Map.of(), List.of()));
        // four edges each of a, b and c
        assertEquals(4 * (0.4 + 0.3 + 0.2), line(seams), 1e-9);
        assertEquals(line(seams), sides(seams), 1e-9);
        assertEquals(line(seams), of(seams, SeamKind.CORNER), 1e-9);
        seams.forEach(s -> assertEquals(Math.PI / 2, s.wedges().get(0).openRad(), 1e-9));
    }

    @ParameterizedTest
    @CsvSource({"1,0", "3,0", "3,25"})
    void ribsInABoxHaveTheirPerimeterOnEitherSide(int ribs, double turn) {
        double a = 0.9;
        double b = 0.3;
        double c = 0.2;
        QuadSheets sheets = new QuadSheets()
                .moved(p -> Turns.turned(p, new Vec3(turn, -turn, 0.5 * turn)))
                .box(a, b, c);
        for (int r = 1; r <= ribs; r++) {
            sheets.plate("rib " + r, 0, a * r / (ribs + 1.0), 0, b, 0, c);
        }
        List<SeamSegment> seams = SeamFinder.find(sheets.build());
        double edges = 4 * (a + b + c);
        double perimeters = ribs * 2 * (b + c);
        assertEquals(edges, of(seams, SeamKind.CORNER), 1e-9);
        assertEquals(perimeters, of(seams, SeamKind.TEE), 1e-9);
        assertEquals(edges + 2 * perimeters, sides(seams), 1e-9);
    }

    @Test
    void aWebWithAHoleInTheWayHasNoSeamThere() {
        // a rib of two plates with a gap of 0.1 between them, and not as high as the box
        QuadSheets sheets = new QuadSheets().box(0.9, 0.3, 0.2);
        sheets.plate("rib", 0, 0.4, 0, 0.1, 0, 0.15).plate("rib", 0, 0.4, 0.2, 0.3, 0, 0.15);
        List<SeamSegment> tees = SeamFinder.find(sheets.build()).stream()
                .filter(s -> s.kind() == SeamKind.TEE)
                .toList();
        assertEquals(0.1 + 0.1 + 2 * 0.15, line(tees), 1e-9);
        assertEquals(2 * line(tees), sides(tees), 1e-9);
    }

    @Test
    void platesThatPassThroughEachOtherHaveFourSides() {
        QuadSheets sheets = new QuadSheets().box(0.9, 0.3, 0.2);
        sheets.plate("web", 0, 0.41, 0, 0.3, 0, 0.2).plate("shelf", 2, 0.07, 0.2, 0.6, 0.05, 0.25);
        List<SeamSegment> crossing = SeamFinder.find(sheets.build()).stream()
                .filter(s -> s.wedges().size() == 4)
                .toList();
        assertEquals(0.2, line(crossing), 1e-9);
        assertTrue(crossing.stream().allMatch(s -> s.kind() == SeamKind.TEE));
    }

    @ParameterizedTest
    @CsvSource({"0", "0.0005", "0.0009"})
    void aDoublerHasALapAlongItsWholeRim(double offM) {
        QuadSheets sheets = new QuadSheets().box(0.9, 0.3, 0.2).plate("doubler", 2, offM, 0.2, 0.5, 0.05, 0.2);
        List<SeamSegment> laps = SeamFinder.find(sheets.build()).stream()
                .filter(s -> s.kind() == SeamKind.LAP)
                .toList();
        assertEquals(2 * (0.3 + 0.15), line(laps), 1e-9);
        assertEquals(line(laps), sides(laps), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0.5,0.5,0", "0.4,0.6,0", "0.3,0.2,96"})
    void framesOfATubeHaveItsPerimeter(double a, double b, int segments) {
        double length = 1.2;
        List<ShellSpec.Station> ends = List.of(oval(0, a, b), oval(length, a, b));
        ShellSpec.Frame closed = new ShellSpec.Frame(null, 0, 0, List.of(), SceneFixtures.HERE);
        List<ShellSpec.Frame> frames = List.of(
                new ShellSpec.Frame(null, 0.4, 0.05, List.of(), SceneFixtures.HERE),
                new ShellSpec.Frame(null, 0.8, 0, List.of(), SceneFixtures.HERE));
        ShellSpec shape = new ShellSpec(ends, segments, 0, 0.02, frames, closed, closed, List.of());
        Cavity cavity = CavityBuilder.build(
                new CavitySpec.Shell("tube", shape, 0.001, List.of(), SceneFixtures.HERE),
                List.of(),
                Map.of(),
                List.of());
        List<SeamSegment> seams = SeamFinder.find(cavity);
        // second approximation of Ramanujan (1914), Quart. J. Math. 45, relative error about 3 h^5 / 2^17 (from memory)
        double h = Math.pow((a - b) / (a + b), 2);
        double perimeter = Math.PI * (a + b) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h)));
        // inscribed chords fall short of the arc: below 0.5 % by the family's own rule
        assertEquals(2 * perimeter, of(seams, SeamKind.CORNER), 5e-3 * 2 * perimeter);
        assertEquals(2 * perimeter, of(seams, SeamKind.TEE), 5e-3 * 2 * perimeter);
        assertTrue(line(seams) < 4 * perimeter);
        // either side of the two frames, the inner side of the ends
        assertEquals(1.5 * line(seams), sides(seams), 1e-9);
    }

    private static ShellSpec.Oval oval(double x, double a, double b) {
        return new ShellSpec.Oval(x, a, b, b, 0, 2, SceneFixtures.HERE);
    }

    @Test
    void meshesThatDoNotShareCornersDescribeOneSeam() {
        // the same rib, cut into strips of random widths that meet none of the skin's corners
        RandomGenerator random = RandomGenerator.of("L64X128MixRandom");
        QuadSheets sheets = new QuadSheets().box(0.9, 0.3, 0.2);
        double y = 0;
        while (y < 0.3) {
            double next = Math.min(0.3, y + 0.01 + 0.05 * random.nextDouble());
            sheets.plate("rib", 0, 0.37, y, next, 0, 0.2);
            y = next;
        }
        List<SeamSegment> tees = SeamFinder.find(sheets.build()).stream()
                .filter(s -> s.kind() == SeamKind.TEE)
                .toList();
        assertEquals(2 * (0.3 + 0.2), line(tees), 1e-9);
    }
}
