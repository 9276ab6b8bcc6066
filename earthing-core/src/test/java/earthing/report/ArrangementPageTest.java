package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.study.StudyResults;
import org.junit.jupiter.api.Test;

final class ArrangementPageTest {

    @Test
    void fitsEightyColumns() {
        assertThat(ArrangementPage.text(Fixtures.results()).lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void showsVoltageHandValueSplitAndCurrentOfEachArrangement() {
        String page = ArrangementPage.text(Fixtures.results());
        assertThat(page).contains("Surge: 8/20, tank", "Surge: 0.25/100, tank");
        assertThat(page.lines().filter(line -> line.contains("hand value")))
                .allMatch(line -> line.contains("6.58 kV") && line.contains("41.8 kV") && line.contains("5.30 kV"));
        assertThat(page).contains("resistive part", "inductive part", "short-circuited");
    }

    @Test
    void aMissingArrangementHasADashAndAReasonNeverZero() {
        String page = ArrangementPage.text(Fixtures.results());
        assertThat(page.lines().filter(line -> line.startsWith("| tank to earth")))
                .isNotEmpty()
                .allMatch(line -> line.endsWith("– |"));
        assertThat(page.replace("\n  ", " "))
                .contains("unearthed: An unearthed cubicle needs its capacitances", "cubicle.capacitance-to-earth");
    }

    @Test
    void saysWhatEachArrangementPaysFor() {
        String page = ArrangementPage.text(StudyResults.EMPTY);
        ResultTable.ARRANGEMENTS.forEach(
                arrangement -> assertThat(page).contains(arrangement + ": ").contains("pays with"));
        assertThat(page).contains("No surge result with an arrangement was computed");
    }
}
