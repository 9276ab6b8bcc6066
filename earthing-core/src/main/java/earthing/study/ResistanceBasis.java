package earthing.study;

import earthing.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the resistance of an electrode rests on, in words: the ground, the method, and a second method beside it. */
public final class ResistanceBasis {

    private ResistanceBasis() {}

    /**
     * The words.
     *
     * @param results results of a site
     * @param electrode name of the electrode
     * @param at bound at which the resistance is shown
     * @return for example {@code thin-wire Galerkin, uniform soil; ground of 100 ohm.m; closed form 36.0 ohm, 0.9 % above};
     *     empty where there is no resistance at that bound
     */
    public static String of(StudyResults results, String electrode, String at) {
        String id = "electrode." + electrode + ".resistance";
        Optional<Result> own = one(results, id, at);
        if (own.isEmpty()) {
            return "";
        }
        List<String> parts = new ArrayList<>();
        parts.add(own.get().model());
        parts.add(ground(results, at));
        second(results, id, at, own.get().value()).ifPresent(parts::add);
        return String.join("; ", parts);
    }

    private static String ground(StudyResults results, String at) {
        List<String> layers = new ArrayList<>();
        double depth = 0;
        for (int n = 1; ; n++) {
            Optional<Result> rho = one(results, "soil.layer." + n + ".resistivity", at);
            if (rho.isEmpty()) {
                return layers.isEmpty() ? "no ground is described" : "ground of " + String.join(", ", layers);
            }
            String value = Numbers.brief(rho.get().value()) + " ohm.m";
            Optional<Result> thickness = one(results, "soil.layer." + n + ".thickness", at);
            if (thickness.isPresent()) {
                depth += thickness.get().value();
                layers.add(value + " to " + Numbers.brief(depth) + " m");
            } else {
                layers.add(n == 1 ? value : value + " below");
            }
        }
    }

    private static Optional<String> second(StudyResults results, String id, String at, double own) {
        Optional<Result> formula = one(results, id + ".formula", at);
        if (formula.isPresent()) {
            return Optional.of("closed form " + beside(formula.get().value(), own));
        }
        return one(results, id + ".even-leakage", at)
                .map(bound -> "even leakage, an upper bound, " + beside(bound.value(), own));
    }

    private static String beside(double value, double own) {
        double apart = 100 * (value / own - 1);
        return Numbers.brief(value) + " ohm, " + Numbers.significant(Math.abs(apart), 2) + " % "
                + (apart < 0 ? "below" : "above");
    }

    private static Optional<Result> one(StudyResults results, String id, String at) {
        return results.one(id, Case.NONE, at);
    }
}
