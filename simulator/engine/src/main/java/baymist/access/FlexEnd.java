package baymist.access;

import baymist.geom.Bvh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Pushes a way on straight as far as it goes, and tells why it goes no farther. */
final class FlexEnd {
    private static final int AZIMUTHS = 16;
    /** A bend that ends sooner than this along counts as blocked, as a share of the step. */
    private static final double SHARE = 0.5;
    /** A push is tried in steps of this length, m. */
    private static final double NUDGE_M = 0.001;

    private final FreeSpace space;
    private final BendLimits limits;
    private final SearchGrain grain;
    private final Gates gates;

    FlexEnd(FreeSpace space, BendLimits limits, SearchGrain grain, Gates gates) {
        this.space = space;
        this.limits = limits;
        this.grain = grain;
        this.gates = gates;
    }

    /** The path, longer by a straight as far as sheets, length, push and the cavity's openings let it go. */
    List<PathPiece> pushedOn(List<PathPiece> path, List<Integer> way) {
        Heading end = path.get(path.size() - 1).end();
        double left = Math.min(limits.lengthM() - BendConnector.lengthM(path), 100 * grain.stepM());
        if (!(left > 1e-6)) {
            return path;
        }
        PathPiece ahead = PathPiece.straight(end, left);
        FreeSpace.Block block = space.firstBlock(ahead, limits.radiusM());
        double go = block == null ? left : block.alongM();
        while (go > 1e-6 && !allowed(path, ahead.cut(go), way)) {
            go = go < 0.002 ? 0 : 0.8 * go;
        }
        if (!(go > 1e-6)) {
            return path;
        }
        List<PathPiece> longer = new ArrayList<>(path);
        longer.add(ahead.cut(go));
        return longer;
    }

    private boolean allowed(List<PathPiece> path, PathPiece more, List<Integer> way) {
        List<PathPiece> longer = new ArrayList<>(path);
        longer.add(more);
        List<Integer> now = gates.after(way, more);
        return now != null && now.equals(way) && pushN(longer) <= limits.pushLimitN();
    }

    /** Force at the hand for a path, N. */
    double pushN(List<PathPiece> path) {
        PushForce push = PushForce.NONE;
        for (PathPiece p : path) {
            push = push.beyond(p, limits.friction(), limits.weightNPerM());
        }
        return push.atHandN(limits.tipDragN());
    }

    static double bendRad(List<PathPiece> path) {
        double sum = 0;
        for (PathPiece p : path) {
            sum += p.bendRad();
        }
        return sum;
    }

    /** Why a path ends where it does. */
    WandStop stop(List<PathPiece> path, boolean lengthOfWand) {
        Heading end = path.get(path.size() - 1).end();
        double length = BendConnector.lengthM(path);
        double bend = bendRad(path);
        if (length >= limits.lengthM() - 1e-6) {
            String name = lengthOfWand ? AccessFinder.WAND_LENGTH : "coupling";
            return new WandStop(
                    name, end.atM(), ahead(end), lengthOfWand ? "the whole wand is in" : "a coupling is at the entry");
        }
        List<PathPiece> nudged = new ArrayList<>(path);
        nudged.add(PathPiece.straight(end, NUDGE_M));
        if (pushN(nudged) > limits.pushLimitN()) {
            return new WandStop(
                    "push limit",
                    end.atM(),
                    ahead(end),
                    String.format(
                            Locale.ROOT,
                            "bends of %.0f degrees in all make it take %.1f N to push on; the limit is %.1f N",
                            Math.toDegrees(bend),
                            pushN(nudged),
                            limits.pushLimitN()));
        }
        return atSheet(end, bend);
    }

    private double ahead(Heading end) {
        return space.distanceM(end.atM()) - limits.radiusM();
    }

    private WandStop atSheet(Heading end, double bend) {
        FreeSpace.Block block = space.firstBlock(PathPiece.straight(end, grain.stepM()), limits.radiusM());
        double allowedBend = Math.min(grain.stepM() / limits.minBendM(), limits.maxBendRad() - bend);
        boolean bends = allowedBend > 1e-3 && anyBendFree(end, limits.minBendM(), SHARE * allowedBend);
        String meets =
                block == null ? "the tip has room ahead" : String.format(Locale.ROOT, "the tip meets %s", block.part());
        String then;
        if (bends) {
            then = "bends from there lead only where shorter ways lead too";
        } else if (allowedBend < grain.stepM() / limits.minBendM() && anyBendFree(end, limits.minBendM(), 0.25)) {
            then = String.format(
                    Locale.ROOT,
                    "the %.0f degrees of bend that the wand allows are used up",
                    Math.toDegrees(limits.maxBendRad()));
        } else if (anyBendFree(end, limits.minBendM() / 2, 0.5) || anyBendFree(end, limits.minBendM() / 4, 0.5)) {
            then = String.format(
                    Locale.ROOT,
                    "to go on it would have to bend tighter than its least radius of %.0f mm",
                    1e3 * limits.minBendM());
        } else {
            then = "there is no room to bend to any side";
        }
        if (block == null) {
            FreeSpace.Block near = nearest(end.atM());
            return new WandStop(near.part(), near.placeM(), near.clearanceM(), meets + ", but " + then);
        }
        return new WandStop(block.part(), block.placeM(), block.clearanceM() + block.alongM(), meets + "; " + then);
    }

    private FreeSpace.Block nearest(Vec3 p) {
        Bvh.@Nullable Nearest n = space.nearest(p);
        return n == null
                ? new FreeSpace.Block(0, "nothing", p, Double.POSITIVE_INFINITY)
                : new FreeSpace.Block(0, space.nameOf(n.triangle()), n.point(), n.distanceM() - limits.radiusM());
    }

    /** Whether an arc of this radius is free through the angle in any plane. */
    private boolean anyBendFree(Heading end, double radiusM, double angleRad) {
        Vec3 across = end.along().anyPerpendicular();
        Vec3 other = end.along().cross(across);
        for (int k = 0; k < AZIMUTHS; k++) {
            double a = 2 * Math.PI * k / AZIMUTHS;
            Vec3 towards = across.times(Math.cos(a)).plus(Math.sin(a), other).unit();
            if (space.free(new PathPiece(end, towards, 1 / radiusM, radiusM * angleRad), limits.radiusM())) {
                return true;
            }
        }
        return false;
    }
}
