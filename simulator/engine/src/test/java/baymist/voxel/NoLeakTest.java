package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.VoxelSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Seeded random assemblies, 4 x 2500, of closed boxes with sheets across them and tetrahedra in them; in at least a third
 * every sheet passes exactly through cell centres, along lattice planes or diagonals. A slow oracle in whole numbers says
 * on which side of each sheet every (shifted) centre lies; no open face may join two sides, and a pinhole of half a
 * millimetre in cells of a metre is always found.
 */
class NoLeakTest {
    private static final int CASES = 2500;

    /** Units in a pitch; centres lie at odd multiples of half of it. */
    private static final int UNITS = 16;

    /** A plane a x + b y + c z = d in units, all whole numbers. */
    private record Plane(long a, long b, long c, long d) {
        /** Side of a centre (odd coordinates) that is shifted by (e, e^2, e^3). */
        boolean above(long x, long y, long z) {
            long v = a * x + b * y + c * z - d;
            if (v != 0) {
                return v > 0;
            }
            return a != 0 ? a > 0 : b != 0 ? b > 0 : c > 0;
        }
    }

    private record Assembly(Cavity cavity, int[] size, List<Plane> sheets, List<List<Plane>> solids, boolean exact) {}

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void airNeverCrossesASheet(long seed) {
        Random random = new Random(seed);
        try (Workers workers = new Workers(1)) {
            int closed = 0;
            int exact = 0;
            for (int n = 0; n < CASES; n++) {
                Assembly a = assembly(random);
                exact += a.exact ? 1 : 0;
                closed += check(a, workers, "seed " + seed + " case " + n);
            }
            assertTrue(exact > 0.3 * CASES, exact + " assemblies of sheets exactly through centres, planes, diagonals");
            // only where a second sheet stands within half a cell behind the opening
            assertTrue(closed < CASES / 4, closed + " openings into spaces too thin");
        }
    }

    private static int check(Assembly a, Workers workers, String name) {
        VoxelGrid grid = Voxelizer.voxelize(a.cavity, new VoxelSpec(1, 1, 1), workers);
        FaceSet f = grid.faces();
        assertEquals(a.size[0] * a.size[1] * a.size[2], grid.cellCount(), name + ": every cell of the box is enclosed");
        for (int e = 0; e < f.count(); e++) {
            if (f.opening()[e] < 0) {
                assertEquals(side(a, grid, f.low()[e]), side(a, grid, f.high()[e]), name);
            }
        }
        double[] area = new double[a.cavity.openings().size()];
        for (int e = 0; e < f.count(); e++) {
            if (f.opening()[e] >= 0) {
                area[f.opening()[e]] += f.areaM2()[e];
            }
        }
        for (int e = 0; e < f.vents(); e++) {
            area[f.ventOpening()[e]] += f.ventAreaM2()[e];
        }
        int closed = 0;
        for (int o = 0; o < area.length; o++) {
            double exact = a.cavity.openings().get(o).areaM2();
            if (area[o] == 0) {
                closed++;
            } else {
                assertEquals(
                        exact,
                        area[o],
                        1e-12 * exact,
                        name + ": " + a.cavity.openings().get(o));
            }
        }
        assertEquals(closed, grid.leaks().size(), name + ": " + grid.leaks());
        for (Leak leak : grid.leaks()) {
            assertTrue(leak.where().contains("too thin"), name + ": " + leak);
        }
        double whole = 0;
        for (int t = 0; t < a.cavity.cutSheets().triangleCount(); t++) {
            whole += (a.cavity.partOfCut(t) < 6 ? 1 : 2) * a.cavity.cutSheets().areaM2(t);
        }
        double found = VoxelizerLawTest.surfelArea(grid, false) + grid.unresolvedAreaM2();
        assertEquals(whole, found, 1e-9 * whole, name + ": area" + byPart(a, grid));
        return closed;
    }

    private static String byPart(Assembly a, VoxelGrid grid) {
        StringBuilder text = new StringBuilder();
        for (int p = 0; p < a.cavity.parts().size(); p++) {
            double exact = 0;
            for (int t = 0; t < a.cavity.cutSheets().triangleCount(); t++) {
                exact += a.cavity.partOfCut(t) == p ? a.cavity.cutSheets().areaM2(t) : 0;
            }
            double found = 0;
            for (int s = 0; s < grid.surfels().count(); s++) {
                SurfelSet q = grid.surfels();
                found += q.part()[s] == p && q.closure()[s] < 0 ? q.areaM2()[s] : 0;
            }
            for (UnresolvedArea u : grid.unresolved()) {
                found += u.part() == p ? u.areaM2() : 0;
            }
            text.append("; ").append(a.cavity.parts().get(p).name()).append(' ').append(found / exact);
        }
        return text + " " + a.sheets + a.solids + java.util.Arrays.toString(a.size);
    }

    /** Which side of every sheet and solid a cell's centre lies on, as bits. */
    private static long side(Assembly a, VoxelGrid grid, int cell) {
        long x = UNITS * (grid.i(cell) - 1L) + UNITS / 2;
        long y = UNITS * (grid.j(cell) - 1L) + UNITS / 2;
        long z = UNITS * (grid.k(cell) - 1L) + UNITS / 2;
        long bits = 0;
        for (Plane p : a.sheets) {
            bits = 2 * bits + (p.above(x, y, z) ? 1 : 0);
        }
        for (List<Plane> solid : a.solids) {
            boolean inside = true;
            for (Plane p : solid) {
                inside &= p.above(x, y, z);
            }
            bits = 2 * bits + (inside ? 1 : 0);
        }
        return bits;
    }

    private static Assembly assembly(Random random) {
        VoxelFixtures f = new VoxelFixtures();
        int[] size = {3 + random.nextInt(4), 3 + random.nextInt(4), 3 + random.nextInt(4)};
        boolean exact = random.nextInt(5) < 2;
        Vec3 high = new Vec3(size[0], size[1], size[2]);
        f.box("box", Vec3.ZERO, high, false, p -> p);
        List<Plane> sheets = new ArrayList<>();
        int[] full = {UNITS * size[0], UNITS * size[1], UNITS * size[2]};
        for (int s = random.nextInt(3); s >= 0; s--) {
            sheets.add(random.nextInt(3) == 0 ? diagonal(f, full, random) : cross(f, full, exact, random));
        }
        List<List<Plane>> solids = new ArrayList<>();
        if (random.nextBoolean()) {
            List<Plane> solid = tetrahedron(f, full, exact, random);
            if (!solid.isEmpty()) {
                solids.add(solid);
            }
        }
        pinhole(f, size, random);
        return new Assembly(f.cavity("random"), size, sheets, solids, exact);
    }

    /** A sheet square to an axis, from wall to wall, through centres or lattice planes, fanned about an odd point. */
    private static Plane cross(VoxelFixtures f, int[] full, boolean exact, Random random) {
        int axis = random.nextInt(3);
        int b = (axis + 1) % 3;
        int c = (axis + 2) % 3;
        int at = within(full[axis], exact, random);
        int part = f.part("sheet " + f.parts.size());
        double[][] ring = {{0, 0}, {full[b], 0}, {full[b], full[c]}, {0, full[c]}};
        double[] hub = {within(full[b], exact, random), within(full[c], exact, random)};
        for (int k = 0; k < 4; k++) {
            f.triangle(
                    part,
                    point(axis, at, hub[0], hub[1]),
                    point(axis, at, ring[k][0], ring[k][1]),
                    point(axis, at, ring[(k + 1) % 4][0], ring[(k + 1) % 4][1]));
        }
        if (random.nextBoolean()) {
            // a hole somewhere in it, small or several cells wide
            double r = random.nextBoolean() ? 0.02 : 0.4 + random.nextDouble();
            double[] p = new double[3];
            p[axis] = at / (double) UNITS;
            p[b] = full[b] / (double) UNITS * (0.3 + 0.4 * random.nextDouble());
            p[c] = full[c] / (double) UNITS * (0.3 + 0.4 * random.nextDouble());
            Vec3 n = point(axis, UNITS, 0, 0);
            f.opening(
                    "hole " + part,
                    part,
                    Opening.Kind.HOLE,
                    false,
                    PlacedOutline.of(new Outline.Circle(r), new Vec3(p[0], p[1], p[2]), n.anyPerpendicular(), n));
        }
        return axis == 0 ? new Plane(1, 0, 0, at) : axis == 1 ? new Plane(0, 1, 0, at) : new Plane(0, 0, 1, at);
    }

    /** A whole number of units inside the box; an exact one lies on a lattice plane or a centre. */
    private static int within(int full, boolean exact, Random random) {
        int step = exact ? UNITS / 2 : 1;
        return step * (1 + random.nextInt(full / step - 1));
    }

    /** Point from units: along the axis, then the two axes after it. */
    private static Vec3 point(int axis, double a, double b, double c) {
        double[] p = new double[3];
        p[axis] = a / UNITS;
        p[(axis + 1) % 3] = b / UNITS;
        p[(axis + 2) % 3] = c / UNITS;
        return new Vec3(p[0], p[1], p[2]);
    }

    /** A sheet from one edge of the box to the opposite one: through centres wherever the sizes agree. */
    private static Plane diagonal(VoxelFixtures f, int[] full, Random random) {
        int axis = random.nextInt(3);
        int b = (axis + 1) % 3;
        int c = (axis + 2) % 3;
        int part = f.part("diagonal " + f.parts.size());
        f.quad(
                part,
                point(axis, 0, 0, 0),
                point(axis, full[axis], 0, 0),
                point(axis, full[axis], full[b], full[c]),
                point(axis, 0, full[b], full[c]));
        long[] n = new long[3];
        n[b] = full[c];
        n[c] = -full[b];
        return new Plane(n[0], n[1], n[2], 0);
    }

    private static List<Plane> tetrahedron(VoxelFixtures f, int[] full, boolean exact, Random random) {
        long[][] p = new long[4][3];
        for (long[] q : p) {
            for (int a = 0; a < 3; a++) {
                q[a] = within(full[a], exact, random);
            }
        }
        if (plane(p[0], p[1], p[2]).above(p[3][0], p[3][1], p[3][2])) {
            long[] swap = p[1];
            p[1] = p[2];
            p[2] = swap;
        }
        int[][] faces = {{0, 1, 2}, {0, 3, 1}, {1, 3, 2}, {2, 3, 0}};
        List<Plane> solid = new ArrayList<>();
        Plane base = plane(p[0], p[1], p[2]);
        if (base.a * p[3][0] + base.b * p[3][1] + base.c * p[3][2] == base.d) {
            return solid;
        }
        int part = f.part("solid");
        for (int[] t : faces) {
            Plane outward = plane(p[t[0]], p[t[1]], p[t[2]]);
            solid.add(new Plane(-outward.a, -outward.b, -outward.c, -outward.d));
            f.triangle(part, metres(p[t[0]]), metres(p[t[1]]), metres(p[t[2]]));
        }
        return solid;
    }

    private static Vec3 metres(long[] p) {
        return new Vec3(p[0] / (double) UNITS, p[1] / (double) UNITS, p[2] / (double) UNITS);
    }

    private static Plane plane(long[] p, long[] q, long[] r) {
        long ux = q[0] - p[0];
        long uy = q[1] - p[1];
        long uz = q[2] - p[2];
        long vx = r[0] - p[0];
        long vy = r[1] - p[1];
        long vz = r[2] - p[2];
        long a = uy * vz - uz * vy;
        long b = uz * vx - ux * vz;
        long c = ux * vy - uy * vx;
        return new Plane(a, b, c, a * p[0] + b * p[1] + c * p[2]);
    }

    /** A drilled hole of 0.5 mm in a wall of cells of 1 m, anywhere, corners of cells included. */
    private static void pinhole(VoxelFixtures f, int[] size, Random random) {
        int d = random.nextInt(6);
        double[] p = new double[3];
        for (int a = 0; a < 3; a++) {
            p[a] = random.nextBoolean() ? 1 + random.nextInt(size[a] - 1) : size[a] * random.nextDouble();
        }
        p[d >> 1] = (d & 1) == 1 ? size[d >> 1] : 0;
        Vec3 n = d >> 1 == 0 ? Vec3.X : d >> 1 == 1 ? Vec3.Y : Vec3.Z;
        PlacedOutline place = PlacedOutline.of(
                new Outline.Circle(0.00025),
                new Vec3(p[0], p[1], p[2]),
                n.anyPerpendicular(),
                (d & 1) == 1 ? n.negate() : n);
        f.opening("pinhole", d, Opening.Kind.PORT, true, place);
    }
}
