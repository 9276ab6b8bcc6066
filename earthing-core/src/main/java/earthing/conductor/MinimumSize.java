package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.List;
import java.util.Objects;

/**
 * The smallest size for mechanical strength and corrosion.
 *
 * @param use what the conductor is for
 * @param family metal
 * @param measure what the number is
 * @param value smallest area [m²] or diameter [m], &gt; 0
 * @param remark printed condition, empty for none
 * @param source where it stands
 */
public record MinimumSize(
        Use use, Metal.Family family, SizeMeasure measure, double value, String remark, Source source) {

    /** What the conductor is for. */
    public enum Use {
        /** Earthing conductor above ground, high-voltage installation. */
        EARTHING_CONDUCTOR,
        /** Earthing conductor in the soil without protection against corrosion. */
        EARTHING_CONDUCTOR_BURIED,
        /** Earthing conductor with a lightning protection system connected. */
        EARTHING_CONDUCTOR_LIGHTNING,
        /** Strip in the soil. */
        STRIP_ELECTRODE,
        /** Round wire or strand in the soil. */
        WIRE_ELECTRODE,
        /** Driven rod. */
        ROD,
        /** Main equipotential bonding conductor. */
        MAIN_BONDING,
        /** Down-conductor of a lightning protection system. */
        LIGHTNING_DOWN_CONDUCTOR,
        /** Conductor from a bonding bar to earth, lightning protection. */
        LIGHTNING_BAR_TO_EARTH,
        /** Bonding of metalwork inside, lightning protection. */
        LIGHTNING_INTERNAL_BONDING,
        /** Earthing lead on a pole with a common neutral. */
        POLE_LEAD_COMMON_NEUTRAL,
        /** Earthing lead on a pole, between its rods. */
        POLE_LEAD_BETWEEN_RODS
    }

    /** What the number is. */
    public enum SizeMeasure {
        /** Area [m²]. */
        AREA,
        /** Diameter [m]. */
        DIAMETER
    }

    private static final Source EN_50522 =
            Source.standard("EN 50522:2010", "clause 5.2.3 (= IEC 61936-1)", Status.FROM_MEMORY);
    private static final Source EN_50522_C = Source.standard("EN 50522:2010", "annex C", Status.FROM_MEMORY);
    private static final Source IEC_54_1 = Source.standard("IEC 60364-5-54:2011", "table 54.1", Status.FROM_MEMORY);
    private static final Source IEC_542_3 =
            Source.standard("IEC 60364-5-54:2011", "clause 542.3.1", Status.FROM_MEMORY);
    private static final Source MITOLO = Source.publication(
            "Mitolo, Electrical Safety of Low-Voltage Systems, 2009", "table 11.8 (IEC 60364-5-54)", Status.READ);
    private static final Source IEC_62305_6 = Source.standard("IEC 62305-3:2010", "table 6", Status.FROM_MEMORY);
    private static final Source IEC_62305_7 = Source.standard("IEC 62305-3:2010", "table 7", Status.FROM_MEMORY);
    private static final Source IEC_62305_8 = Source.standard("IEC 62305-3:2010", "table 8", Status.FROM_MEMORY);
    private static final Source IEC_62305_9 = Source.standard("IEC 62305-3:2010", "table 9", Status.FROM_MEMORY);

    /** All printed minimum sizes that the library knows. */
    public static final List<MinimumSize> TABLE = List.of(
            area(Use.EARTHING_CONDUCTOR, Metal.Family.COPPER, 16, "", EN_50522),
            area(Use.EARTHING_CONDUCTOR, Metal.Family.ALUMINIUM, 35, "", EN_50522),
            area(Use.EARTHING_CONDUCTOR, Metal.Family.STEEL, 50, "", EN_50522),
            area(Use.STRIP_ELECTRODE, Metal.Family.COPPER, 50, "at least 2 mm thick", EN_50522_C),
            area(Use.STRIP_ELECTRODE, Metal.Family.STEEL, 90, "galvanised, at least 3 mm thick", EN_50522_C),
            area(Use.WIRE_ELECTRODE, Metal.Family.COPPER, 25, "", EN_50522_C),
            diameter(Use.WIRE_ELECTRODE, Metal.Family.STEEL, 10, "galvanised", EN_50522_C),
            diameter(Use.ROD, Metal.Family.STEEL, 16, "galvanised", EN_50522_C),
            diameter(Use.ROD, Metal.Family.COPPER_CLAD_STEEL, 14, "copper skin at least 0.25 mm", IEC_54_1),
            diameter(Use.ROD, Metal.Family.COPPER, 15, "lightning protection", IEC_62305_7),
            area(Use.EARTHING_CONDUCTOR_BURIED, Metal.Family.COPPER, 25, "", IEC_542_3),
            area(Use.EARTHING_CONDUCTOR_BURIED, Metal.Family.STEEL, 50, "", IEC_542_3),
            area(Use.EARTHING_CONDUCTOR_LIGHTNING, Metal.Family.COPPER, 16, "", IEC_542_3),
            area(Use.MAIN_BONDING, Metal.Family.COPPER, 6, "", MITOLO),
            area(Use.MAIN_BONDING, Metal.Family.ALUMINIUM, 16, "", MITOLO),
            area(Use.MAIN_BONDING, Metal.Family.STEEL, 50, "", MITOLO),
            area(Use.LIGHTNING_DOWN_CONDUCTOR, Metal.Family.COPPER, 50, "", IEC_62305_6),
            area(Use.LIGHTNING_DOWN_CONDUCTOR, Metal.Family.ALUMINIUM, 50, "70 mm² for tape in 2006", IEC_62305_6),
            area(Use.LIGHTNING_BAR_TO_EARTH, Metal.Family.COPPER, 16, "", IEC_62305_8),
            area(Use.LIGHTNING_BAR_TO_EARTH, Metal.Family.ALUMINIUM, 25, "22 mm² in 2010", IEC_62305_8),
            area(Use.LIGHTNING_BAR_TO_EARTH, Metal.Family.STEEL, 50, "", IEC_62305_8),
            area(Use.LIGHTNING_INTERNAL_BONDING, Metal.Family.COPPER, 6, "", IEC_62305_9),
            area(
                    Use.POLE_LEAD_COMMON_NEUTRAL,
                    Metal.Family.COPPER,
                    21.2,
                    "No. 4 AWG",
                    Source.standard("California General Order 95", "rule 59.4", Status.READ)),
            area(
                    Use.POLE_LEAD_BETWEEN_RODS,
                    Metal.Family.COPPER,
                    13.3,
                    "No. 6 AWG",
                    Source.standard("UFGS 16370A", "pole earthing", Status.READ)));

    /**
     * Refuses a size that is not positive.
     *
     * @param use what the conductor is for
     * @param family metal
     * @param measure what the number is
     * @param value smallest area [m²] or diameter [m], &gt; 0
     * @param remark printed condition, empty for none
     * @param source where it stands
     */
    public MinimumSize {
        Objects.requireNonNull(use);
        Objects.requireNonNull(family);
        Objects.requireNonNull(measure);
        Objects.requireNonNull(remark);
        Objects.requireNonNull(source);
        if (!(value > 0)) {
            throw new IllegalArgumentException("minimum size must be > 0; have " + value);
        }
    }

    /**
     * The printed sizes for a use and a metal.
     *
     * @param use what the conductor is for
     * @param family metal
     * @return all rows, empty if no table speaks of it
     */
    public static List<MinimumSize> find(Use use, Metal.Family family) {
        return TABLE.stream().filter(m -> m.use == use && m.family == family).toList();
    }

    private static MinimumSize area(
            Use use, Metal.Family family, double squareMillimetres, String remark, Source source) {
        return new MinimumSize(use, family, SizeMeasure.AREA, squareMillimetres * 1e-6, remark, source);
    }

    private static MinimumSize diameter(
            Use use, Metal.Family family, double millimetres, String remark, Source source) {
        return new MinimumSize(use, family, SizeMeasure.DIAMETER, millimetres * 1e-3, remark, source);
    }
}
