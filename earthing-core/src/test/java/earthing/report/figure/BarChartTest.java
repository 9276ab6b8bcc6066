package earthing.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.report.figure.BarChart.Bar;
import earthing.report.figure.BarChart.Group;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class BarChartTest {

    private static final List<Group> GROUPS = List.of(
            new Group(
                    "touch voltage",
                    "V",
                    List.of(
                            new Bar("shared", OptionalDouble.of(240), OptionalDouble.of(200), "permissible"),
                            new Bar("separate", OptionalDouble.of(60), OptionalDouble.of(200), "permissible"),
                            new Bar("unearthed", OptionalDouble.empty(), OptionalDouble.empty(), ""))),
            new Group("cable end", "V", List.of(new Bar("shared", OptionalDouble.of(0), OptionalDouble.empty(), ""))));

    @Test
    void everyBarIsWrittenWithItsNameItsValueAndItsLimit() {
        String svg = BarChart.of("f", "title", GROUPS);
        assertThat(svg).contains(">shared<", ">separate<", ">could not be computed<", "permissible", "240");
        assertThat(BarChart.words(GROUPS))
                .contains("touch voltage: shared", "unearthed could not be computed", "(permissible");
        assertThatThrownBy(() -> BarChart.of("f", "title", List.of())).hasMessageContaining("group");
    }

    @Test
    void lengthsAreInProportionWithinAGroupAndNothingLeavesTheDrawing() {
        String svg = BarChart.of("f", "title", GROUPS);
        List<Double> widths = numbers(svg, "<rect [^>]* width=\"([0-9.]+)\"");
        assertThat(widths.get(1) / widths.get(0)).isBetween(0.248, 0.252);
        double right = numbers(svg, "<svg [^>]* width=\"([0-9.]+)\"").get(0);
        assertThat(numbers(svg, " x=\"([0-9.]+)\"")).allMatch(x -> x >= 0 && x <= right);
        double bottom = numbers(svg, "<svg [^>]* height=\"([0-9.]+)\"").get(0);
        assertThat(numbers(svg, " y=\"([0-9.]+)\"")).allMatch(y -> y >= 0 && y <= bottom);
    }

    private static List<Double> numbers(String svg, String pattern) {
        List<Double> numbers = new ArrayList<>();
        Matcher matcher = Pattern.compile(pattern).matcher(svg);
        while (matcher.find()) {
            numbers.add(Double.parseDouble(matcher.group(1)));
        }
        assertThat(numbers).as(pattern).isNotEmpty();
        return numbers;
    }
}
