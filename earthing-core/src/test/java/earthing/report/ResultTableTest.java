package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.document.Block;
import earthing.study.Case;
import earthing.study.Gap;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ResultTableTest {

    private static Result result(String id, Case circumstances, String at, double value, String unit) {
        return Result.of(id, circumstances, at, value, unit, "a model", Fixtures.TOOL);
    }

    @Test
    void aColumnThatHoldsNothingIsLeftOut() {
        Block.Table table = ResultTable.byBound(
                "t",
                "t",
                List.of(result("electrode.main.resistance", Case.NONE, "nominal", 7, "ohm")),
                new References());
        assertThat(table.columns().stream().map(Block.Column::head)).containsExactly("Quantity", "Value", "Ref");
    }

    @Test
    void aCaseOfSeveralQuantitiesStandsInTheCaptionAndACaseOfOneInItsRow() {
        Case shared = Fixtures.kase("fault", "maximum", "arrangement", "shared");
        Case both = Fixtures.kase("fault", "maximum", "arrangement", "both");
        List<Result> results = new ArrayList<>();
        for (String id : List.of("epr.main", "epr.tank", "epr.cubicle")) {
            results.add(result(id, shared, "nominal", 100, "V"));
            results.add(result(id, both, "nominal", 100, "V"));
        }
        assertThat(ResultTable.byCase("t", "Rise", results, new References()))
                .extracting(block -> ((Block.Table) block).caption())
                .containsExactly("Rise: maximum fault, shared earth", "Rise: maximum fault, both earths");
        assertThat(ResultTable.byCase("t", "Rise", results.subList(0, 2), new References()))
                .singleElement()
                .satisfies(block ->
                        assertThat(((Block.Table) block).rows().get(0)).contains("maximum fault, shared earth"));
    }

    @Test
    void aBoundThatMovesAValueByLessThanOnePerCentIsNotTold() {
        List<Result> results = List.of(
                result("epr.main", Case.NONE, "nominal", 1000, "V"),
                result("epr.main", Case.NONE, "high", 1009, "V"),
                result("epr.tank", Case.NONE, "nominal", 1000, "V"),
                result("epr.tank", Case.NONE, "high", 1011, "V"));
        assertThat(((Block.Table) ResultTable.moving("t", "t", results, new References())
                                .get(0))
                        .rows())
                .singleElement()
                .satisfies(row -> assertThat(row.get(0)).isEqualTo("earth potential rise, tank"));
        assertThat(ResultTable.moving("t", "t", results.subList(0, 2), new References()))
                .isEmpty();
    }

    @Test
    void brokenPathsStandSideBySideAndWhatIsTrueOrNotIsSaidInAWord() {
        List<Result> results = List.of(
                result("contingency.visible", Fixtures.kase("broken", "tee"), "nominal", 1, ""),
                result("contingency.visible", Fixtures.kase("broken", "upper lead"), "nominal", 0, ""),
                result("epr.tank", Fixtures.kase("broken", "tee"), "nominal", 100, "V"));
        Block.Table table = (Block.Table) ResultTable.across("t", "t", results, "broken", new References())
                .get(0);
        assertThat(table.columns().stream().map(Block.Column::head))
                .containsExactly("Quantity", "tee broken", "upper lead broken", "Ref");
        assertThat(table.rows().get(0)).startsWith("the break can be seen", "yes", "no");
        assertThat(table.rows().get(1)).startsWith("earth potential rise, tank", "100\u00a0V", "–");
    }

    @Test
    void theSameReasonOfManyCasesIsToldOnce() {
        List<Gap> gaps = new ArrayList<>();
        for (String fault : List.of("minimum", "maximum")) {
            gaps.add(new Gap(
                    "touch.tank-handle", Fixtures.kase("fault", fault), "not declared", List.of("tank.handle")));
        }
        assertThat(GapWords.of(gaps))
                .containsExactly(
                        "touch voltage, tank handle (minimum fault; maximum fault): not declared. Fill in: tank.handle.");
    }
}
