package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The rules against which the site is checked. */
public record Criteria(
        @Key(required = true, example = "en-50522-2022", doc = "Standard and edition of the permissible touch voltage.")
        TouchCriterion touch,

        @Key(doc = "The body behind the criterion iec-60479-1.") @Nullable
        BodyModel body,

        @Key(doc = "The owner's own criteria, for the criterion owner.") @Nullable
        OwnerCriteria owner,

        @Key(doc = "How a person is exposed, for the individual risk a year; it replaces no permissible voltage.")
        @Nullable
        ContactExposure exposure,

        @Key(
                example = "0 ohm",
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE,
                doc = "Resistance of footwear credited to a person, both feet; absent for none.")
        @Nullable
        Measure footwearResistance,

        @Key(doc = "A surface covering at the operator's position.") @Nullable
        Covering covering,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.TIME,
                example = "0.5 s",
                doc = "Shocks separated by a shorter dead time are one exposure.")
        @Nullable
        Measure shockMergingTime,

        @Key(
                example = "25 ohm",
                unit = Dimension.RESISTANCE,
                doc = "The owner's highest resistance of the main electrode.")
        @Nullable
        Measure electrodeResistance,

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.TEMPERATURE,
                example = "30 degC",
                doc = "Temperature of an earthing conductor before the fault.")
        @Nullable
        Measure initialTemperature,

        @Key(
                example = "250 degC",
                sign = Key.Sign.ANY,
                unit = Dimension.TEMPERATURE,
                doc = "The owner's highest final temperature of an earthing conductor.")
        @Nullable
        Measure finalTemperature,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RATIO,
                example = "20 %",
                doc = "The owner's least protective margin of the arresters.")
        @Nullable
        Measure protectiveMargin,

        @Key(doc = "Accepted departures.") List<Departure> departures) {

    /**
     * Copies the lists.
     *
     */
    public Criteria {
        departures = List.copyOf(departures);
    }
}
