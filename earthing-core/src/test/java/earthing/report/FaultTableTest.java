package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Source;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.study.Case;
import earthing.study.Result;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Earth faults side by side, and the words of their cases. */
class FaultTableTest {

    private static Result result(String fault, String quantity, String at, double value, String unit) {
        return Result.of(
                "fault." + fault + "." + quantity,
                Case.NONE.with("fault", fault),
                at,
                value,
                unit,
                "model",
                Source.tool("test"));
    }

    @Test
    void aColumnAFaultAndAPointThatGoverns() {
        List<Block> tables = FaultTable.of(
                "f",
                List.of(
                        result("maximum", "current", "low", 90, "A"),
                        result("maximum", "current", "nominal", 100, "A"),
                        result("maximum", "loop-x-over-r", "nominal", 2, ""),
                        result("neutral-broken", "current", "nominal", 80, "A"),
                        result("neutral-broken-between", "current", "current=70 A", 70, "A")),
                new References());
        assertThat(tables).hasSize(1);
        Block.Table table = (Block.Table) tables.get(0);
        assertThat(table.columns().stream().map(Block.Column::heading).toList())
                .containsExactly(
                        "Quantity",
                        "maximum fault",
                        "maximum fault, neutral parted",
                        "intermediate fault, neutral parted, at current 70.0 A",
                        "Ref");
        assertThat(table.rows()).hasSize(2);
        assertThat(cells(table, 0)).containsExactly("current", "100 A", "80.0 A", "70.0 A");
        assertThat(cells(table, 1)).containsExactly("loop X/R", "2.00", "–", "–");
    }

    /** The permissible voltage of a longer time must not stand where the first protection clears. */
    @Test
    void whatTheBackUpEndsHasAColumnOfItsOwn() {
        Result first = result("maximum", "current", "nominal", 100, "A");
        Result later = Result.of(
                "fault.maximum.current",
                Case.NONE.with("fault", "maximum").with(Case.PROTECTION, "back-up"),
                "nominal",
                60,
                "A",
                "model",
                Source.tool("test"));
        Block.Table table = (Block.Table)
                FaultTable.of("f", List.of(first, later), new References()).get(0);
        assertThat(table.columns().stream().map(Block.Column::heading).toList())
                .containsExactly("Quantity", "maximum fault", "maximum fault, cleared by back-up", "Ref");
        assertThat(table.rows().get(0)).startsWith("current", "100\u00a0A", "60.0\u00a0A");
    }

    /** Printed cells without the reference, their hard spaces made plain. */
    private static List<String> cells(Block.Table table, int row) {
        return table.rows().get(row).subList(0, 4).stream()
                .map(cell -> cell.replace(Amount.NO_BREAK, " "))
                .toList();
    }

    @Test
    void faultsAreNamedInWords() {
        assertThat(CaseWords.phrase("fault", "double-earth-fault")).isEqualTo("double earth fault");
        assertThat(CaseWords.phrase("fault", "double-earth-fault-minimum")).isEqualTo("minimum double earth fault");
        assertThat(CaseWords.phrase("fault", "shield-wire-broken-minimum"))
                .isEqualTo("minimum fault, shield wire parted");
        assertThat(CaseWords.phrase("fault", "two-phases-on-this-tank")).isEqualTo("two phases on this tank");
        assertThat(CaseWords.phrase("fault", "normal-load")).isEqualTo("normal load");
    }
}
