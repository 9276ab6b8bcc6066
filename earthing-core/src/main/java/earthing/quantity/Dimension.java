package earthing.quantity;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The physical dimensions that a site file can speak of, each with the unit texts that are read. The first unit of each
 * is the SI unit in which the library computes; the factor turns a value in the named unit into SI.
 */
public enum Dimension {
    /** Length [m]. */
    LENGTH("m", unit("mm", 1e-3), unit("cm", 1e-2), unit("km", 1e3), unit("ft", 0.3048), unit("in", 0.0254)),
    /** Area of cross-section [m²]; {@code AWG} is read by {@link Quantity}, it is no factor. */
    AREA(
            "m2",
            unit("mm2", 1e-6),
            unit("mm²", 1e-6),
            unit("m²", 1),
            unit("cm2", 1e-4),
            unit("kcmil", 5.067074790975e-7)),
    /** Soil resistivity [Ω·m]. */
    RESISTIVITY(
            "ohm.m",
            unit("ohm.cm", 1e-2),
            unit("ohm.ft", 0.3048),
            unit("Ω·m", 1),
            unit("Ωm", 1),
            unit("ohm-m", 1),
            unit("ohm*m", 1),
            unit("kohm.m", 1e3)),
    /** Resistance or impedance [Ω]. */
    RESISTANCE("ohm", unit("mohm", 1e-3), unit("kohm", 1e3), unit("Mohm", 1e6), unit("Ω", 1), unit("mΩ", 1e-3)),
    /** Resistance or impedance of a line [Ω/m]. */
    RESISTANCE_PER_LENGTH(
            "ohm/m", unit("mohm/m", 1e-3), unit("ohm/km", 1e-3), unit("Ω/km", 1e-3), unit("ohm/mi", 1 / 1609.344)),
    /** Inductance [H]. */
    INDUCTANCE("H", unit("mH", 1e-3), unit("uH", 1e-6), unit("µH", 1e-6), unit("nH", 1e-9)),
    /** Capacitance [F]. */
    CAPACITANCE("F", unit("uF", 1e-6), unit("µF", 1e-6), unit("nF", 1e-9), unit("pF", 1e-12)),
    /** Current [A]. */
    CURRENT("A", unit("kA", 1e3), unit("mA", 1e-3)),
    /** Voltage [V]. */
    VOLTAGE("V", unit("kV", 1e3), unit("mV", 1e-3)),
    /** Apparent power [VA]. */
    POWER("VA", unit("kVA", 1e3), unit("MVA", 1e6)),
    /** Energy [J]. */
    ENERGY("J", unit("kJ", 1e3), unit("MJ", 1e6)),
    /** Charge [C]. */
    CHARGE("C", unit("mC", 1e-3), unit("uC", 1e-6), unit("A.s", 1), unit("A.h", 3600)),
    /** Field strength [V/m]. */
    FIELD("V/m", unit("kV/m", 1e3), unit("kV/cm", 1e5), unit("kV/mm", 1e6), unit("kV/ft", 1e3 / 0.3048)),
    /** Duration [s]; {@code cycles} needs the site's frequency and is read by {@link Quantity}. */
    TIME("s", unit("ms", 1e-3), unit("us", 1e-6), unit("µs", 1e-6), unit("min", 60), unit("h", 3600)),
    /** Frequency [Hz]. */
    FREQUENCY("Hz", unit("kHz", 1e3), unit("MHz", 1e6)),
    /** Temperature [°C]; {@code degF} is read by {@link Quantity}, it is no factor. */
    TEMPERATURE("degC", unit("°C", 1)),
    /** Angle [°]. */
    ANGLE("deg", unit("°", 1), unit("rad", 57.29577951308232)),
    /** Flashes per square kilometre and year [1/(m²·a)]. */
    FLASH_DENSITY("/m2/a", unit("/km2/a", 1e-6), unit("/km²/a", 1e-6), unit("/km2/year", 1e-6)),
    /** How often a year [1/a], a year of 365 days. */
    RATE("/a", unit("/year", 1), unit("/month", 12), unit("/week", 365.0 / 7), unit("/day", 365), unit("/h", 8760)),
    /** A pure number [1]; the only dimension read without a unit. */
    RATIO("", unit("%", 1e-2), unit("pu", 1));

    private final String siUnit;

    @SuppressWarnings("ImmutableEnumChecker") // an unmodifiable copy
    private final Map<String, Double> factors;

    @SafeVarargs
    @SuppressWarnings("varargs")
    Dimension(String siUnit, Map.Entry<String, Double>... others) {
        this.siUnit = siUnit;
        Map<String, Double> map = new LinkedHashMap<>();
        map.put(siUnit, 1.0);
        for (Map.Entry<String, Double> other : others) {
            map.put(other.getKey(), other.getValue());
        }
        this.factors = Collections.unmodifiableMap(map);
    }

    private static Map.Entry<String, Double> unit(String text, double factor) {
        return Map.entry(text, factor);
    }

    /**
     * The unit in which the library computes.
     *
     * @return unit text, empty for a pure number
     */
    public String siUnit() {
        return siUnit;
    }

    /**
     * The unit texts that are read by a plain factor.
     *
     * @return unit text to factor into SI, in order of preference
     */
    public Map<String, Double> factors() {
        return factors;
    }
}
