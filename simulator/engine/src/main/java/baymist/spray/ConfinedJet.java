package baymist.spray;

/**
 * A round jet that meets its surroundings: free, then flat between two near walls, then shut in on all sides.
 *
 * <ol>
 *   <li>Up to {@code flatFromM} (where 2b reaches a third of the smaller clearance) the law of {@link RoundJet} holds.
 *   <li>Beyond it the width across the narrow gap stays and the other keeps growing. Momentum is conserved, so {@code um =
 *       um1 √(x1/x)} and the flow grows as √x: the decay of a plane jet (Rajaratnam 1976, ch. 1), joined without a step. Wall
 *       friction is neglected.
 *   <li>Beyond {@code shutFromM} (where the other width reaches a third of the other clearance) both widths stay and speed and
 *       flow fall as {@code exp(-(x - x2)/L)} with L = √(D1 D2), while the air that the jet gives back returns along the
 *       walls. ASSUMED form; with x2 = 1.76 D it leaves a twentieth of the speed at 4.8 D, in line with jets in closed tubes,
 *       which are absorbed within four to five tube diameters (Risso and Fabre 1997, from memory).
 * </ol>
 *
 * @param flatFromM x1, m, may be infinite
 * @param shutFromM x2, m, at least x1, may be infinite
 * @param decayM L, m, above 0
 */
record ConfinedJet(RoundJet free, double flatFromM, double shutFromM, double decayM) {
    static ConfinedJet unconfined(RoundJet free) {
        double inf = Double.POSITIVE_INFINITY;
        return new ConfinedJet(free, inf, inf, 1);
    }

    double centreSpeedMPerS(double x) {
        if (x <= flatFromM) {
            return free.centreSpeedMPerS(x);
        }
        double flat = free.centreSpeedMPerS(flatFromM) * Math.sqrt(flatFromM / Math.min(x, shutFromM));
        return x <= shutFromM ? flat : flat * shrink(x);
    }

    /** Half-width of a round jet of the same section, m: the geometric mean of both widths. */
    double halfWidthM(double x) {
        if (x <= flatFromM) {
            return free.halfWidthM(x);
        }
        return Math.sqrt(free.halfWidthM(flatFromM) * free.halfWidthM(Math.min(x, shutFromM)));
    }

    /** Volume flow, m³/s; its growth is the air drawn in, its fall the air given back. */
    double flowM3PerS(double x) {
        if (x <= flatFromM) {
            return free.flowM3PerS(x);
        }
        double flat = free.flowM3PerS(flatFromM) * Math.sqrt(Math.min(x, shutFromM) / flatFromM);
        return x <= shutFromM ? flat : flat * shrink(x);
    }

    /** Distance at which the centre speed has fallen to {@code speedMPerS}, m; 0 if it never exceeds it. */
    double reachM(double speedMPerS) {
        if (free.exitSpeedMPerS() <= speedMPerS) {
            return 0;
        }
        double x = RoundJet.DECAY * free.strengthM2PerS() / speedMPerS;
        if (x <= flatFromM) {
            return x;
        }
        double ratio = free.centreSpeedMPerS(flatFromM) / speedMPerS;
        x = flatFromM * ratio * ratio;
        return x <= shutFromM ? x : shutFromM + decayM * Math.log(centreSpeedMPerS(shutFromM) / speedMPerS);
    }

    private double shrink(double x) {
        return Math.exp(-(x - shutFromM) / decayM);
    }
}
