package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.PhaseStates;
import java.util.List;
import org.junit.jupiter.api.Test;

class SheetRaysTest {
    private static final double[] OPEN = {1, 1};
    private final GridFixture box = new GridFixture();
    private final SheetRays rays = new SheetRays(box.cavity, new BruteTracer(box.cavity.sheets()));

    @Test
    void aRayThroughAHoleHitsTheFarWall() {
        SheetRays.Followed f = rays.follow(new Vec3(0.21, 0.1, 0.09), Vec3.Y, 5, OPEN);
        assertEquals(SheetRays.End.SHEET, f.end());
        assertEquals(3, f.part());
        assertEquals(0.5, f.distanceM(), 1e-12);
        assertArrayEquals(new double[] {0.205}, f.passedM(), 1e-12);
        assertTrue(f.towardsAir().distance(Vec3.Y.negate()) < 1e-12);
    }

    @Test
    void aRayJustOutsideTheOutlineHitsTheRib() {
        double r = GridFixture.HOLE_R;
        Vec3 in = new Vec3(0.2 + r - 1e-9, 0.1, 0.08);
        Vec3 out = new Vec3(0.2 + r + 1e-9, 0.1, 0.08);
        assertEquals(3, rays.follow(in, Vec3.Y, 5, OPEN).part());
        assertEquals(6, rays.follow(out, Vec3.Y, 5, OPEN).part());
        SheetRays.Followed closed = rays.follow(in, Vec3.Y, 5, new double[] {1, 0});
        assertEquals(SheetRays.End.CLOSURE, closed.end());
        assertEquals(1, closed.opening());
    }

    @Test
    void whatMeetsNothingOrAGapIsOutside() {
        // One plate (part 0) at x = 1 and the cap of a gap (part -1) at x = 2 behind its edge.
        TriangleMesh mesh = new TriangleMesh(
                new double[] {1, -1, -1, 1, 3, -1, 1, -1, 3, 2, 1, -1, 2, 9, -1, 2, 1, 9},
                new int[] {0, 1, 2, 3, 4, 5});
        Opening gap = new Opening(
                "gap 1",
                0,
                Opening.Kind.GAP,
                PlacedOutline.of(new Outline.Circle(1), new Vec3(2, 3, 3), Vec3.Y, Vec3.X.negate()),
                PhaseStates.ALWAYS_OPEN,
                true);
        TriangleMesh none = new TriangleMesh(new double[0], new int[0]);
        Cavity cavity = new Cavity(
                "c",
                List.of(new Part("plate", PartKind.WALL, 1e-3)),
                List.of(gap),
                mesh,
                new int[] {0, -1},
                none,
                new int[0],
                none,
                new int[0],
                null,
                List.of());
        SheetRays r = new SheetRays(cavity, new BruteTracer(mesh));
        double[] open = {1};
        assertEquals(
                SheetRays.End.NOTHING,
                r.follow(Vec3.ZERO, Vec3.X.negate(), 5, open).end());
        assertEquals(SheetRays.End.SHEET, r.follow(Vec3.ZERO, Vec3.X, 5, open).end());
        SheetRays.Followed through = r.follow(new Vec3(0, 3, 2), Vec3.X, 5, open);
        assertEquals(SheetRays.End.OUTSIDE, through.end());
        assertEquals(0, through.opening());
        assertEquals(
                SheetRays.End.CLOSURE,
                r.follow(new Vec3(0, 3, 2), Vec3.X, 5, new double[] {0}).end());
        assertEquals(5, r.clearM(new Vec3(0, 3, 2), Vec3.X, 5, open));
    }

    @Test
    void cellsOfALineMatchSteppedPointsWhereNoSheetIsNear() {
        CellWalk walk = new CellWalk(box.grid);
        Vec3 from = new Vec3(0.013, 0.021, 0.037);
        Vec3 way = new Vec3(0.6, 0.35, 0.2).unit();
        double length = 0.4;
        walk.clear(0);
        walk.add(from, way, 0, length, box.grid.cellHolding(from));
        double sum = 0;
        for (int p = 0; p < walk.count(); p++) {
            Vec3 mid = from.plus(0.5 * (walk.startM(p) + walk.endM(p)), way);
            assertEquals(box.grid.cellHolding(mid), walk.cell(p));
            sum += walk.endM(p) - walk.startM(p);
        }
        assertEquals(length, sum, 1e-12);
        assertEquals(walk.count() - 1, walk.pieceAt(9));
        assertEquals(0, walk.pieceAt(1e-6));
    }

    @Test
    void aLineThatOverrunsAnOffLatticeRibStaysOnItsSide() {
        // Rib at y = 0.305: the line runs along y = 0.303, in lattice cells that belong to the far bay, and leans back
        // at last.
        CellWalk walk = new CellWalk(box.grid);
        Vec3 from = new Vec3(0.05, 0.303, 0.03);
        Vec3 way = new Vec3(1, -0.05, 0).unit();
        walk.clear(0);
        walk.add(from, way, 0, 0.3, box.cellNear(from, Vec3.Y));
        for (int p = 0; p < walk.count(); p++) {
            assertEquals(0, box.grid.bayOfCell(walk.cell(p)));
        }
        assertEquals(box.grid.cellHolding(from.plus(0.3 - 1e-9, way)), walk.lastCell());
    }

    @Test
    void sparseSumsAscendWhateverTheOrder() {
        SparseSum sum = new SparseSum(2);
        for (long k = 5000; k > 0; k -= 7) {
            int at = sum.slot(k);
            sum.add(at, k);
            sum.add(sum.slot(k) + 1, 1);
        }
        long[] keys = sum.keys();
        assertEquals(sum.count(), keys.length);
        double[] first = sum.column(0);
        double[] all = sum.all();
        for (int i = 0; i < keys.length; i++) {
            assertTrue(i == 0 || keys[i] > keys[i - 1]);
            assertEquals(keys[i], first[i]);
            assertEquals(1, all[2 * i + 1]);
        }
    }
}
