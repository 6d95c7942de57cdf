package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bundles on plates of square surfels, x and y from -0.2 m to 0.2 m, that look up at a tip above them. */
class FootprintTest {
    private static final int N = 40;
    private static final double H = 0.01;
    private static final double[] NO_OPENING = {};

    /** One plate, cut in two along x = 0 if wanted: then no edge is shared across the cut. */
    private static SurfelSet plate(boolean cut) {
        int count = N * N;
        double[][] d = new double[7][count];
        int[] closure = new int[count];
        int[] start = new int[count + 1];
        int[] neighbour = new int[4 * count];
        int n = 0;
        for (int s = 0; s < count; s++) {
            int i = s % N;
            int j = s / N;
            d[0][s] = H * H;
            d[3][s] = 1;
            d[4][s] = (i + 0.5) * H - 0.2;
            d[5][s] = (j + 0.5) * H - 0.2;
            closure[s] = SurfelSet.STRUCTURE;
            start[s] = n;
            for (int[] step : new int[][] {{0, -1}, {-1, 0}, {1, 0}, {0, 1}}) {
                int a = i + step[0];
                int b = j + step[1];
                boolean across = cut && (i < N / 2) != (a < N / 2);
                if (a >= 0 && b >= 0 && a < N && b < N && !across) {
                    neighbour[n++] = a + N * b;
                }
            }
        }
        start[count] = n;
        return new SurfelSet(
                new int[count],
                new byte[count],
                new int[count],
                closure,
                d[0],
                d[1],
                d[2],
                d[3],
                d[4],
                d[5],
                d[6],
                start,
                java.util.Arrays.copyOf(neighbour, n));
    }

    private static int surfelAt(double x, double y) {
        int i = (int) Math.floor((x + 0.2) / H);
        int j = (int) Math.floor((y + 0.2) / H);
        return i < 0 || j < 0 || i >= N || j >= N ? -1 : i + N * j;
    }

    /** Share of a jet's liquid on each surfel, from a tip at a height, the jet tilted off the plate's normal. */
    private static double[] film(
            SurfelSet plate, double heightM, double tilt, int rays, int stations, double[] missed) {
        Vec3 tip = new Vec3(-heightM * Math.tan(tilt), 0, heightM);
        Vec3 axis = new Vec3(Math.sin(tilt), 0, -Math.cos(tilt));
        Vec3 u = axis.anyPerpendicular();
        Vec3 v = axis.cross(u);
        double[] film = new double[plate.count()];
        Footprint footprint = new Footprint(plate, NO_OPENING);
        footprint.jet(axis, u, v);
        for (int k = 0; k < stations; k++) {
            RaySet set = RaySet.ofLiquid(rays, k, 0);
            for (int i = 0; i < rays; i++) {
                Vec3 way = set.direction(i, axis, u, v);
                Vec3 at = tip.plus(-tip.z() / way.z(), way);
                int struck = surfelAt(at.x(), at.y());
                if (struck < 0) {
                    missed[0] += set.liquidShare(i) / stations;
                    continue;
                }
                footprint.gather(tip, set.tangentU(i), set.tangentV(i), set.angle(i), struck);
                for (int n = 0; n < footprint.count(); n++) {
                    film[footprint.surfel(n)] += footprint.weight(n) * set.liquidShare(i) / stations;
                }
            }
        }
        return film;
    }

    @ParameterizedTest
    @CsvSource({
        "0.3, 0, 128, 0.16",
        "0.3, 35, 128, 0.16",
        "0.15, 60, 128, 0.16",
        "0.3, 0, 2048, 0.08",
        "0.15, 60, 2048, 0.08"
    })
    void filmOnAPlateIsTheGaussianOfTheLiquid(double heightM, double tiltDeg, int rays, double meanError) {
        // Closed form: flux 2^(-q^2 (1 + 1/k^2)) times the solid angle of a piece, ln2 (1 + 1/k^2)/(pi S^2) in front
        // (docs/theory/spray.md, 3)
        double tilt = Math.toRadians(tiltDeg);
        SurfelSet plate = plate(false);
        double[] missed = new double[1];
        double[] film = film(plate, heightM, tilt, rays, 3, missed);
        double width = 1 + 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH);
        Vec3 tip = new Vec3(-heightM * Math.tan(tilt), 0, heightM);
        Vec3 axis = new Vec3(Math.sin(tilt), 0, -Math.cos(tilt));
        double most = 0;
        double off = 0;
        double all = 0;
        double inside = 0;
        int wrong = 0;
        for (int s = 0; s < film.length; s++) {
            Vec3 way = new Vec3(plate.centreX()[s], plate.centreY()[s], 0).minus(tip);
            double x = way.dot(axis);
            double q2 = (way.dot(way) / (x * x) - 1) / (RoundJet.SPREAD * RoundJet.SPREAD);
            double exact = plate.areaM2()[s]
                    * heightM
                    / (x * x * x)
                    * Math.log(2)
                    * width
                    / (Math.PI * RoundJet.SPREAD * RoundJet.SPREAD)
                    * RaySet.liquidDensity(q2);
            most = Math.max(most, exact);
            off += Math.abs(film[s] - exact);
            all += film[s];
            inside += exact;
            wrong += (film[s] > 0) != (exact > 0) ? 1 : 0;
        }
        assertEquals(1, all + missed[0], 1e-12, "no mass is made or lost");
        assertTrue(off < meanError * inside, "mean error " + off / inside);
        assertTrue(wrong < 0.02 * film.length, wrong + " surfels bare or wet against the law");
        assertTrue(most > 0 && inside > 0.7);
    }

    @Test
    void fewRaysLeaveNoGapsWithinThePattern() {
        double[] film = film(plate(false), 0.3, 0, 32, 1, new double[1]);
        double edge = RaySet.EDGE * RoundJet.SPREAD * 0.3;
        for (int s = 0; s < film.length; s++) {
            double r = Math.hypot((s % N + 0.5) * H - 0.2, (s / N + 0.5) * H - 0.2);
            assertTrue(r > 0.85 * edge || film[s] > 0, "bare at " + r + " of " + edge);
            assertTrue(r < edge || film[s] == 0, "film beyond the edge");
        }
    }

    @Test
    void nothingIsSpreadAcrossASheet() {
        SurfelSet plate = plate(true);
        Footprint footprint = new Footprint(plate, NO_OPENING);
        footprint.jet(Vec3.Z.negate(), Vec3.X, Vec3.Y);
        footprint.gather(new Vec3(0, 0, 0.3), -0.01, 0, 0.002, surfelAt(-0.003, 0.001));
        assertTrue(footprint.count() > 10);
        for (int n = 0; n < footprint.count(); n++) {
            assertTrue(plate.centreX()[footprint.surfel(n)] < 0);
        }
    }

    @Test
    void aBundleNarrowerThanASurfelStaysOnIt() {
        Footprint footprint = new Footprint(plate(false), NO_OPENING);
        footprint.jet(Vec3.Z.negate(), Vec3.X, Vec3.Y);
        footprint.gather(new Vec3(0, 0, 0.3), 0.003, 0.003, 1e-9, surfelAt(0.001, 0.001));
        assertEquals(1, footprint.count());
        assertEquals(1, footprint.weight(0));
        assertTrue(footprint.isAlone(0));
    }
}
