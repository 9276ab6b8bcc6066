package earthing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source.Kind;
import earthing.quantity.Source.Status;
import org.junit.jupiter.api.Test;

/** Numbers whose dimension is told later, lines of working and notes of sources. */
class WrittenTest {

    private static Written written(String text) {
        return Written.of(text).orElseThrow();
    }

    @Test
    void aNumberIsTakenApart() {
        assertThat(written(" 10.7 kV ")).isEqualTo(new Written("10.7", "kV"));
        assertThat(written("-3e2")).isEqualTo(new Written("-3e2", ""));
        assertThat(written("25 %").isPart()).isTrue();
        assertThat(written("25 V").isPart()).isFalse();
        assertThat(Written.of("about 3 V")).isEmpty();
        assertThat(Written.of("")).isEmpty();
    }

    @Test
    void itsValueIsGivenInTheUnitOfTheResult() {
        assertThat(written("10.7 kV").si("V").orElseThrow()).isEqualTo(10700);
        assertThat(written("25 %").si("").orElseThrow()).isEqualTo(0.25);
        assertThat(written("0.25").si("1").orElseThrow()).isEqualTo(0.25);
        assertThat(written("10.7 kV").si("A")).isEmpty();
        // A unit that no input has is taken as the library writes it.
        assertThat(written("5 A2s").si("A2s").orElseThrow()).isEqualTo(5);
        assertThat(written("5 a2S").si("A2s").orElseThrow()).isEqualTo(5);
        assertThat(written("5 V").si("A2s")).isEmpty();
    }

    /** A difference of temperature has no zero point: 9 °F are 5 K. */
    @Test
    void theSizeOfADifferenceHasNoZeroPoint() {
        assertThat(written("9 degF").size("degC").orElseThrow()).isCloseTo(5, within(1e-12));
        assertThat(written("41 degF").si("degC").orElseThrow()).isCloseTo(5, within(1e-12));
        assertThat(written("3 mm").size("m").orElseThrow()).isEqualTo(0.003);
        assertThat(written("3 mm").size("V")).isEmpty();
    }

    @Test
    void halfOfTheLastPrintedDigit() {
        assertThat(written("10.7 kV").halfDigit("V").orElseThrow()).isEqualTo(50);
        assertThat(written("1.20e-3 m").halfDigit("m").orElseThrow()).isCloseTo(5e-6, within(1e-18));
        assertThat(written("300").halfDigit("1").orElseThrow()).isEqualTo(0.5);
        assertThat(written("3e2").halfDigit("1").orElseThrow()).isEqualTo(50);
        assertThat(written("41 degF").halfDigit("degC").orElseThrow()).isCloseTo(0.5 / 1.8, within(1e-12));
        assertThat(written("10.7 kV").halfDigit("A")).isEmpty();
    }

    @Test
    void aLineOfWorkingNamesItsNumbers() {
        Worked line = Worked.of("U", "I * R * k")
                .with("I", 320, "A")
                .with("R", 33.5, "ohm")
                .with("k", 1, "")
                .gives(10720, "V");
        assertThat(line.text())
                .isEqualTo("U = I * R * k with I = 320.00 A, R = 33.500 ohm, k = 1.0000 gives U = 10720 V");
        assertThat(line.terms()).extracting(Worked.Term::name).containsExactly("I", "R", "k");
        assertThat(line.symbol()).isEqualTo("U");
        assertThat(line.value()).isEqualTo(10720);
    }

    @Test
    void aSourceSaysWhetherItWasSeen() {
        Source seen = Source.standard("EN 50522:2010", "table 1", Status.READ);
        assertThat(seen.text()).isEqualTo("EN 50522:2010, table 1");
        assertThat(seen.kind()).isEqualTo(Kind.STANDARD);
        assertThat(Source.publication("Sunde 1949", "", Status.FROM_MEMORY).text())
                .isEqualTo("Sunde 1949 (from memory)");
        assertThat(Source.publication("Sunde 1949", "", Status.READ).kind()).isEqualTo(Kind.PUBLICATION);
        assertThat(Source.commonPractice("a loop at the pole").text())
                .isEqualTo("common practice, no published source, a loop at the pole");
        assertThat(Source.commonPractice("x").kind()).isEqualTo(Kind.COMMON_PRACTICE);
        assertThat(Source.owner("limits.touch"))
                .isEqualTo(new Source(Kind.OWNER, "owner's value", "limits.touch", Status.NOT_PRINTED));
        assertThat(Source.tool("see docs").kind()).isEqualTo(Kind.TOOL);
        assertThatIllegalArgumentException().isThrownBy(() -> Source.standard(" ", "", Status.READ));
    }
}
