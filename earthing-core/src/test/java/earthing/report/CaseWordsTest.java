package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Points between the bounds as a reader sees them; the wording is this project's own. */
final class CaseWordsTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "nominal | nominal",
                "soil=low | soil low",
                "soil=140/35.0 ohm.m, season high | soil 140 over 35.0 ohm.m, season high",
                "soil=85.0 ohm.m, concrete 3.00 ohm.m | soil 85.0 ohm.m, concrete 3.00 ohm.m",
                "current=119.011 A, soil=500/2500 ohm.m | current 119 A, soil 500 over 2500 ohm.m",
                "current=18.5 A, soil=low, neutral's earths=high | current 18.5 A, soil low, earths of the neutral high",
                "soil=high, other earths=low | soil high, other earths low",
                "soil=low, three-phase-fault-current=2200 A, earth-fault-current=19 A, fault-resistance=0 ohm"
                        + " | soil low, three-phase fault current 2200 A, earth-fault current 19 A, fault resistance 0 ohm"
            })
    void aPointInTheRangeOfTheInputsIsToldInWords(String at, String words) {
        assertThat(CaseWords.bound(at)).isEqualTo(words);
    }

    @Test
    void arrangementAndScreenAreNotBareWords() {
        assertThat(CaseWords.of(Fixtures.kase("wave", "8/20", "arrangement", "both", "screen-bond", "tank")))
                .isEqualTo("8/20, both earths, screen bonded at the tank");
    }
}
