package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** How often and how long one person touches the site, for the individual risk a year. */
public record ContactExposure(
        @Key(
                required = true,
                unit = Dimension.RATE,
                example = "0.1 /a",
                doc = "Earth faults that raise this site's potential.")
        Measure faultRate,

        @Key(
                required = true,
                unit = Dimension.RATE,
                example = "12 /a",
                doc = "How often the person who is exposed most touches the site.")
        Measure contactRate,

        @Key(required = true, unit = Dimension.TIME, example = "20 s", doc = "How long each of these contacts lasts.")
        Measure contactDuration,

        @Key(
                unit = Dimension.RATE,
                example = "1e-6 /a",
                doc = "The owner's highest individual risk; absent for the target of the published guide.")
        @Nullable
        Measure target) {}
