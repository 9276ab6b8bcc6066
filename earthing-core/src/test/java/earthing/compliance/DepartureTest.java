package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DepartureTest {

    private static final String CRITERIA = "protective-margin: 20 %}";

    private static String accepting(String finding) {
        return "protective-margin: 20 %, departures: [{finding: " + finding
                + ", reference: ENG-2031, date: 2021-07-01}]}";
    }

    private static Question close() {
        return Question.of("separation.control-cable").with("separation: 0.25 m", "separation: 150 mm");
    }

    @Test
    void anAcceptedDepartureKeepsItsNumbersAndNamesReferenceAndDate() {
        Finding without = close().answer();
        Finding accepted =
                close().with(CRITERIA, accepting("separation.control-cable")).answer();
        assertThat(without.status()).isEqualTo(Status.NOT_MET);
        assertThat(accepted.status()).isEqualTo(Status.ACCEPTED_DEPARTURE);
        assertThat(accepted.reason())
                .contains("ENG-2031")
                .contains("2021-07-01")
                .startsWith(without.reason());
        assertThat(accepted.value()).isEqualTo(without.value());
        assertThat(accepted.limit()).isEqualTo(without.limit());
        assertThat(accepted.margin()).isEqualTo(without.margin());
        assertThat(accepted.advice()).isEqualTo(without.advice());
    }

    @Test
    void aDepartureSpeaksForItsOwnFindingOnly() {
        assertThat(close().with(CRITERIA, accepting("cable.length")).answer().status())
                .isEqualTo(Status.NOT_MET);
    }

    @Test
    void aDepartureDoesNotReplaceMissingData() {
        assertThat(Question.of("separation.control-cable")
                        .with("separation: 0.25 m", "separation: unknown")
                        .with(CRITERIA, accepting("separation.control-cable"))
                        .answer()
                        .status())
                .isEqualTo(Status.INSUFFICIENT_DATA);
    }

    @Test
    void aDepartureLeavesAMetFindingMet() {
        assertThat(Question.of("separation.control-cable")
                        .with(CRITERIA, accepting("separation.control-cable"))
                        .answer()
                        .status())
                .isEqualTo(Status.MET);
    }
}
