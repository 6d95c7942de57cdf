package baymist.run;

import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.voxel.FaceSet;
import baymist.voxel.OpeningUse;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/** Which bays lie how many openings away from others, and how air gets out of those that are left out. Immutable. */
final class BayRings {
    private final VoxelGrid grid;
    private final List<OpeningUse> uses;
    /** Open share of each opening with the trigger held, the entry of the wand included; and the largest at any time, [openings]. */
    private final double[] spraying;

    private final double[] ever;

    private BayRings(VoxelGrid grid, List<OpeningUse> uses, double[] spraying, double[] ever) {
        this.grid = grid;
        this.uses = uses;
        this.spraying = spraying;
        this.ever = ever;
    }

    static BayRings of(Cavity cavity, VoxelGrid grid) {
        double[] spraying = OpenFractions.pass(cavity.openings(), -1, 0);
        double[] hanging = OpenFractions.hang(cavity.openings());
        double[] ever = new double[spraying.length];
        for (int o = 0; o < ever.length; o++) {
            ever[o] = Math.max(spraying[o], hanging[o]);
        }
        return new BayRings(grid, OpeningUse.of(cavity, grid), spraying, ever);
    }

    /** The given bays and those at most so many openings further that stand open while spraying or hanging, [bays]. */
    boolean[] around(boolean[] bays, int rings) {
        boolean[] kept = bays.clone();
        for (int ring = 0; ring < rings; ring++) {
            boolean[] inner = kept.clone();
            for (OpeningUse use : uses) {
                if (ever[use.opening()] > 0 && use.bays().stream().anyMatch(b -> inner[b])) {
                    use.bays().forEach(b -> kept[b] = true);
                }
            }
        }
        return kept;
    }

    /** Cells of the bays. */
    long cells(boolean[] kept) {
        long sum = 0;
        for (int b = 0; b < kept.length; b++) {
            sum += kept[b] ? grid.bays().get(b).cells() : 0;
        }
        return sum;
    }

    /**
     * Factors on the openings' areas through which the air of a part leaves, [openings]: 1 but for those that are cut. There it is the share of
     * the opening that lies between a kept bay and one left out, and behind it comes the resistance of the ways out of the bays left out: two orifices one after
     * the other pass as much as one of area a b / sqrt(a² + b²) (theory: docs/theory/voxels.md, 12). Bays left out without a way out take no air.
     */
    double[] airFactors(boolean[] kept, double[] areaM2) {
        int[] room = rooms(kept);
        double[] cutM2 = new double[kept.length];
        double[] outM2 = new double[kept.length];
        double[] share = cutShares(kept);
        for (OpeningUse use : uses) {
            int o = use.opening();
            double open = spraying[o] * areaM2[o];
            for (int b : use.bays()) {
                if (kept[b]) {
                    continue;
                }
                outM2[room[b]] += use.outside() ? open : 0;
                cutM2[room[b]] += use.bays().stream().anyMatch(other -> kept[other]) ? open * share[o] : 0;
            }
        }
        double[] factor = new double[areaM2.length];
        for (int o = 0; o < factor.length; o++) {
            factor[o] = 1;
        }
        for (OpeningUse use : uses) {
            List<Integer> beyond = use.bays().stream().filter(b -> !kept[b]).toList();
            if (beyond.isEmpty() || beyond.size() == use.bays().size()) {
                continue;
            }
            int r = room[beyond.get(0)];
            double both = Math.hypot(cutM2[r], outM2[r]);
            factor[use.opening()] = share[use.opening()] * (both > 0 ? outM2[r] / both : 0);
        }
        return factor;
    }

    /** Rooms of bays left out that hang together through openings open while spraying, by their first bay, [bays]. */
    private int[] rooms(boolean[] kept) {
        int[] room = new int[kept.length];
        for (int b = 0; b < room.length; b++) {
            room[b] = b;
        }
        List<List<Integer>> links = new ArrayList<>();
        for (OpeningUse use : uses) {
            List<Integer> beyond = use.bays().stream().filter(b -> !kept[b]).toList();
            if (beyond.size() > 1 && spraying[use.opening()] > 0) {
                links.add(beyond);
            }
        }
        for (List<Integer> link : links) {
            for (int b : link) {
                join(room, link.get(0), b);
            }
        }
        for (int b = 0; b < room.length; b++) {
            room[b] = root(room, b);
        }
        return room;
    }

    private static void join(int[] room, int a, int b) {
        int ra = root(room, a);
        int rb = root(room, b);
        room[Math.max(ra, rb)] = Math.min(ra, rb);
    }

    private static int root(int[] room, int bay) {
        int at = bay;
        while (room[at] != at) {
            at = room[at];
        }
        return at;
    }

    /** Share of each opening's faces that lie between a kept bay and one left out, [openings]. */
    private double[] cutShares(boolean[] kept) {
        double[] cut = new double[spraying.length];
        FaceSet f = grid.faces();
        for (int e = 0; e < f.count(); e++) {
            int o = f.opening()[e];
            if (o >= 0 && kept[grid.bayOfCell(f.low()[e])] != kept[grid.bayOfCell(f.high()[e])]) {
                cut[o] += f.areaM2()[e];
            }
        }
        for (OpeningUse use : uses) {
            cut[use.opening()] = use.areaM2() > 0 ? cut[use.opening()] / use.areaM2() : 0;
        }
        return cut;
    }
}
