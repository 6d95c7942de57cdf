package baymist.access;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;

/**
 * The roomiest place of a straight rod of a given direction in a hole. Circles, slots and rounded rectangles are symmetrical and
 * take their middle; polygons are searched on a coarse grid, then by compass search down to a micrometre.
 *
 * @param clearanceM radial play left, m, negative = does not pass; see {@link PlateHole}
 * @param u,v where the rod's axis crosses the middle of the plate, outline coordinates, m
 */
record HoleFit(double clearanceM, double u, double v) {
    /**
     * Best place of a rod in a hole.
     *
     * @param axis unit vector going in, with a component along the outline's normal
     */
    static HoleFit of(PlacedOutline place, Vec3 axis, double rodM, double gaugeM) {
        double cos = axis.dot(place.normal());
        if (!(cos > 0)) {
            throw new IllegalArgumentException("the rod must go in along the outline's normal");
        }
        return of(new EntryRoom(place, gaugeM), axis.dot(place.uAxis()) / cos, axis.dot(place.vAxis()) / cos, rodM);
    }

    /**
     * Best place of a rod in one or several plates.
     *
     * @param tu,tv tangent of its tilt along the outline's axes
     */
    static HoleFit of(EntryRoom room, double tu, double tv, double rodM) {
        HoleFit best = new HoleFit(room.clearanceM(0, 0, tu, tv, rodM), 0, 0);
        boolean middle = !(room.place().outline() instanceof Outline.Polygon) && room.plates() == 1;
        return middle ? best : search(room, tu, tv, rodM, best);
    }

    private static HoleFit search(EntryRoom room, double tu, double tv, double rodM, HoleFit start) {
        HoleFit best = start;
        double reach = room.place().outline().reachM();
        for (int i = -8; i <= 8; i++) {
            for (int j = -8; j <= 8; j++) {
                best = better(room, tu, tv, rodM, best, reach * i / 8, reach * j / 8);
            }
        }
        for (double step = reach / 16; step > 1e-6; step /= 2) {
            HoleFit centre;
            do {
                centre = best;
                for (int k = 0; k < 8; k++) {
                    double angle = Math.PI * k / 4;
                    best = better(
                            room,
                            tu,
                            tv,
                            rodM,
                            best,
                            centre.u + step * Math.cos(angle),
                            centre.v + step * Math.sin(angle));
                }
            } while (best.clearanceM > centre.clearanceM + 1e-9);
        }
        return best;
    }

    private static HoleFit better(EntryRoom room, double tu, double tv, double rodM, HoleFit best, double u, double v) {
        if (room.upperM(u, v, tu, tv, rodM) <= best.clearanceM) {
            return best;
        }
        double c = room.clearanceM(u, v, tu, tv, rodM);
        return c > best.clearanceM ? new HoleFit(c, u, v) : best;
    }
}
