package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * Places by the people who may stand there, for poles and towers of overhead lines. Which class applies is for the
 * owner to decide and to declare.
 */
@SuppressWarnings("ImmutableEnumChecker") // Footwear is a record of a string, a number and a source
public enum LocationClass {
    /** Playgrounds, swimming pools, camping grounds: people may gather with bare feet. */
    BARE_FEET("playground, pool, camping ground; bare feet", Footwear.NONE, 0),
    /** Pavements and car parks: shoes may be taken for granted. */
    SHOES("pavement, car park; shoes", Footwear.OLD_WET_SHOES, 500),
    /** Shoes, and soil of about 2000 Ω·m. */
    SHOES_ON_POOR_SOIL("shoes, soil about 2000 ohm.m", Footwear.OLD_WET_SHOES, 2000),
    /** Shoes, and soil of about 4000 Ω·m such as rock. */
    SHOES_ON_ROCK("shoes, rock about 4000 ohm.m", Footwear.OLD_WET_SHOES, 4000);

    /** Where the classes stand. */
    public static final Source SOURCE =
            Source.standard("EN 50341-1:2001", "clause 6.2.4, curves U_D1 to U_D4", Status.FROM_MEMORY);

    private final String label;
    private final Footwear footwear;
    private final double resistivity;

    LocationClass(String label, Footwear footwear, double resistivity) {
        this.label = label;
        this.footwear = footwear;
        this.resistivity = resistivity;
    }

    /**
     * Words for the report.
     *
     * @return readable name
     */
    public String label() {
        return label;
    }

    /**
     * Footwear that the class credits.
     *
     * @return the footwear
     */
    public Footwear footwear() {
        return footwear;
    }

    /**
     * Additional resistance of the class: footwear and 1.5 times the resistivity under the feet.
     *
     * @return resistance [Ω]: 0, 1750, 4000 or 7000
     */
    public double additionalResistance() {
        return footwear.resistance() + 1.5 * resistivity;
    }
}
