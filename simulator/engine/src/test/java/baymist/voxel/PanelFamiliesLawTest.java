package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityFixtures;
import baymist.cavity.Placement;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.CrossFrame;
import baymist.scene.DoorBeam;
import baymist.scene.FlatPlate;
import baymist.scene.PanelHole;
import baymist.scene.PhaseStates;
import baymist.scene.Stiffeners;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Any valid dimensions of doors, stiffened voids and plates give a closed cavity with exactly the stated openings. */
class PanelFamiliesLawTest {
    private static final int DRAWS = 200;
    private static final Set<String> WALLS =
            Set.of("forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling");

    private static PanelHole hole(Outline outline, double along, double across) {
        return new PanelHole("", outline, along, across, 0, PhaseStates.ALWAYS_OPEN, CavityFixtures.PLACE);
    }

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** A random void; bars keep to the outer quarters of the section, holes to its middle. */
    static CavitySpec.StiffenedVoid randomVoid(Random r) {
        double l = between(r, 1, 4);
        double w = between(r, 0.8, 2.5);
        double h = between(r, 0.6, 1.5);
        List<Stiffeners> bars = new ArrayList<>();
        for (String wall : List.of("floor", "ceiling", "left wall", "right wall")) {
            if (r.nextInt(4) > 0) {
                double width = wall.endsWith("wall") ? h : w;
                double room = wall.endsWith("wall") ? w : h;
                double spacing = between(r, 0.2, 0.45) * width;
                Stiffeners.Side side = Stiffeners.Side.values()[r.nextInt(3)];
                double flange = r.nextBoolean() ? between(r, 0.05, 0.25) * spacing : 0;
                double first = between(r, 0.3, 0.5) * width;
                int number = 1 + (int) ((width - 0.001 - first) / spacing);
                double last = first + (number - 1) * spacing;
                double step = last + flange > width - 0.002 ? spacing + flange + 0.002 : spacing;
                bars.add(new Stiffeners(
                        wall, first, step, between(r, 0.05, 0.2) * room, flange, side, 0.006, CavityFixtures.PLACE));
            }
        }
        List<CrossFrame> frames = new ArrayList<>();
        int n = r.nextInt(3);
        for (int i = 1; i <= n; i++) {
            double half = 0.25 * Math.min(w, h);
            Outline manhole = r.nextBoolean()
                    ? new Outline.Slot(1.6 * half, half)
                    : new Outline.RoundedRectangle(1.2 * half, half, 0.3 * half);
            frames.add(new CrossFrame(
                    l * (i + between(r, -0.2, 0.2)) / (n + 1),
                    List.of(hole(manhole, 0.5 * w, 0.5 * h)),
                    r.nextBoolean() ? between(r, 0.02, 0.04) : 0,
                    r.nextBoolean() ? between(r, 0.02, 0.04) : 0,
                    0,
                    0.006,
                    CavityFixtures.PLACE));
        }
        List<Stiffeners> beams = new ArrayList<>();
        if (r.nextBoolean()) {
            // half-way between frames, whose places vary by a fifth of their distance
            beams.add(new Stiffeners(
                    "ceiling",
                    0.5 * l / (n + 1),
                    l / (n + 1),
                    0.1 * h,
                    0.02,
                    Stiffeners.Side.BOTH,
                    0.006,
                    CavityFixtures.PLACE));
        }
        return new CavitySpec.StiffenedVoid(
                "void",
                new Vec3(l, w, h),
                0.006,
                bars,
                frames,
                beams,
                List.of(hole(new Outline.Circle(0.1), 0.15 * l, 0.5 * w)),
                List.of(),
                CavityFixtures.PLACE);
    }

    @Test
    void anyVoidIsClosedWithItsOpenings() {
        Random r = new Random(80_501);
        for (int draw = 0; draw < DRAWS; draw++) {
            CavitySpec.StiffenedVoid spec = randomVoid(r);
            String what = "void " + draw;
            Cavity cavity = CavityFixtures.build(spec);
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 16);
            ClosedBodyCheck.openingsAreExact(cavity, grid, what);
            ClosedBodyCheck.areaIsTheSumOfParts(cavity, grid, WALLS::contains, what);
            Vec3 s = spec.sizeM();
            assertEquals(1, grid.totalVolumeM3() / (s.x() * s.y() * s.z()), 1e-6, what);
            int bays = spec.frames().size() + 1;
            assertTrue(grid.bays().size() >= bays, what + ": " + grid.bays());
        }
    }

    static CavitySpec.Door randomDoor(Random r) {
        double l = between(r, 0.6, 1.4);
        double h = between(r, 0.4, 0.8);
        double depth = between(r, 0.08, 0.18);
        boolean stepped = r.nextBoolean();
        double upper = stepped ? between(r, 0.5, 0.8) * depth : depth;
        double step = stepped ? between(r, 0.5, 0.7) * h : 0;
        List<DoorBeam> beams = new ArrayList<>();
        if (r.nextInt(4) > 0) {
            beams.add(new DoorBeam(
                    DoorBeam.Kind.values()[r.nextInt(3)],
                    between(r, 0.2, 0.8) * h,
                    between(r, 0.1, 0.15) * h,
                    0.3 * upper,
                    0.25 * upper,
                    0.0015,
                    CavityFixtures.PLACE));
        }
        return new CavitySpec.Door(
                "door",
                l,
                h,
                depth,
                upper,
                step,
                r.nextBoolean() ? between(r, 0.002, 0.03) : 0,
                0.0008,
                beams,
                List.of(hole(new Outline.RoundedRectangle(0.8 * l, 0.2 * upper, 0), 0.5 * l, 0.5 * upper)),
                List.of(
                        hole(new Outline.Slot(0.02, 0.006), 0.2 * l, 0.5 * depth),
                        hole(new Outline.Slot(0.02, 0.006), 0.8 * l, 0.5 * depth)),
                List.of(
                        hole(new Outline.RoundedRectangle(0.4 * l, 0.3 * h, 0.02), 0.6 * l, 0.25 * h),
                        hole(new Outline.Circle(0.02), 0.9 * l, 0.85 * h)),
                List.of(),
                CavityFixtures.PLACE);
    }

    /** Area of the section by the shoelace formula over the arc's polygon, which is inscribed in it. */
    static double sectionM2(CavitySpec.Door d) {
        double lower = d.upperDepthM() == d.depthM() ? 0 : d.stepM();
        return d.depthM() * lower + d.upperDepthM() * (d.heightM() - lower);
    }

    @Test
    void anyDoorIsClosedWithItsOpenings() {
        Random r = new Random(80_502);
        for (int draw = 0; draw < DRAWS; draw++) {
            String what = "door " + draw;
            CavitySpec.Door spec = randomDoor(r);
            Cavity cavity = CavityFixtures.build(spec);
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 16);
            ClosedBodyCheck.openingsAreExact(cavity, grid, what);
            ClosedBodyCheck.areaIsTheSumOfParts(cavity, grid, p -> !p.contains("beam"), what);
            double flat = spec.lengthM() * sectionM2(spec);
            // segment of a circle: R^2/2 (a - sin a)
            double c = spec.crownM();
            double radius = c == 0 ? 0 : (spec.heightM() * spec.heightM() / 4 + c * c) / (2 * c);
            double angle = c == 0 ? 0 : 2 * Math.asin(0.5 * spec.heightM() / radius);
            double bulge = spec.lengthM() * radius * radius / 2 * (angle - Math.sin(angle));
            assertEquals(1, grid.totalVolumeM3() / (flat + bulge), c == 0 ? 1e-6 : 2e-3, what);
        }
    }

    /** A random wedge of plates: any triangle drawn along y, turned at random, with a web across and a hole in each of two plates. */
    static CavitySpec.Plates randomPrism(Random r) {
        Vec3 a = new Vec3(between(r, -0.3, 0), 0, between(r, -0.2, 0));
        Vec3 b = new Vec3(between(r, 0.3, 0.6), 0, between(r, -0.2, 0.1));
        Vec3 c = new Vec3(between(r, 0, 0.2), 0, between(r, 0.3, 0.5));
        Placement turn = Placement.of(
                new Vec3(between(r, -180, 180), between(r, -180, 180), between(r, -180, 180)),
                new Vec3(r.nextDouble(), r.nextDouble(), r.nextDouble()));
        double l = between(r, 0.3, 0.8);
        double web = between(r, 0.3, 0.7) * l;
        List<FlatPlate> plates = new ArrayList<>();
        Vec3[] ring = {a, b, c};
        for (int k = 0; k < 3; k++) {
            Vec3 p = ring[k];
            Vec3 q = ring[(k + 1) % 3];
            add(plates, "side " + (k + 1), turn, p, q, q.plus(l, Vec3.Y), p.plus(l, Vec3.Y));
        }
        add(plates, "left end", turn, a, b, c);
        add(plates, "right end", turn, a.plus(l, Vec3.Y), b.plus(l, Vec3.Y), c.plus(l, Vec3.Y));
        add(plates, "web", turn, a.plus(web, Vec3.Y), b.plus(web, Vec3.Y), c.plus(web, Vec3.Y));
        Vec3 middle = a.plus(b).plus(c).times(1.0 / 3).plus(web, Vec3.Y);
        Vec3 onSide = a.plus(b).times(0.5).plus(0.25 * l, Vec3.Y);
        return new CavitySpec.Plates(
                "prism",
                plates,
                1e-4,
                false,
                null,
                List.of(
                        CavityFixtures.round("web hole", "web", 0.05, turn.point(middle)),
                        CavityFixtures.round("side hole", "side 1", 0.02, turn.point(onSide))),
                CavityFixtures.PLACE);
    }

    private static void add(List<FlatPlate> plates, String name, Placement turn, Vec3... corners) {
        List<Vec3> moved = new ArrayList<>();
        for (Vec3 p : corners) {
            moved.add(turn.point(p));
        }
        plates.add(new FlatPlate(name, moved, 0.001, CavityFixtures.PLACE));
    }

    @Test
    void anyPrismOfPlatesIsClosedWithItsOpenings() {
        Random r = new Random(80_503);
        for (int draw = 0; draw < DRAWS; draw++) {
            String what = "prism " + draw;
            CavitySpec.Plates spec = randomPrism(r);
            Cavity cavity = CavityFixtures.build(spec);
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 20);
            ClosedBodyCheck.openingsAreExact(cavity, grid, what);
            ClosedBodyCheck.areaIsTheSumOfParts(cavity, grid, p -> !p.equals("web"), what);
            // prism: area of the end times length (Euclid, Elements XII.7 and XI.39)
            List<Vec3> end = spec.plates().get(3).corners();
            double area = 0.5
                    * end.get(1)
                            .minus(end.get(0))
                            .cross(end.get(2).minus(end.get(0)))
                            .length();
            double length = end.get(0).distance(spec.plates().get(4).corners().get(0));
            assertEquals(1, grid.totalVolumeM3() / (area * length), 1e-6, what);
            // a sharp edge may leave a pocket of its own beside the two bays
            double two = grid.bays().stream()
                    .mapToDouble(Bay::volumeM3)
                    .map(v -> -v)
                    .sorted()
                    .limit(2)
                    .sum();
            assertTrue(grid.bays().size() >= 2 && -two > 0.97 * area * length, what + ": " + grid.bays());
        }
    }
}
