package baymist.access;

import baymist.access.HookShape.Stretch;
import baymist.geom.Vec3;
import java.util.List;

/**
 * How a bent tube stands best in a round hole while the place {@code a} of its centreline is at half of the gauge.
 *
 * <p>Coordinates in the hole: z along its normal, x towards the centre of the bend there, y across. A plane y = const cuts the tube in a strip of half-width
 * {@code b = sqrt(r² - y²)} about the (plane) centreline, whose sides are lines and circles; their extents in x between the faces of the plate follow in
 * closed form. The hole must hold the circle about all of them; the tilt in the plane of the bend and the offset along x are chosen so that it is
 * smallest (sampling and golden section). For a long arc the result is that of {@link BendFit}.
 *
 * @param clearanceM distance left between tube and hole edge, m, negative = does not pass
 * @param tiltRad tilt of the tangent out of the normal, towards the centre of the bend
 * @param offsetM where the centreline's place lies, along x from the middle of the hole, m
 * @param bendDirection direction of x in the shape's frame, square to the tangent
 */
record HookFit(double clearanceM, double tiltRad, double offsetM, Vec3 bendDirection) {
    private static final int STRIPS = 6;
    private static final double MOST_TILT = 0.7;
    private static final int SAMPLES = 14;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    static HookFit of(HookShape shape, double a, double holeRadiusM, double gaugeM) {
        Hole hole = new Hole(shape, a, holeRadiusM, gaugeM);
        if (!hole.plane()) {
            return new HookFit(Double.NEGATIVE_INFINITY, 0, 0, hole.x);
        }
        if (hole.straight()) {
            double r = hole.radius();
            return new HookFit(holeRadiusM - r, 0, 0, hole.x);
        }
        double step = 2 * MOST_TILT / SAMPLES;
        double best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= SAMPLES; i++) {
            double tilt = -MOST_TILT + i * step;
            double needs = hole.needs(tilt);
            if (needs < least - 1e-12 || (needs <= least + 1e-12 && Math.abs(tilt) < Math.abs(best))) {
                least = needs;
                best = tilt;
            }
        }
        double low = best - step;
        double high = best + step;
        double c = high - GOLDEN * (high - low);
        double d = low + GOLDEN * (high - low);
        double needsC = hole.needs(c);
        double needsD = hole.needs(d);
        for (int i = 0; i < 36; i++) {
            if (needsC <= needsD) {
                high = d;
                d = c;
                needsD = needsC;
                c = high - GOLDEN * (high - low);
                needsC = hole.needs(c);
            } else {
                low = c;
                c = d;
                needsC = needsD;
                d = low + GOLDEN * (high - low);
                needsD = hole.needs(d);
            }
        }
        double tilt = (low + high) / 2;
        // an arc that stands symmetrically needs no tilt: keep exactly that where it is as good
        tilt = hole.needs(0) <= hole.needs(tilt) + 1e-12 ? 0 : tilt;
        return new HookFit(holeRadiusM - hole.needs(tilt), tilt, -hole.middle(tilt), hole.x);
    }

    /** The tube in the hole. */
    private static final class Hole {
        final Vec3 x;
        private final Vec3 z;
        private final Vec3 at;
        private final double gauge;
        private final List<Stretch> stretches;
        private final boolean planar;

        Hole(HookShape shape, double a, double holeRadius, double gauge) {
            this.gauge = gauge;
            Heading heading = shape.headingAt(a);
            at = heading.atM();
            z = heading.along();
            double window = gauge + 2 * holeRadius;
            stretches = shape.between(Math.max(0, a - window), Math.min(shape.lengthM(), a + window));
            Vec3 bend = null;
            boolean one = true;
            double nearest = Double.POSITIVE_INFINITY;
            for (Stretch s : stretches) {
                PathPiece p = s.piece();
                if (p.curvaturePerM() == 0) {
                    continue;
                }
                double away =
                        Math.min(p.start().atM().distance(at), p.end().atM().distance(at));
                Vec3 centre = p.start().atM().plus(1 / p.curvaturePerM(), p.towards());
                Vec3 toCentre = centre.minus(at);
                Vec3 side = toCentre.plus(-toCentre.dot(z), z).unit();
                if (bend != null && Math.abs(Math.abs(bend.dot(side)) - 1) > 1e-6) {
                    one = false;
                }
                if (bend == null || away < nearest) {
                    nearest = away;
                    bend = side;
                }
            }
            planar = one;
            x = bend == null ? shape.pinAt(a) : bend;
        }

        boolean plane() {
            return planar;
        }

        boolean straight() {
            return stretches.stream().allMatch(s -> s.piece().curvaturePerM() == 0);
        }

        double radius() {
            return stretches.stream().mapToDouble(Stretch::radiusM).max().orElse(0);
        }

        /** Radius of the smallest round hole, middle anywhere along x, m. */
        double needs(double tilt) {
            double[][] extents = extents(tilt);
            return farthest(extents, centre(extents));
        }

        /** Where the middle of that hole lies along x from the centreline's place, m. */
        double middle(double tilt) {
            return centre(extents(tilt));
        }

        private static double farthest(double[][] extents, double c) {
            double most = 0;
            for (double[] e : extents) {
                most = Math.max(most, Math.hypot(Math.max(Math.abs(e[0] - c), Math.abs(e[1] - c)), e[2]));
            }
            return most;
        }

        private static double centre(double[][] extents) {
            // the strip through the axis is the widest by far; start there and polish (the farthest distance is convex)
            double middle = (extents[0][0] + extents[0][1]) / 2;
            double reach = 0.25 * (extents[0][1] - extents[0][0]);
            double low = middle - reach;
            double high = middle + reach;
            double best = middle;
            for (int i = 0; i < 30; i++) {
                double c = high - GOLDEN * (high - low);
                double d = low + GOLDEN * (high - low);
                if (farthest(extents, c) <= farthest(extents, d)) {
                    high = d;
                } else {
                    low = c;
                }
            }
            double found = (low + high) / 2;
            return farthest(extents, found) < farthest(extents, best) - 1e-15 ? found : best;
        }

        /** {least x, most x, y} of each strip. */
        private double[][] extents(double tilt) {
            double[][] out = new double[STRIPS][];
            for (int k = 0; k < STRIPS; k++) {
                double phi = 0.5 * Math.PI * k / STRIPS;
                out[k] = strip(tilt, Math.cos(phi), Math.sin(phi));
            }
            return out;
        }

        private double[] strip(double tilt, double cos, double sin) {
            Vec3 zt = z.times(Math.cos(tilt)).plus(-Math.sin(tilt), x);
            Vec3 xt = x.times(Math.cos(tilt)).plus(Math.sin(tilt), z);
            double[] e = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0};
            for (Stretch s : stretches) {
                double b = s.radiusM() * cos;
                e[2] = Math.max(e[2], s.radiusM() * sin);
                for (int side = -1; side <= 1; side += 2) {
                    edge(s.piece(), side * b, xt, zt, e);
                }
            }
            return e;
        }

        /** Takes in the x of one side of a piece's strip where it lies between the faces. */
        private void edge(PathPiece p, double off, Vec3 xt, Vec3 zt, double[] e) {
            Vec3 a = p.start().atM().minus(at).plus(off, p.towards());
            Vec3 endTowards = p.carry(p.towards());
            Vec3 b = p.end().atM().minus(at).plus(off, endTowards);
            double za = a.dot(zt);
            double zb = b.dot(zt);
            double low = Math.max(-gauge / 2, Math.min(za, zb));
            double high = Math.min(gauge / 2, Math.max(za, zb));
            if (p.curvaturePerM() == 0) {
                if (low <= high) {
                    line(a.dot(xt), za, b.dot(xt), zb, low, high, e);
                }
                return;
            }
            double radius = 1 / p.curvaturePerM() - off;
            Vec3 centre = p.start().atM().minus(at).plus(1 / p.curvaturePerM(), p.towards());
            arc(p, radius, centre.dot(xt), centre.dot(zt), xt, zt, e);
        }

        private static void line(double xa, double za, double xb, double zb, double low, double high, double[] e) {
            for (double z : new double[] {low, high}) {
                double s = Math.abs(zb - za) > 1e-15 ? (z - za) / (zb - za) : 0;
                take(e, xa + s * (xb - xa));
                if (Math.abs(zb - za) <= 1e-15) {
                    take(e, xb);
                }
            }
        }

        /** Ends, faces and the point farthest along x of a circle's part: each counts if it lies on the part and between the faces. */
        private void arc(PathPiece p, double radius, double cx, double cz, Vec3 xt, Vec3 zt, double[] e) {
            Vec3 from = p.towards().negate();
            Vec3 along = p.start().along();
            double[] faces = {-gauge / 2, gauge / 2};
            double turn = p.bendRad();
            // angle θ along the arc: place = centre + radius (from cosθ + along sinθ)
            double fz = from.dot(zt);
            double az = along.dot(zt);
            double fx = from.dot(xt);
            double ax = along.dot(xt);
            double amplitude = Math.hypot(fz, az);
            double phase = Math.atan2(az, fz);
            for (double face : faces) {
                double c = (face - cz) / (radius * amplitude);
                if (Math.abs(c) <= 1) {
                    offer(phase + Math.acos(c), turn, radius, cx, cz, fx, ax, fz, az, e);
                    offer(phase - Math.acos(c), turn, radius, cx, cz, fx, ax, fz, az, e);
                }
            }
            double extreme = Math.atan2(ax, fx);
            offer(extreme, turn, radius, cx, cz, fx, ax, fz, az, e);
            offer(extreme + Math.PI, turn, radius, cx, cz, fx, ax, fz, az, e);
            offer(0, turn, radius, cx, cz, fx, ax, fz, az, e);
            offer(turn, turn, radius, cx, cz, fx, ax, fz, az, e);
        }

        private void offer(
                double theta,
                double turn,
                double radius,
                double cx,
                double cz,
                double fx,
                double ax,
                double fz,
                double az,
                double[] e) {
            double t = theta - 2 * Math.PI * Math.floor((theta + 1e-12) / (2 * Math.PI));
            if (t > turn + 1e-12) {
                return;
            }
            double zAt = cz + radius * (fz * Math.cos(t) + az * Math.sin(t));
            if (Math.abs(zAt) <= gauge / 2 + 1e-12) {
                take(e, cx + radius * (fx * Math.cos(t) + ax * Math.sin(t)));
            }
        }

        private static void take(double[] e, double x) {
            e[0] = Math.min(e[0], x);
            e[1] = Math.max(e[1], x);
        }
    }
}
