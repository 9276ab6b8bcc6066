package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RemedyCostFileTest {

    private final List<String> problems = new ArrayList<>();

    private RemedyCosts read(String text) {
        return RemedyCostFile.read(text, "costs.csv", RemedyCatalogue.all(), problems);
    }

    @Test
    void readsTheOwnersUnit() {
        RemedyCosts costs = read("\uFEFFchange;cost in crew days\r\nring; 1.5\r\n\r\nlonger-rods;0\r\n");
        assertThat(problems).isEmpty();
        assertThat(costs.unit()).isEqualTo("crew days");
        assertThat(costs.of())
                .containsEntry("ring", 1.5)
                .containsEntry("longer-rods", 0.0)
                .hasSize(2);
        assertThat(read("change,cost\nring,2\n").unit()).isEmpty();
    }

    @Test
    void tellsEveryProblemWithItsLine() {
        read("change,cost\nrings,2\nring,-1\nring,2\nlonger-rods,1,5\nmore-rods,1e3\n");
        assertThat(problems)
                .hasSize(5)
                .satisfiesExactly(
                        p -> assertThat(p).startsWith("costs.csv:2: \"rings\" is no change"),
                        p -> assertThat(p).startsWith("costs.csv:3: \"-1\" is no cost"),
                        p -> assertThat(p).startsWith("costs.csv:4: ring has a cost already"),
                        p -> assertThat(p).startsWith("costs.csv:5: there are 3 cells"),
                        p -> assertThat(p).startsWith("costs.csv:6: \"1e3\" is no cost"));
    }

    @Test
    void refusesAnotherKindOfFile() {
        read("");
        read("id,price\nring,2\n");
        assertThat(problems)
                .satisfiesExactly(
                        p -> assertThat(p).contains("nothing in this file"),
                        p -> assertThat(p).contains("costs.csv:1: \"id,price\" is no head line"));
    }
}
