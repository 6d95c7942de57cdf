package baymist.spray;

import baymist.geom.Vec3;
import java.util.List;

/**
 * Neighbouring jets of one tip that grow into each other.
 *
 * <p>Momentum fluxes of free turbulent jets superpose, {@code u² = Σ u_j²} (Reichardt 1942; tested on rows of jets by Knystautas
 * 1964; both from memory): Reichardt's equation for the momentum flux is linear. All jets of a tip leave from one point, so each
 * falls as 1/x along any ray and the ratio m = u/u_i of the merged speed to the ray's own is one number a ray. The ray then carries
 * 1/m of its flow at m times its speed: summed over the rays of all jets the flow is that of the merged field and the momentum is kept
 * exactly. Two jets in one direction give one of twice the thrust; jets some 3 half-widths (17 degrees) apart do not feel each other.
 *
 * <p>Left out: the pull of neighbouring jets towards each other before they merge, the larger width of a merged group in the impaction
 * law (ASSUMED small against the scatter of that law), confinement (the ratio of the free jets is used throughout).
 */
public final class JetMerging {
    private static final double[] NONE = new double[0];

    /** Jets farther apart than this many half-widths do not count, u²/um² = 4^-16. */
    private static final double FAR = 4;

    private JetMerging() {}

    /**
     * Ratio of merged to own speed on each ray of a jet, 1 or more, [rays]; empty where no other jet is near.
     *
     * @param jets all jets of the tip; those without thrust do not count
     */
    static double[] factors(List<JetSource> jets, int own, RaySet rays) {
        JetSource me = jets.get(own);
        if (!(me.momentumN() > 0) || !hasNeighbour(jets, own)) {
            return NONE;
        }
        Vec3 u = me.direction().anyPerpendicular();
        Vec3 v = me.direction().cross(u);
        double[] m = new double[rays.count()];
        for (int i = 0; i < m.length; i++) {
            Vec3 ray = rays.direction(i, me.direction(), u, v);
            double mine = square(me, ray);
            double all = 0;
            for (JetSource jet : jets) {
                all += square(jet, ray);
            }
            m[i] = Math.sqrt(Math.max(1, all / mine));
        }
        return m;
    }

    /** Merged over own speed on the axis of the first of equal jets that stand on a row, each an angle (rad) from the last. */
    public static double ratioOnAxis(int jets, double angleRad) {
        double sum = 0;
        for (int j = 0; j < jets; j++) {
            Vec3 way = new Vec3(Math.cos(j * angleRad), Math.sin(j * angleRad), 0);
            sum += square(new JetSource(Vec3.ZERO, way, 1, 0, 0, 1), Vec3.X);
        }
        return Math.sqrt(sum);
    }

    private static boolean hasNeighbour(List<JetSource> jets, int own) {
        // each ray lies within some 3.5 half-widths of its own jet
        double least = Math.cos(Math.atan(2 * FAR * RoundJet.SPREAD));
        for (int j = 0; j < jets.size(); j++) {
            if (j != own
                    && jets.get(j).momentumN() > 0
                    && jets.get(j).direction().dot(jets.get(own).direction()) > least) {
                return true;
            }
        }
        return false;
    }

    /** u² of a jet along a ray over that of a jet of unit thrust on its axis; both fall alike along the ray. */
    private static double square(JetSource jet, Vec3 ray) {
        double cos = jet.direction().dot(ray);
        if (!(cos > 0) || !(jet.momentumN() > 0)) {
            return 0;
        }
        double tan2 = (1 - Math.min(1, cos * cos)) / (cos * cos);
        double off = Math.log(2) * tan2 / (RoundJet.SPREAD * RoundJet.SPREAD);
        return jet.momentumN() / (cos * cos) * Math.exp(-2 * off);
    }
}
