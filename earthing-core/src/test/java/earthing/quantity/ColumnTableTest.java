package earthing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ColumnTableTest {

    private static final String HASH = "0123456789abcdef";
    private static final ColumnTable TABLE = new ColumnTable(
            "limits.csv", HASH, Map.of("time", List.of(0.1, 0.2)), Map.of("note", List.of("short", "long")));

    private static ColumnTable table(
            String file, String hash, Map<String, List<Double>> columns, Map<String, List<String>> texts) {
        return new ColumnTable(file, hash, columns, texts);
    }

    @Test
    void givesWhatItHolds() {
        assertThat(TABLE.file()).isEqualTo("limits.csv");
        assertThat(TABLE.sha256()).isEqualTo(HASH);
        assertThat(TABLE.rows()).isEqualTo(2);
        assertThat(TABLE.column("time")).containsExactly(0.1, 0.2);
        assertThat(TABLE.has("time")).isTrue();
        assertThat(TABLE.has("note")).isFalse();
        assertThat(TABLE.text("note", 1)).isEqualTo("long");
        assertThat(TABLE.text("none", 1)).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TABLE.column("current"))
                .withMessage("limits.csv has no column current; it has [time]");
    }

    @Test
    void columnsHaveOneLength() {
        assertThatIllegalArgumentException().isThrownBy(() -> table("a", HASH, Map.of(), Map.of()));
        assertThatIllegalArgumentException().isThrownBy(() -> table("a", HASH, Map.of("x", List.of()), Map.of()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> table("a.csv", HASH, Map.of("x", List.of(1.0), "y", List.of(1.0, 2.0)), Map.of()))
                .withMessageContaining("the columns of a.csv must have one length");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> table("a", HASH, Map.of("x", List.of(1.0)), Map.of("t", List.of("a", "b"))));
    }

    /** What was read is told by the name and the content of the file, not by how it was kept. */
    @Test
    void sameFileSameTable() {
        Map<String, List<Double>> other = Map.of("time", List.of(9.0));
        assertThat(table("limits.csv", HASH, other, Map.of())).isEqualTo(TABLE).hasSameHashCodeAs(TABLE);
        assertThat(table("other.csv", HASH, other, Map.of())).isNotEqualTo(TABLE);
        ColumnTable edited = table("limits.csv", "fedcba", other, Map.of());
        assertThat(edited).isNotEqualTo(TABLE).doesNotHaveSameHashCodeAs(TABLE);
        assertThat(TABLE).isNotEqualTo("limits.csv");
    }

    @Test
    void saysItselfInOneLine() {
        assertThat(TABLE).hasToString("limits.csv (2 rows, SHA-256 0123456789ab…)");
        assertThat(table("a.csv", "0123456789ab", Map.of("x", List.of(1.0)), Map.of()))
                .hasToString("a.csv (1 row, SHA-256 0123456789ab)");
    }
}
