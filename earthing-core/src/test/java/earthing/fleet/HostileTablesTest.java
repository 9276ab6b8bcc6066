package earthing.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.file.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables as spreadsheets, other programs and accidents leave them. */
final class HostileTablesTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private FleetTable.Opened open(byte[] content) throws IOException {
        Files.write(folder.resolve("poles.csv"), content);
        Files.writeString(folder.resolve("base.yaml"), Tables.BASE);
        return FleetTable.open(
                folder.resolve("poles.csv"),
                Optional.empty(),
                Optional.empty(),
                Optional.of(folder.resolve("base.yaml")));
    }

    private List<PoleResult> results(String content) throws IOException, FleetRefusal {
        open(content.getBytes(StandardCharsets.UTF_8));
        FleetTable table = Tables.open(folder.resolve("poles.csv"));
        Path results = folder.resolve("results");
        assertThat(FleetRun.of(table, Tables.order(table.path(), results, 2, false), Tables.until(99)))
                .isEqualTo(table.size());
        return Tables.results(results, table.form());
    }

    private String refused(String content) throws IOException {
        FleetTable.Opened opened = open(content.getBytes(StandardCharsets.UTF_8));
        List<Problem> problems = ((FleetTable.Opened.Refused) opened).problems();
        assertThat(problems).hasSize(1);
        return problems.get(0).text().replace(folder + "/", "");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                                                 | poles.csv: there is no head line in this file",
                "# separator: comma\\n\\n,,\\n                      | poles.csv: there is no head line in this file",
                "site.pole,site.name\\nP1,A\\n                      | nothing says what stands between the cells",
                "# separator: tab\\nsite.pole,site.name\\n          | \"tab\" is not known here; expected comma or semicolon",
                "# separator: comma\\n# decimal: comma\\nsite.pole\\n | a decimal comma is declared, and a comma between cells",
                "# separator: comma\\nsite.pole,site.nmae\\n        | did you mean \"site.name\"?",
                "# separator: comma\\nsite.name,site.pole,site.pole\\n | stands already in column 2",
                "# separator: comma\\nsite.name,site.pole,tank.height\\n | the unit is missing",
                "# separator: comma\\nsite.name,site.pole,tank.height [V]\\n | unknown unit",
                "# separator: comma\\nsite.name,\"site.pole\\n     | a quotation mark of this row is not closed"
            })
    void aTableThatCannotBeReadIsRefusedAsAWhole(String content, String found) throws IOException {
        assertThat(refused(content.replace("\\n", "\n"))).contains(found);
    }

    @Test
    void aTableOfOtherCharactersIsRefused() throws IOException {
        for (java.nio.charset.Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            byte[] content = "\uFEFF# separator: comma\nsite.pole,site.name\n".getBytes(charset);
            assertThat(((FleetTable.Opened.Refused) open(content))
                            .problems()
                            .get(0)
                            .found())
                    .contains("UTF-16");
        }
    }

    @Test
    void aFileThatIsNotThereAndAFolderAreRefused() {
        for (String name : List.of("nowhere.csv", ".")) {
            FleetTable.Opened opened =
                    FleetTable.open(folder.resolve(name), Optional.of(','), Optional.empty(), Optional.empty());
            assertThat(opened).isInstanceOf(FleetTable.Opened.Refused.class);
        }
    }

    @Test
    void aTableWithoutRowsGivesResultsWithoutRows() throws Exception {
        assertThat(results("# separator: comma\n" + Tables.HEAD)).isEmpty();
    }

    @Test
    void aMarkAtTheHeadAndLineEndsOfAnotherSystemAreRead() throws Exception {
        List<PoleResult> results = results("\uFEFF# separator: comma\r\n"
                + Tables.HEAD.replace("\n", "\r\n")
                + "P1,\"Elm, \"\"old\"\"\",54,1,9,100\r\n\r\n,,,,,\r\n# a comment\r\n\"#2\",Oak,54,1,9,100");
        assertThat(results).extracting(PoleResult::isAssessed).containsExactly(true, true);
        assertThat(results).extracting(PoleResult::name).containsExactly("Elm, \"old\"", "Oak");
        assertThat(results).extracting(PoleResult::pole).containsExactly("P1", "#2");
        assertThat(results).extracting(PoleResult::row).containsExactly(3, 7);
    }

    @Test
    void aDecimalCommaGoesInAndComesOut() throws Exception {
        List<PoleResult> results = results("# separator: semicolon\n# decimal: comma\n" + Tables.HEAD.replace(',', ';')
                + "P1;Elm;54,25;-1,5;9,2;100\nP2;Oak;54.25;1;9;100\n");
        assertThat(results.get(0).latitude()).hasValue(54.25);
        assertThat(results.get(0).longitude()).hasValue(-1.5);
        assertThat(results.get(1).reason())
                .contains("column 3 (site.latitude [deg])")
                .contains("has a point");
        assertThat(Tables.text(folder.resolve("results").resolve(FleetStore.RESULTS)))
                .contains("P1;Elm;54,25;-1,5;assessed");
    }

    @Test
    void aBadRowIsToldAndTheNextIsGood() throws Exception {
        String good = ",54,1,9,100\n";
        List<PoleResult> results = results("# separator: comma\n" + Tables.HEAD + "P1,Elm" + good
                + "P2,\"Oak" + good
                + "P3,A\u0000sh" + good
                + "P4," + "x".repeat(TableLines.LONGEST + 1) + good
                + ",," + "54,1,9,100\n"
                + "P1,Yew" + good
                + "P7,Fir,54,1,9,100,7\n"
                + "P8,Box,54,181,9,100\n"
                + "P9,Bay" + good);
        assertThat(results)
                .extracting(PoleResult::isAssessed)
                .containsExactly(true, false, false, false, false, false, false, false, true);
        assertThat(results.get(3).reason()).contains("longer than");
        assertThat(results.get(4).reason()).contains("which pole it is");
        assertThat(results.get(7).reason()).contains("column 4").contains("no place on earth");
    }

    /** Bytes that are no UTF-8, in a row of their own. */
    @Test
    void aRowInAnotherEncodingIsToldAndTheNextIsGood() throws Exception {
        byte[] text = ("# separator: comma\n" + Tables.HEAD + "P1,M\u00e4r,54,1,9,100\nP2,Elm,54,1,9,100\n")
                .getBytes(StandardCharsets.ISO_8859_1);
        assertThat(open(text)).isInstanceOf(FleetTable.Opened.Good.class);
        FleetTable table = Tables.open(folder.resolve("poles.csv"));
        Path results = folder.resolve("results");
        FleetRun.of(table, Tables.order(table.path(), results, 1, false), Tables.until(99));
        assertThat(Tables.results(results, table.form()))
                .extracting(PoleResult::isAssessed)
                .containsExactly(false, true);
    }

    /** A hundred megabytes without a line end take no more room than a line may have. */
    @Test
    void aLineOfAHundredMegabytesIsPassedOver() throws IOException {
        long[] left = {100_000_000L};
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                return left[0]-- > 0 ? 'x' : left[0] == -1 ? '\n' : left[0] > -5 ? 'y' : -1;
            }

            @Override
            public int read(byte[] target, int from, int length) {
                int n = 0;
                for (int c = 0; n < length && (c = read()) >= 0; n++) {
                    target[from + n] = (byte) c;
                }
                return n == 0 ? -1 : n;
            }
        };
        try (TableLines lines = new TableLines(endless)) {
            assertThat(Objects.requireNonNull(lines.next()).fault()).contains("longer than");
            assertThat(Objects.requireNonNull(lines.next()).text()).isEqualTo("yyy");
            assertThat(lines.next()).isNull();
        }
    }
}
