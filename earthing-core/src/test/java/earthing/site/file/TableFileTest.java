package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import earthing.quantity.ColumnTable;
import earthing.site.OwnerCriteria;
import earthing.site.Site;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of columns that a site file names: what is read, and what is said about a bad one. */
final class TableFileTest {

    private static final String SITE = """
            file-version: 1
            site: {name: Test pole, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              neutral: {method: solid}
            criteria:
              touch: owner
              owner:
                name: works rule
                reference: WR-7
                touch-curve: %s
            """;

    private static ReadOutcome read(String name, String content) {
        SideFiles files = asked -> {
            if (!asked.equals("limits.csv")) {
                throw new NoSuchFileException(asked);
            }
            return content.getBytes(StandardCharsets.UTF_8);
        };
        return SiteFile.read(SITE.formatted(name).getBytes(StandardCharsets.UTF_8), "sites/test.yaml", files);
    }

    private static ColumnTable table(Site site) {
        OwnerCriteria owner =
                Objects.requireNonNull(Objects.requireNonNull(site.criteria()).owner());
        return Objects.requireNonNull(owner.touchCurve());
    }

    @Test
    void columnsAreReadInTheirUnitsWhateverTheirOrder() {
        ReadOutcome outcome = read("limits.csv", "# of the owner\nvoltage [kV], time [ms]\n0.7,50\n\n0.1, 1000\n");
        ColumnTable table = table(((ReadOutcome.Valid) outcome).site());
        assertThat(table.column("time")).isEqualTo(List.of(0.05, 1.0));
        assertThat(table.column("voltage")).isEqualTo(List.of(700.0, 100.0));
        assertThat(table.toString()).startsWith("limits.csv (2 rows, SHA-256 ");
    }

    @Test
    void decimalCommaIsReadWhereItIsDeclared() {
        ReadOutcome outcome = read("limits.csv", "# decimal: comma\ntime [s];voltage [V]\n0,05;700\n1;99,5\n");
        assertThat(table(((ReadOutcome.Valid) outcome).site()).column("voltage"))
                .isEqualTo(List.of(700.0, 99.5));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    time,voltage [V]~0.1,500~1,100 | sites/limits.csv:1:1: time: the unit is missing; expected time [s]
                    time [m],voltage [V]~0.1,500~1,100 | limits.csv:1:1: time: unknown unit "m"; expected time [s]
                    time [s]~0.1~1 | limits.csv:1:1: the head line lacks a column; expected voltage [V]
                    time [s],voltage [V],body [A]~1,2,3 | limits.csv:1:3: unknown column "body [A]"
                    time [s],time [s],voltage [V]~1,2,3 | limits.csv:1:2: time: this column stands here twice
                    time [s],voltage [V]~0.1,500~1,x | limits.csv:3:2: voltage: "x" is no number
                    time [s],voltage [V]~0.1,500~1, | limits.csv:3:2: voltage: there is no value
                    time [s],voltage [V]~0.1,500~1,100,3 | limits.csv:3:1: this row has 3 values, the head line 2
                    time [s];voltage [V]~0,1;500~1;100 | limits.csv:2:1: time: "0,1" has a comma
                    time [s],voltage [V]~0,500~1,100 | limits.csv:2:1: time: "0" is not above zero
                    time [s],voltage [V]~1,500~0.1,600 | limits.csv:3:1: time: this value does not rise above
                    time [s],voltage [V]~0.1,500~1,600 | limits.csv:3:2: voltage: this value rises above the one before
                    time [s],voltage [V]~0.1,500 | limits.csv: there are fewer than 2 rows
                    # only a comment | limits.csv: there is nothing in this file
                    time [s],voltage [V]~0.1,NaN~1,100 | limits.csv:2:2: voltage: "NaN" is no number
                    """)
    void badTablesAreToldWithFileRowAndColumn(String content, String expected) {
        List<String> problems = Problems.of(read("limits.csv", content.replace("~", "\n")));
        assertThat(problems).anyMatch(problem -> problem.contains(expected));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    absent.csv | test.yaml:12:18: criteria.owner.touch-curve: "absent.csv": there is no such file
                    ../limits.csv | is no plain file name; expected the name of a file in the folder of this one
                    /etc/hosts | is no plain file name
                    .hidden | is no plain file name
                    [a, b] | a list does not fit here
                    """)
    void namesOfFilesAreChecked(String name, String expected) {
        assertThat(Problems.of(read(name, ""))).anyMatch(problem -> problem.contains(expected));
    }

    @Test
    void fileLiesBesideTheSiteFile(@TempDir Path folder) throws IOException {
        Path site = folder.resolve("site.yaml");
        Files.writeString(site, SITE.formatted("limits.csv"));
        Files.writeString(folder.resolve("limits.csv"), "time [s],voltage [V]\n0.1,500\n1,100\n");
        assertThat(SiteFile.read(site)).isInstanceOf(ReadOutcome.Valid.class);
        Files.writeString(site, SITE.formatted("folder.csv"));
        Files.createDirectory(folder.resolve("folder.csv"));
        assertThat(Problems.of(SiteFile.read(site))).anyMatch(problem -> problem.contains("cannot be read"));
    }

    private static final String SURVEYED = """
            file-version: 1
            site: {name: Test pole, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
            soil: {survey-file: survey.csv%s}
            """;

    private static ReadOutcome survey(String more, String content) {
        return SiteFile.read(
                SURVEYED.formatted(more).getBytes(StandardCharsets.UTF_8),
                "sites/test.yaml",
                name -> content.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aSurveyBesideTheSiteFileGivesTheSoundingsOfTheSurveyCommand() {
        String content =
                "traverse,spacing [m],probe depth [m],resistance [ohm]\na,1,0.1,16\na,2,0,7\nb,1,0.1,15\nb,3,0,5\n";
        Site site = ((ReadOutcome.Valid) survey("", content)).site();
        ColumnTable table =
                Objects.requireNonNull(Objects.requireNonNull(site.soil()).surveyFile());
        SurveyOutcome.Valid own =
                (SurveyOutcome.Valid) SurveyFile.read(content, "survey.csv", java.util.Optional.empty());
        assertThat(SurveyFile.soundings(table)).isEqualTo(own.traverses()).hasSize(2);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    spacing [m],AB/2 [m],resistance [ohm]~1,2,3~2,3,4~3,4,5 | sites/survey.csv:1:1: the columns of this head line do not suffice; expected either spacing
                    rod depth [m],resistance [ohm]~1,90~2,50~3,40 | survey.csv:1:1: the columns of this head line do not suffice; expected either spacing [m], or AB/2 [m] and MN/2 [m], or rod depth [m] and rod diameter [mm]
                    rod depth [m],rod diameter [mm],spacing [m],resistance [ohm]~1,16,1,90~2,16,2,50~3,16,3,40 | survey.csv:1:1: the columns of this head line do not suffice
                    rod depth [m],rod diameter [mm],probe depth [m],resistance [ohm]~1,16,0,90~2,16,0,50~3,16,0,40 | survey.csv:1:1: the columns of this head line do not suffice; expected no probe depth
                    rod depth [m],rod diameter [mm],resistance [ohm]~1,16,90~2,16,0~3,16,40 | survey.csv:3:3: resistance: "0" is not above zero
                    rod depth [m],rod diameter [m],resistance [ohm]~1,16,90~2,16,50~3,16,40 | survey.csv:2:1: a bar must be at least as long as thick
                    ab/2 [m],resistance [ohm]~1,2~2,3~3,4 | survey.csv:1:1: the columns of this head line do not suffice
                    spacing [m],resistance [ohm]~1,20~2,9~3,4~2,9 | survey.csv:5:1: the same reading stands in line 3
                    spacing [m],resistivity [ohm.m]~1,100~2,9500~3,90~4,80 | survey.csv:3:1: 9500 ohm.m is more than ten times above
                    ab/2 [m],mn/2 [m],resistance [ohm]~1,2,3~2,1,4~3,1,5 | survey.csv:2:1: a Schlumberger array needs
                    spacing [m],resistance [ohm]~1,20~2,-9~3,4~4,3 | survey.csv:3:2: resistance: "-9" is not above zero
                    """)
    void aBadSurveyBesideTheSiteFileIsToldWithFileRowAndColumn(String content, String expected) {
        assertThat(Problems.of(survey("", content.replace("~", "\n")))).anyMatch(problem -> problem.contains(expected));
    }

    @Test
    void aSurveyFileStandsAlone() {
        String content = "spacing [m],resistance [ohm]\n1,20\n2,9\n3,4\n";
        assertThat(Problems.of(survey(", resistivity: 100 ohm.m", content)))
                .anyMatch(problem -> problem.contains("soil.survey-file") || problem.contains("soil.resistivity"));
    }

    /** A row of digits with a line separator behind it took minutes to refuse. */
    @Test
    void longRowOfDigitsIsRefusedInTime() {
        String content = "spacing [m],resistance [ohm]\n1," + "9".repeat(20_000) + "\u2028x\n2,9\n3,4\n";
        List<String> problems =
                assertTimeoutPreemptively(Duration.ofSeconds(20), () -> Problems.of(survey("", content)));
        assertThat(problems).anyMatch(problem -> problem.contains("survey.csv:2:2: resistance: "));
    }

    /** What damage at random brought to light: each was read with a row lost or a value altered, or ended in an error. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', textBlock = """
                    spacing [m],resistance [ohm],traverse~1,20,"a~2,9,a~3,4,a~4,3,"~5,2,a~6,1.5,a | survey.csv:2:1: a quotation mark of this row is not closed
                    spacing [m],resistance [ohm],traverse~1,20,a~2,9,a~3,4,a~4,3,"a~5,2,a | survey.csv:5:1: a quotation mark of this row is not closed
                    traverse~a~b~c | survey.csv:1:1: the head line has no column of numbers; expected traverse, spacing [m]
                    # decimal: comma~spacing [m];resistance [ohm]~1;1.200~2;9,5~3;4,1 | survey.csv:3:2: resistance: "1.200" has a point, and a decimal comma is declared
                    """)
    void whatDamageBroughtToLightIsTold(String content, String expected) {
        assertThat(Problems.of(survey("", content.replace("~", "\n")))).anyMatch(problem -> problem.contains(expected));
    }
}
