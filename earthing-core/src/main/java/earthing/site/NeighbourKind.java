package earthing.site;

/** What a neighbour is. */
public enum NeighbourKind {
    /** Earth of a low-voltage network. */
    LV_EARTH,
    /** Telecommunication line or earth. */
    TELECOM,
    /** Metal fence. */
    FENCE,
    /** Metal pipe. */
    PIPE,
    /** Building with an earth of its own. */
    BUILDING
}
