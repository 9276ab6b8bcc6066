package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Measurement;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A filled sheet comes into the file of its site, and nothing else there changes. */
final class ReadingsFileTest {

    private static final Path SITE = Path.of("site.yaml");

    private static final String HEAD = """
            file-version: 1
            site: {name: Test, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
            electrodes:
              - {name: main, resistance: 20 ohm}
              - {name: cubicle, resistance: 30 ohm}
            """;

    private static final String COLUMNS = "kind,of,value,method,isolated,date\n";
    private static final String MAIN = "electrode-resistance,main,21 ohm,fall-of-potential,yes,2026-05-04\n";
    private static final String CUBICLE = "electrode-resistance,cubicle,33 ohm,clamp-on,no,2026-05-05\n";

    private static ReadingsFile.Outcome.Added added(String table, String site) {
        ReadingsFile.Outcome outcome = ReadingsFile.addTo(table, "sheet.csv", site, SITE);
        if (outcome instanceof ReadingsFile.Outcome.Refused refused) {
            throw new AssertionError(
                    refused.problems().stream().map(Problem::text).toList().toString());
        }
        return (ReadingsFile.Outcome.Added) outcome;
    }

    private static List<String> told(String table) {
        return ReadingsFile.addTo(table, "sheet.csv", HEAD, SITE) instanceof ReadingsFile.Outcome.Refused refused
                ? refused.problems().stream().map(Problem::text).toList()
                : List.of();
    }

    private static List<Measurement> measurements(String text) {
        return ((ReadOutcome.Valid) SiteFile.read(text, "site.yaml")).site().measurements();
    }

    @Test
    void withoutABlockOneIsMadeAtTheEnd() {
        ReadingsFile.Outcome.Added added = added(COLUMNS + MAIN + CUBICLE, HEAD);
        assertThat(added.readings()).isEqualTo(2);
        assertThat(added.text()).startsWith(HEAD + "measurements:\n  - {kind: ");
        assertThat(measurements(added.text()))
                .extracting(reading -> reading.of() + " " + reading.value().nominal() + " " + reading.date())
                .containsExactly("main 21.0 2026-05-04", "cubicle 33.0 2026-05-05");
    }

    @Test
    void aBlockIsContinuedWithItsOwnIndentBeforeTheCommentBehindIt() {
        String before = HEAD + """
                measurements:
                    # the first of May
                    - kind: electrode-resistance
                      of: main
                      value: 19 ohm
                      method: fall-of-potential
                      isolated: yes
                      date: 2026-05-01
                """;
        String behind = """

                # what is behind the block stays
                tank: {height: 9 m}
                """;
        ReadingsFile.Outcome.Added added = added(COLUMNS + CUBICLE, before + behind);
        assertThat(added.text()).startsWith(before + "    - {kind: \"electrode-resistance\", of: \"cubicle\", ");
        assertThat(added.text()).endsWith("}\n" + behind);
        assertThat(measurements(added.text())).extracting(Measurement::of).containsExactly("main", "cubicle");
    }

    @Test
    void aRowWithoutAValueWasNotMeasured() {
        String blank = "electrode-resistance,main,,fall-of-potential,yes,2026-05-04\n";
        ReadingsFile.Outcome.Added added = added(COLUMNS + blank + CUBICLE, HEAD);
        assertThat(added.readings()).isEqualTo(1);
        assertThat(measurements(added.text())).extracting(Measurement::of).containsExactly("cubicle");
        assertThat(told(COLUMNS + blank)).containsExactly("sheet.csv: no row of this sheet has a value");
    }

    @Test
    void cellsOfAColumnForThePersonAreNotRead() {
        String table = """
                of;expected;kind;method;value;isolated;date
                main;18 to 25 ohm;electrode-resistance;fall-of-potential;21 ohm;yes;2026-05-04
                """;
        assertThat(added(table, HEAD).text()).doesNotContain("18 to 25").contains("value: \"21 ohm\"");
    }

    @Test
    void aBadSheetIsToldByItsRows() {
        assertThat(told("")).containsExactly("sheet.csv: there is nothing in this file");
        assertThat(told("kind,of,value,value,isolated,date\n" + MAIN))
                .anyMatch(line -> line.startsWith("sheet.csv:1:1: value: this column stands twice"))
                .anyMatch(line -> line.startsWith("sheet.csv:1:1: method: missing column"));
        assertThat(told("kind,of,value,method,isolated,date,weather\n" + MAIN))
                .singleElement()
                .asString()
                .startsWith("sheet.csv:1:1: weather: unknown column");
        assertThat(told(COLUMNS + MAIN + CUBICLE.replace("cubicle", "\"cub\nicle\"")))
                .singleElement()
                .asString()
                .startsWith("sheet.csv:3:1: of: a line break within a cell");
        // What the site file refuses is told at the row of the sheet: row 3 of it is the second reading.
        assertThat(told(COLUMNS + MAIN + CUBICLE.replace("33 ohm", "33 V")))
                .singleElement()
                .asString()
                .startsWith("sheet.csv:3:1: measurements[2].value: \"33 V\"");
        assertThat(told(COLUMNS + MAIN.replace("main", "mian")))
                .singleElement()
                .asString()
                .startsWith("sheet.csv:2:1: measurements[1].of: \"mian\" is not on this site");
    }

    @Test
    void aSheetIsReadFromItsFile(@TempDir Path folder) throws Exception {
        Path sheet = folder.resolve("sheet.csv");
        Files.writeString(sheet, COLUMNS + MAIN);
        assertThat(ReadingsFile.addTo(sheet, HEAD, SITE)).isEqualTo(added(COLUMNS + MAIN, HEAD));
        Files.write(sheet, new byte[] {'k', (byte) 0xE9});
        assertThat(((ReadingsFile.Outcome.Refused) ReadingsFile.addTo(sheet, HEAD, SITE)).problems())
                .singleElement()
                .satisfies(problem -> assertThat(problem.text()).contains("not UTF-8"));
        assertThat(ReadingsFile.addTo(folder.resolve("none.csv"), HEAD, SITE))
                .isInstanceOf(ReadingsFile.Outcome.Refused.class);
    }
}
