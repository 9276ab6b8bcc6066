package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.site.Site;
import earthing.site.SwitchState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SiteRowsTest {

    private static final String BASE = """
            site: {stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              earth-fault-current: {low: 95 A, nominal: 99 A, high: 102 A, origin: data-sheet}
              neutral: {method: resistor}
            tank: {height: 9 m, switch-state: open}
            electrodes:
              - name: main
                rod: {length: 3 m, diameter: 16 mm}
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private SiteRows.Head head(boolean decimalComma, String... heads) throws IOException {
        Path base = folder.resolve("base.yaml");
        Files.writeString(base, BASE);
        return SiteRows.head(
                "poles.csv", 1, List.of(heads), Optional.of(base), folder.resolve("poles.csv"), decimalComma);
    }

    private Site site(Map<String, String> row) throws IOException {
        List<String> heads = new ArrayList<>(List.of("site.name"));
        List<String> cells = new ArrayList<>(List.of("P 1"));
        heads.addAll(row.keySet());
        cells.addAll(row.values());
        SiteRows rows = ((SiteRows.Head.Good) head(false, heads.toArray(String[]::new))).rows();
        return ((SiteRows.Row.Read) rows.read(2, cells)).site();
    }

    private Problem problem(String head, String cell) throws IOException {
        SiteRows rows = ((SiteRows.Head.Good) head(false, "site.name", head)).rows();
        List<Problem> problems = ((SiteRows.Row.Refused) rows.read(7, List.of("P 1", cell))).problems();
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).line()).isEqualTo(7);
        return problems.get(0);
    }

    @Test
    void aCellReplacesTheBaseWithItsBoundsAndOrigin() throws IOException {
        Measure current = Objects.requireNonNull(
                site(Map.of("system.earth-fault-current [kA]", "0.3")).system().earthFaultCurrent());
        assertThat(current)
                .isEqualTo(Measure.exactly(current.bounds().orElseThrow().nominal()));
        assertThat(current.nominal()).isEqualTo(300);
        assertThat(site(Map.of()).system().earthFaultCurrent()).isNotEqualTo(current);
    }

    @Test
    void aBoundIsPutIntoTheValueOfTheBase() throws IOException {
        Measure current = Objects.requireNonNull(site(Map.of("system.earth-fault-current.high [A]", "120"))
                .system()
                .earthFaultCurrent());
        assertThat(current.at(Measure.Bound.LOW)).isEqualTo(95);
        assertThat(current.at(Measure.Bound.HIGH)).isEqualTo(120);
    }

    @Test
    void aBlankCellIsUnknownAndAHyphenIsNotGiven() throws IOException {
        assertThat(said(site(Map.of("tank.height [m]", "")), "tank.height"))
                .contains(Measure.unknown(Dimension.LENGTH));
        String resistance = "system.fault-resistance";
        assertThat(said(site(Map.of(resistance + " [ohm]", " ")), resistance))
                .contains(Measure.unknown(Dimension.RESISTANCE));
        assertThat(said(site(Map.of(resistance + " [ohm]", "-")), resistance)).isEmpty();
        assertThat(said(site(Map.of("tank.switch-state", "")), "tank.switch-state"))
                .contains(SwitchState.UNKNOWN);
        assertThat(said(site(Map.of("tank.switch-state", "-")), "tank.switch-state"))
                .isEmpty();
    }

    private static Optional<Object> said(Site site, String path) {
        return SiteTree.entries(site).stream()
                .filter(entry -> entry.path().equals(path))
                .map(SiteTree.Entry::value)
                .findFirst();
    }

    @Test
    void aBlockOrItemOfBlankCellsIsNotThere() throws IOException {
        Site site = site(Map.of(
                "cubicle.height [m]", "",
                "cubicle.earth", "",
                "electrodes[2].name", "",
                "electrodes[2].rod.length [m]", ""));
        assertThat(site.cubicle()).isNull();
        assertThat(site.electrodes()).hasSize(1);
        assertThat(site(Map.of("soil.resistivity [ohm.m]", "")).soil()).isNull();
        assertThat(said(site(Map.of("soil.resistivity [ohm.m]", "unknown")), "soil.resistivity"))
                .contains(Measure.unknown(Dimension.RESISTIVITY));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "tank.height [m]       | ten       | \"ten\" is no number",
                "tank.height [m]       | 9 m       | \"9 m\" is no number",
                "tank.height [m]       | 9,5       | \"9,5\" has a comma",
                "tank.height [m]       | -9        | is not above zero",
                "tank.height [m]       | 0x10      | is no number",
                "tank.height [m]       | NaN       | is no number",
                "tank.height [m]       | 1e999     | too large",
                "tank.switch-state     | half      | is not known here",
                "line.spans            | 3.5       | is no whole number",
                "site.latitude [deg]   | 91        | is no place on earth"
            })
    void aBadCellIsNamedByItsColumn(String head, String cell, String found) throws IOException {
        List<String> heads = new ArrayList<>(List.of("site.name", head));
        List<String> cells = new ArrayList<>(List.of("P 1", cell));
        if (head.startsWith("site.latitude")) {
            heads.add("site.longitude [deg]");
            cells.add("10");
        }
        SiteRows rows = ((SiteRows.Head.Good) head(false, heads.toArray(String[]::new))).rows();
        List<Problem> problems = ((SiteRows.Row.Refused) rows.read(7, cells)).problems();
        assertThat(problems).as(problems.toString()).hasSize(1);
        assertThat(problems.get(0).found()).contains(found);
        assertThat(problems.get(0).line()).isEqualTo(7);
        assertThat(problems.get(0).column()).isEqualTo(2);
    }

    @Test
    void aNameThatNoElectrodeHasAndAKeyThatIsMissingBesideAreBothTold() throws IOException {
        SiteRows rows = ((SiteRows.Head.Good) head(false, "site.name", "main-earth.electrode")).rows();
        List<Problem> problems = ((SiteRows.Row.Refused) rows.read(7, List.of("P 1", "mian"))).problems();
        assertThat(problems)
                .extracting(Problem::key)
                .containsExactlyInAnyOrder("main-earth.electrode", "main-earth.conductor");
        assertThat(problems).extracting(Problem::nearest).contains("main");
    }

    @Test
    void aCoordinateWithoutTheOtherIsRefused() throws IOException {
        assertThat(problem("site.latitude [deg]", "54.6").found()).contains("does not belong here");
    }

    @Test
    void whatAnotherKeyContradictsIsRefusedInTheRow() throws IOException {
        assertThat(problem("system.neutral.reactance [ohm]", "12").found()).contains("does not belong here");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "tank.hieght [m]              | unknown column          | tank.height",
                "tank.height                  | the unit is missing     | ",
                "tank.height [V]              | unknown unit \"V\"      | ",
                "tank.height []               | the unit is missing     | ",
                "tank.switch-state [m]        | takes no unit           | ",
                "tank                         | has keys of its own     | ",
                "electrodes.name              | is a list               | ",
                "tank[1].height [m]           | is no list              | ",
                "electrodes[0].name           | is a list               | ",
                "tank.height.lows [m]         | unknown column          | tank.height.low",
                "tank.height.origin.low       | unknown column          | tank.height.origin",
                "SITE.NAME                    | unknown column          | site",
                "'tank.height [m] [m]'        | is no head              | ",
                "''                           | this column has no head | "
            })
    void aBadHeadIsRefused(String head, String found, String nearest) throws IOException {
        List<Problem> problems = ((SiteRows.Head.Refused) head(false, "site.name", head)).problems();
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).found()).contains(found);
        assertThat(problems.get(0).nearest()).isEqualTo(nearest == null ? "" : nearest);
        assertThat(problems.get(0).column()).isEqualTo(2);
    }

    @Test
    void aColumnThatStandsTwiceIsRefusedInAnyUnit() throws IOException {
        List<Problem> problems =
                ((SiteRows.Head.Refused) head(false, "site.name", "tank.height [m]", "tank.height [mm]")).problems();
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).text())
                .isEqualTo("poles.csv:1:3: tank.height stands already in column 2; expected one column a key");
    }

    @Test
    void aKeyThatNoRowCouldGiveIsToldOnce() throws IOException {
        List<Problem> problems = ((SiteRows.Head.Refused) head(false, "tank.height [m]")).problems();
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).text()).contains("site.name").contains("no column gives this key");
    }

    @Test
    void aMistakeInTheBaseIsToldAtItsPlace() throws IOException {
        Path base = folder.resolve("wrong.yaml");
        Files.writeString(base, BASE.replace("height: 9 m", "hieght: 9 m"));
        List<Problem> problems = ((SiteRows.Head.Refused) SiteRows.head(
                        "poles.csv", 1, List.of("site.name"), Optional.of(base), folder.resolve("poles.csv"), false))
                .problems();
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).text()).contains("wrong.yaml:7:").contains("did you mean \"height\"");
    }

    @Test
    void aDecimalCommaIsReadWhereItIsDeclaredAndAPointIsThenRefused() throws IOException {
        SiteRows rows = ((SiteRows.Head.Good) head(true, "site.name", "tank.height [m]")).rows();
        Site read = ((SiteRows.Row.Read) rows.read(2, List.of("P", "9,25"))).site();
        assertThat(said(read, "tank.height"))
                .map(value -> ((Measure) value).nominal())
                .contains(9.25);
        assertThat(((SiteRows.Row.Refused) rows.read(2, List.of("P", "9.25")))
                        .problems()
                        .get(0)
                        .found())
                .contains("has a point");
    }

    /** Every key, unit, bound, origin and list that a site file can have; a block without keys has no cell. */
    @Property(seed = "20261125", tries = 300)
    void aSiteBecomesARowAndTheRowTheSameSite(@ForAll long seed) {
        Site site = RandomSites.of(seed);
        List<SiteColumn> columns = SiteCells.columns(List.of(site));
        assertThat(SiteCells.lost(site, columns, RandomSites.files(site)))
                .as(SiteFile.write(site))
                .isEqualTo(SiteFile.write(site).contains("{}") ? SiteCells.EMPTY_BLOCK : "");
    }

    /** Row, site file, row: the cells are the same, also where other sites of the table need more columns. */
    @Property(seed = "20261125", tries = 150)
    void aRowBecomesASiteFileAndTheFileTheSameRow(@ForAll long seed) {
        Site site = RandomSites.of(seed);
        Site other = RandomSites.of(seed + 1);
        List<SiteColumn> columns = SiteCells.columns(List.of(site, other));
        List<String> cells = new ArrayList<>(SiteCells.of(site, columns, false));
        Random random = new Random(seed);
        for (int i = 0; i < cells.size(); i++) {
            if (columns.get(i).canBeUnknown() && random.nextInt(20) == 0) {
                cells.set(i, random.nextBoolean() ? "" : SiteRows.NOT_GIVEN);
            }
        }
        SiteRows.Row row = SiteRows.again(columns, cells, RandomSites.files(site));
        if (row instanceof SiteRows.Row.Read read) {
            String text = SiteFile.write(read.site());
            ReadOutcome file = SiteFile.read(
                    text.getBytes(java.nio.charset.StandardCharsets.UTF_8), "row.yaml", RandomSites.files(site));
            Site back = ((ReadOutcome.Valid) file).site();
            assertThat(back).isEqualTo(read.site());
            List<String> again = SiteCells.of(back, columns, false);
            SiteRows.Row reread = SiteRows.again(columns, again, RandomSites.files(site));
            assertThat(((SiteRows.Row.Read) reread).site()).as(text).isEqualTo(read.site());
            assertThat(SiteCells.of(((SiteRows.Row.Read) reread).site(), columns, false))
                    .isEqualTo(again);
        }
    }
}
