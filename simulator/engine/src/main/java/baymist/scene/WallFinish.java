package baymist.scene;

/** What the inside of the sheet is like, as far as fog that turbulence throws at it is concerned. */
public enum WallFinish {
    /** Theory of smooth walls: a lower bound on gently driven sheet. */
    SMOOTH,
    /** As measured on bare steel duct. */
    BARE_STEEL,
    /** As measured on fibrous lining: insulation, felt, heavy dust. */
    ROUGH_LINING
}
