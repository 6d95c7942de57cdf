package baymist.spray;

import baymist.geom.Vec3;

/**
 * Where and how a ray of an analytic jet hands its momentum to the air of the bay: where its speed has fallen to the cap.
 *
 * <p>A ray carries flow alike with all others, so its momentum goes as its speed. If it falls to the cap before it meets a
 * sheet, it pushes there along itself. If a sheet comes first, the part of its momentum that lies along the sheet goes on, and the part square to it turns
 * into a wall jet to all sides; both are handed over on a ring of the radius at which a radial wall jet falls to the cap,
 *
 * <pre>  um = 1.03 U0 d/r,   r = 1.03 U0 d/cap</pre>
 *
 * (Beltaos and Rajaratnam 1974, J. Hydraul. Div. ASCE 100, 1313). The momentum that such a wall jet carries outwards is
 * {@code 2 pi r rho um² 0.74 b} with b = 0.087 r (Rajaratnam 1976, from memory) and 0.74 from his wall-jet profile: {@link #TURNED} = 0.55 of the jet's; the
 * sheet's friction and the stagnation region keep the rest.
 */
final class JetHandover {
    /** Speed of a wall jet at r over U0 d/r. */
    static final double WALL_JET = 1.03;

    /** Scalar momentum of the radial wall jet over that of the jet that feeds it. */
    static final double TURNED = 2 * Math.PI * WALL_JET * WALL_JET * 0.74 * 0.087 / (Math.PI / 4);

    /**
     * Turbulent energy carried at the hand-over over J times the speed there: {@code k/um² = 0.075} (Hussein, Capp and George
     * 1994, a round jet) times a mass flow of {@code 2 J/um}. ASSUMED to hold for wall jets too.
     */
    static final double TURBULENT_SHARE = 0.15;

    /** Directions to which a ray's wall jet goes. */
    private static final int WAYS = 4;

    private static final double GOLDEN = 0.6180339887498949;

    private final SprayContext context;
    private final SprayTally tally;
    private final CellWalk walk;

    JetHandover(SprayContext context, SprayTally tally) {
        this.context = context;
        this.tally = tally;
        this.walk = new CellWalk(context.grid());
    }

    /** Momentum of ray {@code i} over that of its jet; all rays together 1. */
    double momentumShare(int i) {
        return context.raySet().momentumShare(i);
    }

    /** A ray that falls to the cap in free air. */
    void free(int cell, double momentumN, Vec3 direction) {
        push(cell, momentumN, direction);
    }

    /**
     * A ray that strikes a sheet above the cap.
     *
     * @param here cell at the place
     * @param towardsAir unit normal of the sheet into the air
     * @param strengthM2PerS U0 d of its jet
     */
    void wall(int ray, int here, Vec3 point, Vec3 towardsAir, double momentumN, Vec3 direction, double strengthM2PerS) {
        double radius = WALL_JET * strengthM2PerS / SprayCaster.CAP_M_PER_S;
        double square = Math.abs(direction.dot(towardsAir));
        Vec3 along = direction.plus(-direction.dot(towardsAir), towardsAir);
        Vec3 size = context.grid().sizeM();
        double off = 0.25 * Math.min(size.x(), Math.min(size.y(), size.z()));
        Vec3 a = towardsAir.anyPerpendicular();
        Vec3 b = towardsAir.cross(a);
        double turn = 2 * Math.PI / WAYS * (ray * GOLDEN - Math.floor(ray * GOLDEN));
        for (int k = 0; k < WAYS; k++) {
            double angle = turn + 2 * Math.PI * k / WAYS;
            Vec3 outwards = a.times(Math.cos(angle)).plus(Math.sin(angle), b);
            walk.clear(0);
            walk.add(point.plus(off, towardsAir), outwards, 0, radius, here);
            int cell = walk.lastCell() >= 0 ? walk.lastCell() : here;
            push(cell, momentumN / WAYS, along.plus(TURNED * square, outwards));
        }
    }

    private void push(int cell, double momentumN, Vec3 way) {
        double power = TURBULENT_SHARE * momentumN * SprayCaster.CAP_M_PER_S;
        double kgPerS = momentumN / SprayCaster.CAP_M_PER_S;
        tally.push(cell, momentumN * way.x(), momentumN * way.y(), momentumN * way.z(), kgPerS, power);
    }
}
