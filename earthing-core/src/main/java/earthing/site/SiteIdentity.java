package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Document control of a site. */
public record SiteIdentity(
        @Key(required = true, example = "Ternhook ridge switch 14", doc = "Name of the site.")
        String name,

        @Key(example = "14", doc = "Number of the pole.") @Nullable
        String pole,

        @Key(
                unit = Dimension.ANGLE,
                sign = Key.Sign.ANY,
                example = "54.6120 deg",
                doc = "Latitude of the pole, WGS 84, north positive.")
        @Nullable
        Measure latitude,

        @Key(
                unit = Dimension.ANGLE,
                sign = Key.Sign.ANY,
                example = "-2.1480 deg",
                doc = "Longitude of the pole, WGS 84, east positive.")
        @Nullable
        Measure longitude,

        @Key(example = "E-014", doc = "Number of the drawing.") @Nullable
        String drawing,

        @Key(example = "A", doc = "Revision of the drawing.") @Nullable
        String revision,

        @Key(
                required = true,
                example = "design",
                doc = "How far the work has come; tests and records of a later stage are due later.")
        Stage stage,

        @Key(
                example = "Earthing of a remote-controlled load-break switch.",
                doc = "One or two sentences for the reader of the report.")
        @Nullable
        String purpose) {}
