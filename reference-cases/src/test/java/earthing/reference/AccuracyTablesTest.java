package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class AccuracyTablesTest {

    private static final List<AccuracyTables.Table> TABLES = AccuracyTables.all();

    @Test
    void noDifferenceLiesBeyondWhatItsTablePromises() {
        assertThat(TABLES)
                .allSatisfy(
                        table -> assertThat(table.beyond()).as(table.title()).isEmpty());
    }

    @Test
    void everyRoomOfTheCasesHasATable() {
        Set<String> rooms = TABLES.stream().map(AccuracyTables.Table::room).collect(Collectors.toSet());
        Set<String> ofCases =
                ExecutedCases.cases().stream().map(ReferenceCase::room).collect(Collectors.toSet());
        assertThat(rooms).isEqualTo(ofCases);
    }

    @Test
    void everyRowFillsItsColumns() {
        assertThat(TABLES)
                .allSatisfy(table -> assertThat(table.rows())
                        .hasSizeGreaterThanOrEqualTo(4)
                        .allSatisfy(row -> assertThat(row)
                                .hasSameSizeAs(table.columns())
                                .noneMatch(cell -> cell.contains("NaN") || cell.isBlank())));
    }
}
