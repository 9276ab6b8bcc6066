package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * Holds the numbers printed in docs/theory/surge-path.md: the column "by hand" against the equations of the page, written
 * out here without the library (Rosa 1908 for the inductances, IEC 62305-1 and IEEE C62.41.2 for the waves), the column
 * "library" against the study of the demonstration site. Tolerance: half a unit of the last printed digit.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SurgePathHandCalculationTest {

    private static final String END = "surge.cable-end.trip-coil.cubicle.";
    private static final Map<String, Double> UNITS = Map.ofEntries(
            Map.entry("m", 1.0),
            Map.entry("mm", 1e-3),
            Map.entry("µs", 1e-6),
            Map.entry("µH", 1e-6),
            Map.entry("mΩ", 1e-3),
            Map.entry("Ω", 1.0),
            Map.entry("kA/µs", 1e9),
            Map.entry("kA", 1e3),
            Map.entry("V", 1.0),
            Map.entry("kV", 1e3));

    /** A printed amount in SI with half a unit of its last digit. */
    private record Printed(double value, double tolerance) {

        static Printed of(String cell) {
            String[] parts = cell.split(" ", -1);
            BigDecimal number = new BigDecimal(parts[0]);
            assertThat(UNITS).as(cell).containsKey(parts[1]);
            double unit = UNITS.getOrDefault(parts[1], Double.NaN);
            return new Printed(number.doubleValue() * unit, 0.5 * number.ulp().doubleValue() * unit);
        }
    }

    private final Map<String, Printed> byHand = new LinkedHashMap<>();
    private final Map<String, Printed> byLibrary = new LinkedHashMap<>();
    private final Map<String, Double> hand = new HashMap<>();
    private final Map<String, Double> library = new HashMap<>();
    private double separateByHand;
    private double separateFastByHand;
    private double electrode;
    private double difference;
    private double mutual;

    @BeforeAll
    void read() throws IOException, MissingInput {
        boolean byHandHere = false;
        for (String line : Files.readAllLines(Path.of("..", "docs", "theory", "surge-path.md"))) {
            if (line.startsWith("## ")) {
                byHandHere = line.equals("## By hand");
            }
            if (!byHandHere || !line.startsWith("| `")) {
                continue;
            }
            String[] cells = line.substring(1, line.length() - 1).split(" \\|", -1);
            String symbol = cells[0].strip().replace("`", "");
            boolean two = cells[cells.length - 2].strip().matches("–|[-0-9.]+ \\S+");
            put(byHand, symbol, cells[two ? cells.length - 2 : cells.length - 1]);
            if (two) {
                put(byLibrary, symbol, cells[cells.length - 1]);
            }
        }
        Path file = Path.of("..", "earthing-cli", "sites", "ternhook-wood-shared.yaml");
        Site site = ((ReadOutcome.Valid) SiteFile.read(file)).site();
        study(site);
        redo();
    }

    private static void put(Map<String, Printed> column, String symbol, String cell) {
        if (!cell.strip().equals("–")) {
            assertThat(column.put(symbol, Printed.of(cell.strip())))
                    .as("symbol %s twice", symbol)
                    .isNull();
        }
    }

    private void study(Site site) throws MissingInput {
        EarthCache cache = new EarthCache();
        electrode = SiteEarth.of(site, Bound.NOMINAL, new Inputs(), cache).resistance("main", "main");
        Site separate = SiteVariant.arranged(site, Arrangement.SEPARATE, new Inputs());
        SiteEarth two = SiteEarth.of(separate, Bound.NOMINAL, new Inputs(), cache);
        String own = two.names().get(1);
        mutual = two.resistance("main", own);
        difference = two.resistance("main", "main") - mutual;
        library.put("R", electrode);
        library.put("Rd", difference);
        StudyResults results = SurgeStudy.of(site, cache);
        library.put("shared", of(results, END + "open-voltage", "8/20", "shared", "none"));
        library.put("shared-textbook", handOf(results, "shared", "none"));
        library.put("shared-short", of(results, END + "short-circuit-current", "8/20", "shared", "none"));
        library.put("shared-fast", of(results, END + "open-voltage", "0.25/100", "shared", "none"));
        library.put("shared-tank", of(results, "surge.tank.peak", "8/20", "shared", "none"));
        library.put("separate", of(results, END + "open-voltage", "8/20", "separate", "none"));
        library.put("separate-fast", of(results, END + "open-voltage", "0.25/100", "separate", "none"));
        library.put("screen-current", of(results, "surge.screen.current.peak", "8/20", "shared", "both"));
        library.put("screen", of(results, END + "open-voltage", "8/20", "shared", "both"));
        library.put("screen-half", handOf(results, "shared", "both"));
        separateByHand = handOf(results, "separate", "none");
        separateFastByHand = result(results, END + "open-voltage", "0.25/100", "separate", "none")
                .handValue()
                .orElseThrow();
    }

    @Test
    void handValueOfSeparateEarthsKnowsBothLoops() {
        assertThat(separateByHand).isCloseTo(library.getOrDefault("separate", 0.0), withinPercentage(1));
        assertThat(separateFastByHand).isCloseTo(library.getOrDefault("separate-fast", 0.0), withinPercentage(1));
    }

    private static Result result(StudyResults results, String id, String wave, String arrangement, String bond) {
        Case wanted = Case.NONE
                .with("wave", wave)
                .with("entry", "current-into-tank")
                .with("arrangement", arrangement)
                .with("screen-bond", bond);
        return results.one(id, wanted, "nominal").orElseThrow();
    }

    private static double of(StudyResults results, String id, String wave, String arrangement, String bond) {
        return result(results, id, wave, arrangement, bond).value();
    }

    private static double handOf(StudyResults results, String arrangement, String bond) {
        return result(results, END + "open-voltage", "8/20", arrangement, bond)
                .handValue()
                .orElseThrow();
    }

    private static final double CURRENT = 10e3;
    private static final double A = 0.01243e18;
    private static final double TAU = 3.911e-6;
    private static final double TUBE = 0.2e-6;
    private static final double COPPER = 17.2e-9;

    private static double g(double length, double distance) {
        double ratio = length / distance;
        double asinh = Math.log(ratio + Math.sqrt(ratio * ratio + 1));
        return length * asinh - Math.hypot(length, distance) + distance;
    }

    private static double h(double distance) {
        return (g(9, distance) + g(6, distance) - g(3, distance)) / 2;
    }

    private static double k(double distance) {
        return (g(9, distance) + g(3, distance) - g(6, distance)) / 2;
    }

    /** Greatest L·dI/dt + R·I of the 8/20 current. */
    private static double greatest(double inductance, double resistance) {
        double m = inductance / (resistance * TAU);
        double b = 3 - 6 * m;
        double p = (b + Math.sqrt(b * b + 24 * m * (1 - m))) / (2 * (1 - m));
        return CURRENT * A * Math.pow(TAU, 3) * resistance * Math.exp(-p) * (3 * m * p * p + (1 - m) * Math.pow(p, 3));
    }

    /** The page's equations, in its order. */
    private void redo() {
        double r = Math.sqrt(70e-6 / Math.PI);
        double hd = h(0.2);
        double kd = k(0.3);
        double m = TUBE * (h(r) - hd);
        double ms = TUBE * (g(9, r) - hd - kd);
        double textbook = TUBE * 6 * Math.log(0.2 / r);
        double screen = TUBE * g(6, 0.009);
        double core = TUBE * g(6, 0.0009);
        double bare = TUBE * (g(6, r) - 2 * g(6, 0.2) + g(0.2, r));
        double lead = COPPER * 6 / 70e-6;
        double tee = COPPER * 0.2 / 70e-6;
        double ofScreen = COPPER * 6 / 6e-6;
        double ofCore = COPPER * 6 / (Math.PI * 0.0009 * 0.0009);
        hand.put("r", r);
        hand.put("G9r", g(9, r));
        hand.put("G6r", g(6, r));
        hand.put("G3r", g(3, r));
        hand.put("Hd", hd);
        hand.put("Kd", kd);
        hand.put("M", m);
        hand.put("Ms", ms);
        hand.put("L9", TUBE * g(9, r));
        hand.put("Mln", textbook);
        hand.put("Ls", screen);
        hand.put("Lc", core);
        hand.put("Lt", TUBE * g(0.2, r));
        hand.put("Rt", tee);
        hand.put("Rc", ofCore);
        hand.put("R9", 1.5 * lead);
        hand.put("Lring", bare + screen);
        hand.put("Lcore", bare + core);
        hand.put("Ru", lead);
        hand.put("Rs", ofScreen);
        hand.put("Rring", ofScreen + tee + lead);
        hand.put("Rcore", ofCore + tee + lead);

        double root = 3 - Math.sqrt(3);
        double steep = CURRENT * A * TAU * TAU * Math.sqrt(3) * root * root * Math.exp(-root);
        double then = CURRENT * A * Math.pow(root * TAU, 3) * Math.exp(-root);
        double top = CURRENT * 27 * A * Math.pow(TAU, 3) * Math.exp(-3);
        double x = 9.0 / 11;
        double time = 0.454e-6 * Math.pow(x, 0.1);
        double front = CURRENT / 0.993 * Math.exp(-time / 143e-6);
        double fast = front * (10 / time * x / ((1 + x) * (1 + x)) - x / (1 + x) / 143e-6);
        hand.put("t8", root * TAU);
        hand.put("S8", steep);
        hand.put("It8", then);
        hand.put("I25", front * x / (1 + x));
        hand.put("I8", top);
        hand.put("t25", time);
        hand.put("S25", fast);

        double charge = CURRENT * A * Math.pow(TAU, 4) * (6 - 78 * Math.exp(-3));
        double inScreen = ring(m, bare + screen, ofScreen + tee + lead, lead, top, charge);
        hand.put("shared", m * steep + lead * then);
        hand.put("shared-textbook", textbook * steep + lead * then);
        hand.put("shared-short", ring(m, bare + core, ofCore + tee + lead, lead, top, charge));
        hand.put("shared-fast", m * fast);
        hand.put("shared-tank", greatest(TUBE * g(9, r), electrode + 1.5 * lead));
        hand.put("separate", greatest(ms, difference + 1.5 * lead));
        hand.put("separate-fast", ms * fast + (difference + 1.5 * lead) * front * x / (1 + x));
        hand.put("screen-current", inScreen);
        hand.put("screen", ofScreen * inScreen);
        hand.put("screen-half", ofScreen * top / 2);
        assertThat(charge).isCloseTo(61.6e-3, within(0.05e-3));
    }

    private static double ring(
            double flux, double inductance, double resistance, double lead, double current, double charge) {
        double share = flux / inductance;
        return share * current - (resistance * share - lead) * charge / inductance;
    }

    /** The figures printed in docs/theory/earth-paths.md. */
    @Test
    void figuresOfThePageOnEarthPaths() throws IOException {
        Map<String, Double> wanted = Map.of(
                "transferred",
                100 * mutual / (mutual + difference),
                "between",
                100 * difference / (mutual + difference),
                "surge-ratio",
                library.getOrDefault("separate", Double.NaN) / library.getOrDefault("shared", Double.NaN),
                "fast-ratio",
                library.getOrDefault("separate-fast", Double.NaN) / library.getOrDefault("shared-fast", Double.NaN));
        Map<String, BigDecimal> printed = new HashMap<>();
        for (String line : Files.readAllLines(Path.of("..", "docs", "theory", "earth-paths.md"))) {
            String[] cells = line.split("\\|", -1);
            String symbol = cells.length == 5 ? cells[1].strip().replace("`", "") : "";
            if (wanted.containsKey(symbol)) {
                printed.put(symbol, new BigDecimal(cells[3].strip().split(" ", -1)[0]));
            }
        }
        assertThat(printed.keySet()).containsExactlyInAnyOrderElementsOf(wanted.keySet());
        printed.forEach((symbol, value) -> assertThat(wanted.get(symbol))
                .as(symbol)
                .isCloseTo(value.doubleValue(), within(0.5 * value.ulp().doubleValue())));
    }

    @Test
    void everyPrintedSymbolIsHeldAndEveryHeldSymbolIsPrinted() {
        assertThat(byHand.keySet()).containsExactlyInAnyOrderElementsOf(hand.keySet());
        assertThat(byLibrary.keySet()).containsExactlyInAnyOrderElementsOf(library.keySet());
    }

    @Test
    void columnByHandFollowsFromTheEquationsOfThePage() {
        byHand.forEach((symbol, printed) ->
                assertThat(hand.get(symbol)).as(symbol).isCloseTo(printed.value(), within(printed.tolerance())));
    }

    @Test
    void columnLibraryIsWhatTheStudyGives() {
        byLibrary.forEach((symbol, printed) ->
                assertThat(library.get(symbol)).as(symbol).isCloseTo(printed.value(), within(printed.tolerance())));
    }

    @Test
    void handAndLibraryAgreeWithinOnePerMilleWhereTheEquationsAreTheSame() {
        for (String symbol : new String[] {"shared", "shared-fast", "shared-tank", "separate", "separate-fast"}) {
            double value = library.getOrDefault(symbol, Double.NaN);
            assertThat(hand.get(symbol)).as(symbol).isCloseTo(value, within(1e-3 * value));
        }
    }
}
