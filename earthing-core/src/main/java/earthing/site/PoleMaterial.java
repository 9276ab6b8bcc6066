package earthing.site;

/** What the pole is made of. */
public enum PoleMaterial {
    /** Wood. */
    WOOD,
    /** Reinforced concrete. */
    CONCRETE,
    /** Steel tube or lattice. */
    STEEL,
    /** Insulating composite. */
    COMPOSITE,
    /** Not known. */
    UNKNOWN
}
