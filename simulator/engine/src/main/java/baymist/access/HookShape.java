package baymist.access;

import baymist.geom.Vec3;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;

/**
 * The centreline of a bent rigid tube in a frame of its own: from the outside end at the origin along +x, pin along +z. Lengths {@code a} count from the
 * outside end. Immutable.
 */
final class HookShape {
    private final List<PathPiece> pieces;
    /** Where each piece begins, m, [pieces + 1]. */
    private final double[] startM;
    /** Pin carried without twist to the start of each piece, [pieces]. */
    private final List<Vec3> pins;

    private final double tubeRadiusM;
    private final double tipRadiusM;
    private final double tipFromM;

    HookShape(WandSpec wand) {
        List<PathPiece> laid = new ArrayList<>();
        List<Vec3> carried = new ArrayList<>();
        Heading at = new Heading(Vec3.ZERO, Vec3.X);
        Vec3 pin = Vec3.Z;
        for (WandPiece p : wand.pieces()) {
            PathPiece piece = new PathPiece(at, pin, 0, p.lengthM());
            if (p instanceof WandPiece.Bend bend) {
                Vec3 towards = pin.times(Math.cos(bend.rollRad()))
                        .plus(Math.sin(bend.rollRad()), at.along().cross(pin));
                piece = new PathPiece(at, towards.unit(), 1 / bend.radiusM(), bend.lengthM());
            }
            laid.add(piece);
            carried.add(pin);
            pin = piece.carry(pin);
            at = piece.end();
        }
        pieces = List.copyOf(laid);
        pins = List.copyOf(carried);
        startM = new double[pieces.size() + 1];
        for (int i = 0; i < pieces.size(); i++) {
            startM[i + 1] = startM[i] + pieces.get(i).lengthM();
        }
        tubeRadiusM = wand.outerM() / 2;
        tipRadiusM = wand.thickestM() / 2;
        tipFromM = wand.tipOuterM() > wand.outerM() ? lengthM() - wand.tipLengthM() : lengthM();
    }

    double lengthM() {
        return startM[pieces.size()];
    }

    /** Largest radius of tube and tip between two places, m. */
    double radiusM(double fromM, double toM) {
        return toM > tipFromM ? tipRadiusM : tubeRadiusM;
    }

    int pieceAt(double a) {
        int i = 0;
        while (i < pieces.size() - 1 && a >= startM[i + 1]) {
            i++;
        }
        return i;
    }

    Heading headingAt(double a) {
        int i = pieceAt(a);
        return pieces.get(i).headingAt(Math.max(0, a - startM[i]));
    }

    /** Pin carried to a place. */
    Vec3 pinAt(double a) {
        int i = pieceAt(a);
        return pieces.get(i).cut(Math.max(0, a - startM[i])).carry(pins.get(i));
    }

    /**
     * A stretch of the shape as pieces that end at bends' ends and where the tip begins.
     *
     * @return pieces with their radii; nothing for an empty stretch
     */
    List<Stretch> between(double fromM, double toM) {
        List<Stretch> out = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            for (int half = 0; half < 2; half++) {
                double low = Math.max(fromM, half == 0 ? startM[i] : Math.max(startM[i], tipFromM));
                double high = Math.min(toM, half == 0 ? Math.min(startM[i + 1], tipFromM) : startM[i + 1]);
                if (low < high) {
                    PathPiece p = pieces.get(i);
                    Heading begin = p.headingAt(low - startM[i]);
                    Vec3 towards = p.cut(low - startM[i]).carry(p.towards());
                    out.add(new Stretch(
                            new PathPiece(begin, towards, p.curvaturePerM(), high - low),
                            half == 0 ? tubeRadiusM : tipRadiusM));
                }
            }
        }
        return out;
    }

    /** A piece of tube. */
    record Stretch(PathPiece piece, double radiusM) {}

    /** Largest curvature that passes the hole between two slides, 1/m. */
    double sharpestNearPerM(double slide0, double slide1) {
        double most = 0;
        double low = lengthM() - slide1;
        double high = lengthM() - slide0;
        for (int i = 0; i < pieces.size(); i++) {
            if (startM[i] <= high && startM[i + 1] >= low) {
                most = Math.max(most, pieces.get(i).curvaturePerM());
            }
        }
        return most;
    }
}
