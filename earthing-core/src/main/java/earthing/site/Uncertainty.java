package earthing.site;

import java.util.List;

/** How the bounded inputs of a site are spread. */
public record Uncertainty(
        @Key(doc = "Inputs whose values are spread otherwise than in a triangle over low, nominal and high.")
        List<InputDistribution> distributions,

        @Key(doc = "Pairs of inputs that are high together, or one high where the other is low.")
        List<InputCorrelation> correlations) {

    /**
     * Copies the lists.
     *
     */
    public Uncertainty {
        distributions = List.copyOf(distributions);
        correlations = List.copyOf(correlations);
    }
}
