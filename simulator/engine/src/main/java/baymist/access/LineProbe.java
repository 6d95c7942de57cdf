package baymist.access;

import baymist.geom.PlacedOutline;
import baymist.geom.RayHit;
import baymist.geom.RodClearance;
import baymist.geom.RodClearance.Contact;
import baymist.geom.Vec3;
import baymist.scene.Obstacle;
import baymist.scene.WandSpec;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Tries lines through one entry with one straight wand, exactly. Holds no state between lines. */
final class LineProbe {
    private final Surroundings around;
    private final WandSpec wand;
    private final EntryRoom room;
    private final int ownPart;
    private final double ownThicknessM;
    /** Openings by which a wand could leave the cavity again. */
    private final int[] ports;

    LineProbe(ReachProblem p) {
        this.around = p.surroundings();
        this.wand = p.wand();
        this.room = EntryRoom.of(p.opening(), p.entry(), p.gaugeM());
        this.ownPart = p.opening().part();
        this.ports = IntStream.range(0, p.cavity().openings().size())
                .filter(i -> i != p.openingIndex()
                        && around.open(i)
                        && p.cavity().openings().get(i).exterior())
                .toArray();
        this.ownThicknessM = Math.max(p.gaugeM(), room.behindM());
    }

    EntryRoom room() {
        return room;
    }

    double rodM() {
        return wand.thickestM();
    }

    /**
     * Depth at which the nose is past the entry's own sheet, m. The hole has been judged by its exact outline; the polygon that stands
     * for it in the cut mesh, a twentieth of its reach for curved sheet and the gauge must not be met again.
     */
    double pastM(double tan) {
        return 0.5 * thickestOfAllM() * tan
                + ownThicknessM
                + 0.05 * room.place().outline().reachM();
    }

    /** Depth from which each triangle counts for a line of this tilt. */
    private IntToDoubleFunction startOf(double tan) {
        double past = pastM(tan);
        double behind = -behindM(tan);
        return t -> around.part(t) == ownPart ? past : behind;
    }

    /** Depth from which a part counts for any line up to a tilt, m. */
    double startM(int part, double tan) {
        return part == ownPart ? pastM(tan) : 0;
    }

    /** Tries a line. */
    RodLine line(double u, double v, double tu, double tv) {
        Vec3 origin = room.place().point(u, v);
        Vec3 axis = room.direction(tu, tv).unit();
        IntToDoubleFunction start = startOf(Math.hypot(tu, tv));
        RayHit ahead = around.bvh()
                .closestHit(origin, axis, 0, wand.lengthM(), (t, h, x, y, z) -> h >= start.applyAsDouble(t));
        if (!room.passes(u, v, tu, tv, wand.thickestM())) {
            return new RodLine(u, v, tu, tv, origin, axis, false, 0, null, false, -1, null, ahead);
        }
        Contact contact = contact(origin, axis, wand.thickestM(), wand.lengthM(), start, ahead);
        double depth = contact == null ? wand.lengthM() : contact.depthM();
        if (depth <= 0) {
            return new RodLine(u, v, tu, tv, origin, axis, false, 0, contact, false, -1, null, ahead);
        }
        boolean coupling = false;
        for (WandSpec.Coupling c : wand.couplings()) {
            double outside = Math.max(0, c.fromTipM() - 0.5 * c.lengthM());
            if (!(c.outerM() > wand.thickestM()) || depth <= outside) {
                continue;
            }
            boolean enters = room.passes(u, v, tu, tv, c.outerM());
            Contact met = enters ? contact(origin, axis, c.outerM(), depth - outside, start, ahead) : null;
            if (!enters || (met != null && outside + met.depthM() < depth)) {
                depth = met == null ? outside : outside + met.depthM();
                contact = met;
                coupling = true;
            }
        }
        int exit = -1;
        for (int o : ports) {
            double out = exitM(origin, axis, depth, o);
            if (out < depth) {
                depth = out;
                exit = o;
            }
        }
        return exit < 0
                ? new RodLine(u, v, tu, tv, origin, axis, true, depth, contact, coupling, -1, null, ahead)
                : new RodLine(u, v, tu, tv, origin, axis, true, depth, null, false, exit, null, ahead);
    }

    /** Depth at which the axis leaves by an open port, m; infinite if it does not within {@code mostM}. */
    private double exitM(Vec3 origin, Vec3 axis, double mostM, int port) {
        PlacedOutline place = around.cavity().openings().get(port).place();
        Vec3 to = place.centreM().minus(origin);
        double along = to.dot(axis);
        if (to.dot(to) - along * along
                > place.outline().reachM() * place.outline().reachM() * 1.05) {
            return Double.POSITIVE_INFINITY;
        }
        SheetSides sides = around.sides();
        RayHit hit = sides.bvh().closestHit(origin, axis, 0, mostM, (t, h, x, y, z) -> {
            for (int o : sides.openingsAt(t)) {
                if (o == port && place.contains(new Vec3(x, y, z))) {
                    return true;
                }
            }
            return false;
        });
        return hit == null ? Double.POSITIVE_INFINITY : hit.t();
    }

    /** Tries a line with what stands outside in the way as well. */
    RodLine lineFed(double u, double v, double tu, double tv) {
        RodLine line = line(u, v, tu, tv);
        for (Obstacle o : around.outside()) {
            if (line.passes()) {
                double free = OutsideCheck.freeLengthM(line.originM(), line.axis(), wand, o.body());
                double most = wand.feedableM(free);
                if (most < line.depthM()) {
                    line = line.keptAt(most, o);
                }
            }
        }
        return line;
    }

    /** The side of a tilted rod that is inside while the middle of its nose is still in the plane of the opening, m. */
    private double behindM(double tan) {
        return 0.5 * wand.thickestM() * tan;
    }

    private @Nullable Contact contact(
            Vec3 origin, Vec3 axis, double diameterM, double most, IntToDoubleFunction start, @Nullable RayHit ahead) {
        double far = ahead == null ? most : Math.min(most, ahead.t() + 1e-9 * (1 + ahead.t()));
        return RodClearance.contactWithin(origin, axis, 0.5 * diameterM, start, 0, far, around.mesh(), around.bvh());
    }

    /** Depth at which a thinner rod about the same axis is stopped, at most the given depth, m. */
    double thinDepthM(RodLine line, double radiusM, double mostM) {
        if (!(radiusM > 0) || !(mostM > 0)) {
            return mostM;
        }
        Contact c = RodClearance.contactWithin(
                line.originM(),
                line.axis(),
                radiusM,
                startOf(Math.hypot(line.tu(), line.tv())),
                0,
                mostM,
                around.mesh(),
                around.bvh());
        return c == null ? mostM : c.depthM();
    }

    private double thickestOfAllM() {
        return wand.thickestWithinM(wand.lengthM());
    }

    /** Room round the wand down to a depth, m: play in the hole or distance to what lies along it, at most {@code withinM}. */
    double roomM(RodLine line, double depthM, double withinM) {
        double radius = 0.5 * wand.thickestM();
        double hole = room.clearanceM(line.u(), line.v(), line.tu(), line.tv(), wand.thickestM());
        double free = RodClearance.freeRadiusM(
                line.originM(),
                line.axis(),
                startOf(Math.hypot(line.tu(), line.tv())),
                depthM,
                radius + withinM,
                around.mesh(),
                around.bvh());
        return Math.min(hole, free - radius);
    }
}
