package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/** The table of thermal constants that a calculation leans on. The tables differ; a result names the one it used. */
@SuppressWarnings("ImmutableEnumChecker") // Source is a record of strings and enums
public enum ThermalEdition {
    /** The constants of IEC 60949, IEC 60364-5-54 annex A and EN 50522 table D.1, which are the same. */
    IEC_60949(Source.standard("IEC 60949:1988", "table I (= IEC 60364-5-54 annex A)", Status.FROM_MEMORY)),
    /** IEEE Std 80, edition 2000. */
    IEEE_80_2000(Source.standard("IEEE Std 80-2000", "table 1", Status.FROM_MEMORY)),
    /** IEEE Std 80, edition 2013: heat capacities rounded, steel rows changed, 17 % rod in place of the 20 % rod. */
    IEEE_80_2013(Source.standard("IEEE Std 80-2013", "table 1", Status.FROM_MEMORY));

    private final Source source;

    ThermalEdition(Source source) {
        this.source = source;
    }

    /**
     * Where the constants stand.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }
}
