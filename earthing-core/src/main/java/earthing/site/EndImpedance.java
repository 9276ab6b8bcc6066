package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/**
 * A device between a core and chassis as an impedance: resistance and inductance in series, the capacitance across both.
 * A coil by its winding, an instrument transformer by its winding and burden.
 */
public record EndImpedance(
        @Key(example = "45 ohm", unit = Dimension.RESISTANCE, doc = "Resistance, the burden included.") @Nullable
        Measure resistance,

        @Key(example = "0.8 H", unit = Dimension.INDUCTANCE, doc = "Inductance in series with the resistance.")
        @Nullable
        Measure inductance,

        @Key(example = "300 pF", unit = Dimension.CAPACITANCE, doc = "Capacitance across both, the winding's own.")
        @Nullable
        Measure capacitance) {}
