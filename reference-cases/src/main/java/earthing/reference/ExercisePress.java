package earthing.reference;

import earthing.exercise.Answer;
import earthing.exercise.Exercise;
import earthing.exercise.ExerciseBook;
import earthing.quantity.Dimension;
import earthing.quantity.Numbers;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;

/**
 * Joins the words of the exercises with the numbers of the reference cases and of site files into the file that the
 * library carries. An answer that was seen in print is taken from the row, any other is computed by the library.
 */
final class ExercisePress {

    /** A student works with a calculator and three digits: no tolerance is narrower than this part of the answer. */
    static final double LEAST_TOLERANCE = 0.01;

    private final Map<String, ReferenceCase> cases;
    private final Map<String, ReferenceModel> models;
    private final Path repository;
    private final Map<String, StudyResults> studied = new HashMap<>();
    private final List<String> problems = new ArrayList<>();

    private ExercisePress(List<ReferenceCase> cases, Map<String, ReferenceModel> models, Path repository) {
        this.cases = cases.stream().collect(Collectors.toMap(ReferenceCase::id, each -> each));
        this.models = models;
        this.repository = repository;
    }

    /**
     * Presses the exercises.
     *
     * @param texts the exercises as written
     * @param cases the reference cases
     * @param models model name to function
     * @param repository the top of the repository, from which site files are named
     * @return what the library carries, in the order of the texts
     * @throws CaseFormatException with everything that does not fit
     */
    static List<Exercise> press(
            List<ExerciseText> texts, List<ReferenceCase> cases, Map<String, ReferenceModel> models, Path repository) {
        ExercisePress press = new ExercisePress(cases, models, repository);
        List<Exercise> pressed = new ArrayList<>();
        for (ExerciseText text : texts) {
            try {
                pressed.add(
                        text.numbers() instanceof ExerciseText.Row row
                                ? press.ofCase(text, row)
                                : press.ofSite(text, (ExerciseText.SiteResult) text.numbers()));
            } catch (IllegalArgumentException e) {
                press.problems.add(text.file() + ":" + text.line() + ": " + text.id() + ": " + e.getMessage());
            }
        }
        if (!press.problems.isEmpty()) {
            throw new CaseFormatException(press.problems);
        }
        return List.copyOf(pressed);
    }

    private Exercise ofCase(ExerciseText text, ExerciseText.Row from) {
        ReferenceCase of = need(cases.get(from.id()), "there is no case " + from.id());
        if (of.kind() == CaseKind.NEGATIVE || of.kind() == CaseKind.BASELINE) {
            throw new IllegalArgumentException(from.id() + " is " + of.kind().text() + ", which is no right answer");
        }
        ReferenceModel model = need(models.get(of.model()), "no model is bound to " + of.model());
        ReferenceCase.Row row = row(of, from.row());
        ReferenceCase.Expected expected = row.expected().stream()
                .filter(each -> each.name().equals(text.blank()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(from.id() + " expects no " + text.blank()));
        PrintedNumber print = expected.printed();
        Map<String, Double> computed = model.compute(new Given(row.given()));
        double library = print.inPrintedUnit(computed.getOrDefault(text.blank(), Double.NaN));
        boolean printed = of.status() == CaseStatus.READ_NOW;
        double value = printed ? print.value() : digits(library);
        double within = within(text.tolerance().orElse(expected.tolerance()), print);
        if (!(Math.abs(library - print.value()) <= within)) {
            throw new IllegalArgumentException(
                    "the library gives " + library + " and the print " + print.text() + ": not within the tolerance");
        }
        List<Exercise.Slip> slips = new ArrayList<>();
        for (ExerciseText.Slip slip : text.slips()) {
            slips.add(new Exercise.Slip(digits(wrong(slip, row, model, print, text.blank(), value)), slip.because()));
        }
        return exercise(
                text,
                of.room(),
                given(row.given(), from.names()),
                text.blank().replace('-', ' '),
                answer(print.unit().text(), value, within, printed),
                text.hint().isEmpty() ? of.catches() : text.hint(),
                slips,
                of.source()
                        + (of.locus().isEmpty() ? "" : ", " + of.locus())
                        + (of.status() == CaseStatus.FROM_MEMORY ? " (print not seen)" : ""));
    }

    private static double wrong(
            ExerciseText.Slip slip,
            ReferenceCase.Row row,
            ReferenceModel model,
            PrintedNumber print,
            String blank,
            double right) {
        if (slip.times() != 0) {
            return right * slip.times();
        }
        Map<String, Given.Value> given = new LinkedHashMap<>(row.given());
        for (String name : slip.given().keySet()) {
            need(given.get(name), "a slip changes " + name + ", which is not given");
        }
        given.putAll(slip.given());
        String name = slip.result().isEmpty() ? blank : slip.result();
        Double si = model.compute(new Given(given)).get(name);
        return print.inPrintedUnit(need(si, "the model gives no " + name));
    }

    private Exercise ofSite(ExerciseText text, ExerciseText.SiteResult from) {
        Result result = only(from, studied(from.site()).of(from.result()));
        CaseUnit unit = CaseUnit.parse(from.unit());
        if (!unit.isComparableWith(CaseUnit.parse(result.unit()))) {
            throw new IllegalArgumentException(
                    "the result has the unit \"" + result.unit() + "\", which is no \"" + from.unit() + "\"");
        }
        double value = digits(result.value() / unit.factor());
        PrintedNumber number =
                PrintedNumber.parse(Numbers.full(value) + (from.unit().isEmpty() ? "" : " " + from.unit()));
        double within = within(text.tolerance().orElseThrow(), number);
        List<Exercise.Slip> slips = new ArrayList<>();
        for (ExerciseText.Slip slip : text.slips()) {
            if (slip.times() == 0) {
                throw new IllegalArgumentException("a slip on the result of a site is told by times");
            }
            slips.add(new Exercise.Slip(digits(value * slip.times()), slip.because()));
        }
        return exercise(
                text,
                "experiment",
                List.of(new Exercise.GivenValue("site", from.site()), new Exercise.GivenValue("page", from.page())),
                text.blank(),
                answer(from.unit(), value, within, false),
                text.hint(),
                slips,
                "result " + from.result() + " of " + from.site()
                        + (from.where().isEmpty() ? "" : ", " + new Case(from.where()).text()));
    }

    /** The one result that is meant; who names none or several is told what there is. */
    private static Result only(ExerciseText.SiteResult from, List<Result> ofThisId) {
        Case where = new Case(from.where());
        List<Result> meant = ofThisId.stream()
                .filter(each ->
                        each.at().equals(from.at()) && each.circumstances().within(where))
                .toList();
        if (meant.size() == 1) {
            return meant.get(0);
        }
        String there = ofThisId.stream()
                .map(each -> "at " + each.at()
                        + (each.circumstances().keys().isEmpty()
                                ? ""
                                : " where " + each.circumstances().text()))
                .collect(Collectors.joining("; "));
        throw new IllegalArgumentException(from.site() + " has " + meant.size() + " results " + from.result() + " at "
                + from.at() + (from.where().isEmpty() ? "" : " where " + where.text()) + "; there are: "
                + (there.isEmpty() ? "none" : there));
    }

    private StudyResults studied(String site) {
        return studied.computeIfAbsent(site, name -> {
            ReadOutcome outcome = SiteFile.read(repository.resolve(name));
            if (outcome instanceof ReadOutcome.Invalid invalid) {
                throw new IllegalArgumentException(invalid.problems().get(0).text());
            }
            return SiteStudy.of(((ReadOutcome.Valid) outcome).site());
        });
    }

    private static Exercise exercise(
            ExerciseText text,
            String room,
            List<Exercise.GivenValue> given,
            String asked,
            Answer answer,
            String hint,
            List<Exercise.Slip> slips,
            String source) {
        for (Exercise.Slip slip : slips) {
            double apart = Math.abs(slip.value() - answer.value());
            if (!(apart > answer.within() && apart > LEAST_TOLERANCE * Math.abs(answer.value()))) {
                throw new IllegalArgumentException("a slip gives " + slip.value() + ", which passes for right beside "
                        + answer.text() + ": " + slip.because());
            }
        }
        if (!text.worked().isEmpty()) {
            double worked = DeckExpression.parse(text.worked()).applyAsDouble(0);
            if (!(Math.abs(worked - answer.value()) <= answer.within())) {
                throw new IllegalArgumentException(
                        "the worked line gives " + worked + ", which is no right answer beside " + answer.text());
            }
        }
        return new Exercise(
                text.id(),
                room,
                text.title(),
                text.question(),
                given,
                asked,
                text.formula(),
                text.worked(),
                answer,
                hint,
                slips,
                source);
    }

    private static ReferenceCase.Row row(ReferenceCase of, Map<String, String> told) {
        List<ReferenceCase.Row> fitting = of.rows().stream()
                .filter(row -> told.entrySet().stream()
                        .allMatch(each -> row.given().get(each.getKey()) instanceof Given.Value.Text text
                                && text.text().equals(each.getValue())))
                .toList();
        if (fitting.size() != 1) {
            throw new IllegalArgumentException(
                    of.id() + " has " + fitting.size() + " rows where " + told + "; name one, cells with their unit");
        }
        return fitting.get(0);
    }

    private static List<Exercise.GivenValue> given(Map<String, Given.Value> values, Map<String, String> names) {
        for (String name : names.keySet()) {
            need(values.get(name), "names has a word for " + name + ", which is not given");
        }
        List<Exercise.GivenValue> given = new ArrayList<>();
        values.forEach((name, value) -> {
            String word = names.getOrDefault(name, name.replace('-', ' '));
            if (!word.isEmpty()) {
                given.add(new Exercise.GivenValue(word, text(value)));
            }
        });
        return given;
    }

    private static String text(Given.Value value) {
        return value instanceof Given.Value.Items items
                ? items.items().stream().map(ExercisePress::text).collect(Collectors.joining(", "))
                : ((Given.Value.Text) value).text();
    }

    private static Answer answer(String unit, double value, double within, boolean printed) {
        Dimension dimension = ExerciseBook.dimensionOf(unit)
                .orElseThrow(() -> new IllegalArgumentException(
                        "the unit \"" + unit + "\" is none that an answer can be read in"));
        return new Answer(dimension, unit, value, within, printed);
    }

    private static double within(Tolerance tolerance, PrintedNumber print) {
        return Double.parseDouble(
                Numbers.significant(Math.max(tolerance.allowed(print), LEAST_TOLERANCE * Math.abs(print.value())), 3));
    }

    /** Six digits: the arithmetic of another machine does not show. */
    private static double digits(double value) {
        return Double.parseDouble(Numbers.significant(value, 6));
    }

    private static <T> T need(@org.jspecify.annotations.Nullable T value, String otherwise) {
        if (value == null) {
            throw new IllegalArgumentException(otherwise);
        }
        return value;
    }

    /**
     * The file that the library carries.
     *
     * @param exercises its content
     * @return YAML
     */
    static String file(List<Exercise> exercises) {
        List<Map<String, Object>> all = new ArrayList<>();
        for (Exercise each : exercises) {
            Map<String, Object> entry = new LinkedHashMap<>();
            entry.put("exercise", each.id());
            entry.put("room", each.room());
            entry.put("title", each.title());
            entry.put("question", each.question());
            Map<String, Object> given = new LinkedHashMap<>();
            each.given().forEach(value -> given.put(value.name(), value.text()));
            entry.put("given", given);
            entry.put("asked", each.asked());
            entry.put("formula", each.formula());
            entry.put("worked", each.worked());
            entry.put("unit", each.answer().unit());
            entry.put("answer", Numbers.full(each.answer().value()));
            entry.put("within", Numbers.full(each.answer().within()));
            entry.put("origin", each.answer().printed() ? "printed" : "computed");
            entry.put("hint", each.hint());
            List<Map<String, Object>> slips = new ArrayList<>();
            for (Exercise.Slip slip : each.slips()) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("gives", Numbers.full(slip.value()));
                one.put("because", slip.because());
                slips.add(one);
            }
            entry.put("slips", slips);
            entry.put("source", each.source());
            all.add(entry);
        }
        DumpSettings settings = DumpSettings.builder()
                .setDefaultFlowStyle(FlowStyle.BLOCK)
                .setDefaultScalarStyle(ScalarStyle.PLAIN)
                .setWidth(120)
                .setBestLineBreak("\n")
                .build();
        return "# Pressed from reference-cases/exercises; see reference-cases/README.md. Do not edit.\n"
                + new Dump(settings).dumpToString(all);
    }
}
