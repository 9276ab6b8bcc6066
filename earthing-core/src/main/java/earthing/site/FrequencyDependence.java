package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The ground under impulse. Never used for touch or step. */
public record FrequencyDependence(
        @Key(
                required = true,
                example = "alipio-visacro-2014",
                doc = "Published law of conductivity and permittivity over frequency; the report names it.")
        SoilLaw law,

        @Key(
                unit = Dimension.RATIO,
                example = "10",
                doc = "Relative permittivity, for the law none only; 10 where absent.")
        @Nullable
        Measure relativePermittivity,

        @Key(
                unit = Dimension.FIELD,
                example = "400 kV/m",
                doc =
                        "Field strength at which this ground breaks down, fitted to the site; absent for no ionisation. Published values run from 240 to 1060 kV/m.")
        @Nullable
        Measure ionisationField) {}
