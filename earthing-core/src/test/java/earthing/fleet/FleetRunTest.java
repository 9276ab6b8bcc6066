package earthing.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.decision.BusyThreads;
import earthing.site.Site;
import earthing.study.SiteStudy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FleetRunTest {

    private static final int ROWS = 200;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private void same(Path one, Path other) throws IOException {
        for (String name : List.of(FleetStore.RESULTS, FleetStore.LINES, FleetStore.JOURNAL)) {
            assertThat(Files.readAllBytes(other.resolve(name)))
                    .as(name)
                    .isEqualTo(Files.readAllBytes(one.resolve(name)));
        }
    }

    @Test
    void aRunThatWasStoppedAndWentOnIsTheSameForAnyNumberOfThreads() throws Exception {
        Path table = Tables.written(folder, ROWS);
        FleetTable poles = Tables.open(table);
        Path whole = folder.resolve("whole");
        assertThat(FleetRun.of(poles, Tables.order(table, whole, 2, false), Tables.until(ROWS + 1)))
                .isEqualTo(ROWS);

        Path halves = folder.resolve("halves");
        int done = FleetRun.of(poles, Tables.order(table, halves, 1, false), Tables.until(97));
        assertThat(done).isEqualTo(97);
        // Killed while it wrote: more has reached the files than the journal knows.
        Files.writeString(halves.resolve(FleetStore.RESULTS), "104,P104,Ald", StandardOpenOption.APPEND);
        Files.writeString(halves.resolve(FleetStore.LINES), "{\"ro", StandardOpenOption.APPEND);
        assertThat(FleetRun.of(poles, Tables.order(table, halves, 3, true), Tables.until(150)))
                .isGreaterThanOrEqualTo(150);
        assertThat(FleetRun.of(poles, Tables.order(table, halves, 2, true), Tables.until(ROWS + 1)))
                .isEqualTo(ROWS);
        same(whole, halves);

        // Nothing is left to do, and nothing changes.
        assertThat(FleetRun.of(poles, Tables.order(table, halves, 2, true), Tables.until(ROWS + 1)))
                .isEqualTo(ROWS);
        same(whole, halves);
        everyRowHasAValueOrAReason(Tables.results(whole, poles.form()));
        theSummaryCounts(FleetSummary.of(whole, poles.form()));
    }

    @Test
    void oneThreadStudiesWhereOneIsAskedFor() throws Exception {
        Path table = Tables.written(folder, ROWS);
        FleetTable poles = Tables.open(table);
        Set<String> one = BusyThreads.during(
                () -> FleetRun.of(poles, Tables.order(table, folder.resolve("one"), 1, false), Tables.until(ROWS + 1)));
        assertThat(one).hasSize(1);
        Set<String> four = BusyThreads.during(() ->
                FleetRun.of(poles, Tables.order(table, folder.resolve("four"), 4, false), Tables.until(ROWS + 1)));
        assertThat(four).hasSizeGreaterThan(1);
        same(folder.resolve("one"), folder.resolve("four"));
    }

    private static void everyRowHasAValueOrAReason(List<PoleResult> results) {
        assertThat(results).hasSize(ROWS);
        assertThat(results).extracting(PoleResult::row).isSorted();
        for (PoleResult result : results) {
            assertThat(result.isAssessed()).isEqualTo(result.reason().isEmpty());
            if (!result.isAssessed()) {
                assertThat(result.reason()).startsWith("poles.csv: row " + result.row());
            }
        }
        List<PoleResult> refused =
                results.stream().filter(result -> !result.isAssessed()).toList();
        assertThat(refused).hasSize(ROWS / 20);
        // The head is line 2, so row 7 of the poles is line 9.
        assertThat(refused.get(0).reason())
                .isEqualTo("poles.csv: row 9, column 5 (tank.height [m]): \"nine\" is no number; expected a number"
                        + " without unit, such as 2.5; blank if it is unknown, - if there is none");
        assertThat(refused.get(1).reason()).contains("row 29: this row has 5 cells, the head line 6");
        assertThat(refused.get(2).reason())
                .contains("row 49, column 1 (site.pole): the pole \"P1\" stands already in row 3");
        assertThat(refused.get(3).reason()).contains("row 69: a quotation mark of this row is not closed");
        assertThat(refused.get(4).reason()).contains("row 89: there is a control character");
    }

    private static void theSummaryCounts(FleetSummary summary) {
        assertThat(summary.assessed()).isEqualTo(ROWS - ROWS / 20);
        assertThat(summary.refused()).isEqualTo(ROWS / 20);
        int headlines = 0;
        for (Status status : Status.values()) {
            headlines += summary.headlines(status);
        }
        assertThat(headlines).isEqualTo(summary.assessed());
        assertThat(summary.lacks())
                .anyMatch(lack -> lack.key().equals("soil.resistivity") && lack.poles() == ROWS / 10);
    }

    @Test
    void aRowSaysWhatTheStudyOfItsSiteSays() throws Exception {
        Path table = Tables.written(folder, 3);
        FleetTable poles = Tables.open(table);
        Path results = folder.resolve("results");
        FleetRun.of(poles, Tables.order(table, results, 2, false), Tables.until(9));
        Site site = ((FleetTable.Found.One) poles.find("P2")).site();
        List<Finding> findings = ComplianceRun.of(site, SiteStudy.of(site));
        PoleResult result = Tables.results(results, poles.form()).get(1);
        assertThat(result.headline()).contains(Severity.headline(findings));
        for (Finding.Group group : Finding.Group.values()) {
            Optional<Finding> worst = Severity.worst(findings, group);
            PoleResult.Governing governing = result.governing().get(group);
            assertThat(Optional.ofNullable(governing).map(PoleResult.Governing::check))
                    .isEqualTo(worst.map(Finding::id));
            if (governing != null) {
                assertThat(governing.status()).isEqualTo(worst.get().status());
                assertThat(governing.value()).isEqualTo(worst.get().value());
                assertThat(governing.limit()).isEqualTo(worst.get().limit());
                assertThat(governing.margin()).isEqualTo(worst.get().margin());
                assertThat(governing.circumstances())
                        .isEqualTo(worst.get().circumstances().text());
            }
        }
    }

    @Test
    void anotherTableOrAFolderInUseIsRefused() throws Exception {
        Path table = Tables.written(folder, 4);
        Path results = folder.resolve("results");
        assertThatThrownBy(
                        () -> FleetRun.of(Tables.open(table), Tables.order(table, results, 1, true), Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("holds no run to go on with");
        FleetRun.of(Tables.open(table), Tables.order(table, results, 1, false), Tables.until(2));
        assertThatThrownBy(
                        () -> FleetRun.of(Tables.open(table), Tables.order(table, results, 1, false), Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("--resume");
        Files.writeString(table.resolveSibling("base.yaml"), Tables.BASE.replace("0.5 s", "0.4 s"));
        assertThatThrownBy(
                        () -> FleetRun.of(Tables.open(table), Tables.order(table, results, 1, true), Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("is not that of the run");
        Files.writeString(table.resolveSibling("base.yaml"), Tables.BASE);
        Files.writeString(results.resolve(FleetStore.JOURNAL), "earthing-fleet-journal/1\nrows 99999999999\n");
        assertThatThrownBy(
                        () -> FleetRun.of(Tables.open(table), Tables.order(table, results, 1, true), Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("is no journal");
        Path full = Files.createDirectory(folder.resolve("full"));
        Files.writeString(full.resolve("mine.txt"), "mine");
        assertThatThrownBy(() -> FleetRun.of(Tables.open(table), Tables.order(table, full, 1, false), Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("other files");
        assertThat(Tables.text(full.resolve("mine.txt"))).isEqualTo("mine");
    }

    @Test
    void aRunGoesOnWithTheSameCellsAndTheSameProgramOnly() throws Exception {
        Path table = Tables.written(folder, 4);
        Path results = folder.resolve("results");
        FleetRun.of(Tables.open(table), Tables.order(table, results, 1, false), Tables.until(2));
        FleetRun.Order order = Tables.order(table, results, 1, true);
        FleetRun.Order newer = new FleetRun.Order(order.base(), results, 1, true, "next", order.json());
        assertThatThrownBy(() -> FleetRun.of(Tables.open(table), newer, Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("is not that of the run");
        String text = Files.readString(table);
        Files.writeString(table, text.replace("P4,Alder 4,54.004,-0.04,9,54", "P4,Alder 4,54.004,-0.04,9,540"));
        assertThat(Files.readString(table)).isNotEqualTo(text);
        assertThatThrownBy(() -> FleetRun.of(Tables.open(table), order, Tables.until(9)))
                .isInstanceOf(FleetRefusal.class)
                .hasMessageContaining("is not that of the run");
        Files.writeString(table, text);
        assertThat(FleetRun.of(Tables.open(table), order, Tables.until(9))).isEqualTo(4);
    }

    @Test
    void aPoleIsFoundWithItsSiteOrWithTheReasonsOfItsRow() throws Exception {
        FleetTable poles = Tables.open(Tables.written(folder, 20));
        assertThat(poles.isLocated()).isTrue();
        assertThat(poles.find("P12"))
                .isInstanceOfSatisfying(
                        FleetTable.Found.One.class,
                        found -> assertThat(found.site().site().name()).isEqualTo("Alder 12"));
        assertThat(poles.find("P7"))
                .isInstanceOfSatisfying(
                        FleetTable.Found.Refused.class,
                        found -> assertThat(found.reasons())
                                .singleElement()
                                .asString()
                                .startsWith("poles.csv: row 9, column 5 (tank.height [m]): \"nine\" is no number"));
        assertThat(poles.find("P21"))
                .isEqualTo(new FleetTable.Found.Refused(List.of("poles.csv: no row has the pole \"P21\"")));
    }

    @Test
    void theWorstMarginComesFirstThenTheKeyThatMostLackThenRefusedRows() throws Exception {
        Path results = Files.createDirectory(folder.resolve("made"));
        ResultsTable table = new ResultsTable(TableForm.COMMA);
        StringBuilder text = new StringBuilder(table.head());
        text.append(line(table, 1, "notMet", -0.2, List.of()));
        text.append(line(table, 2, "missing", Double.NaN, List.of("a.rare", "z.often")));
        text.append(line(table, 3, "notMet", -3, List.of("z.often")));
        text.append(line(table, 4, "refused", Double.NaN, List.of()));
        text.append(line(table, 5, "met", 0.4, List.of()));
        text.append(line(table, 6, "missing", Double.NaN, List.of("b.rare")));
        text.append(line(table, 7, "notMet", Double.NaN, List.of()));
        text.append(line(table, 8, "missing", Double.NaN, List.of("z.often")));
        Files.writeString(results.resolve(FleetStore.RESULTS), text.toString());
        FleetSummary summary = FleetSummary.of(results, TableForm.COMMA);
        assertThat(summary.work()).extracting(FleetSummary.Work::row).containsExactly(3, 1, 7, 2, 8, 6, 4);
        assertThat(summary.work().get(3).keys()).containsExactly("z.often", "a.rare");
        assertThat(summary.lacks().get(0)).isEqualTo(new FleetSummary.Lack("z.often", 3));
        assertThat(summary.margins(Finding.Group.SURGE)).containsExactly(-3, -0.2, 0.4);
        assertThat(summary.outcome()).contains(FleetSummary.Why.NOT_MET);
        assertThat(summary.workList().lines()).hasSize(8);
    }

    private static String line(ResultsTable table, int row, String kind, double margin, List<String> keys) {
        Status status = switch (kind) {
            case "notMet" -> Status.NOT_MET;
            case "missing" -> Status.INSUFFICIENT_DATA;
            default -> Status.MET;
        };
        boolean refused = kind.equals("refused");
        return table.line(new PoleResult(
                row,
                "P" + row,
                "",
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                refused ? Optional.empty() : Optional.of(status),
                refused
                        ? java.util.Map.of()
                        : java.util.Map.of(
                                Finding.Group.SURGE,
                                new PoleResult.Governing(
                                        "surge.gap",
                                        status,
                                        java.util.OptionalDouble.empty(),
                                        java.util.OptionalDouble.empty(),
                                        "V",
                                        Double.isNaN(margin)
                                                ? java.util.OptionalDouble.empty()
                                                : java.util.OptionalDouble.of(margin),
                                        "",
                                        "high")),
                keys,
                refused ? "no reason" : ""));
    }
}
