package earthing.study;

import earthing.site.CubicleEarth;
import java.util.Locale;
import java.util.Optional;

/** How the cubicle is earthed: the four arrangements that are always shown side by side. */
public enum Arrangement {
    /** Teed to the main earth. */
    SHARED(CubicleEarth.SHARED),
    /** On an electrode of its own only. */
    SEPARATE(CubicleEarth.SEPARATE),
    /** Teed and on an electrode of its own. */
    BOTH(CubicleEarth.BOTH),
    /** Not earthed. */
    UNEARTHED(CubicleEarth.UNEARTHED);

    private final CubicleEarth earth;

    Arrangement(CubicleEarth earth) {
        this.earth = earth;
    }

    /**
     * The word of the contract.
     *
     * @return for example {@code shared}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The word of the site file.
     *
     * @return the cubicle's earth
     */
    public CubicleEarth earth() {
        return earth;
    }

    /**
     * The arrangement of a cubicle.
     *
     * @param earth the word of the site file
     * @return the arrangement; empty if it is unknown
     */
    public static Optional<Arrangement> of(CubicleEarth earth) {
        for (Arrangement arrangement : values()) {
            if (arrangement.earth == earth) {
                return Optional.of(arrangement);
            }
        }
        return Optional.empty();
    }
}
