package baymist.scene;

/**
 * One piece of a wand's centre line. Pieces are listed from the outside end to the tip; the wand leaves the hand straight along
 * its axis, with the direction pin square to it.
 */
public sealed interface WandPiece {
    /** Length along the centre line, m, above 0. */
    double lengthM();

    /** A straight length, m. */
    record Straight(double lengthM) implements WandPiece {
        public Straight {
            if (!(lengthM > 0)) {
                throw new IllegalArgumentException("straight length " + lengthM + " m, above 0 expected");
            }
        }
    }

    /**
     * A circular bend.
     *
     * @param radiusM radius of the centre line, m, above 0
     * @param angleRad angle turned, rad, above 0
     * @param rollRad plane of the bend: the wand turns towards the direction at this clock angle from the pin, clockwise seen
     *     looking forward along the wand; the pin is carried along earlier bends without twist
     */
    record Bend(double radiusM, double angleRad, double rollRad) implements WandPiece {
        public Bend {
            if (!(radiusM > 0 && angleRad > 0)) {
                throw new IllegalArgumentException(
                        "bend of radius " + radiusM + " m and angle " + angleRad + " rad, both above 0 expected");
            }
        }

        @Override
        public double lengthM() {
            return radiusM * angleRad;
        }
    }
}
