package baymist.fog;

/**
 * Links between cells of two levels, and those that share a side of a cell with another: what comes in there is booked link by link.
 * Sorted by the levels of the finer and the coarser cell. Arranged anew for each window, then only read.
 */
final class FogAcross {
    private static final int KINDS = RateLevels.COARSEST + 1;

    /** Places of the finer and the coarser cell times the lanes. */
    int[] finer = new int[0];

    int[] coarser = new int[0];
    int[] link = new int[0];
    boolean[] finerIsHigh = new boolean[0];

    private final int[] start = new int[KINDS * KINDS + 1];

    int count() {
        return start[KINDS * KINDS];
    }

    /** First entry between two levels, the finer first. */
    int start(int fine, int coarse) {
        return start[KINDS * fine + coarse];
    }

    int end(int fine, int coarse) {
        return start[KINDS * fine + coarse + 1];
    }

    /** Lists the links of a schedule whose places are known. */
    void arrange(FogLinks links, RateLevels levels, int[] place, int lanes) {
        java.util.Arrays.fill(start, 0);
        byte[] of = levels.ofCell;
        for (int l = 0; l < links.count(); l++) {
            int a = of[links.low[l]];
            int b = of[links.high[l]];
            if (a != b || links.extra[l]) {
                start[KINDS * Math.min(a, b) + Math.max(a, b) + 1]++;
            }
        }
        for (int i = 0; i + 1 < start.length; i++) {
            start[i + 1] += start[i];
        }
        grow();
        int[] next = start.clone();
        for (int l = 0; l < links.count(); l++) {
            int low = links.low[l];
            int high = links.high[l];
            if (of[low] == of[high] && !links.extra[l]) {
                continue;
            }
            boolean flip = of[high] < of[low];
            int fine = flip ? high : low;
            int coarse = flip ? low : high;
            int i = next[KINDS * of[fine] + of[coarse]]++;
            finer[i] = lanes * place[fine];
            coarser[i] = lanes * place[coarse];
            link[i] = l;
            finerIsHigh[i] = flip;
        }
    }

    private void grow() {
        if (link.length < count()) {
            int room = count() + count() / 4;
            finer = new int[room];
            coarser = new int[room];
            link = new int[room];
            finerIsHigh = new boolean[room];
        }
    }
}
