package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A piece of the main earth. */
public record EarthSegment(
        @Key(text = Key.Text.NAME, required = true, example = "upper", doc = "Name of the segment.")
        String name,

        @Key(unit = Dimension.LENGTH, required = true, example = "9 m", doc = "Height of its upper end.")
        Measure fromHeight,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                required = true,
                example = "3 m",
                doc = "Height of its lower end.")
        Measure toHeight,

        @Key(doc = "Its conductor, where it differs.") @Nullable
        Conductor conductor,

        @Key(example = "compression", doc = "Joint at its lower end.") @Nullable
        Joint joint,

        @Key(example = "yes", doc = "Whether it is there and whole; no for a segment found missing.") @Nullable
        YesNo intact) {}
