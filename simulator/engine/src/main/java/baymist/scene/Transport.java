package baymist.scene;

/** How fog is carried by a drift. */
public enum Transport {
    /**
     * Donor cells while a jet stirs the air, whose eddies spread fog about as much as donor cells do; limited slopes whenever no jet is on,
     * but for sizes that hold next to none of the fog. docs/decisions/0005 and 0008.
     */
    AUTO,

    /** Limited slopes: second order where the fog is smooth, no new extremes. */
    SECOND_ORDER,

    /** Donor cells: linear in the fog, so that its adjoint is the transposed operator; a front spreads by half a cell's diffusion. */
    FIRST_ORDER;

    /** Whether slopes are used in a window. */
    public boolean limited(boolean spraying) {
        return this == SECOND_ORDER || (this == AUTO && !spraying);
    }
}
