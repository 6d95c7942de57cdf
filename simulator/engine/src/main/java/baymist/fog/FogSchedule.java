package baymist.fog;

import baymist.spray.SprayHits;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Who moves when in one window: levels of cells and links that hold for every bin, cells sorted by level, finest first, with their
 * neighbours of the same
 * level beside them, and lists of the links that need more. Arranged anew for each window, then only read.
 */
final class FogSchedule {
    private final FogLinks links;
    private final FogCommon common;
    final RateLevels levels;
    final double[] perM3;

    /** Sides of a cell that nothing falls through, and those that droplets fall through. */
    final int[] levelSides;

    final int[] fallSides;

    /** Cell at each place, and place of each cell. In a level, cells with walls, vents or beams come last. */
    final int[] cell;

    final int[] place;

    /** Where each level begins, where its sinks begin, and where it ends. */
    final int[] start = new int[RateLevels.COARSEST + 1];

    final int[] sinkStart = new int[RateLevels.COARSEST + 1];
    final int[] end = new int[RateLevels.COARSEST + 1];

    /**
     * Places of the neighbours of the same level times the lanes, level sides first; the place itself where there is none, [6 * places].
     */
    final int[] near;

    /** Share of a neighbour's concentration that comes in through links that nothing falls through, [places * level sides]. */
    final float[] share;

    /** Values a place in the arrays of groups. */
    final int lanes;

    /** Sinks of finer levels: number of the first sink of each level among all, [levels]. */
    final int[] firstSink = new int[RateLevels.COARSEST + 1];

    final FogAcross across = new FogAcross();

    /** Links with slopes: nothing falls, droplets fall, and of both kinds those with cells of more than one level. */
    final FogLeans lean = new FogLeans();

    final FogLeans leanFalling = new FogLeans();
    final FogLeans leanAcross = new FogLeans();
    final FogLeans leanAcrossFalling = new FogLeans();
    private final FogLeans[] leans = {lean, leanFalling, leanAcross, leanAcrossFalling};

    /** Entries of the spray that bring fog, by level of their cells, the places of those, and where each level begins. */
    int[] sprayEntry = new int[0];

    int[] sprayPlace = new int[0];
    final int[] sprayStart = new int[RateLevels.COARSEST + 2];

    /** Whether walls or vents take from a cell, [cells]; and beams too, in this window. */
    private final boolean[] fixedSink;

    private final boolean[] sink;

    FogSchedule(FogLinks links, FogCommon common, boolean[] fixedSink, int lanes) {
        this.links = links;
        this.common = common;
        this.fixedSink = fixedSink;
        this.lanes = lanes;
        perM3 = common.perM3;
        int cells = fixedSink.length;
        levels = new RateLevels(links, cells);
        levelSides = sides(false);
        fallSides = sides(true);
        cell = new int[cells];
        place = new int[cells];
        near = new int[6 * cells];
        share = new float[levelSides.length * cells];
        sink = new boolean[cells];
    }

    private int[] sides(boolean falling) {
        int[] found = new int[6];
        int count = 0;
        for (int d = 0; d < 6; d++) {
            if (common.fallsAlong[d / 2] == falling) {
                found[count++] = d;
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** Sorts cells, and links across, for the chosen levels. */
    void sort(@Nullable SprayHits spray) {
        System.arraycopy(fixedSink, 0, sink, 0, sink.length);
        if (spray != null) {
            for (int c : spray.scourCell()) {
                sink[c] = true;
            }
        }
        int[] next = new int[2 * (RateLevels.COARSEST + 1) + 1];
        for (int c = 0; c < cell.length; c++) {
            next[2 * levels.ofCell[c] + (sink[c] ? 1 : 0) + 1]++;
        }
        for (int i = 0; i + 1 < next.length; i++) {
            next[i + 1] += next[i];
        }
        for (int k = 0; k <= RateLevels.COARSEST; k++) {
            start[k] = next[2 * k];
            sinkStart[k] = next[2 * k + 1];
            end[k] = next[2 * k + 2];
            firstSink[k] = k == 0 ? 0 : firstSink[k - 1] + end[k - 1] - sinkStart[k - 1];
        }
        for (int c = 0; c < cell.length; c++) {
            int p = next[2 * levels.ofCell[c] + (sink[c] ? 1 : 0)]++;
            cell[p] = c;
            place[c] = p;
        }
        across.arrange(links, levels, place, lanes);
        sortSpray(spray);
    }

    /** Cells that walls, vents or beams take from. */
    int sinks() {
        int last = RateLevels.COARSEST;
        return firstSink[last] + end[last] - sinkStart[last];
    }

    private void sortSpray(@Nullable SprayHits spray) {
        Arrays.fill(sprayStart, 0);
        if (spray == null) {
            sprayEntry = new int[0];
            return;
        }
        int[] cells = spray.fogCell();
        sprayEntry = new int[cells.length];
        sprayPlace = new int[cells.length];
        for (int c : cells) {
            sprayStart[levels.ofCell[c] + 1]++;
        }
        for (int k = 0; k + 1 < sprayStart.length; k++) {
            sprayStart[k + 1] += sprayStart[k];
        }
        int[] next = sprayStart.clone();
        for (int i = 0; i < cells.length; i++) {
            int at = next[levels.ofCell[cells[i]]]++;
            sprayEntry[at] = i;
            sprayPlace[at] = place[cells[i]];
        }
    }

    /** Finds the neighbours of places from..to-1 and what comes in from them. */
    void findNear(int from, int to) {
        byte[] level = levels.ofCell;
        int flat = levelSides.length;
        for (int p = from; p < to; p++) {
            int c = cell[p];
            int own = level[c];
            double factor = levels.stepS(own) * perM3[c];
            int n = 6 * p;
            for (int i = 0; i < flat; i++) {
                int d = levelSides[i];
                int other = links.beside[6 * c + d];
                boolean none = other == c || level[other] != own;
                near[n++] = lanes * (none ? p : place[other]);
                share[flat * p + i] = none
                        ? 0
                        : Dither.round(
                                factor * ((d & 1) != 0 ? common.down : common.up)[links.side[6 * c + d]],
                                37 * p + 3 * i);
            }
            for (int d : fallSides) {
                int other = links.beside[6 * c + d];
                near[n++] = lanes * (level[other] != own ? p : place[other]);
            }
        }
    }

    double[] drift() {
        return common.drift;
    }

    double[] lean() {
        return common.lean;
    }

    /** Lists the links with slopes. */
    void listLeans(List<FogGroup> groups) {
        for (FogLeans list : leans) {
            Arrays.fill(list.start, 0);
        }
        for (boolean add : new boolean[] {false, true}) {
            for (int l = 0; l < links.count(); l++) {
                if (links.behindLow[l] >= 0 && leans(l, 1, groups)) {
                    list(l, links.low[l], links.high[l], links.behindLow[l], 1, add);
                }
                if (links.behindHigh[l] >= 0 && leans(l, -1, groups)) {
                    list(l, links.high[l], links.low[l], links.behindHigh[l], -1, add);
                }
            }
            if (!add) {
                for (FogLeans list : leans) {
                    list.open();
                }
            }
        }
    }

    private void list(int l, int donor, int receiver, int behind, int sense, boolean add) {
        byte[] level = levels.ofCell;
        boolean even = level[donor] == level[receiver] && level[donor] == level[behind];
        int at = common.falling[l];
        FogLeans list = leans[(even ? 0 : 2) + (at < 0 ? 0 : 1)];
        if (add) {
            list.add(levels.ofLink[l], donor, receiver, behind, at < 0 ? l : at, sense, this);
        } else {
            list.start[levels.ofLink[l] + 1]++;
        }
    }

    /** Whether any bin's drift leans this way. Where nothing falls all bins are alike. */
    private boolean leans(int l, int sense, List<FogGroup> groups) {
        int at = common.falling[l];
        if (at < 0) {
            return sense * common.lean[l] > 0;
        }
        for (FogGroup g : groups) {
            for (int q = 0; q < g.used; q++) {
                if (sense * g.leanOf[lanes * at + q] > 0) {
                    return true;
                }
            }
        }
        return false;
    }
}
