package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class DeckTest {

    private static final String RESISTIVE = """
            * title
            B_SRC 0 a I = (time<60u) ? 10k*0.01243*pow(time*1e6,3)*exp(-time*1e6/3.911) : 0
            R_1 a b 20
            L_1 b c 1u
            R_2 c 0 10 ; to earth
            .tran 10n 40u 0 10n uic
            let x_va=v(a)
            let x_vab=v(a)-v(b)
            let x_i=i(L_1)
            .end
            """;

    @Property(seed = "20261125", tries = 200)
    void expressionOfADeckIsTheFormulaOfTheWave(@ForAll @DoubleRange(min = 0, max = 100) double microseconds) {
        double time = microseconds * 1e-6;
        double eightTwenty = time < 60e-6 ? 1e4 * 0.01243 * Math.pow(time * 1e6, 3) * Math.exp(-time * 1e6 / 3.911) : 0;
        assertThat(DeckExpression.parse("(time<60u) ? 10k*0.01243*pow(time*1e6,3)*exp(-time*1e6/3.911) : 0")
                        .applyAsDouble(time))
                .isCloseTo(eightTwenty, within(1e-12 * 1e4));
        double x = Math.pow(time / 0.454e-6, 10);
        double fast = 1e4 / 0.993 * x / (1 + x) * Math.exp(-time / 143e-6);
        assertThat(DeckExpression.parse("(10k/0.993)*pow(time/0.454u,10)/(1+pow(time/0.454u,10))*exp(-time/143u)")
                        .applyAsDouble(time))
                .isCloseTo(fast, within(1e-9 * 1e4));
    }

    @Example
    void numbersOfADeckCarrySuffixes() {
        assertThat(DeckExpression.parse("-2^2 + sqrt(16)*ln(exp(1)) + log10(100)")
                        .applyAsDouble(0))
                .isCloseTo(2, within(1e-12));
        assertThat(DeckExpression.parse("2^(1+2)*pi/asinh(1.1752011936438014)").applyAsDouble(0))
                .isCloseTo(8 * Math.PI, within(1e-9));
        assertThat(DeckExpression.number("8.06u")).isCloseTo(8.06e-6, within(1e-18));
        assertThat(DeckExpression.number("1meg")).isEqualTo(1e6);
        assertThat(DeckExpression.number("-364250")).isEqualTo(-364250);
        assertThat(DeckExpression.number("264.3619p")).isCloseTo(264.3619e-12, within(1e-24));
        assertThatThrownBy(() -> DeckExpression.number("8,06")).hasMessageContaining("is no number of a deck");
        assertThatThrownBy(() -> DeckExpression.parse("2*sin(time)")).hasMessageContaining("at place 3");
        assertThatThrownBy(() -> DeckExpression.parse("(time")).hasMessageContaining("at place 6");
    }

    @Example
    void currentVoltageAndPotentialOfAResistiveDeckFollowTheSource() {
        Map<String, Double> measures =
                Deck.parse(RESISTIVE.replace("L_1 b c 1u", "L_1 b c 1p")).solve();
        // Crest of A t^3 exp(-t/tau) at 3 tau.
        double crest = 1e4 * 0.01243 * Math.pow(3 * 3.911, 3) * Math.exp(-3);
        assertThat(measures.get("i_max")).isCloseTo(crest, within(1e-4 * crest));
        assertThat(measures.get("i_max_at")).isCloseTo(3 * 3.911e-6, within(2e-9));
        assertThat(measures.get("va_max")).isCloseTo(30 * crest, within(30e-4 * crest));
        assertThat(measures.get("vab_max")).isCloseTo(20 * crest, within(20e-4 * crest));
    }

    @Property(seed = "20261125", tries = 50)
    void phasorDeckOfAResistanceAndAnInductanceHasTheirImpedance(
            @ForAll @DoubleRange(min = 50, max = 5e6) double hertz) {
        Map<String, Double> phasors = Deck.parse("""
                        * title
                        I_SRC 0 a dc 0 ac 2
                        L_1 a b 8u
                        R_1 b 0 30
                        .ac dec 1 50 5meg
                        let x_va=v(a)
                        let x_i=i(L_1)
                        .end
                        """).solve(hertz);
        double reactance = 2 * Math.PI * hertz * 8e-6;
        assertThat(phasors.get("va-real")).isCloseTo(60, within(1e-9 * (60 + reactance)));
        assertThat(phasors.get("va-imag")).isCloseTo(2 * reactance, within(1e-9 * (60 + reactance)));
        assertThat(phasors.get("i-real")).isCloseTo(2, within(1e-9));
    }

    @Example
    void whatADeckReaderDoesNotKnowIsRefused() {
        for (String line :
                List.of("T_1 a 0 b 0 Z0=50", ".subckt x", "let x_p=p(a)", "B_2 a 0 I = pwl(v(b),-1,-1,0,0,1,1)")) {
            String deck = RESISTIVE.replace(".end", line + "\n.end");
            assertThatThrownBy(() -> Deck.parse(deck).solve()).isInstanceOf(IllegalArgumentException.class);
        }
        String notOdd = RESISTIVE.replace(".end", "B_2 a 0 I = pwl(v(a),-2,-1,0,0,1,1)\n.end");
        assertThatThrownBy(() -> Deck.parse(notOdd)).hasMessageContaining("must be odd");
    }

    /** A deck that no case names, or a result of the simulator that no case holds, would be silence. */
    @Example
    void everyDeckAndEveryResultOfTheSimulatorIsInACase() throws IOException {
        List<ReferenceCase.Row> rows = ExecutedCases.cases().stream()
                .filter(each -> each.model().startsWith("network.deck"))
                .flatMap(each -> each.rows().stream())
                .toList();
        try (Stream<Path> decks = Files.list(Path.of("decks"))) {
            assertThat(decks.map(Path::getFileName).map(Path::toString).filter(name -> name.endsWith(".cir")))
                    .allSatisfy(name -> assertThat(rows).anyMatch(row -> isOf(row, name)));
        }
        List<String> peaks =
                results("results.csv").filter(line -> line.contains("_max,")).toList();
        assertThat(peaks).isNotEmpty().allSatisfy(line -> {
            String[] cells = line.split(",", -1);
            assertThat(rows).anyMatch(row -> isOf(row, cells[0]) && holds(row, cells[1], cells[2]));
        });
        List<String> phasors = results("results-ac.csv").toList();
        assertThat(phasors).isNotEmpty().allSatisfy(line -> {
            String[] cells = line.split(",", -1);
            assertThat(rows)
                    .anyMatch(row -> isOf(row, cells[0])
                            && holds(row, cells[1] + "-real", cells[3])
                            && holds(row, cells[1] + "-imag", cells[4]));
        });
    }

    private static Stream<String> results(String file) throws IOException {
        return Files.readAllLines(Path.of("decks", file)).stream()
                .filter(line -> !line.startsWith("#"))
                .skip(1);
    }

    private static boolean isOf(ReferenceCase.Row row, String deck) {
        return new Given(row.given()).word("deck").equals(deck);
    }

    private static boolean holds(ReferenceCase.Row row, String name, String print) {
        return row.expected().stream()
                .anyMatch(e -> e.name().equals(name) && e.printed().text().startsWith(print));
    }
}
