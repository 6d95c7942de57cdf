package baymist.field;

import baymist.access.Surroundings;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.spray.JetReach;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Share of a jet's liquid that lands on a region, from each cell, with the jet turned where it lands most: rays go from the region's pieces to
 * the cells, so that only what is in sight counts.
 *
 * @param wand wand whose strongest jet it is
 * @param share 0..1, [cells]; read-only
 * @param aim unit vectors along the jet, [3 * cells], zero where nothing is in sight; read-only
 * @param seen share of the region's area in sight, 0..1, [cells]; read-only
 */
public record JetField(String wand, double[] share, double[] aim, double[] seen) {
    /** Pairs of cell and piece that are looked at; a large region on many cells is sampled. */
    private static final long PAIRS = 4_000_000;

    private static final int FEWEST = 24;
    private static final int MOST = 400;

    /** A piece is looked at from this far in front of its sheet, m (ASSUMED: above the rounding of its centroid). */
    private static final double BEFORE_M = 1e-3;

    /** Rounds in which an aim moves to the middle of what it strikes. */
    private static final int ROUNDS = 4;

    private static final int BLOCK = 256;

    /** Pieces of the region: place, normal, area that each stands for. */
    private record Pieces(Vec3[] at, Vec3[] normal, double[] areaM2, double allM2) {}

    public static JetField of(
            VoxelGrid grid, Surroundings around, FieldRegion region, JetReach jet, String wand, Workers workers) {
        Pieces pieces = pieces(grid, region);
        int cells = grid.cellCount();
        double[] share = new double[cells];
        double[] aim = new double[3 * cells];
        double[] seen = new double[cells];
        workers.forBlocks(cells, BLOCK, (from, to) -> {
            View view = new View(around, pieces, jet);
            for (int c = from; c < to; c++) {
                view.look(grid.centre(c));
                seen[c] = view.seenM2 / pieces.allM2();
                Vec3 best = view.bestAim();
                share[c] = view.bestShare;
                aim[3 * c] = best.x();
                aim[3 * c + 1] = best.y();
                aim[3 * c + 2] = best.z();
            }
        });
        return new JetField(wand, share, aim, seen);
    }

    /** Every so many-th surfel stands for its neighbours in the order of their cells. */
    private static Pieces pieces(VoxelGrid grid, FieldRegion region) {
        SurfelSet s = grid.surfels();
        int[] members = region.surfels();
        long wanted = Math.max(FEWEST, Math.min(MOST, PAIRS / Math.max(1, grid.cellCount())));
        int n = (int) Math.min(members.length, wanted);
        Vec3[] at = new Vec3[n];
        Vec3[] normal = new Vec3[n];
        double[] area = new double[n];
        for (int i = 0; i < n; i++) {
            int from = (int) ((long) members.length * i / n);
            int to = (int) ((long) members.length * (i + 1) / n);
            int middle = members[(from + to) / 2];
            normal[i] = Regions.normal(s, middle);
            at[i] = Regions.centre(s, middle).plus(BEFORE_M, normal[i]);
            for (int k = from; k < to; k++) {
                area[i] += s.areaM2()[members[k]];
            }
        }
        return new Pieces(at, normal, area, Arrays.stream(area).sum());
    }

    /** What is seen of the region from one place; scratch of one thread. */
    private static final class View {
        private final Surroundings around;
        private final Pieces pieces;
        private final JetReach jet;
        private final Ray ray = new Ray();
        private final int[] piece;
        private final Vec3[] way;
        private final double[] distance;
        private final double[] incidence;
        private int count;
        double seenM2;
        double bestShare;

        View(Surroundings around, Pieces pieces, JetReach jet) {
            this.around = around;
            this.pieces = pieces;
            this.jet = jet;
            int n = pieces.at().length;
            piece = new int[n];
            way = new Vec3[n];
            distance = new double[n];
            incidence = new double[n];
        }

        void look(Vec3 tip) {
            count = 0;
            seenM2 = 0;
            for (int i = 0; i < pieces.at().length; i++) {
                Vec3 back = tip.minus(pieces.at()[i]);
                double d = back.length();
                double cos = d > 0 ? back.dot(pieces.normal()[i]) / d : 0;
                if (!(cos > 0)) {
                    continue;
                }
                ray.set(pieces.at()[i], back, 0, 1);
                if (around.bvh().closestHit(ray, TriangleFilter.ALL)) {
                    continue;
                }
                seenM2 += pieces.areaM2()[i];
                piece[count] = i;
                way[count] = back.times(-1 / d);
                distance[count] = d;
                incidence[count++] = cos;
            }
        }

        /** The aim that lands most: from the best single piece and from the middle of all, each moved to the middle of what it strikes. */
        Vec3 bestAim() {
            bestShare = 0;
            Vec3 best = Vec3.ZERO;
            if (count == 0) {
                return best;
            }
            Vec3 single = way[0];
            double most = -1;
            Vec3 middle = Vec3.ZERO;
            for (int i = 0; i < count; i++) {
                double alone = Math.min(1, jet.meeting(distance[i], 1, incidence[i], area(i)))
                        * jet.landingAt(distance[i], 1, incidence[i]);
                middle = middle.plus(alone, way[i]);
                if (alone > most) {
                    most = alone;
                    single = way[i];
                }
            }
            Vec3[] starts = middle.length() > 0 ? new Vec3[] {single, middle.unit()} : new Vec3[] {single};
            for (Vec3 start : starts) {
                Vec3 aim = start;
                for (int round = 0; round <= ROUNDS; round++) {
                    double share = share(aim);
                    if (share > bestShare) {
                        bestShare = share;
                        best = aim;
                    }
                    Vec3 next = moved(aim);
                    aim = next.length() > 0 ? next.unit() : aim;
                }
            }
            return best;
        }

        private double area(int i) {
            return pieces.areaM2()[piece[i]];
        }

        /** Landed share of a jet with this aim; pieces that together would catch more than all of it are held to 1. */
        private double share(Vec3 aim) {
            double meets = 0;
            double lands = 0;
            for (int i = 0; i < count; i++) {
                double cosOff = aim.dot(way[i]);
                double m = jet.meeting(distance[i], cosOff, incidence[i], area(i));
                if (m > 0) {
                    meets += m;
                    lands += m * jet.landingAt(distance[i], cosOff, incidence[i]);
                }
            }
            return meets > 1 ? lands / meets : lands;
        }

        private Vec3 moved(Vec3 aim) {
            Vec3 sum = Vec3.ZERO;
            for (int i = 0; i < count; i++) {
                sum = sum.plus(jet.share(distance[i], Math.min(1, aim.dot(way[i])), incidence[i], area(i)), way[i]);
            }
            return sum;
        }
    }
}
