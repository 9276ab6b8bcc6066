package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.site.Site;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Redoes the table of docs/theory/surge-risk.md: the column by hand without the library, the other with it. */
class SurgeRiskPageTest {

    private static final Path PAGE = Path.of("..", "docs", "theory", "surge-risk.md");

    private static Map<String, List<String>> rows() throws IOException {
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (String line : Files.readAllLines(PAGE)) {
            if (line.startsWith("| `")) {
                String[] cells = line.split("\\|", -1);
                rows.put(cells[1].strip().replace("`", ""), List.of(cells[4].strip(), cells[5].strip()));
            }
        }
        return rows;
    }

    private static void holds(String symbol, String printed, double value) {
        String number = printed.contains(" ") ? printed.substring(0, printed.indexOf(' ')) : printed;
        double scale = printed.endsWith("kV") ? 1e3 : 1;
        int decimals = number.contains(".") ? number.length() - number.indexOf('.') - 1 : 0;
        assertThat(value / scale)
                .as(symbol)
                .isCloseTo(Double.parseDouble(number), within(0.5001 * Math.pow(10, -decimals)));
    }

    private static double g(double l, double d) {
        double root = Math.hypot(l, d);
        return l * Math.log((l + root) / d) - root + d;
    }

    private static double h(double d) {
        return 0.5 * (g(9, d) + g(6, d) - g(3, d));
    }

    private static double above(double value, double median, double sigma) {
        return 1 - new NormalDistribution(0, 1).cumulativeProbability(Math.log(value / median) / sigma);
    }

    @Test
    void theColumnByHand() throws IOException {
        Map<String, Double> hand = new HashMap<>();
        double m = 2e-7 * (h(Math.sqrt(89.92e-6 / Math.PI)) - h(0.2));
        double width = 28 * Math.pow(10, 0.6) + 2.2;
        double share = 225 / (225 + 33.49);
        double first = above(150e3 / (m * share), 24.3e9, 0.599);
        double later = above(150e3 / (m * share), 39.9e9, 0.852);
        hand.put("W", width);
        hand.put("N", 2e-6 * width * 150);
        hand.put("V50", m * 24.3e9);
        hand.put("V95", m * 24.3e9 * Math.exp(1.645 * 0.599));
        hand.put("s", share);
        hand.put("P1", first);
        hand.put("Ps", later);
        hand.put("Nx", 2e-6 * width * 150 * (1 - (1 - first) * (1 - later) * (1 - later)));
        hand.put("U", 38.8 * 31.1e3 * (10 + 0.15 * Math.sqrt(100)) / 58);
        Map<String, List<String>> rows = rows();
        assertThat(rows.keySet()).containsExactlyInAnyOrderElementsOf(hand.keySet());
        rows.forEach((symbol, cells) -> holds(symbol, cells.get(0), hand.getOrDefault(symbol, Double.NaN)));
    }

    @Test
    void theColumnOfTheLibrary() throws IOException {
        Site site =
                DeckSite.read(SurgeOutlookTest.text("no", ", ground-flash-density: 2 /km2/a, induced-distance: 58 m"));
        StudyResults results = SurgeOutlook.added(site, SiteStudy.of(site));
        Map<String, Double> library = new HashMap<>();
        double flashes = value(results, "surge.risk.line-flashes", "nominal");
        library.put("W", flashes / 2e-6 / 150);
        library.put("N", flashes);
        library.put("V50", value(results, "surge.stroke.first.open-voltage", "percentile=50 %"));
        library.put("V95", value(results, "surge.stroke.first.open-voltage", "percentile=95 %"));
        library.put("Nx", value(results, "surge.risk.trip.cubicle.rate", "nominal"));
        library.put("U", value(results, "surge.induced.voltage", "nominal"));
        rows().forEach((symbol, cells) -> {
            if (!cells.get(1).equals("–")) {
                holds(symbol, cells.get(1), library.getOrDefault(symbol, Double.NaN));
            }
        });
    }

    private static double value(StudyResults results, String id, String at) {
        return results.one(id, Case.NONE, at)
                .orElseThrow(() -> new AssertionError(id))
                .value();
    }
}
