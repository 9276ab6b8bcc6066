package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.OptionalDouble;

/** How a conductor is run and covered, which sets the temperature that it may reach. */
@SuppressWarnings("ImmutableEnumChecker") // Source is a record of strings and enums
public enum ConductorCondition {
    /** Bare, visible, in a restricted area only. */
    BARE_RESTRICTED("bare, visible, restricted area", 500, 300, 500, bare()),
    /** Bare, normal conditions: what a down-lead within reach of the public is. */
    BARE_NORMAL("bare, normal conditions", 200, 200, 200, bare()),
    /** Bare, where there is a risk of fire, such as on a wooden pole in dry country. */
    BARE_FIRE_RISK("bare, risk of fire", 150, 150, 150, bare()),
    /** Bare in contact with a polyethylene covering. */
    BARE_ON_POLYETHYLENE("bare in contact with polyethylene", 150, 150, 150, iec("table A.54.3")),
    /** Covered with thermoplastic (PVC); 140 °C above 300 mm². */
    THERMOPLASTIC("thermoplastic covering", 160, 160, 160, iec("tables A.54.2 and A.54.4")),
    /** Covered with thermosetting (XLPE, EPR). */
    THERMOSETTING("thermosetting covering", 250, 250, 250, iec("tables A.54.2 and A.54.4")),
    /** Bare, by the earthing standard. */
    BARE_EN_50522("bare", 300, 300, 300, en50522("annex D")),
    /** Tinned or lead-sheathed, by the earthing standard. */
    TINNED_EN_50522("tinned or lead-sheathed", 150, 150, 150, en50522("annex D"));

    /** Above this area a thermoplastic covering bears 140 °C only [m²]. */
    public static final double THICK = 300e-6;

    private final String label;
    private final double copper;
    private final double aluminium;
    private final double steel;
    private final Source source;

    ConductorCondition(String label, double copper, double aluminium, double steel, Source source) {
        this.label = label;
        this.copper = copper;
        this.aluminium = aluminium;
        this.steel = steel;
        this.source = source;
    }

    private static Source bare() {
        return Source.standard("IEC 60364-5-54:2011", "table A.54.6", Status.FROM_MEMORY);
    }

    private static Source iec(String locus) {
        return Source.standard("IEC 60364-5-54:2011", locus, Status.FROM_MEMORY);
    }

    private static Source en50522(String locus) {
        return Source.standard("EN 50522:2010", locus, Status.FROM_MEMORY);
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
     * Where the limits stand.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * The final temperature that the tables print for a metal.
     *
     * @param metal the metal
     * @param area area [m²]; thick thermoplastic conductors bear less
     * @return temperature [°C], empty where the tables say nothing about this metal
     */
    public OptionalDouble temperature(Metal metal, double area) {
        double value = switch (metal.family()) {
            case COPPER -> copper;
            case ALUMINIUM -> aluminium;
            case STEEL -> steel;
            default -> Double.NaN;
        };
        if (Double.isNaN(value)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(this == THERMOPLASTIC && area > THICK ? 140 : value);
    }

    /**
     * The limit as one of several that may govern.
     *
     * @param metal the metal
     * @param area area [m²]
     * @return the limit
     * @throws IllegalArgumentException where the tables say nothing about this metal; an owner's limit is needed then
     */
    public TemperatureLimit limit(Metal metal, double area) {
        double value = temperature(metal, area)
                .orElseThrow(() -> new IllegalArgumentException(
                        source.text() + " prints no final temperature for " + metal.label() + ", " + label));
        return new TemperatureLimit(metal.label() + ", " + label, value, source);
    }
}
