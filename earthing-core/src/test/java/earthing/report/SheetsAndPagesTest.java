package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.decision.CriteriaComparison;
import earthing.decision.SpreadStudy;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.site.Measurement;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.ReadingsFile;
import earthing.site.file.SiteFile;
import earthing.site.file.SurveyFile;
import earthing.site.file.SurveyOutcome;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.SurveyStudy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Sheets for the field and back, tables for other programs, and pages that compare: each read again by a second way. */
class SheetsAndPagesTest {

    private static final Path SITE = Path.of("fernmoor.yaml");
    private static final String HEAD = "kind,of,value,method,isolated,date\n";

    private static List<CsvRecord> records(@Nullable String table) {
        if (table == null) {
            throw new AssertionError("there is no such table");
        }
        try (CsvReader<CsvRecord> csv = CsvReader.builder().ofCsvRecord(table)) {
            return csv.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> cells(Document document, String table) {
        List<String> cells = new ArrayList<>();
        for (Block block : document.everyBlock()) {
            if (block instanceof Block.Table found && found.id().equals(table)) {
                found.rows().forEach(cells::addAll);
            }
        }
        return cells;
    }

    private static ReadingsFile.Outcome.Refused refused(String table) {
        ReadingsFile.Outcome outcome = ReadingsFile.addTo(table, "filled.csv", Fixtures.SITE_FILE, SITE);
        assertThat(outcome).isInstanceOf(ReadingsFile.Outcome.Refused.class);
        return (ReadingsFile.Outcome.Refused) outcome;
    }

    @Test
    void aFilledSheetComesBackAsTheReadingsOfTheSite() {
        List<CsvRecord> blank = records(FieldSheet.readingsTable(Fixtures.input()));
        assertThat(blank.get(0).getFields()).startsWith("kind", "of", "value").endsWith("expected");
        StringBuilder filled = new StringBuilder(String.join(",", blank.get(0).getFields())).append('\n');
        int ohms = 20;
        for (CsvRecord row : blank.subList(1, blank.size())) {
            List<String> cells = new ArrayList<>(row.getFields());
            cells.set(2, ohms++ + " ohm");
            cells.set(4, "yes");
            cells.set(7, "2026-05-04");
            filled.append(String.join(",", cells)).append('\n');
        }
        ReadingsFile.Outcome.Added added = (ReadingsFile.Outcome.Added)
                ReadingsFile.addTo(filled.toString(), "filled.csv", Fixtures.SITE_FILE, SITE);
        assertThat(added.readings()).isEqualTo(blank.size() - 1);
        List<Measurement> read = Fixtures.site(added.text()).measurements();
        assertThat(read).hasSize(blank.size() - 1);
        for (int i = 0; i < read.size(); i++) {
            assertThat(read.get(i).of()).isEqualTo(blank.get(i + 1).getField(1));
            assertThat(read.get(i).value().nominal()).isEqualTo(20 + i);
            assertThat(read.get(i).date()).isEqualTo("2026-05-04");
        }
        assertThat(read).extracting(Measurement::of).contains("main", "cubicle", "upper", "lower", "tee");
        // The rest of the file stays as it was, and a second sheet is added behind the first.
        assertThat(added.text()).startsWith(Fixtures.SITE_FILE);
        ReadingsFile.Outcome.Added again = (ReadingsFile.Outcome.Added) ReadingsFile.addTo(
                HEAD + "electrode-resistance,main,31 ohm,fall-of-potential,yes,2026-09-01\n",
                "autumn.csv",
                added.text(),
                SITE);
        assertThat(Fixtures.site(again.text()).measurements())
                .hasSize(read.size() + 1)
                .last()
                .satisfies(last -> assertThat(last.value().nominal()).isEqualTo(31));
    }

    @Test
    void aSheetIsRefusedWithItsRowAndColumn() {
        assertThat(refused("").problems())
                .singleElement()
                .satisfies(p -> assertThat(p.text()).contains("filled.csv", "nothing in this file"));
        assertThat(refused(HEAD + "electrode-resistance,main,,fall-of-potential,yes,2026-05-04\n")
                        .problems())
                .singleElement()
                .satisfies(p -> assertThat(p.text()).contains("no row of this sheet has a value"));
        assertThat(refused("kind,of,value,method,isolated,date,weather\n").problems())
                .anySatisfy(p -> assertThat(p.text()).contains("filled.csv:1", "unknown column", "weather"));
        assertThat(refused("kind,of,value,method,isolated\n").problems())
                .anySatisfy(p -> assertThat(p.text()).contains("missing column", "date"));
        // What the site file itself refuses is told at the row of the sheet.
        assertThat(refused(HEAD + "electrode-resistance,main,20 ohm,fall-of-potential,yes,2026-05-04\n"
                                + "electrode-resistance,main,20 volts,fall-of-potential,yes,2026-05-04\n")
                        .problems())
                .anySatisfy(p -> assertThat(p.text()).contains("filled.csv:3", "value"));
    }

    @Test
    void semicolonsAndQuotationMarksAreRead() {
        ReadingsFile.Outcome.Added added = (ReadingsFile.Outcome.Added) ReadingsFile.addTo(
                "kind;of;value;method;isolated;date\nelectrode-resistance;\"main\";20 ohm;fall-of-potential;no;2026-05-04\n",
                "filled.csv",
                Fixtures.SITE_FILE,
                SITE);
        assertThat(Fixtures.site(added.text()).measurements())
                .singleElement()
                .satisfies(m -> assertThat(m.of()).isEqualTo("main"));
    }

    @Test
    void theBuildSheetNamesEveryPartAsDesigned() {
        Document sheet = FieldSheet.build(Fixtures.input());
        assertThat(sheet.title()).isEqualTo("Build sheet – Fernmoor crossing & <switch> 3");
        String page = Report.text(sheet).replaceAll("\\s+", " ");
        assertThat(page).contains("prove dead and earth the line before an earth is opened");
        List<String> cells = cells(sheet, "build");
        assertThat(cells)
                .contains(
                        "Main earth, upper",
                        "Guard of the main earth",
                        "up to 2.5 m",
                        "Electrode main",
                        "Electrode cubicle",
                        "Control cable",
                        "7.3 m long, no coil, 0.2 m from the main earth on the whole route, screen bonded at both ends",
                        "Arresters");
        assertThat(cells).anyMatch(cell -> cell.startsWith("from 9 m to 3 m above ground"));
        assertThat(cells).anyMatch(cell -> cell.startsWith("earthed at the tank, line lead 0.3 m"));
        assertThat(Report.html(sheet)).contains("Fernmoor crossing &amp; &lt;switch&gt; 3");
    }

    @Test
    void theTestSheetCarriesThePredictedBand() {
        List<String> cells = cells(FieldSheet.test(Fixtures.input()), "test");
        assertThat(cells).contains("electrode resistance, main", "bond continuity, tee");
        // The made-up results are 20 ohm at low and 48 ohm at high soil.
        assertThat(cells.get(cells.indexOf("electrode resistance, main") + 1).replace(Amount.NO_BREAK, " "))
                .matches("20(\\.0)? ohm to 48(\\.0)? ohm|20(\\.0)? to 48(\\.0)? ohm|20(\\.0)? Ω to 48(\\.0)? Ω");
    }

    @Test
    void everyNumberOfTheReportStandsInItsTables() throws Exception {
        ReportInput input = Fixtures.input();
        Map<String, String> files = Report.csv(input);
        List<CsvRecord> index = records(files.get(Report.CSV_INDEX));
        assertThat(index.subList(1, index.size())).hasSize(files.size() - 1);
        for (CsvRecord row : index.subList(1, index.size())) {
            assertThat(records(files.get(row.getField(0))))
                    .as(row.getField(0))
                    .hasSize(1 + Integer.parseInt(row.getField(1)));
        }
        List<CsvRecord> results = records(files.get("results.csv"));
        int value = results.get(0).getFields().indexOf("value");
        for (int i = 0; i < input.results().results().size(); i++) {
            assertThat(results.get(i + 1).getField(0))
                    .isEqualTo(input.results().results().get(i).id());
            assertThat(Double.parseDouble(results.get(i + 1).getField(value)))
                    .isEqualTo(input.results().results().get(i).value());
        }
        assertThat(records(files.get("findings.csv")))
                .hasSize(1 + input.findings().size());
        assertThat(records(files.get("inputs.csv")))
                .anySatisfy(row -> assertThat(row.getFields())
                        .containsExactly("system.earth-fault-current", "200", "300", "340", "A", "data-sheet", "", ""))
                .anySatisfy(row -> assertThat(row.getFields()).startsWith("system.neutral.resistance", "", "unknown"));
    }

    @Test
    void twoFilesAreComparedInputByInput() {
        ReportInput a = Fixtures.input();
        String text = Fixtures.SITE_FILE.replace("clearing-time: 0.5 s", "clearing-time: 0.7 s");
        ReportInput b = new ReportInput(
                Fixtures.site(text), "other.yaml", text, Fixtures.HASH, a.results(), a.findings(), "0.1.0");
        assertThat(DifferencePage.text(a, b).replaceAll("\\s+", " "))
                .contains("1 input differs", "protection.clearing-time", "0.5 s", "0.7 s")
                .contains("must not be used to justify removing an earth");
        assertThat(DifferencePage.text(a, a).replaceAll("\\s+", " ")).contains("0 inputs differ");
        JsonObject json = Json.parse(DifferencePage.json(a, b)).asObject();
        assertThat(json.get("inputs").asArray()).singleElement().satisfies(change -> {
            assertThat(change.asObject().getString("key", "")).isEqualTo("protection.clearing-time");
            assertThat(change.asObject().getString("a", "")).contains("0.5");
            assertThat(change.asObject().getString("b", "")).contains("0.7");
        });
        assertThat(json.get("findings").asArray()).isEmpty();
        assertThat(json.get("results").asArray()).isEmpty();
        List<Result> changed = new ArrayList<>(a.results().results());
        changed.removeIf(result -> result.id().equals("electrode.main.resistance"));
        changed.add(
                Result.of("electrode.main.resistance", Case.NONE, "nominal", 33, "ohm", "thin wire", Fixtures.TOOL));
        StudyResults fewer = new StudyResults(
                changed,
                a.results().curves(),
                a.results().gaps(),
                a.results().assumptions(),
                a.results().notes());
        ReportInput c = new ReportInput(
                Fixtures.site(text),
                "other.yaml",
                text,
                Fixtures.HASH,
                fewer,
                a.findings().subList(1, 3),
                "0.1.0");
        JsonObject apart = Json.parse(DifferencePage.json(a, c)).asObject();
        assertThat(apart.get("results").asArray()).isNotEmpty();
        assertThat(apart.get("findings").asArray().size())
                .isEqualTo(a.findings().size() - 2);
        assertThat(DifferencePage.text(a, c).replaceAll("\\s+", " "))
                .contains("Checks of another status", "Results that differ most", "33");
    }

    @Test
    void anExplanationTellsMeaningReasonAndRemedy() {
        List<Finding> findings = Fixtures.findings();
        Finding one = findings.get(0);
        String page = ExplanationPage.text(one.id(), findings);
        assertThat(page).startsWith(one.id()).contains("What it means", "Why it matters", "What to do");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExplanationPage.text("no.such.check", findings))
                .withMessageContaining("no.such.check");
    }

    /** A survey over two layers, read from a file: the page, the block for a site file and the machine's copy agree. */
    @Test
    void aSurveyIsTheSameOnItsPageInItsBlockAndForMachines() {
        Path file = Path.of("..", "earthing-cli", "sites", "ternhook-survey.csv");
        SurveyOutcome.Valid read = (SurveyOutcome.Valid) SurveyFile.read(file, Optional.empty());
        SurveyStudy study = SurveyStudy.of(read.traverses(), OptionalInt.of(2));
        String page = SurveyReport.text("survey.csv", read.array(), study, List.of("a remark of the reader"));
        String block = SurveyReport.block(read.array(), study);
        assertThat(page).contains("survey.csv: ", "- a remark of the reader").endsWith(block);
        String site = Fixtures.SITE_FILE
                .replaceFirst("(?s)soil:\n.*?pole:", "SOIL\npole:")
                .replace("SOIL\n", block);
        Site with = Fixtures.site(site);
        assertThat(Objects.requireNonNull(with.soil()).layers()).hasSize(2);
        JsonObject json = Json.parse(SurveyReport.json("survey.csv", read.array(), study, List.of("r")))
                .asObject();
        assertThat(json.getString("site-file-block", "")).isEqualTo(block);
        JsonArray fits = json.get("pooled").asObject().get("fits").asArray();
        assertThat(fits).isNotEmpty();
        int readings =
                read.traverses().stream().mapToInt(t -> t.readings().size()).sum();
        assertThat(fits.get(0).asObject().get("readings").asArray().size()).isLessThanOrEqualTo(readings);
        assertThat(Objects.requireNonNull(with.soil())
                        .layers()
                        .get(0)
                        .resistivity()
                        .nominal())
                .isCloseTo(study.pooled().best().resistivity(0).value(), withinPercentage(0.5));
    }

    /** A rod in ground that is not well known: chances lie in [0, 1] and stand the same on the page and for machines. */
    @Test
    void aSpreadIsTheSameOnItsPageAndForMachines() throws Exception {
        String text = Files.readString(Path.of("..", "earthing-cli", "sites", "lowgarth-short.yaml"))
                .replace(
                        "{resistivity: unknown}", "{resistivity: {low: 60 ohm.m, nominal: 120 ohm.m, high: 240 ohm.m}}")
                .replace("method: resistor, resistance: unknown", "method: resistor, resistance: 40 ohm")
                .replaceAll("cubicle: .*\\n", "")
                .replaceAll("control-cable:\\n.*\\n.*\\n", "")
                .replace("{touch: en-50522-2022}", "{touch: en-50522-2022, electrode-resistance: 50 ohm}");
        Site site = ((ReadOutcome.Valid) SiteFile.read(text, "site.yaml")).site();
        StudyResults results = SiteStudy.of(site);
        List<Finding> findings = ComplianceRun.of(site, results);
        ReportInput input = new ReportInput(site, "site.yaml", text, Fixtures.HASH, results, findings, "0.1.0");
        SpreadStudy spread = SpreadStudy.of(site, findings, 20, 7, step -> {});
        JsonObject json = Json.parse(SpreadReport.json(input, spread)).asObject();
        assertThat(json.get("inputs").asArray()).singleElement().satisfies(one -> {
            assertThat(one.asObject().getString("key", "")).isEqualTo("soil.resistivity");
            assertThat(one.asObject().getDouble("low", 0)).isEqualTo(60);
        });
        assertThat(json.get("checks").asArray()).hasSize(spread.checks().size()).isNotEmpty();
        for (JsonValue check : json.get("checks").asArray()) {
            assertThat(check.asObject().getDouble("probability", -1)).isBetween(0.0, 1.0);
        }
        String page = Report.text(SpreadReport.document(input, spread));
        assertThat(page).contains("soil.resistivity", "electrode.resistance");
        assertThat(Report.html(SpreadReport.document(input, spread))).contains("<svg");
        SpreadStudy none = SpreadStudy.of(
                Fixtures.site(text.replace("low: 60 ohm.m, nominal: 120 ohm.m, high: 240 ohm.m", "nominal: 120 ohm.m")),
                findings,
                5,
                1,
                step -> {});
        assertThat(Report.text(SpreadReport.document(input, none)).replaceAll("\\s+", " "))
                .contains("nothing to spread");
    }

    /** The sets of criteria side by side: the page names every row that differs, and the machine's copy every set. */
    @Test
    void setsOfCriteriaStandSideBySide() {
        Site site = ((ReadOutcome.Valid)
                        SiteFile.read(Path.of("..", "earthing-cli", "sites", "ternhook-wood-shared.yaml")))
                .site();
        CriteriaComparison compared = CriteriaComparison.of(site);
        String page = CriteriaPage.text(site, compared);
        compared.rows().forEach(row -> assertThat(page).contains(row.id()));
        assertThat(page).contains("under " + compared.sets().size() + " sets of criteria");
        assertThat(page.lines()).allMatch(line -> line.length() <= 80);
        JsonObject json =
                Json.parse(CriteriaPage.json("ternhook.yaml", compared)).asObject();
        assertThat(json.get("sets").asArray()).hasSize(compared.sets().size());
    }
}
