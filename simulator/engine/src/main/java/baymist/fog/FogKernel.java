package baymist.fog;

/**
 * The innermost loops of steps of a {@link FogGroup}: docs/theory/fog.md, section 2. Two forms, plain and with the vectors of the Java
 * platform, do the
 * same operations in the same order. Each handles what belongs to one level.
 */
interface FogKernel {
    /** Bins that it takes at once. */
    int lanes();

    /**
     * Donor cells' exchange of a level's cells with their neighbours of the same level, and what walls, vents and beams take:
     * concentrations at the ends
     * of the steps from those at their starts.
     *
     * @param note whether the change is kept for slopes
     */
    void gather(FogGroup g, FogSchedule s, int level, boolean note);

    /** Adds the concentrations at the starts of a level's steps to the sums of its sinks, by Kahan's sum. */
    void addUp(FogGroup g, FogSchedule s, int level);

    /**
     * What comes in through links between two levels, in a step of the finer one. What goes out there is in the cells' own share, as
     * their concentrations
     * hold for all of their steps.
     *
     * @param noteFiner how many such steps count towards the change of the finer cell: 1, or 0 without slopes
     * @param noteCoarser the same for the coarser one: 0 if its step has begun before
     */
    void across(FogGroup g, FogAcross a, int finer, int coarser, double noteFiner, double noteCoarser);

    /** What slopes add at links between cells of one level, nothing falling through. */
    void lean(FogGroup g, FogSchedule s, int level);

    /** The same where droplets fall. */
    void leanFalling(FogGroup g, FogSchedule s, int level);

    /**
     * What slopes add where cells are of several levels, some of whose steps began earlier.
     *
     * @param elapsed share of its step that a cell of each level has behind it
     * @param share step of the link over the step of a cell of each level
     */
    void leanAcross(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share);

    /** The same where droplets fall. */
    void leanAcrossFalling(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share);
}
