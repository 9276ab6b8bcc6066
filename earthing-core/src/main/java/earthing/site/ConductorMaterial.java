package earthing.site;

/** What a conductor is made of. */
public enum ConductorMaterial {
    /** Copper. */
    COPPER,
    /** Aluminium. */
    ALUMINIUM,
    /** Steel, bare. */
    STEEL,
    /** Galvanised steel. */
    GALVANISED_STEEL,
    /** Stainless steel. */
    STAINLESS_STEEL,
    /** Copper-clad steel. */
    COPPER_CLAD_STEEL,
    /** Not known. */
    UNKNOWN
}
