package earthing.site;

import org.jspecify.annotations.Nullable;

/** A result that the author expects. */
public record Expectation(
        @Key(required = true, example = "electrode.main.resistance", doc = "Id of the result or finding.")
        String result,

        @Key(required = true, example = "31.9 ohm", doc = "Expected value with unit, or expected status of a finding.")
        String value,

        @Key(example = "2 %", doc = "Tolerance, as a part of the expected value or with its unit.") @Nullable
        String within) {}
