package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The line between source and pole. */
public record SourceLine(
        @Key(unit = Dimension.LENGTH, required = true, example = "6 km", doc = "Length of the line.")
        Measure length,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.35 ohm/km",
                doc = "Positive-sequence resistance per length; of a single wire, its resistance with earth return.")
        @Nullable
        Measure resistance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.38 ohm/km",
                doc = "Positive-sequence reactance per length; of a single wire, its reactance with earth return.")
        @Nullable
        Measure reactance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.50 ohm/km",
                doc = "Zero-sequence resistance per length.")
        @Nullable
        Measure zeroSequenceResistance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "1.6 ohm/km",
                doc = "Zero-sequence reactance per length.")
        @Nullable
        Measure zeroSequenceReactance,

        @Key(
                doc =
                        "The conductors of the line, instead of impedances: three phases, or the one wire of a single-wire line, and its return wires.")
        List<LineWire> conductors,

        @Key(
                unit = Dimension.RESISTIVITY,
                example = "100 ohm.m",
                doc = "Mean resistivity of the deep earth along the line, for the conductors' earth return.")
        @Nullable
        Measure earthResistivity,

        @Key(
                example = "carson-series",
                doc =
                        "Form of the earth return that the results use; the other is shown beside it. Absent for carson-series.")
        @Nullable
        EarthReturnForm earthReturn) {

    /**
     * Copies the lists.
     *
     */
    public SourceLine {
        conductors = List.copyOf(conductors);
    }
}
