package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Worked;
import earthing.study.DemoSite;
import earthing.study.Result;
import earthing.study.SurgeOutlook;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every line of working that a report prints gives, worked again from its printed numbers, the printed result. */
class WorkedLinesTest {

    static List<String> sites() {
        return DemoSite.names();
    }

    private static Set<Worked> lines(String site) {
        StudiedSite studied = StudiedSite.of(site);
        Set<Worked> lines = new LinkedHashSet<>();
        SurgeOutlook.added(studied.site(), studied.results()).results().stream()
                .map(Result::worked)
                .flatMap(Optional::stream)
                .forEach(lines::add);
        studied.findings().stream()
                .map(Finding::worked)
                .flatMap(Optional::stream)
                .forEach(lines::add);
        return lines;
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyLineGivesWhatItPrints(String site) {
        List<String> wrong = new ArrayList<>();
        for (Worked worked : lines(site)) {
            LineOfWorking line = LineOfWorking.of(worked.text());
            // Five digits are printed; a difference of nearly equal numbers or an exponential loses some of them.
            double allowed = Math.max(1e-3 * Math.abs(line.printed()), line.rounding());
            if (!(Math.abs(line.value() - line.printed()) <= allowed)) {
                wrong.add(worked.text() + " but it is " + line.value());
            }
            if (!line.unused().isEmpty()) {
                wrong.add(worked.text() + " does not use " + line.unused());
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void thereAreLinesToWork() {
        assertThat(lines("ternhook-wood-shared.yaml")).hasSizeGreaterThan(10);
    }

    @ParameterizedTest
    @CsvSource({
        "1 + 2 * 3, 7",
        "(1 + 2) * 3, 9",
        "2 ^ 3 ^ 2, 512",
        "-2 ^ 2, -4",
        "8 / 4 / 2, 1",
        "7 - 4 - 2, 1",
        "sqrt(9) + ln(exp(2)), 5",
        "abs(-3) * pi / pi, 3",
        "1.5e-3 * 2e3, 3",
        "2 * a - b, 1",
    })
    void theEvaluatorKeepsTheRulesOfArithmetic(String formula, double expected) {
        assertThat(LineOfWorking.of("x = " + formula + " with a = 3 m, b = 5.0000 m gives x = 1")
                        .value())
                .isCloseTo(expected, within(1e-12));
    }

    @Test
    void theEvaluatorTakesTheLeastAndTheGreatest() {
        assertThat(LineOfWorking.of("x = max(2 * a, b) - min(a, b, 1) with a = 3, b = 5 gives x = 5")
                        .value())
                .isEqualTo(5);
    }

    @Test
    void theEvaluatorSeesAWrongResultAStrangerAndAnUnusedTerm() {
        LineOfWorking wrong = LineOfWorking.of("U = I * R with I = 10.000 A, R = 2.0000 ohm gives U = 21.000 V");
        assertThat(Math.abs(wrong.value() - wrong.printed()))
                .isGreaterThan(Math.max(1e-3 * wrong.printed(), wrong.rounding()));
        assertThatThrownBy(() ->
                        LineOfWorking.of("U = I * Z with I = 1 A gives U = 1 V").value())
                .hasMessageContaining("\"Z\"");
        assertThat(LineOfWorking.of("U = 2 * I with I = 1 A, R = 3 ohm gives U = 2 V")
                        .unused())
                .containsExactly("R");
    }
}
