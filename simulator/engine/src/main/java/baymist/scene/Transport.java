package baymist.scene;

/** How fog is carried by a drift. */
public enum Transport {
    /**
     * Donor cells in single precision, some sizes side by side, with a mass audit; next to no work for sizes that hold next to none of the fog.
     * docs/decisions/0008 and 0011.
     */
    AUTO,

    /** Limited slopes: second order where the fog is smooth, no new extremes. In single precision with a mass audit. */
    SECOND_ORDER,

    /** Donor cells in double precision, each size by itself: linear in the fog, so that its adjoint is the transposed operator. */
    FIRST_ORDER;

    /** Whether slopes are used. */
    public boolean limited() {
        return this == SECOND_ORDER;
    }
}
