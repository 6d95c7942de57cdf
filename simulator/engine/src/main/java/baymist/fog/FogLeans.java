package baymist.fog;

/**
 * A list of links with slopes as kernels read it, sorted by the level of the link: places of donor, receiver and the cell behind the
 * donor, times the lanes.
 * Arranged anew for each window, then only read.
 */
final class FogLeans {
    int[] donor = new int[0];
    int[] receiver = new int[0];
    int[] behind = new int[0];

    /** The link; where droplets fall, its place among those. */
    int[] link = new int[0];

    /** 1 where the donor is the low cell, -1 where it is the high one. */
    float[] sense = new float[0];

    /** 1/m³ of the donor and the receiver. */
    float[] perDonor = new float[0];

    float[] perReceiver = new float[0];

    /** Levels of donor, receiver and the cell behind. */
    byte[] donorLevel = new byte[0];

    byte[] receiverLevel = new byte[0];
    byte[] behindLevel = new byte[0];

    /** Where each level begins, [levels + 1]. */
    final int[] start = new int[RateLevels.COARSEST + 2];

    private final int[] filled = new int[RateLevels.COARSEST + 1];

    /** Makes room for the counts that {@code start[level + 1]} holds; {@link #add} fills in. */
    void open() {
        for (int k = 0; k + 1 < start.length; k++) {
            start[k + 1] += start[k];
            filled[k] = start[k];
        }
        int count = start[start.length - 1];
        if (link.length < count) {
            int room = count + count / 4;
            donor = new int[room];
            receiver = new int[room];
            behind = new int[room];
            link = new int[room];
            sense = new float[room];
            perDonor = new float[room];
            perReceiver = new float[room];
            donorLevel = new byte[room];
            receiverLevel = new byte[room];
            behindLevel = new byte[room];
        }
    }

    void add(int level, int donorCell, int receiverCell, int behindCell, int at, int direction, FogSchedule s) {
        int i = filled[level]++;
        donor[i] = s.lanes * s.place[donorCell];
        receiver[i] = s.lanes * s.place[receiverCell];
        behind[i] = s.lanes * s.place[behindCell];
        link[i] = at;
        sense[i] = direction;
        perDonor[i] = (float) s.perM3[donorCell];
        perReceiver[i] = (float) s.perM3[receiverCell];
        donorLevel[i] = s.levels.ofCell[donorCell];
        receiverLevel[i] = s.levels.ofCell[receiverCell];
        behindLevel[i] = s.levels.ofCell[behindCell];
    }
}
