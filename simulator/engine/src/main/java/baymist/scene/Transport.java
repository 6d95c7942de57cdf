package baymist.scene;

/** How fog is carried by a drift. */
public enum Transport {
    /** Limited slopes: second order where the fog is smooth, no new extremes. */
    SECOND_ORDER,

    /** Donor cells: linear in the fog, so that its adjoint is the transposed operator; a front spreads by half a cell's diffusion. */
    FIRST_ORDER
}
