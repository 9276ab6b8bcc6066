package earthing.study;

import earthing.electrode.wire.DrivenRod;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.soil.FitParameter;
import earthing.soil.Reading;
import earthing.soil.ReadingFit;
import earthing.soil.Sounding;
import earthing.soil.SoundingFit;
import earthing.soil.SoundingInversion;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * A soil survey turned into layers: every traverse for itself and all pooled, and what a reviewer would remark.
 *
 * @param traverses the soundings as read
 * @param each inversion of every traverse that has enough readings, where there are several
 * @param pooled inversion of all readings together
 * @param remarks what limits the use of the result, one sentence each
 */
public record SurveyStudy(
        List<Sounding> traverses, List<SoundingInversion> each, SoundingInversion pooled, List<String> remarks) {

    /** Traverses that differ by more than this are not one ground of flat layers [-]. Common practice. */
    private static final double DISAGREEMENT = 1.5;

    /** A misfit above this says that flat layers do not describe the readings [-]. Common practice. */
    private static final double POOR = 0.10;

    /** Readings that make a sounding worth its name [-]. Common practice: five or more spacings. */
    private static final int FEW = 5;

    /**
     * Least factor either way from a fitted resistivity to its bounds [-]. Common practice, no published source: two lines
     * count as one ground up to {@value #DISAGREEMENT} times apart, so a third one, or the same one in another season, may
     * read that much otherwise.
     */
    private static final double LEAST_OF_ONE = DISAGREEMENT;

    /**
     * The same where two lines were measured and pooled, which holds the ground within half of that in the logarithm, and
     * where the season is described on its own.
     */
    private static final double LEAST_OF_SEVERAL = 1.25;

    /** Where the least spread comes from. */
    static final Source LEAST_SPREAD = Source.commonPractice(
            "a fitted resistivity is bounded no closer than 1.25 times either way where two traverses carry the fit and the"
                    + " season is described, 1.5 times otherwise");

    /**
     * Copies the lists.
     *
     * @param traverses the soundings as read
     * @param each inversion of every traverse that has enough readings
     * @param pooled inversion of all readings together
     * @param remarks what limits the use of the result
     */
    public SurveyStudy {
        traverses = List.copyOf(traverses);
        each = List.copyOf(each);
        remarks = List.copyOf(remarks);
    }

    /**
     * Studies a survey.
     *
     * @param traverses the soundings, at least one
     * @param layers number of layers, or empty for as many as the readings support
     * @return the study
     * @throws IllegalArgumentException if there are too few readings for this
     */
    public static SurveyStudy of(List<Sounding> traverses, OptionalInt layers) {
        Sounding all = traverses.size() == 1 ? traverses.get(0) : Sounding.pooled("all", traverses);
        SoundingInversion pooled = inversion(all, layers);
        List<SoundingInversion> each = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        if (traverses.size() > 1) {
            for (Sounding traverse : traverses) {
                int needed = Math.max(SoundingInversion.FEWEST_READINGS, 2 * layers.orElse(1));
                if (traverse.readings().size() >= needed) {
                    each.add(inversion(traverse, layers));
                } else {
                    remarks.add("Traverse " + traverse.traverse() + " has too few readings for a fit of its own.");
                }
            }
        }
        compare(believed(traverses, pooled.best()), remarks);
        setAside(traverses, pooled.best(), remarks);
        remark(pooled.best(), all, remarks);
        return new SurveyStudy(traverses, each, pooled, remarks);
    }

    /**
     * Least factor either way from a fitted resistivity to the bounds that a study takes.
     *
     * @param season whether the season of the ground is described beside the readings
     * @return 1.25 where it is and two traverses or more have a fit of their own, else 1.5 [-]
     */
    public double leastSpread(boolean season) {
        return season && each.size() > 1 ? LEAST_OF_SEVERAL : LEAST_OF_ONE;
    }

    /**
     * The resistivity of a layer of the pooled fit as a study takes it: the 90 % interval, and no less than the least
     * spread. The interval holds the scatter of the readings about flat layers; it says nothing of ground beside the lines.
     *
     * @param layer layer from 0 at the surface
     * @param season whether the season of the ground is described beside the readings
     * @return resistivity with its bounds [Ω·m]
     */
    public FitParameter taken(int layer, boolean season) {
        FitParameter fitted = pooled.best().resistivityAtThickness(layer);
        return new FitParameter(
                fitted.kind(),
                layer,
                fitted.value(),
                Math.min(fitted.low(), fitted.value() / leastSpread(season)),
                Math.max(fitted.high(), fitted.value() * leastSpread(season)),
                fitted.resolved());
    }

    /**
     * The layers whose interval is narrower than the least spread.
     *
     * @param season whether the season of the ground is described beside the readings
     * @return layers from 0 at the surface
     */
    public List<Integer> widened(boolean season) {
        List<Integer> layers = new ArrayList<>();
        for (int i = 0; i < pooled.best().layers(); i++) {
            FitParameter fitted = pooled.best().resistivityAtThickness(i);
            FitParameter taken = taken(i, season);
            if (taken.low() < fitted.low() || taken.high() > fitted.high()) {
                layers.add(i);
            }
        }
        return layers;
    }

    /**
     * Whether the readings are resistances of a rod that was driven deeper step by step.
     *
     * @return true for driven rods, false for four probes
     */
    public boolean byDrivenRods() {
        return byDrivenRods(pooled.sounding());
    }

    private static boolean byDrivenRods(Sounding sounding) {
        return sounding.readings().get(0).array() instanceof DrivenRod;
    }

    private static SoundingInversion inversion(Sounding sounding, OptionalInt layers) {
        return layers.isPresent() ? SoundingInversion.of(sounding, layers.getAsInt()) : SoundingInversion.of(sounding);
    }

    /** The traverses without the readings that were set aside; the fit has them in the order of the traverses. */
    private static List<Sounding> believed(List<Sounding> traverses, SoundingFit pooled) {
        List<Sounding> list = new ArrayList<>();
        int first = 0;
        for (Sounding traverse : traverses) {
            int end = first + traverse.readings().size();
            List<Reading> kept = pooled.readings().subList(first, end).stream()
                    .filter(one -> !one.setAside())
                    .map(ReadingFit::reading)
                    .toList();
            if (!kept.isEmpty()) {
                list.add(new Sounding(traverse.traverse(), kept));
            }
            first = end;
        }
        return list;
    }

    private static void setAside(List<Sounding> traverses, SoundingFit pooled, List<String> remarks) {
        int next = 0;
        for (Sounding traverse : traverses) {
            for (int i = 0; i < traverse.readings().size(); i++) {
                ReadingFit bad = pooled.readings().get(next++);
                if (bad.setAside()) {
                    remarks.add("The reading of "
                            + Numbers.brief(bad.reading().apparentResistivity()) + " ohm.m at "
                            + Numbers.brief(bad.reading().spacing()) + " m"
                            + (traverse.traverse().isEmpty() ? "" : " on traverse " + traverse.traverse())
                            + " contradicts all others (" + Numbers.brief(bad.computed())
                            + " ohm.m fit them) and was set aside. Measure it again.");
                }
            }
        }
    }

    private static void compare(List<Sounding> traverses, List<String> remarks) {
        for (int i = 0; i < traverses.size(); i++) {
            for (int j = i + 1; j < traverses.size(); j++) {
                double ratio = traverses.get(i).greatestRatio(traverses.get(j));
                if (ratio > DISAGREEMENT) {
                    remarks.add("Traverses " + traverses.get(i).traverse() + " and "
                            + traverses.get(j).traverse() + " differ by up to " + Numbers.brief(ratio)
                            + " times at like spacings: the ground is not the same in both directions.");
                }
            }
        }
    }

    private static void remark(SoundingFit fit, Sounding all, List<String> remarks) {
        for (int layer = 0; layer < fit.layers(); layer++) {
            boolean known = fit.resistivity(layer).resolved()
                    && (layer == fit.layers() - 1 || fit.thickness(layer).resolved());
            if (!known) {
                remarks.add("Layer " + (layer + 1) + ": "
                        + fit.equivalent(layer)
                                .map(SurveyStudy::product)
                                .orElse("the readings do not hold its resistivity and thickness within a factor"
                                        + " of 2."));
            }
        }
        if (fit.misfit() > POOR) {
            remarks.add("The misfit is above 10 %: flat layers do not describe these readings well.");
        }
        if (all.readings().size() < FEW) {
            remarks.add("There are fewer than five readings; common practice is five spacings or more.");
        }
        if (byDrivenRods(all)) {
            remarks.add(
                    "A rod is an electrode of its own place: it tells nothing of the ground beside it. While it is driven it"
                            + " loosens the ground along itself, and in dry ground its resistance then reads high; common practice, no"
                            + " published source. Free the readings of the error of the test probes first.");
            remarks.add("The rod ends at " + Numbers.brief(all.longest())
                    + " m; what lies deeper than about that is not known.");
            return;
        }
        remarks.add("The spacings end at " + Numbers.brief(all.longest())
                + " m; what lies deeper than about that is not known.");
    }

    private static String product(FitParameter product) {
        boolean transverse = product.kind() == FitParameter.Kind.TRANSVERSE_RESISTANCE;
        return "resistivity and thickness cannot be told apart; known is "
                + (transverse ? "their product, " : "thickness over resistivity, ")
                + Numbers.brief(product.value()) + (transverse ? " ohm.m2" : " S") + " ("
                + Numbers.brief(product.low()) + " to " + Numbers.brief(product.high()) + ").";
    }
}
