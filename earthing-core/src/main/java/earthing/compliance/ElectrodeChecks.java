package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Criteria;
import earthing.site.Electrode;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.study.EarthPaths;
import earthing.study.ResistanceBasis;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Soil and electrode. */
final class ElectrodeChecks {

    private static final Source OWNER = Source.owner("criteria.electrode-resistance");
    private static final String FORMULA = ".formula";
    private static final String WITHOUT_OTHERS = ".without-others";

    private static final Source AGREEMENT = Source.tool(
            "band of 10 % between closed form and numeric solution, set here, no published source; docs/theory/electrode.md");
    private static final Source BOUND =
            Source.tool("the solution lies below the upper bound of even leakage, docs/theory/electrode.md");
    private static final Source SURVEY =
            Source.standard("IEEE Std 81", "resistivity measurements", Source.Status.FROM_MEMORY);

    private static final Source SCALED =
            Source.tool("a reading scales the ground within its declared bounds, docs/theory/soil.md");
    private static final Source MISFIT = Source.commonPractice("misfit of a soil survey to flat layers at most 10 %");

    /** Greatest root mean square of the relative residuals of a survey [1]. Common practice. */
    static final double GREATEST_MISFIT = 0.10;

    private static final double ROUNDING = 1e-9;

    /** Band between the closed form and the numeric solution that needs no explanation [1]. */
    static final double AGREEMENT_BAND = 0.10;

    private ElectrodeChecks() {}

    static List<Finding> resistance(Design design) {
        List<Finding> findings = new ArrayList<>();
        Site site = design.site();
        Optional<String> main = EarthPaths.mainElectrode(site);
        if (main.isEmpty()) {
            return List.of(new Draft("electrode.resistance", Group.ELECTRODE, "main electrode", OWNER)
                    .missing("the file describes no electrode", "electrodes"));
        }
        Criteria criteria = site.criteria();
        Measure owner = criteria == null ? null : criteria.electrodeResistance();
        for (Electrode electrode : site.electrodes()) {
            Draft draft = new Draft("electrode.resistance", Group.ELECTRODE, "electrode " + electrode.name(), OWNER);
            String id = "electrode." + electrode.name() + ".resistance";
            Optional<Result> worst = design.results().of(id).stream().max(Comparator.comparingDouble(Result::value));
            if (worst.isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id));
                continue;
            }
            Result result = worst.get();
            draft.in(result.circumstances(), result.at()).value(result.value(), result.unit());
            result.worked().ifPresent(draft::worked);
            boolean isMain = electrode.name().equals(main.get());
            if (!isMain) {
                findings.add(draft.notApplicable("the owner's value belongs to the main electrode"));
            } else if (owner == null || !owner.isKnown()) {
                findings.add(draft.missing(
                        "the owner's highest resistance is not given; values such as 1, 10, 25 and 30 ohm belong to"
                                + " different kinds of system",
                        "criteria.electrode-resistance"));
            } else {
                findings.add(draft.advice("lengthen or add electrodes, or measure the soil to narrow its bounds")
                        .atMost(
                                result.value(),
                                owner.nominal(),
                                "ohm",
                                "highest value over soil and season: "
                                        + ResistanceBasis.of(design.results(), electrode.name(), result.at())));
            }
        }
        return findings;
    }

    static List<Finding> modelAgreement(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Electrode electrode : design.site().electrodes()) {
            String id = "electrode." + electrode.name() + ".resistance";
            Draft draft =
                    new Draft("electrode.model-agreement", Group.ELECTRODE, "electrode " + electrode.name(), AGREEMENT);
            Optional<Pair> formula = furthest(design, id, FORMULA, p -> Math.abs(p.limit() - p.value()) / p.value());
            Optional<Pair> even = furthest(design, id, ".even-leakage", p -> p.value() / p.limit());
            if (formula.isPresent()) {
                findings.add(agreeing(draft, formula.get()));
            } else if (even.isPresent()) {
                findings.add(bounded(electrode, even.get()));
            } else if (design.results().of(id).isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id));
            } else {
                findings.add(draft.notApplicable("no published closed form covers this shape in this soil"));
            }
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("electrode.model-agreement", Group.ELECTRODE, "electrode", AGREEMENT)
                    .missing("the file describes no electrode", "electrodes"));
        }
        return findings;
    }

    /** A resistance with what a second method gives in the same ground [Ω]. */
    private record Pair(Result numeric, Result second) {

        double value() {
            return numeric.value();
        }

        double limit() {
            return second.value();
        }
    }

    /** Of all grounds that were looked at the one in which both methods lie furthest apart; nominal where it is no nearer. */
    private static Optional<Pair> furthest(Design design, String id, String second, ToDoubleFunction<Pair> apart) {
        List<Pair> pairs = design.results().of(id).stream()
                .map(numeric -> second.equals(FORMULA) ? withoutOthers(design, id, numeric) : numeric)
                .flatMap(numeric ->
                        at(design, id + second, numeric.at()).map(other -> new Pair(numeric, other)).stream())
                .toList();
        double furthest = pairs.stream().mapToDouble(apart).max().orElse(0);
        return pairs.stream()
                .filter(p -> apart.applyAsDouble(p) >= furthest - ROUNDING)
                .min(Comparator.comparing(p -> !p.numeric().at().equals("nominal")));
    }

    /** A closed form knows no other metal in the ground, so the solution is taken without it. */
    private static Result withoutOthers(Design design, String id, Result numeric) {
        return at(design, id + WITHOUT_OTHERS, numeric.at()).orElse(numeric);
    }

    private static Finding agreeing(Draft draft, Pair pair) {
        double n = pair.value();
        double f = pair.limit();
        String numeric =
                pair.numeric().id().endsWith(WITHOUT_OTHERS) ? "numeric without the other electrodes " : "numeric ";
        return draft.worked(Worked.of("d", "abs(R_f - R_n) / R_n")
                        .with("R_f", f, "ohm")
                        .with("R_n", n, "ohm")
                        .gives(Math.abs(f - n) / n, ""))
                .in(pair.numeric().circumstances(), pair.numeric().at())
                .advice("look at the shape and the validity of the closed form; the numeric value is used")
                .atMost(
                        Math.abs(f - n) / n,
                        AGREEMENT_BAND,
                        "",
                        "closed form " + Numbers.brief(f) + " ohm, " + numeric + Numbers.brief(n) + " ohm; "
                                + pair.second().model());
    }

    /** Where no closed form covers the shape: the solution has to lie below the upper bound of even leakage. */
    private static Finding bounded(Electrode electrode, Pair pair) {
        Result numeric = pair.numeric();
        double bound = pair.limit();
        return new Draft("electrode.model-agreement", Group.ELECTRODE, "electrode " + electrode.name(), BOUND)
                .in(numeric.circumstances(), numeric.at())
                .advice("the solution contradicts its own equation; look at bars that touch or overlap")
                .atMost(
                        numeric.value(),
                        bound,
                        numeric.unit(),
                        "no published closed form covers this shape in this soil; even leakage with the same Green's function"
                                + " gives an upper bound, " + Numbers.brief(bound) + " ohm, and the solution lies "
                                + Numbers.significant(100 * (1 - numeric.value() / bound), 2) + " % below");
    }

    private static Optional<Result> at(Design design, String id, String bound) {
        return design.results().of(id).stream()
                .filter(r -> r.at().equals(bound))
                .findFirst();
    }

    /** Whether the ground that a reading asks for lies within its declared bounds. */
    static List<Finding> calibration(Design design) {
        Soil soil = design.site().soil();
        String by = soil == null ? null : soil.calibrateBy();
        Draft draft = new Draft(
                "soil.calibration",
                Group.ELECTRODE,
                by == null ? "ground scaled by a reading" : "ground scaled by the reading of " + by,
                SCALED);
        if (by == null) {
            return List.of(draft.notApplicable("the file does not ask for it by soil.calibrate-by"));
        }
        Optional<Result> factor = at(design, "soil.calibration.factor", "nominal");
        Optional<Result> least = at(design, "soil.calibration.least-factor", "nominal");
        Optional<Result> most = at(design, "soil.calibration.greatest-factor", "nominal");
        if (factor.isEmpty() || least.isEmpty() || most.isEmpty()) {
            return List.of(draft.gap(design.gapsOf("soil.calibration"), "soil.calibration.factor"));
        }
        double k = factor.get().value();
        String range = "the reading asks for " + Numbers.brief(k)
                + " times the nominal resistivities; within the declared"
                + " bounds of all layers lie " + Numbers.brief(least.get().value()) + " to "
                + Numbers.brief(most.get().value()) + " times";
        draft.in(factor.get().circumstances(), factor.get().at());
        if (k < least.get().value()) {
            return List.of(
                    draft.advice("look for a second path that was joined during the reading; the ground was scaled"
                                    + " no further than its low bound")
                            .atLeast(k, least.get().value(), "", range));
        }
        return List.of(
                draft.advice("look at the electrode and its joints before the ground is blamed: a broken wire reads"
                                + " like poorer ground. Until then every study takes the poorer ground")
                        .atMost(k, most.get().value(), "", range));
    }

    static List<Finding> surveyQuality(Design design) {
        Draft draft = new Draft("soil.survey-quality", Group.ELECTRODE, "soil survey", SURVEY);
        Soil soil = design.site().soil();
        if (soil == null) {
            return List.of(draft.missing("the file does not describe the soil", "soil.resistivity"));
        }
        if (soil.isSurveyed()) {
            return List.of(readings(design, soil));
        }
        boolean layered = !soil.layers().isEmpty();
        Measure value = layered ? soil.layers().get(0).resistivity() : soil.resistivity();
        if (value == null || !value.isKnown()) {
            return List.of(draft.missing(
                    "the resistivity is not known", layered ? "soil.layers.resistivity" : "soil.resistivity"));
        }
        List<String> missing = new ArrayList<>();
        if (value.origin() == Measure.Origin.ASSUMED || value.origin() == Measure.Origin.UNSTATED) {
            missing.add("soil.resistivity.origin");
        }
        if (soil.survey() == null) {
            missing.add("soil.survey");
        }
        if (soil.surveyDate() == null) {
            missing.add("soil.survey-date");
        }
        if (soil.season() == null) {
            missing.add("soil.season");
        }
        if (!value.hasSpread()) {
            missing.add("soil.resistivity.low and high");
        }
        if (missing.isEmpty()) {
            return List.of(draft.met("surveyed " + soil.surveyDate()
                    + ", with bounds and season; readings themselves are" + " not part of the file"));
        }
        return List.of(draft.missing(
                "method, date, season or bounds of the resistivity are not told", missing.toArray(String[]::new)));
    }

    /** The readings stand in the file: their misfit is judged, and date and season have to be told. */
    private static Finding readings(Design design, Soil soil) {
        Draft draft = new Draft("soil.survey-quality", Group.ELECTRODE, "soil survey", MISFIT);
        Optional<Result> misfit = at(design, "soil.survey.misfit", "nominal");
        if (misfit.isEmpty()) {
            return draft.gap(design.gapsOf("soil.survey"), "soil.survey.misfit");
        }
        draft.in(misfit.get().circumstances(), misfit.get().at());
        if (soil.surveyDate() == null || soil.season() == null) {
            return draft.missing(
                    "date or season of the survey are not told",
                    soil.surveyDate() == null ? "soil.survey-date" : "soil.season");
        }
        long layers = design.results()
                .under("soil.survey.layer.")
                .filter(r -> r.id().endsWith(".resistivity") && r.at().equals("nominal"))
                .count();
        return draft.advice("flat layers do not describe these readings; measure again in another direction")
                .atMost(
                        misfit.get().value(),
                        GREATEST_MISFIT,
                        "",
                        "surveyed " + soil.surveyDate() + "; misfit of the readings to " + layers
                                + (layers == 1 ? " layer" : " layers"));
    }
}
