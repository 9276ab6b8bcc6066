package earthing.site;

/** Where the metal of a piece of equipment is earthed. */
public enum EquipmentEarth {
    /** At the common earth point of the tank. */
    TANK_EARTH_POINT,
    /** On the main earth at another point. */
    MAIN_EARTH,
    /** On an electrode of its own. */
    OWN_ELECTRODE,
    /** Not earthed. */
    NONE,
    /** Not known. */
    UNKNOWN
}
