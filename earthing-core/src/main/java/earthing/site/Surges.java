package earthing.site;

import earthing.quantity.ColumnTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Which surges are studied. */
public record Surges(
        @Key(unit = Dimension.CURRENT, example = "10 kA", doc = "Peak of the standard current into the tank.") @Nullable
        Measure current,

        @Key(
                example = "[8/20, 1/200]",
                words = {"8/20", "4/10", "10/350", "1/200", "0.25/100"},
                doc = "Waves of that current.")
        List<String> waves,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.FLASH_DENSITY,
                example = "2 /km2/a",
                doc = "Lightning flashes to ground.")
        @Nullable
        Measure groundFlashDensity,

        @Key(
                unit = Dimension.LENGTH,
                example = "160 m",
                doc = "Length of line whose strokes reach this pole, all directions together.")
        @Nullable
        Measure exposedLineLength,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                example = "0.3",
                doc = "Part of the flashes that trees and buildings take away from the line, 0 on open ground.")
        @Nullable
        Measure shieldingFactor,

        @Key(
                unit = Dimension.LENGTH,
                example = "60 m",
                doc = "Distance from the line of the stroke to ground whose induced surge is shown.")
        @Nullable
        Measure inducedDistance,

        @Key(
                example = "no",
                doc =
                        "Whether the inductances of the pole count with their images in the earth; the effect is shown either way.")
        @Nullable
        YesNo earthImages,

        @Key(
                example = "recorded.csv",
                rows = 3,
                content = Key.Content.WAVE,
                columns = {
                    @Key.Column(
                            name = "time",
                            unit = Dimension.TIME,
                            sign = Key.Sign.NOT_NEGATIVE,
                            order = Key.Order.RISING),
                    @Key.Column(name = "current", unit = Dimension.CURRENT, sign = Key.Sign.ANY)
                },
                doc = "Recorded current into the tank.")
        @Nullable
        ColumnTable ownWave,

        @Key(
                example = "98 %",
                doc = "Part of all strokes whose cable-end voltage is shown beside the usual percentiles.")
        @Nullable
        Measure percentile,

        @Key(
                example = "frequency",
                doc =
                        "What stands for the electrodes in the surge circuit: their resistances, resistance with inductance and capacitance, the solution over frequency in the ground of soil.frequency-dependence, or resistances that fall while the ground breaks down at its ionisation-field; resistance where absent.")
        @Nullable
        ElectrodeModel electrodeModel) {

    /**
     * Copies the lists.
     *
     */
    public Surges {
        waves = List.copyOf(waves);
    }

    /**
     * The model of the electrodes in the surge circuit.
     *
     * @param surges the block of the site file, absent if there is none
     * @return the named model, else resistances
     */
    public static ElectrodeModel circuitModel(@Nullable Surges surges) {
        return surges == null || surges.electrodeModel() == null ? ElectrodeModel.RESISTANCE : surges.electrodeModel();
    }

    /** Peak of the standard current into the tank where the file names none [A]. */
    public static final double STANDARD_CURRENT = 10e3;

    /** The wave on which the verdict rests where the file names none: the standard current impulse. */
    public static final String STANDARD_WAVE = "8/20";

    /**
     * The waves on which the verdict rests.
     *
     * @param surges the block of the site file, absent if there is none
     * @return the named waves, else the standard wave
     */
    public static List<String> verdictWaves(@Nullable Surges surges) {
        return surges == null || surges.waves().isEmpty() ? List.of(STANDARD_WAVE) : surges.waves();
    }
}
