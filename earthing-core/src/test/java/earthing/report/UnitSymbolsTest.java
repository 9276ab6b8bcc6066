package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import java.util.List;
import org.junit.jupiter.api.Test;

final class UnitSymbolsTest {

    @Test
    void aNumberCarriesTheSymbolOfItsUnit() {
        assertThat(Amount.withSymbols("ground of 90.0 ohm.m to 1.60 m, 35.0 ohm.m below; 3.45 ohm, 7.2 % above."))
                .isEqualTo("ground of 90.0\u00a0Ω·m to 1.60 m, 35.0\u00a0Ω·m below; 3.45\u00a0Ω, 7.2 % above.");
        assertThat(Amount.withSymbols("0.2 mohm/m, 0.33 ohm/km, 30 degC, 70 mm2, 0.5 us"))
                .isEqualTo("0.2\u00a0mΩ/m, 0.33\u00a0Ω/km, 30\u00a0°C, 70\u00a0mm², 0.5\u00a0µs");
    }

    @Test
    void wordsThatAreNoUnitStay() {
        for (String text : List.of("Value [ohm]", "3 ohm.m2", "control-cable.ohm", "2 ohmic paths", "no 3 users")) {
            assertThat(Amount.withSymbols(text)).isEqualTo(text);
        }
    }

    @Test
    void whatTheFileSaysAndLinesOfWorkingStay() {
        Block.Table inputs = new Block.Table(
                "inputs-soil", "Inputs", List.of(Block.Column.text("Value")), List.of(List.of("90 ohm.m")));
        Block.Preformatted file = new Block.Preformatted("file", "value: 18 ohm");
        assertThat(UnitSymbols.in(List.of(inputs, file))).containsExactly(inputs, file);
        Block.Section section =
                new Block.Section("s", 2, "S", List.of(new Block.Bullets(List.of("18 ohm at the electrode"))));
        assertThat(UnitSymbols.in(List.of(section)))
                .containsExactly(new Block.Section(
                        "s", 2, "S", List.of(new Block.Bullets(List.of("18\u00a0Ω at the electrode")))));
    }
}
