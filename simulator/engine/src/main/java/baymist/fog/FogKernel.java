package baymist.fog;

/**
 * The innermost loops of transport with limited slopes over a {@link FogGroup}: docs/theory/fog.md, section 2. Two forms, plain and with the
 * vectors of the Java platform, do the same operations in the same order.
 *
 * <p>Lists hold cells or links of one level; a range of them is handled.
 */
interface FogKernel {
    /** Ends the step of cells and begins the next one of {@code stepS}. */
    void turn(FogGroup g, int[] cells, int from, int to, double stepS);

    /** What donor cells give through links that nothing falls through. */
    void give(FogGroup g, FogSides s, int from, int to, double stepS);

    /** What donor cells give through links that droplets fall through. */
    void giveFalling(FogGroup g, FogSides s, int from, int to, double stepS);

    /** Notes how cells change in their step, {@code missing} included for those with finer links. */
    void note(FogGroup g, int[] cells, int from, int to, boolean border);

    /** What slopes add at links between cells of one pace, nothing falling through. */
    void lean(FogGroup g, FogSides s, int from, int to, double stepS);

    /** The same where droplets fall. */
    void leanFalling(FogGroup g, FogSides s, int from, int to, double stepS);

    /**
     * The same where some of the cells began their steps earlier.
     *
     * @param elapsed share of its step that a cell of each level has behind it
     * @param share step of the link over the step of a cell of each level
     */
    void leanAcross(FogGroup g, FogSides s, int from, int to, double stepS, double[] elapsed, double[] share);
}
