package baymist.access;

import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.scene.EntrySpec;
import java.util.ArrayList;
import java.util.List;

/**
 * All that a rod must pass at an entry: the hole in the sheet, narrowed and thickened by a grommet, and the hole of a second plate
 * before or behind it. Lines are given in the coordinates of the opening: (u, v) where the axis crosses its plane, (tu, tv) the
 * tangent of the tilt, so that at height s along the inward normal the axis is at (u + s tu, v + s tv). Immutable.
 */
final class EntryRoom {
    private record Plate(PlateHole hole, double heightM) {}

    private final PlacedOutline place;
    private final List<Plate> plates;

    /** A plain hole in one sheet. */
    EntryRoom(PlacedOutline place, double gaugeM) {
        this(place, List.of(new Plate(new PlateHole(place.outline(), gaugeM), 0)));
    }

    private EntryRoom(PlacedOutline place, List<Plate> plates) {
        this.place = place;
        this.plates = List.copyOf(plates);
    }

    /** What the scene says of an entry, on a sheet of a gauge. */
    static EntryRoom of(Opening opening, EntrySpec entry, double gaugeM) {
        List<Plate> plates = new ArrayList<>();
        plates.add(new Plate(new PlateHole(opening.place().outline(), gaugeM), 0));
        EntrySpec.Grommet grommet = entry.grommet();
        if (grommet != null) {
            plates.add(new Plate(
                    new PlateHole(new Outline.Circle(0.5 * grommet.boreM()), Math.max(gaugeM, grommet.thicknessM())),
                    0));
        }
        EntrySpec.SecondPlate second = entry.secondPlate();
        if (second != null) {
            plates.add(new Plate(new PlateHole(second.outline(), second.gaugeM()), second.distanceM()));
        }
        return new EntryRoom(opening.place(), plates);
    }

    PlacedOutline place() {
        return place;
    }

    int plates() {
        return plates.size();
    }

    /** Distance left at the tightest plate, m, negative where the rod does not pass; see {@link PlateHole#clearanceM}. */
    double clearanceM(double u, double v, double tu, double tv, double rodM) {
        double least = Double.POSITIVE_INFINITY;
        for (Plate p : plates) {
            double s = p.heightM;
            least = Math.min(least, p.hole.clearanceM(u + s * tu, v + s * tv, tu, tv, rodM));
        }
        return least;
    }

    /** At most the clearance, cheap, m. */
    double upperM(double u, double v, double tu, double tv, double rodM) {
        double least = Double.POSITIVE_INFINITY;
        for (Plate p : plates) {
            double s = p.heightM;
            least = Math.min(least, p.hole.upperM(u + s * tu, v + s * tv, tu, tv, rodM));
        }
        return least;
    }

    /** Whether a rod passes; the exact clearance is worked out only where its cheap bounds do not decide. */
    boolean passes(double u, double v, double tu, double tv, double rodM) {
        for (Plate p : plates) {
            double x = u + p.heightM * tu;
            double y = v + p.heightM * tv;
            if (p.hole.upperM(x, y, tu, tv, rodM) < 0) {
                return false;
            }
            if (p.hole.lowerM(x, y, tu, tv, rodM) < 0 && p.hole.clearanceM(x, y, tu, tv, rodM) < 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * How much {@link #upperM} can grow when the axis moves by {@code moveM} in the opening's plane and its tangent by {@code tan}.
     */
    double growthM(double moveM, double tan) {
        double most = 0;
        for (Plate p : plates) {
            most = Math.max(most, moveM + (Math.abs(p.heightM) + 0.5 * p.hole.gaugeM()) * tan);
        }
        return most;
    }

    /** Largest half thickness of anything at the opening's own plane, and the way to a second plate behind it, m. */
    double behindM() {
        double most = 0;
        for (Plate p : plates) {
            most = Math.max(most, p.heightM + p.hole.gaugeM());
        }
        return most;
    }

    /** Direction of a line, not a unit vector: its component along the inward normal is 1. */
    Vec3 direction(double tu, double tv) {
        return place.normal().plus(tu, place.uAxis()).plus(tv, place.vAxis());
    }

    /** Tangent of the tilt of an axis. */
    double tangent(Vec3 axis) {
        double cos = axis.dot(place.normal());
        return Math.sqrt(Math.max(0, 1 - cos * cos)) / cos;
    }

    /** Largest tangent of the tilt at which a rod passes in the middle of a circle as wide as the outline reaches, or the limit. */
    static double largestTangent(PlacedOutline place, double rodM, double limit) {
        double hole = 2 * place.outline().reachM();
        return rodM >= hole ? 0 : Math.min(limit, Math.sqrt(hole * hole - rodM * rodM) / rodM);
    }
}
