package baymist.spray;

import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import java.util.Arrays;

/**
 * Surfels over which a ray's liquid is spread: those round the struck one that lie within the bundle for which the ray stands.
 *
 * <p>A ray stands for a solid angle of its jet. Leaving all its liquid on one surfel would make film depend on where rays happen to fall;
 * so the surfels that hang together with the struck one (edge to edge, never across a sheet), look towards the tip and lie within the
 * bundle share it. Each takes by the liquid that the jet throws at it, its own solid angle times the jet's flux in its own direction, and by a
 * weight that falls from the middle of the bundle to its edge, {@code 1 - (δ/ρ)²} (Epanechnikov 1969, a kernel estimate). All weights are
 * divided by their sum, so no mass is made or lost. Where bundles overlap evenly the film is that of the jet's own law, whatever the rays.
 *
 * <p>Holds scratch space; used by one thread.
 */
final class Footprint {
    /** Solid angle of a bundle over that for which a ray stands: neighbouring bundles overlap, so that their sum is even. */
    static final double OVERLAP = 12;

    private final SurfelSet surfels;
    private final double[] openFraction;
    private final int[] seen;
    private int round;
    private int[] surfel = new int[64];
    private double[] weight = new double[64];
    private double[] axial = new double[64];
    private double[] off2 = new double[64];
    private int count;

    private double originX;
    private double originY;
    private double originZ;
    private Vec3 axis = Vec3.X;
    private Vec3 u = Vec3.Y;
    private Vec3 v = Vec3.Z;
    private double middleU;
    private double middleV;
    private double radius2;

    Footprint(SurfelSet surfels, double[] openFraction) {
        this.surfels = surfels;
        this.openFraction = openFraction;
        this.seen = new int[surfels.count()];
    }

    /** The jet whose rays come next. */
    void jet(Vec3 jetAxis, Vec3 jetU, Vec3 jetV) {
        axis = jetAxis;
        u = jetU;
        v = jetV;
    }

    /**
     * Gathers the footprint of a bundle.
     *
     * @param origin where the ray leaves the tip; for drops that have sunk, as much lower as they have
     * @param tangentU,tangentV tangents of the ray's angle to the jet's axis
     * @param angle solid angle for which the ray stands
     * @param struck surfel at the ray's end
     */
    void gather(Vec3 origin, double tangentU, double tangentV, double angle, int struck) {
        originX = origin.x();
        originY = origin.y();
        originZ = origin.z();
        middleU = tangentU;
        middleV = tangentV;
        radius2 = OVERLAP * angle / Math.PI;
        count = 0;
        if (++round == 0) {
            Arrays.fill(seen, 0);
            round = 1;
        }
        seen[struck] = round;
        double sum = look(struck);
        if (count == 0) {
            alone(struck);
            return;
        }
        for (int head = 0; head < count; head++) {
            int s = surfel[head];
            for (int n = surfels.neighbourStart()[s]; n < surfels.neighbourStart()[s + 1]; n++) {
                int other = surfels.neighbour()[n];
                if (seen[other] != round) {
                    seen[other] = round;
                    sum += look(other);
                }
            }
        }
        for (int n = 0; n < count; n++) {
            weight[n] /= sum;
        }
    }

    /** The bundle is narrower than the surfel: it alone takes all. */
    private void alone(int struck) {
        count = 1;
        surfel[0] = struck;
        weight[0] = 1;
        off2[0] = Double.NaN;
        axial[0] = Double.NaN;
    }

    /** Takes a surfel in if it looks towards the tip and lies within bundle and jet; its weight, else 0. */
    private double look(int s) {
        int closure = surfels.closure()[s];
        if (closure >= 0 && openFraction[closure] > 0) {
            return 0;
        }
        double dx = surfels.centreX()[s] - originX;
        double dy = surfels.centreY()[s] - originY;
        double dz = surfels.centreZ()[s] - originZ;
        double facing = -(dx * surfels.normalX()[s] + dy * surfels.normalY()[s] + dz * surfels.normalZ()[s]);
        double x = dx * axis.x() + dy * axis.y() + dz * axis.z();
        if (facing <= 0 || x <= 0) {
            return 0;
        }
        double tu = (dx * u.x() + dy * u.y() + dz * u.z()) / x;
        double tv = (dx * v.x() + dy * v.y() + dz * v.z()) / x;
        double apart2 = (tu - middleU) * (tu - middleU) + (tv - middleV) * (tv - middleV);
        double q2 = (tu * tu + tv * tv) / (RoundJet.SPREAD * RoundJet.SPREAD);
        double flux = apart2 < radius2 ? RaySet.liquidDensity(q2) : 0;
        if (!(flux > 0)) {
            return 0;
        }
        double share = surfels.areaM2()[s] * facing / (x * x * x) * flux * (1 - apart2 / radius2);
        add(s, share, x, q2);
        return share;
    }

    private void add(int s, double share, double x, double q2) {
        if (count == surfel.length) {
            surfel = Arrays.copyOf(surfel, 2 * count);
            weight = Arrays.copyOf(weight, 2 * count);
            axial = Arrays.copyOf(axial, 2 * count);
            off2 = Arrays.copyOf(off2, 2 * count);
        }
        surfel[count] = s;
        weight[count] = share;
        axial[count] = x;
        off2[count++] = q2;
    }

    int count() {
        return count;
    }

    int surfel(int n) {
        return surfel[n];
    }

    /** Share of the bundle that flies at it; all together 1. */
    double weight(int n) {
        return weight[n];
    }

    /** Whether the struck surfel alone is in it: then the ray's own place counts. */
    boolean isAlone(int n) {
        return Double.isNaN(off2[n]);
    }

    /** Distance along the jet's axis, m. */
    double axialM(int n) {
        return axial[n];
    }

    /** Speed there over that on the jet's axis. */
    double speedShare(int n) {
        return Math.pow(2, -off2[n]);
    }

    /** Cosine of the angle between the straight way from the tip and the surfel's normal, 0..1. */
    double incidence(int n) {
        int s = surfel[n];
        double dx = surfels.centreX()[s] - originX;
        double dy = surfels.centreY()[s] - originY;
        double dz = surfels.centreZ()[s] - originZ;
        double facing = -(dx * surfels.normalX()[s] + dy * surfels.normalY()[s] + dz * surfels.normalZ()[s]);
        return Math.min(1, facing / Math.sqrt(dx * dx + dy * dy + dz * dz));
    }
}
