package baymist.fog;

import java.util.List;

/**
 * Who moves when in one window: levels of cells and links that hold for every bin, and the lists that the kernels run through, finest level first.
 * Arranged anew for each window, then only read.
 */
final class FogSchedule {
    private final FogLinks links;
    private final int[] falling;
    final RateLevels levels;

    /** Cells by level, in each level those with finer links last; where those begin and where each level ends. */
    final int[] cells;

    final int[] borderStart = new int[RateLevels.COARSEST + 1];
    final int[] cellEnd = new int[RateLevels.COARSEST + 1];

    /** Links of donor cells: nothing falls, droplets fall, and of both kinds those between cells of two levels. */
    final FogSides give;

    final FogSides giveFalling;
    final FogSides giveAcross;

    /** Links with slopes: nothing falls, droplets fall, and of both kinds those with cells of more than one level. */
    final FogSides lean;

    final FogSides leanFalling;
    final FogSides leanAcross;

    /** Where each level ends in the lists, in their order above. */
    final int[][] end = new int[6][RateLevels.COARSEST + 1];

    private final boolean[] border;

    FogSchedule(FogLinks links, int cellCount, int[] falling) {
        this.links = links;
        this.falling = falling;
        levels = new RateLevels(links, cellCount);
        cells = new int[cellCount];
        border = new boolean[cellCount];
        int n = links.count();
        give = new FogSides(n);
        giveFalling = new FogSides(n);
        giveAcross = new FogSides(n);
        lean = new FogSides(n);
        leanFalling = new FogSides(2 * n);
        leanAcross = new FogSides(2 * n);
    }

    /** Writes the lists for the chosen levels and the groups' rates. */
    void arrange(List<FogGroup> groups) {
        FogSides[] lists = {give, giveFalling, giveAcross, lean, leanFalling, leanAcross};
        for (FogSides list : lists) {
            list.clear();
        }
        markBorder();
        int place = 0;
        for (int k = 0; k <= levels.coarsest(); k++) {
            place = arrangeCells(k, place);
            for (int l = 0; l < links.count(); l++) {
                if (levels.ofLink[l] == k) {
                    arrangeGive(l);
                    arrangeLean(l, groups);
                }
            }
            for (int i = 0; i < lists.length; i++) {
                end[i][k] = lists[i].count;
            }
        }
    }

    private void markBorder() {
        java.util.Arrays.fill(border, false);
        for (int l = 0; l < links.count(); l++) {
            int a = levels.ofCell[links.low[l]];
            int b = levels.ofCell[links.high[l]];
            if (a != b) {
                border[a > b ? links.low[l] : links.high[l]] = true;
            }
        }
    }

    private int arrangeCells(int k, int from) {
        int place = from;
        for (int kind = 0; kind < 2; kind++) {
            borderStart[k] = place;
            for (int c = 0; c < cells.length; c++) {
                if (levels.ofCell[c] == k && border[c] == (kind == 1)) {
                    cells[place++] = c;
                }
            }
        }
        cellEnd[k] = place;
        return place;
    }

    private void arrangeGive(int l) {
        int a = links.low[l];
        int b = links.high[l];
        int place = falling[l];
        (place < 0 ? give : giveFalling).add(a, b, a, place < 0 ? l : place, 1, levels.ofCell);
        if (levels.ofCell[a] != levels.ofCell[b]) {
            giveAcross.add(a, b, a, l, 1, levels.ofCell);
        }
    }

    private void arrangeLean(int l, List<FogGroup> groups) {
        if (links.behindLow[l] >= 0 && leans(l, 1, groups)) {
            addLean(l, links.low[l], links.high[l], links.behindLow[l], 1);
        }
        if (links.behindHigh[l] >= 0 && leans(l, -1, groups)) {
            addLean(l, links.high[l], links.low[l], links.behindHigh[l], -1);
        }
    }

    private void addLean(int l, int donor, int receiver, int behind, int sense) {
        byte[] level = levels.ofCell;
        boolean even = level[donor] == level[receiver] && level[donor] == level[behind];
        int place = falling[l];
        if (!even) {
            leanAcross.add(donor, receiver, behind, l, sense, level);
        } else if (place < 0) {
            lean.add(donor, receiver, behind, l, sense, level);
        } else {
            leanFalling.add(donor, receiver, behind, place, sense, level);
        }
    }

    /** Whether any bin's drift leans this way. Where nothing falls all bins are alike. */
    private boolean leans(int l, int sense, List<FogGroup> groups) {
        int place = falling[l];
        if (place < 0) {
            return sense * groups.get(0).lean[l] > 0;
        }
        for (FogGroup g : groups) {
            for (int q = 0; q < FogGroup.LANES; q++) {
                if (sense * g.leanOf[FogGroup.LANES * place + q] > 0) {
                    return true;
                }
            }
        }
        return false;
    }
}
