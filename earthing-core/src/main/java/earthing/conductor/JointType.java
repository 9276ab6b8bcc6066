package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.Optional;
import java.util.OptionalDouble;

/** Joints and the temperature that each of them bears. The joint often governs, not the conductor. */
@SuppressWarnings("ImmutableEnumChecker") // Source is a record of strings and enums
public enum JointType {
    /** Exothermic weld. */
    EXOTHERMIC("exothermic weld", 1083, ieee("exothermic weld")),
    /** Brazed joint. */
    BRAZED("brazed joint", 450, ieee("brazed")),
    /** Bolted or compression joint, the lower end of the printed range: the value to use when nothing else is known. */
    PRESSURE("bolted or compression joint", 250, ieee("pressure connector, 250 to 350 °C")),
    /** Bolted or compression joint, the upper end of the printed range: only on the maker's statement. */
    PRESSURE_HIGH("bolted or compression joint, stated for 350 °C", 350, ieee("pressure connector, 250 to 350 °C")),
    /** A joint qualified by type test: as good as the conductor. */
    QUALIFIED(
            "joint qualified to IEEE Std 837",
            Double.NaN,
            Source.standard("IEEE Std 837", "qualified connections, as quoted with IEEE Std 80-2000", Status.READ)),
    /** Bolted joint in the British code. */
    BOLTED_BS_7430("bolted joint", 250, Source.standard("BS 7430:2011", "table 5, as quoted", Status.READ)),
    /** Welded joint in the British code. */
    WELDED_BS_7430("welded joint", 700, Source.standard("BS 7430:2011", "table 5, as quoted", Status.READ));

    private final String label;
    private final double temperature;
    private final Source source;

    JointType(String label, double temperature, Source source) {
        this.label = label;
        this.temperature = temperature;
        this.source = source;
    }

    private static Source ieee(String row) {
        return Source.standard("IEEE Std 80-2000", "clause 11.3.3, as quoted: " + row, Status.READ);
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
     * The printed limit.
     *
     * @return temperature [°C], empty where the conductor's own limit holds
     */
    public OptionalDouble temperature() {
        return Double.isNaN(temperature) ? OptionalDouble.empty() : OptionalDouble.of(temperature);
    }

    /**
     * Where the limit stands.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * The limit as one of several that may govern.
     *
     * @return the limit, empty where the conductor's own limit holds
     */
    public Optional<TemperatureLimit> limit() {
        return temperature().isPresent()
                ? Optional.of(new TemperatureLimit(label, temperature, source))
                : Optional.empty();
    }
}
