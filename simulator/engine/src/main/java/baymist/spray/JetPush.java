package baymist.spray;

/**
 * Where the jets of one station hand their momentum to the air: the cells in which they have slowed to the cap. Structure of arrays, all
 * [pushes], in a fixed order that does not depend on the thread count.
 *
 * @param cell cells that receive it
 * @param x,y,z force on the air of that cell, N
 * @param flowKgPerS mass flow that arrives with that momentum, kg/s
 * @param powerW turbulent power handed over there, W
 */
public record JetPush(int[] cell, double[] x, double[] y, double[] z, double[] flowKgPerS, double[] powerW) {
    /** Nothing handed over: what projected air needs. */
    public static final JetPush NONE =
            new JetPush(new int[0], new double[0], new double[0], new double[0], new double[0], new double[0]);

    /** Number of cells. */
    public int count() {
        return cell.length;
    }
}
