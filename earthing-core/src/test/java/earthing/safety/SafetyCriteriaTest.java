package earthing.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source;
import earthing.safety.SafetyCriteria.Need;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SafetyCriteriaTest {

    private static final Standing BARE = Standing.bare(100);
    private static final List<Shock> FOUR =
            List.of(new Shock(0.15, 0.33), new Shock(0.15, 15), new Shock(1, 45), new Shock(1, 0));

    /** Gross, Power System Analysis, as quoted: 20 cycles, 15 s and 45 s open; the first two shocks are one. */
    @Test
    void closeShocksAreOneExposure() {
        List<Exposure> exposures = Exposure.of(FOUR, 0.5);
        assertThat(exposures).hasSize(3);
        assertThat(exposures.get(0).firstShot()).isEqualTo(1);
        assertThat(exposures.get(0).lastShot()).isEqualTo(2);
        assertThat(exposures.get(0).duration()).isCloseTo(0.30, within(1e-12));
        assertThat(Exposure.of(FOUR, 0.33)).hasSize(4);
        assertThat(Exposure.of(FOUR, 100))
                .singleElement()
                .satisfies(e -> assertThat(e.duration()).isCloseTo(2.3, within(1e-12)));
    }

    @Test
    void aShockThatIsNeverClearedIsSustained() {
        List<SafetyCriteria.Assessed> assessed = SafetyCriteria.EN_50522_2010.assess(
                List.of(new Shock(0.2, 10), Shock.neverCleared()), Contact.HAND_TO_FEET, BARE);
        assertThat(assessed).hasSize(2);
        SafetyCriteria.Assessed governing = SafetyCriteria.governing(assessed);
        assertThat(governing.exposure().isSustained()).isTrue();
        assertThat(((PermissibleVoltage) governing.permissible()).value()).isEqualTo(80);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Exposure.of(List.of(Shock.neverCleared(), new Shock(1, 0)), 0.5));
    }

    @Test
    void anExposureWithoutAValueGoverns() {
        List<SafetyCriteria.Assessed> assessed = SafetyCriteria.ieee80(BodyWeight.KG_50)
                .assess(List.of(new Shock(0.2, 10), Shock.neverCleared()), Contact.HAND_TO_FEET, BARE);
        assertThat(SafetyCriteria.governing(assessed).permissible()).isInstanceOf(NoPermissibleVoltage.class);
        assertThatIllegalArgumentException().isThrownBy(() -> SafetyCriteria.governing(List.of()));
    }

    @Test
    void aSetWithAMissingValueRefusesToRun() {
        SafetyCriteria bare = new SafetyCriteria("works rule", Optional.empty(), EnumSet.allOf(Need.class), Map.of());
        assertThat(bare.missing()).hasSize(5);
        assertThatThrownBy(() -> bare.assess(FOUR, Contact.HAND_TO_FEET, BARE))
                .isInstanceOf(IncompleteCriteriaException.class)
                .hasMessageContaining("works rule")
                .hasMessageContaining("merging dead time");
        SafetyCriteria half = bare.with(TouchTables.HD_637)
                .with(Need.MERGING_DEAD_TIME, new SourcedValue(0.3, Source.owner("criteria")));
        assertThatThrownBy(() -> half.gate(500, 100)).isInstanceOf(IncompleteCriteriaException.class);
        assertThatThrownBy(() -> SafetyCriteria.ieee80(BodyWeight.KG_50).gate(500, 100))
                .isInstanceOf(IncompleteCriteriaException.class)
                .hasMessageContaining("gate");
    }

    /** EN 50522 figure 5, read as quoted: 2, 4 and, in 2022, 20 times the permissible touch voltage. */
    @ParameterizedTest
    @CsvSource({
        "440, NOTHING_FURTHER, false",
        "441, MEASURES_OR_TOUCH, false",
        "880, MEASURES_OR_TOUCH, false",
        "881, TOUCH, false",
        "4400, TOUCH, false",
        "4401, TOUCH, true"
    })
    void gatesOfEn50522Figure5(double rise, EprGate.Demand demand, boolean step) {
        EprGate gate = SafetyCriteria.EN_50522_2022.gate(rise, 220);
        assertThat(gate.demand()).isEqualTo(demand);
        assertThat(gate.assessStep()).isEqualTo(step);
        assertThat(SafetyCriteria.EN_50522_2010.gate(rise, 220).assessStep()).isFalse();
    }

    @Test
    void everyValueOfTheStandardSetsHasASource() {
        for (SafetyCriteria set : List.of(
                SafetyCriteria.EN_50522_2010,
                SafetyCriteria.EN_50522_2022,
                SafetyCriteria.ieee80(BodyWeight.KG_50),
                SafetyCriteria.ieee80(BodyWeight.KG_70))) {
            assertThat(set.missing()).isEmpty();
            assertThat(set.values().values())
                    .allSatisfy(v -> assertThat(v.source().title()).isNotBlank());
        }
    }

    /** EN 50341-1:2001 curves U_D1 to U_D4, from memory. */
    @ParameterizedTest
    @CsvSource({"BARE_FEET, 0", "SHOES, 1750", "SHOES_ON_POOR_SOIL, 4000", "SHOES_ON_ROCK, 7000"})
    void additionalResistancesOfEn50341(LocationClass place, double expected) {
        assertThat(place.additionalResistance()).isEqualTo(expected);
    }

    /** EG-0 2010, scenario from memory: 416 contacts of 4 s and one fault of 0.5 s in ten years: 5.936e-6 a year. */
    @Test
    void coincidenceOfEg0() {
        double yearly = Coincidence.perYear(0.1, 416, 0.5, 4);
        assertThat(yearly).isCloseTo(5.936e-6, within(5e-10));
        assertThat(Coincidence.TARGET.value() / yearly).isCloseTo(0.1685, within(0.00005));
        assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.perYear(1, 1e6, 60, 60));
        assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.perYear(Double.NaN, 1, 1, 1));
    }

    @Property(seed = "20261125", tries = 50)
    void coincidenceIsProportionalToRates(
            @ForAll @DoubleRange(min = 0, max = 10) double faults,
            @ForAll @DoubleRange(min = 1, max = 1000) double contacts) {
        double once = Coincidence.perYear(faults, contacts, 0.5, 4);
        assertThat(Coincidence.perYear(2 * faults, contacts, 0.5, 4)).isCloseTo(2 * once, within(1e-12 * once));
        assertThat(Coincidence.perYear(faults, 3 * contacts, 0.5, 4)).isCloseTo(3 * once, within(1e-12 * once));
    }

    @Provide
    Arbitrary<List<Shock>> sequences() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.02, 2),
                        Arbitraries.doubles().between(0.1, 60))
                .as(Shock::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(5);
    }

    @Property(seed = "20261125", tries = 100)
    void groupingLosesNoShotAndNoTime(
            @ForAll("sequences") List<Shock> shocks, @ForAll @DoubleRange(min = 0, max = 60) double merging) {
        List<Exposure> exposures = Exposure.of(shocks, merging);
        int next = 1;
        double total = 0;
        for (Exposure exposure : exposures) {
            assertThat(exposure.firstShot()).isEqualTo(next);
            next = exposure.lastShot() + 1;
            total += exposure.duration();
        }
        assertThat(next).isEqualTo(shocks.size() + 1);
        assertThat(total).isCloseTo(shocks.stream().mapToDouble(Shock::duration).sum(), within(1e-9));
        assertThat(Exposure.of(shocks, merging + 1)).hasSizeLessThanOrEqualTo(exposures.size());
    }

    @Test
    void refusesNonsense() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Shock(0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Shock(1, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> Exposure.of(List.of(), 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> Exposure.of(FOUR, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> EprGate.of(Double.NaN, 100, 2, 4, Optional.empty()));
        assertThatIllegalArgumentException().isThrownBy(() -> EprGate.of(100, 100, 4, 2, Optional.empty()));
    }
}
