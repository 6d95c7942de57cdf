package baymist.cavity;

import baymist.geom.Outline;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Flange;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.CavitySpec.SparHole;
import baymist.scene.PhaseStates;
import baymist.scene.VoxelSpec;
import baymist.scene.WingBoxDetail;
import baymist.scene.WingBoxDetail.FalseSpar;
import baymist.scene.WingBoxDetail.Notch;
import baymist.scene.WingBoxDetail.Station;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Any valid wing box is closed, has the stated openings and all of its sheet; 2 x 100 seeded draws. */
class WingBoxLawTest {
    private static final int DRAWS = 100;

    /** A drawn box with what it must turn out to have. */
    private record Draw(CavitySpec.WingBox spec, Set<String> openings, Set<String> outer, VoxelSpec voxel) {}

    @ParameterizedTest
    @ValueSource(longs = {3101, 3102})
    void anyWingBoxIsClosedWithItsOpenings(long seed) {
        Random random = new Random(seed);
        for (int n = 0; n < DRAWS; n++) {
            Draw draw = draw(random);
            String name = "seed " + seed + " draw " + n;
            Cavity cavity = CavityFixtures.build(draw.spec);
            double area = FamilyLaw.area(cavity, part -> draw.outer.contains(part) ? 1 : 2);
            double volume = FamilyLaw.hullVolume(cavity, draw.outer::contains, "rib 4"::equals);
            FamilyLaw.holds(name, cavity, draw.voxel, new FamilyLaw.Expected(draw.openings, area, 1e-8, volume, 1e-6));
        }
    }

    private static double between(Random r, double low, double high) {
        return low + (high - low) * r.nextDouble();
    }

    private static Draw draw(Random r) {
        double span = between(r, 0.6, 3);
        double root = between(r, 0.5, 2);
        double tip = root * between(r, 0.5, 1.2);
        double front = between(r, 0.1, 0.25);
        double rear = between(r, 0.55, 0.75);
        boolean measured = r.nextBoolean();
        double depth = 0.1 * Math.min(root, tip);
        double gauge = between(r, 5e-4, 2e-3);
        double height = between(r, 0.1, 0.2) * depth;
        double clearance = between(r, 0.04, 0.1) * depth;
        int upper = r.nextInt(3);
        int lower = r.nextInt(3);
        TreeSet<Double> members = new TreeSet<>();
        for (int n : new int[] {upper, lower}) {
            for (int i = 1; i <= n; i++) {
                members.add(front + (double) i / (n + 1) * (rear - front));
            }
        }
        boolean notched = r.nextBoolean();
        boolean openTip = r.nextInt(3) == 0;
        boolean openRoot = r.nextInt(6) == 0;
        double[] y = {0, between(r, 0.2, 0.45) * span, between(r, 0.55, 0.8) * span, span};
        Set<String> openings = new HashSet<>();
        List<FalseSpar> spars = new ArrayList<>();
        if (r.nextBoolean()) {
            falseSpar(r, front, rear, depth, y, members, openings, spars);
        }
        List<Double> edges = new ArrayList<>(members);
        edges.add(0, front);
        edges.add(rear);
        List<Rib> ribs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            List<RibHole> holes = new ArrayList<>();
            String name = i == 2 ? "tank rib" : null;
            boolean closed = i == 3 || (i == 0 && openRoot);
            for (int k = 0; k + 1 < edges.size() && !closed; k++) {
                double chord = root + (tip - root) * y[i] / span;
                double wide = (edges.get(k + 1) - edges.get(k)) * chord - 2 * (height + clearance + gauge);
                double size = Math.min(wide, depth - 2 * (height + clearance)) * between(r, 0.4, 0.6);
                if (wide > 0.2 * depth && r.nextInt(3) > 0) {
                    double aft = ((edges.get(k) + edges.get(k + 1)) / 2 - front) * chord;
                    Flange flange = i == 0 || r.nextBoolean() ? null : flange(r, size);
                    holes.add(new RibHole(null, outline(r, size), aft, 0, PhaseStates.ALWAYS_OPEN, flange));
                    openings.add((name == null ? "rib " + (i + 1) : name) + " hole " + holes.size());
                }
            }
            ribs.add(new Rib(y[i], 0, holes, name));
            for (int s = 1; s <= upper && notched && i % 3 != 0; s++) {
                openings.add((name == null ? "rib " + (i + 1) : name) + " upper notch " + s);
            }
            for (int s = 1; s <= lower && notched && i % 3 != 0; s++) {
                openings.add((name == null ? "rib " + (i + 1) : name) + " lower notch " + s);
            }
        }
        if (openTip) {
            openings.add("open tip");
        }
        if (openRoot) {
            openings.add("open root");
        }
        WingBoxDetail detail = new WingBoxDetail(
                measured ? stations(r, root, front, rear) : List.of(),
                measured && r.nextBoolean() ? stations(r, tip, front, rear) : List.of(),
                r.nextBoolean(),
                spars,
                notched ? new Notch(clearance, PhaseStates.ALWAYS_OPEN) : null,
                openRoot,
                openTip);
        CavitySpec.WingBox spec = new CavitySpec.WingBox(
                "draw",
                measured ? "" : String.format(Locale.ROOT, "%d4%02d", 1 + r.nextInt(3), 14 + r.nextInt(4)),
                span,
                root,
                tip,
                between(r, -0.2, 0.6) * span,
                between(r, -0.1, 0.1) * span,
                front,
                rear,
                gauge,
                upper,
                lower,
                height,
                ribs,
                List.of(),
                CavityFixtures.PLACE,
                detail);
        VoxelSpec voxel = new VoxelSpec((rear - front) * root / 14, span / 17, depth / 6);
        Set<String> outer = Set.of("upper skin", "lower skin", "front spar", "rear spar", "rib 1", "rib 4");
        return new Draw(spec, openings, outer, voxel);
    }

    private static void falseSpar(
            Random r,
            double front,
            double rear,
            double depth,
            double[] y,
            Set<Double> members,
            Set<String> openings,
            List<FalseSpar> spars) {
        double at = front + between(r, 0.35, 0.65) * (rear - front);
        if (members.stream().anyMatch(m -> Math.abs(m - at) < 0.04)) {
            return;
        }
        members.add(at);
        int from = 1 + r.nextInt(2);
        int to = from + 1 + r.nextInt(4 - from);
        double size = between(r, 0.2, 0.5) * depth;
        double along = (y[from - 1] + y[from]) / 2;
        spars.add(new FalseSpar(
                null,
                at,
                from,
                to,
                List.of(new SparHole(
                        null,
                        outline(r, size),
                        along,
                        0,
                        PhaseStates.ALWAYS_OPEN,
                        r.nextBoolean() ? null : flange(r, size)))));
        openings.add("false spar 1 hole 1");
    }

    private static Flange flange(Random r, double size) {
        double angle = r.nextBoolean() ? Math.PI / 2 : Math.PI / 4;
        return new Flange(between(r, 0.05, 0.12) * size, angle, r.nextBoolean());
    }

    private static Outline outline(Random r, double size) {
        return switch (r.nextInt(4)) {
            case 0 -> new Outline.Circle(size / 2);
            case 1 -> new Outline.Slot(size, size * between(r, 0.4, 0.9));
            case 2 -> new Outline.RoundedRectangle(size, size * between(r, 0.4, 0.9), size * between(r, 0, 0.2));
            default ->
                new Outline.Polygon(List.of(
                        new double[] {-size / 2, -size / 2},
                        new double[] {size / 2, -size / 3},
                        new double[] {size / 6, 0},
                        new double[] {size / 2, size / 2},
                        new double[] {-size / 2, size / 3}));
        };
    }

    /** Heights of an arched section, 14 % deep at its middle, with some play. */
    private static List<Station> stations(Random r, double chord, double front, double rear) {
        List<Station> out = new ArrayList<>();
        int n = 2 + r.nextInt(5);
        for (int i = 0; i <= n; i++) {
            double s = (double) i / n;
            double arch = chord * (0.06 + 0.03 * 4 * s * (1 - s));
            double play = 0.003 * chord;
            out.add(new Station(
                    chord * (front + s * (rear - front)),
                    arch + between(r, -play, play),
                    -0.8 * arch + between(r, -play, play)));
        }
        return out;
    }
}
