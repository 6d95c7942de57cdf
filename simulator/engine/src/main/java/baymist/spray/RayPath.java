package baymist.spray;

import baymist.geom.Vec3;

/** Cavity cells along a ray, resumed on the far side of each opening that it passes. Holds scratch space; used by one thread. */
final class RayPath {
    private final SprayContext context;
    private final int tipCell;
    private final double[] openFraction;
    private final CellWalk path;
    private final CellWalk aside;

    RayPath(SprayContext context, int tipCell, double[] openFraction) {
        this.context = context;
        this.tipCell = tipCell;
        this.openFraction = openFraction;
        this.path = new CellWalk(context.grid());
        this.aside = new CellWalk(context.grid());
    }

    /** Follows a ray through the sheets. */
    SheetRays.Followed follow(Vec3 origin, Vec3 direction) {
        return context.rays().follow(origin, direction, context.rangeM(), openFraction);
    }

    /** Length of a followed ray, m, at most the range of the cast. */
    double lengthM(SheetRays.Followed end) {
        return Math.min(end.distanceM(), context.rangeM());
    }

    /** Walks along a ray that leaves the stretch along which the tip, at {@code tip}, is drawn. */
    void walk(Vec3 origin, Vec3 direction, SheetRays.Followed end, Vec3 wand, Vec3 tip) {
        int start = startCell(origin, wand, tip);
        path.clear(0);
        trace(path, origin, direction, end, lengthM(end), start);
    }

    /** Cell at a ray's beginning, which may lie beyond an inner opening through which the wand is drawn. */
    private int startCell(Vec3 origin, Vec3 wand, Vec3 tip) {
        Vec3 moved = origin.minus(tip);
        double shift = moved.length();
        if (shift == 0) {
            return tipCell;
        }
        Vec3 way = moved.dot(wand) > 0 ? wand : wand.negate();
        aside.clear(0);
        trace(aside, tip, way, context.rays().follow(tip, way, shift, openFraction), shift, tipCell);
        return aside.lastCell();
    }

    private void trace(CellWalk walk, Vec3 origin, Vec3 direction, SheetRays.Followed way, double toM, int startCell) {
        int start = startCell;
        double from = 0;
        for (int i = 0; i < way.passedM().length; i++) {
            double t = way.passedM()[i];
            walk.add(origin, direction, from, t, start);
            Vec3 beyond = context.rays().normalAlong(way.passedOpening()[i], direction);
            start = context.finder().cellNear(origin.plus(t, direction), beyond);
            from = t;
        }
        walk.add(origin, direction, from, toM, start);
    }

    /** Pieces of the last walk. */
    CellWalk pieces() {
        return path;
    }

    /** Cavity cell on the ray at a distance, or the nearest one before it, or the tip's. */
    int cellOn(double distanceM) {
        for (int p = path.pieceAt(distanceM); p >= 0; p--) {
            if (path.cell(p) >= 0) {
                return path.cell(p);
            }
        }
        return tipCell;
    }

    /** Last cell on a way along a sheet that begins in a cell, or that cell. */
    int beside(Vec3 point, Vec3 along, double toM, int here) {
        aside.clear(0);
        aside.add(point, along, 0, toM, here);
        return aside.lastCell() >= 0 ? aside.lastCell() : here;
    }

    /** Surfel that a followed ray strikes, or -1. */
    int surfel(Vec3 origin, Vec3 direction, SheetRays.Followed end) {
        Vec3 point = origin.plus(end.distanceM(), direction);
        return end.end() == SheetRays.End.CLOSURE
                ? context.finder().closureNear(point, end.opening(), end.towardsAir())
                : context.finder().surfelNear(point, end.part(), end.towardsAir());
    }
}
