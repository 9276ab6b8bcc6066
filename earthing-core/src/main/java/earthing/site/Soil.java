package earthing.site;

import earthing.quantity.ColumnTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The ground at the pole. */
public record Soil(
        @Key(
                brief = true,
                unit = Dimension.RESISTIVITY,
                example = "{low: 80 ohm.m, nominal: 140 ohm.m, high: 420 ohm.m, origin: measured}",
                doc = "Resistivity of uniform soil.")
        @Nullable
        Measure resistivity,

        @Key(doc = "Horizontal layers from the surface down; use instead of resistivity.")
        List<SoilLayer> layers,

        @Key(
                doc =
                        "Readings of a soil survey; layers with their bounds are fitted to them. Use instead of resistivity and layers.")
        List<SoilReading> soundings,

        @Key(
                example = "survey.csv",
                rows = 3,
                content = Key.Content.SURVEY,
                columns = {
                    @Key.Column(name = "traverse", text = true, required = false),
                    @Key.Column(name = "spacing", unit = Dimension.LENGTH, required = false),
                    @Key.Column(name = "AB/2", unit = Dimension.LENGTH, required = false),
                    @Key.Column(name = "MN/2", unit = Dimension.LENGTH, required = false),
                    @Key.Column(
                            name = "probe depth",
                            unit = Dimension.LENGTH,
                            sign = Key.Sign.NOT_NEGATIVE,
                            required = false),
                    @Key.Column(name = "rod depth", unit = Dimension.LENGTH, required = false),
                    @Key.Column(name = "rod diameter", unit = Dimension.LENGTH, required = false),
                    @Key.Column(name = "resistance", unit = Dimension.RESISTANCE, required = false),
                    @Key.Column(name = "resistivity", unit = Dimension.RESISTIVITY, required = false)
                },
                doc =
                        "The same readings as a file, as the command soil reads it: spacing, or AB/2 and MN/2, or rod depth and rod diameter; resistance or resistivity. Use instead of soundings.")
        @Nullable
        ColumnTable surveyFile,

        @Key(doc = "How drying or freezing changes the top of the ground.") @Nullable
        Season season,

        @Key(
                text = Key.Text.ELECTRODE,
                example = "main",
                doc =
                        "Electrode whose latest fall-of-potential reading scales the ground: every resistivity, with its bounds, is multiplied by what the reading says, for all studies. Absent: readings are compared only.")
        @Nullable
        String calibrateBy,

        @Key(doc = "How the ground moves with frequency, for the electrode under impulse.") @Nullable
        FrequencyDependence frequencyDependence,

        @Key(example = "Four-pin survey, two traverses, spacings 1 m to 32 m", doc = "How the resistivity was found.")
        @Nullable
        String survey,

        @Key(example = "2026-03-02", text = Key.Text.DATE, doc = "ISO date of the survey.") @Nullable
        String surveyDate) {

    /**
     * Copies the lists.
     *
     */
    public Soil {
        layers = List.copyOf(layers);
        soundings = List.copyOf(soundings);
    }

    /**
     * Whether layers are fitted to readings.
     *
     * @return true if the readings of a survey stand here or in a file of their own
     */
    public boolean isSurveyed() {
        return surveyFile != null || !soundings.isEmpty();
    }
}
