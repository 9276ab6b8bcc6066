package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import earthing.exercise.Exercise;
import earthing.exercise.ExerciseBook;
import earthing.quantity.Dimension;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The experiments for students: each command prints what its page says, each hand calculation is redone, hand and library
 * are no further apart than the page admits, and each figure is what the library draws. {@code -Dearthing.writePages=true}
 * renews the figures.
 */
final class ExperimentsTest {

    private static final String PROGRAM = "earthing-cli/bin/earthing ";
    private static final Pattern PIPE = Pattern.compile("(.*?) \\| grep (?:-A (\\d+) )?(.*)");
    private static final Pattern QUOTED = Pattern.compile("'([^']*)'");
    private static final Pattern AMOUNT = Pattern.compile("(-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?)(?: (\\S+))?");
    private static final Pattern CITED =
            Pattern.compile("(?<![\\w.-])(\\d+(?:\\.\\d+)?) (ohm\\.m|ohm|kV|V|kA|A|uH|kA/us|degC|%)(?![\\w/])");
    private static final Map<String, List<JsonObject>> RESULTS = new ConcurrentHashMap<>();

    static List<String> pages() throws IOException {
        return ExperimentPage.names();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void theCommandPrintsWhatThePageSays(String name) throws IOException {
        ExperimentPage page = ExperimentPage.read(name);
        assertThat(page.commands()).as("commands of " + name).isNotEmpty();
        for (ExperimentPage.Command command : page.commands()) {
            Matcher pipe = PIPE.matcher(command.line());
            boolean filtered = pipe.matches();
            List<String> printed = printed(filtered ? pipe.group(1) : command.line());
            if (filtered) {
                int after = pipe.group(2) == null ? 0 : Integer.parseInt(pipe.group(2));
                printed = filtered(printed, words(pipe.group(3)), after);
                assertThat(plain(printed)).as(command.line()).isEqualTo(plain(command.printed()));
            } else {
                assertThat(plain(printed)).as(command.line()).containsSubsequence(plain(command.printed()));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void theHandCalculationIsRight(String name) throws IOException {
        for (ExperimentPage.HandLine line : ExperimentPage.read(name).hand()) {
            Matcher amount = AMOUNT.matcher(line.value());
            assertThat(amount.matches()).as(name + ": " + line.value()).isTrue();
            assertThat(Arithmetic.value(line.expression()))
                    .as("%s: %s = %s = %s", name, line.symbol(), line.expression(), line.value())
                    .isCloseTo(Double.parseDouble(amount.group(1)), within(halfOfLastDigit(amount.group(1))));
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void handAndLibraryAgreeAsThePageSays(String name) throws IOException {
        ExperimentPage page = ExperimentPage.read(name);
        assertThat(page.rows()).as("rows of " + name).isNotEmpty();
        for (ExperimentPage.Row row : page.rows()) {
            String what = name + ", " + row.what();
            JsonObject result = result(row);
            double now = result.getDouble("value", Double.NaN);
            String unit = result.getString("unit", "").replaceAll("^1$", "");
            double scale = scale(row.library());
            Matcher library = AMOUNT.matcher(row.library());
            assertThat(library.matches()).as(what).isTrue();
            assertThat(dimension(row.library()))
                    .as("%s: the library gives %s", what, unit)
                    .isEqualTo(unit);
            assertThat(now / scale)
                    .as("%s: the library gives %s %s", what, now, unit)
                    .isCloseTo(Double.parseDouble(library.group(1)), within(halfOfLastDigit(library.group(1))));
            assertThat(page.hand().stream().map(ExperimentPage.HandLine::value))
                    .as(what + ": the value by hand comes from the hand calculation")
                    .contains(row.hand());
            Matcher hand = AMOUNT.matcher(row.hand());
            assertThat(hand.matches()).as(what).isTrue();
            double byHand = Double.parseDouble(hand.group(1)) * scale(row.hand());
            assertThat(100 * Math.abs(byHand - now) / Math.abs(now))
                    .as("%s: per cent between hand, %s, and library, %s", what, byHand, now)
                    .isLessThanOrEqualTo(row.within());
        }
    }

    /** A number in the text that no command printed and no calculation gave would go stale unseen. */
    @ParameterizedTest
    @MethodSource("pages")
    void theTextQuotesOnlyNumbersThatAreChecked(String name) throws IOException {
        ExperimentPage page = ExperimentPage.read(name);
        String checked = checked(page);
        String meaning = page.text().substring(page.text().indexOf("## What it means"));
        List<String> unknown = new ArrayList<>();
        Matcher cited = CITED.matcher(meaning);
        while (cited.find()) {
            if (!checked.contains(cited.group())) {
                unknown.add(cited.group());
            }
        }
        assertThat(unknown).as("numbers in the text of " + name).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void theBlankIsAskedAndJudged(String name) throws IOException {
        String id = ExperimentPage.read(name).exercise();
        Exercise exercise = ExerciseBook.all().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + ": there is no exercise " + id));
        CommandRun asked = CommandRun.of("exercise", id);
        assertThat(asked.code()).as(asked.err()).isEqualTo(ExitCode.MET.code());
        assertThat(asked.out()).contains(exercise.title());
        String unit = " " + exercise.answer().unit();
        double right = exercise.answer().value();
        assertThat(CommandRun.of("exercise", id, "--answer", right + unit).code())
                .isEqualTo(0);
        assertThat(CommandRun.of("exercise", id, "--answer", 3 * right + unit).code())
                .isEqualTo(1);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void thePageHasAllItsParts(String name) throws IOException {
        ExperimentPage page = ExperimentPage.read(name);
        assertThat(page.text())
                .contains(
                        "**Question.**",
                        "## Write down first",
                        "____",
                        "## By hand",
                        "## Run it",
                        "## Hand and library",
                        "## Your turn")
                .contains("](" + name + ".svg)", "## What it means");
        assertThat(page.rows()).as("rows of the table that can be read").hasSize((int)
                page.text().lines().filter(line -> line.matches("\\|.*\\| `.*")).count());
        for (ExperimentPage.Row row : page.rows()) {
            assertThat(page.text()).contains("](sites/" + row.site() + ".yaml)");
        }
        assertThat(Files.readString(ExperimentPage.FOLDER.resolve("README.md"))).contains("](" + name + ".md)");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void theFigureIsNotStale(String name) throws IOException {
        String drawing = ExperimentFigures.draw(name).replace("currentColor", "#444") + "\n";
        var file = ExperimentPage.FOLDER.resolve(name + ".svg");
        if (Boolean.getBoolean("earthing.writePages")) {
            Files.writeString(file, drawing);
        }
        assertThat(Files.readString(file))
                .as("%s is stale; run the test with -Dearthing.writePages=true", file)
                .isEqualTo(drawing);
    }

    @Test
    void everySiteBelongsToAPage() throws IOException {
        StringBuilder all = new StringBuilder();
        for (String name : pages()) {
            all.append(ExperimentPage.read(name).text());
        }
        try (Stream<java.nio.file.Path> sites = Files.list(ExperimentPage.FOLDER.resolve("sites"))) {
            assertThat(sites.map(file -> file.getFileName().toString())
                            .filter(file -> !all.toString().contains("](sites/" + file + ")")))
                    .isEmpty();
        }
    }

    @Test
    void arithmeticFollowsTheRules() {
        assertThat(Arithmetic.value("2 + 3·4^2/8 − (1 − 2)")).isEqualTo(9);
        assertThat(Arithmetic.value("-2^2 + 1e-3·1000")).isEqualTo(-3);
        assertThat(Arithmetic.value("ln(exp(2)) · √(4)")).isEqualTo(4, within(1e-15));
        assertThat(Arithmetic.value("asinh(3/4)")).isEqualTo(Math.log(2), within(1e-15));
        assertThatThrownBy(() -> Arithmetic.value("3 + x")).hasMessageContaining("character 4");
        assertThatThrownBy(() -> Arithmetic.value("(3 + 1")).hasMessageContaining("closing bracket");
        assertThatThrownBy(() -> Arithmetic.value("3 4 5e")).isInstanceOf(IllegalArgumentException.class);
    }

    private static List<String> printed(String line) {
        assertThat(line).startsWith(PROGRAM);
        List<String> words = new ArrayList<>();
        for (String word : line.substring(PROGRAM.length()).split(" ", -1)) {
            words.add(word.startsWith("docs/") ? "../" + word : word);
        }
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        return (run.out() + run.err()).replace("../docs/", "docs/").lines().toList();
    }

    /** Without widths of columns and numbers of references, which change with parts of the report that no page quotes. */
    private static List<String> plain(List<String> lines) {
        return lines.stream()
                .map(line -> line.replaceAll("\\[\\d+\\]", "[]")
                        .replaceAll("\\s+", " ")
                        .strip())
                .toList();
    }

    /** What grep lets pass: lines with one of the words, and so many lines after each. */
    private static List<String> filtered(List<String> lines, List<Pattern> words, int after) {
        List<String> passed = new ArrayList<>();
        int until = -1;
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (words.stream().anyMatch(word -> word.matcher(line).find())) {
                until = i + after;
            }
            if (i <= until) {
                passed.add(line);
            }
        }
        return passed;
    }

    /** The words of grep: one in quotation marks, or several behind -e. Of its patterns only the full stop is known here. */
    private static List<Pattern> words(String arguments) {
        List<Pattern> words = new ArrayList<>();
        Matcher quoted = QUOTED.matcher(arguments);
        while (quoted.find()) {
            assertThat(quoted.group(1)).doesNotContainPattern("[*\\[\\]^$\\\\]");
            words.add(Pattern.compile(Pattern.quote(quoted.group(1)).replace(".", "\\E.\\Q")));
        }
        assertThat(quoted.replaceAll("").replace("-e", "").strip())
                .as(arguments)
                .isEmpty();
        return words;
    }

    private static JsonObject result(ExperimentPage.Row row) {
        List<String> where =
                new ArrayList<>(List.of((row.where().isEmpty() ? "at nominal" : row.where()).split(", ", -1)));
        if (where.stream().noneMatch(word -> word.startsWith("at "))) {
            where.add("at nominal");
        }
        List<JsonObject> fitting = RESULTS.computeIfAbsent(row.site(), ExperimentsTest::results).stream()
                .filter(each -> each.getString("id", "").equals(row.id()))
                .filter(each -> circumstances(each).containsAll(where))
                .filter(each -> row.where().contains("broken ")
                        || each.get("case").asObject().get("broken") == null)
                .toList();
        assertThat(fitting)
                .as("results %s of %s where %s", row.id(), row.site(), row.where())
                .hasSize(1);
        return fitting.get(0);
    }

    /** Its case as "key word" pairs, and "at bound". */
    private static List<String> circumstances(JsonObject result) {
        List<String> words = new ArrayList<>();
        result.get("case")
                .asObject()
                .forEach(member ->
                        words.add(member.getName() + " " + member.getValue().asString()));
        words.add("at " + result.getString("at", ""));
        return words;
    }

    private static List<JsonObject> results(String site) {
        CommandRun run = CommandRun.of(
                "report",
                ExperimentPage.FOLDER.resolve("sites").resolve(site + ".yaml").toString(),
                "--format",
                "json");
        assertThat(run.out()).as(run.err()).isNotEmpty();
        return Json.parse(run.out()).asObject().get("results").asArray().values().stream()
                .map(JsonValue::asObject)
                .toList();
    }

    private static String checked(ExperimentPage page) throws IOException {
        StringBuilder checked = new StringBuilder();
        page.commands().forEach(command -> checked.append(String.join("\n", command.printed())));
        page.hand().forEach(line -> checked.append('\n').append(line.value()));
        page.rows()
                .forEach(row ->
                        checked.append('\n').append(row.library()).append('\n').append(row.within() + " %"));
        Matcher site = Pattern.compile("\\]\\((sites/[\\w-]+\\.yaml)\\)").matcher(page.text());
        while (site.find()) {
            checked.append('\n').append(Files.readString(ExperimentPage.FOLDER.resolve(site.group(1))));
        }
        return checked.toString()
                .replace("Ω·m", "ohm.m")
                .replace("Ω", "ohm")
                .replace("°C", "degC")
                .replace("µ", "u");
    }

    private static double halfOfLastDigit(String number) {
        return 0.5 * new BigDecimal(number).ulp().doubleValue() * (1 + 1e-9);
    }

    private static String unit(String amount) {
        Matcher parts = AMOUNT.matcher(amount);
        assertThat(parts.matches()).as(amount).isTrue();
        return parts.group(2) == null ? "" : parts.group(2);
    }

    private static double scale(String amount) {
        return Stream.of(Dimension.values())
                .map(dimension -> dimension.factors().get(unit(amount)))
                .filter(java.util.Objects::nonNull)
                .findFirst()
                .orElse(1.0);
    }

    private static String dimension(String amount) {
        return Stream.of(Dimension.values())
                .filter(dimension -> dimension.factors().containsKey(unit(amount)))
                .map(Dimension::siUnit)
                .findFirst()
                .orElse(unit(amount));
    }
}
