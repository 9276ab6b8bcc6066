package earthing.site;

import earthing.quantity.ColumnTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The owner's own set of touch criteria; a set that lacks a value is not used. */
public record OwnerCriteria(
        @Key(required = true, example = "works rule 7", doc = "Name of the set, as the report shows it.")
        String name,

        @Key(required = true, example = "WR-7, issue 3", doc = "The owner's document that the values stand in.")
        String reference,

        @Key(text = Key.Text.DATE, example = "2026-03-02", doc = "Date of that document.") @Nullable
        String date,

        @Key(
                example = "touch-limits.csv",
                columns = {
                    @Key.Column(name = "time", unit = Dimension.TIME, order = Key.Order.RISING),
                    @Key.Column(name = "voltage", unit = Dimension.VOLTAGE, order = Key.Order.NOT_RISING)
                },
                doc =
                        "Permissible touch voltage over the time it stands, hand to feet, read log-log between its points.")
        @Nullable
        ColumnTable touchCurve,

        @Key(
                example = "60 V",
                unit = Dimension.VOLTAGE,
                doc = "Permissible touch voltage of a fault that lasts longer than the last point of the curve.")
        @Nullable
        Measure sustainedVoltage,

        @Key(
                example = "2",
                unit = Dimension.RATIO,
                doc =
                        "Ratio of the earth potential rise to the permissible touch voltage up to which the set asks for no further proof.")
        @Nullable
        Measure provenUpTo) {}
