package baymist.access;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * A way whose body follows its tip: a flexible wand along straights and arcs.
 *
 * @param pieces from the plane of the entry on, each beginning where the one before ends
 * @param radiusM radius of the body, m
 */
record CurvedPath(List<PathPiece> pieces, double radiusM) implements WandPath {
    /** Largest height of an arc over its chord in a body, m. */
    static final double SAGITTA_M = 2e-5;

    CurvedPath {
        pieces = List.copyOf(pieces);
    }

    @Override
    public double maxDepthM() {
        return BendConnector.lengthM(pieces);
    }

    @Override
    public WandPose body(double depthM) {
        List<Vec3> points = new ArrayList<>();
        points.add(pieces.get(0).start().atM());
        double left = depthM;
        for (PathPiece piece : pieces) {
            double length = Math.min(left, piece.lengthM());
            if (length > 0) {
                int chords = chords(piece, length);
                for (int i = 1; i <= chords; i++) {
                    points.add(piece.pointAt(length * i / chords));
                }
            }
            left -= length;
            if (!(left > 0)) {
                break;
            }
        }
        return new WandPose(points, radiusM, depthM);
    }

    private static int chords(PathPiece piece, double lengthM) {
        if (piece.curvaturePerM() == 0) {
            return 1;
        }
        double radius = 1 / piece.curvaturePerM();
        double chord = 2 * Math.acos(Math.max(0.5, 1 - SAGITTA_M / radius));
        return (int) Math.max(1, Math.ceil(lengthM * piece.curvaturePerM() / chord));
    }

    @Override
    public Vec3 tipM(double depthM) {
        return heading(depthM).atM();
    }

    @Override
    public Vec3 tipAxis(double depthM) {
        return heading(depthM).along();
    }

    /** Place and direction at a depth. */
    Heading heading(double depthM) {
        double left = depthM;
        for (PathPiece piece : pieces) {
            if (left <= piece.lengthM()) {
                return piece.headingAt(Math.max(0, left));
            }
            left -= piece.lengthM();
        }
        return pieces.get(pieces.size() - 1).end();
    }
}
