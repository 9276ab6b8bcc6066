package earthing.exercise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.quantity.Dimension;
import earthing.quantity.UnitException;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class MarkingTest {

    private static Exercise asking(double value, double within, String unit, Dimension dimension) {
        return new Exercise(
                "x",
                "electrode",
                "title",
                "question?",
                List.of(),
                "resistance",
                "formula",
                "8*4",
                new Answer(dimension, unit, value, within, true),
                "the -1 left out",
                List.of(new Exercise.Slip(36.4, "the radius stands for the diameter")),
                "a book");
    }

    private static final Exercise ROD = asking(32, 0.5, "ohm", Dimension.RESISTANCE);

    private static Marking mark(String text) throws UnitException {
        return Marking.of(ROD, text);
    }

    @Test
    void anAnswerWithinTheToleranceIsRightInAnyUnit() throws UnitException {
        assertThat(mark("32 ohm").right()).isTrue();
        assertThat(mark("32.5 ohm").right()).isTrue();
        assertThat(mark("0.0315 kohm").right()).isTrue();
        assertThat(mark("32500 mΩ").comment()).isEqualTo("Worked: 8*4. Printed: 32 ohm. a book.");
        assertThat(mark("32.51 ohm").right()).isFalse();
        assertThat(mark("31.49 ohm").right()).isFalse();
    }

    @Test
    void aKnownMistakeIsNamed() throws UnitException {
        assertThat(mark("36.4 ohm").comment())
                .isEqualTo("This is what comes out if the radius stands for the diameter.");
        assertThat(mark("36.3 ohm").distance()).isEqualTo("13 % above");
    }

    @Test
    void powerOfTenSignAndTheRestAreToldApart() throws UnitException {
        assertThat(mark("32 kohm").comment()).startsWith("A power of ten is off");
        assertThat(mark("3.2 ohm").distance()).isEqualTo("the right value over 10.0");
        assertThat(mark("-32 ohm").comment()).isEqualTo("Look at the sign.");
        assertThat(mark("0 ohm").comment()).isEqualTo("A common mistake here: the -1 left out.");
        assertThat(mark("40 ohm").comment()).isEqualTo("A common mistake here: the -1 left out.");
        assertThat(mark("40 ohm").distance()).isEqualTo("25 % above");
    }

    @Test
    void whatIsNoAnswerIsRefusedWithWhatIsExpected() {
        for (String text : List.of("", "32", "32 V", "32,1 ohm", "much", "1e999 ohm", "NaN ohm")) {
            assertThatThrownBy(() -> mark(text)).as(text).isInstanceOf(UnitException.class);
        }
        assertThatThrownBy(() -> mark("32 V")).hasMessageContaining("a resistance such as 25 ohm");
    }

    @Test
    void anAnswerThatCannotBeJudgedIsRefused() {
        assertThatThrownBy(() -> asking(0, 1, "ohm", Dimension.RESISTANCE)).hasMessageContaining("not 0");
        assertThatThrownBy(() -> asking(Double.NaN, 1, "ohm", Dimension.RESISTANCE))
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> asking(3, 3, "ohm", Dimension.RESISTANCE)).hasMessageContaining("less than");
        assertThatThrownBy(() -> asking(3, 1, "kV", Dimension.RESISTANCE)).hasMessageContaining("kV");
    }

    @Test
    void toleranceIsToldAsAShare() {
        assertThat(ROD.answer().tolerance()).isEqualTo("1.6 %");
        assertThat(asking(200, 1, "V", Dimension.VOLTAGE).answer().tolerance()).isEqualTo("0.5 %");
    }

    /** Scaling: the unit an answer is written in does not decide whether it is right. */
    @Property(seed = "20261125")
    void theUnitDoesNotDecide(@ForAll @DoubleRange(min = -100, max = 100) double ohms) throws UnitException {
        assertThat(mark(ohms + " ohm").right()).isEqualTo(Math.abs(ohms - 32) <= 0.5 + 32e-9);
        assertThat(mark(ohms + " mohm").right()).isFalse();
    }
}
