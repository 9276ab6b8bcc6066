package earthing.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.conductor.NonAdiabaticFactor.Insulation;
import earthing.quantity.Source;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The least and the most that is taken, and the next value beyond it. */
class ConductorEdgesTest {

    private static final ThermalConstants COPPER = ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949);
    private static final Source NONE = Source.tool("test");

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void sizesAndDurationsArePositiveAndFinite(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> new SolidRound(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Stranded(7, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Tape(bad, 1e-3));
        assertThatIllegalArgumentException().isThrownBy(() -> new Tape(1e-2, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Tube(bad, 1e-3));
        assertThatIllegalArgumentException().isThrownBy(() -> new Tube(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> AdiabaticHeating.finalTemperature(COPPER, bad, 1, 30));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AdiabaticHeating.permissibleCurrent(COPPER, bad, 1, 30, 200));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AdiabaticHeating.permissibleCurrent(COPPER, 1e-5, bad, 30, 200));
        assertThatIllegalArgumentException().isThrownBy(() -> AdiabaticHeating.duration(COPPER, bad, 1, 30, 200));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, Double.NaN, Double.POSITIVE_INFINITY})
    void heatCurrentAndTimeMayBeNothingButNotLess(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> AdiabaticHeating.requiredArea(COPPER, bad, 30, 200));
        assertThatIllegalArgumentException().isThrownBy(() -> new Shot(bad, 1, 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Shot(1, bad, 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Shot(1, 1, 1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new HeatTransfer(bad, NONE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LightningHeating.rise(LightningHeating.Material.COPPER, 50e-6, bad));
    }

    @Test
    void nothingFlowsAndNothingWarms() {
        assertThat(AdiabaticHeating.requiredArea(COPPER, 0, 30, 200)).isZero();
        assertThat(AdiabaticHeating.finalTemperature(COPPER, 1e-5, 0, 30)).isEqualTo(30);
        assertThat(new Shot(0, 0, 1, 0).jouleIntegral()).isZero();
        assertThat(LightningHeating.rise(LightningHeating.Material.COPPER, 50e-6, 0))
                .isZero();
        assertThat(HeatTransfer.NONE.coefficient()).isZero();
        assertThat(CorrosionAllowance.enlarged(0, 0, 0, 1)).isZero();
        assertThat(CorrosionAllowance.enlarged(50e-6, 0, 0, 1)).isEqualTo(50e-6);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Shot.equivalentCurrent(List.of(new Shot(100, 0, 1, 0))))
                .withMessageContaining("total duration");
    }

    @Test
    void decrementFactorsBeginAtOne() {
        assertThat(new Shot(100, 2, 1, 0).jouleIntegral()).isEqualTo(20_000);
        assertThat(new Shot(100, 2, 1.5, 0).jouleIntegral()).isEqualTo(45_000);
        assertThatIllegalArgumentException().isThrownBy(() -> new Shot(1, 1, Math.nextDown(1.0), 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Shot(1, 1, Double.POSITIVE_INFINITY, 0));
        ThermalConstants ieee = ThermalTable.require(Metal.COPPER, ThermalEdition.IEEE_80_2000);
        double undiminished = FusingCurrent.ieee(ieee, 70e-6, 0.5, 1, 40);
        assertThat(FusingCurrent.ieee(ieee, 70e-6, 0.5, 1.25, 40)).isCloseTo(undiminished / 1.25, within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FusingCurrent.ieee(ieee, 70e-6, 0.5, Math.nextDown(1.0), 40));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, Double.NaN})
    void corrosionTakesAndGivesNothingNegative(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> CorrosionAllowance.enlarged(bad, 0.01, 20, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CorrosionAllowance.enlarged(1e-6, bad, 20, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CorrosionAllowance.enlarged(1e-6, 0.01, bad, 1));
    }

    /** Resistance vanishes at minus beta on the straight line that the standards use: there the formula ends. */
    @Test
    void temperaturesBeginWhereResistanceVanishes() {
        double zero = -COPPER.beta();
        assertThat(COPPER.resistivity(20)).isEqualTo(COPPER.resistivity20());
        assertThat(COPPER.resistivity(20 + COPPER.beta() + 20)).isCloseTo(2 * COPPER.resistivity20(), within(1e-20));
        assertThatIllegalArgumentException().isThrownBy(() -> COPPER.resistivity(zero));
        assertThatIllegalArgumentException().isThrownBy(() -> AdiabaticHeating.factor(COPPER, zero, 200));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AdiabaticHeating.factor(COPPER, Double.POSITIVE_INFINITY, 200));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AdiabaticHeating.factor(COPPER, 30, Double.POSITIVE_INFINITY));
        for (double bad : new double[] {zero, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> TemperatureHistory.of(
                            COPPER, new SolidRound(1e-3), bad, 30, HeatTransfer.NONE, List.of(Shot.of(1, 1)), 1));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> TemperatureHistory.of(
                            COPPER, new SolidRound(1e-3), 30, bad, HeatTransfer.NONE, List.of(Shot.of(1, 1)), 1));
        }
    }

    @Test
    void onderdonksRuleEndsAtTenSecondsAndAtTheMeltingOfCopper() {
        double area = 10e-6;
        assertThat(FusingCurrent.onderdonk(area, 10, 25)).isPositive();
        assertThatIllegalArgumentException().isThrownBy(() -> FusingCurrent.onderdonk(area, Math.nextUp(10.0), 25));
        assertThatIllegalArgumentException().isThrownBy(() -> FusingCurrent.onderdonk(area, 0, 25));
        assertThatIllegalArgumentException().isThrownBy(() -> FusingCurrent.onderdonk(0, 1, 25));
        assertThatIllegalArgumentException().isThrownBy(() -> FusingCurrent.onderdonk(area, 1, 1083));
        assertThatIllegalArgumentException().isThrownBy(() -> FusingCurrent.onderdonk(area, 1, -234));
        // Warm copper has less way to go.
        assertThat(FusingCurrent.onderdonk(area, 1, 1082)).isBetween(0.0, FusingCurrent.onderdonk(area, 1, 25) / 20);
    }

    /** IEC 60949:1988 clause 1, from memory: adiabatic below 0.1 s/mm², formula up to 5 s. */
    @Test
    void nonAdiabaticFactorBeginsAtATenthOfASecondPerSquareMillimetre() {
        double area = 10e-6;
        assertThat(NonAdiabaticFactor.conductor(Metal.COPPER, Insulation.XLPE, area, 1))
                .isEqualTo(NonAdiabaticFactor.formula(0.41, 0.12, area, 1));
        assertThat(NonAdiabaticFactor.conductor(Metal.COPPER, Insulation.XLPE, area, 0.999))
                .isEqualTo(1);
        assertThat(NonAdiabaticFactor.conductor(Metal.ALUMINIUM, Insulation.XLPE, area, 5))
                .isEqualTo(NonAdiabaticFactor.formula(0.57, 0.16, area, 5));
        assertThat(NonAdiabaticFactor.conductor(Metal.COPPER, Insulation.XLPE, area, 0))
                .isEqualTo(1);
        assertThat(NonAdiabaticFactor.formula(0, 0, area, 5)).isEqualTo(1);
        assertThat(NonAdiabaticFactor.formula(0.41, 0.12, area, 0)).isEqualTo(1);
        for (double bad : new double[] {-1e-9, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> NonAdiabaticFactor.conductor(Metal.COPPER, Insulation.XLPE, area, bad));
            assertThatIllegalArgumentException().isThrownBy(() -> NonAdiabaticFactor.formula(bad, 0.1, area, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> NonAdiabaticFactor.formula(0.1, bad, area, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> NonAdiabaticFactor.formula(0.1, 0.1, area, bad));
            assertThatIllegalArgumentException().isThrownBy(() -> NonAdiabaticFactor.screen(bad, 1));
        }
        assertThatIllegalArgumentException().isThrownBy(() -> NonAdiabaticFactor.formula(0.1, 0.1, 0, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> NonAdiabaticFactor.conductor(Metal.COPPER, Insulation.XLPE, 0, 1));
    }

    /** IEC 60949:1988 eq. (8) by hand at M·√t = 5, where its range ends: 1 + 3.05 − 1.725 + 0.5375. */
    @Test
    void screenFactorAtTheEndOfItsRange() {
        assertThat(NonAdiabaticFactor.screen(2.5, 4)).isCloseTo(2.8625, within(1e-12));
        assertThat(NonAdiabaticFactor.screen(1, 4)).isCloseTo(1 + 1.22 - 0.276 + 0.0344, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> NonAdiabaticFactor.screen(2.5001, 4));
    }

    @Test
    void aLimitIsKeptExactlyAtItsValueAndFusingBeginsAtIt() {
        ThermalConstants ieee = ThermalTable.require(Metal.COPPER, ThermalEdition.IEEE_80_2000);
        List<Shot> shots = List.of(Shot.of(5000, 1));
        double end = AdiabaticHeating.finalTemperature(ieee, 35e-6, 25e6, 40);
        TemperatureLimit same = new TemperatureLimit("same", end, NONE);
        TemperatureLimit below = new TemperatureLimit("below", Math.nextDown(end), NONE);
        assertThat(SequenceHeating.of(ieee, 35e-6, 40, shots, List.of(same)).keepsLimit())
                .isTrue();
        assertThat(SequenceHeating.of(ieee, 35e-6, 40, shots, List.of(below)).keepsLimit())
                .isFalse();
        SequenceHeating kept = SequenceHeating.of(ieee, 35e-6, 40, shots, List.of(same));
        assertThat(withEnd(kept, 1083).fuses()).isTrue();
        assertThat(withEnd(kept, Math.nextDown(1083.0)).fuses()).isFalse();
        assertThat(new SequenceHeating(COPPER, 1e-6, 40, 1, List.of(), 5000, same, 1e-6, 9).fuses())
                .as("no fusing temperature is printed")
                .isFalse();
    }

    private static SequenceHeating withEnd(SequenceHeating of, double end) {
        return new SequenceHeating(
                of.metal(),
                of.area(),
                of.initial(),
                of.jouleIntegral(),
                of.afterShot(),
                end,
                of.limit(),
                of.requiredArea(),
                of.utilisation());
    }

    @ParameterizedTest
    @EnumSource(ConductorCondition.class)
    void everyConditionSaysWhereItsTemperatureStands(ConductorCondition condition) {
        assertThat(condition.label()).isNotBlank();
        TemperatureLimit limit = condition.limit(Metal.COPPER, 50e-6);
        assertThat(limit.source()).isEqualTo(condition.source());
        assertThat(limit.subject()).isEqualTo("copper, annealed, " + condition.label());
        assertThat(limit.temperature())
                .isEqualTo(condition.temperature(Metal.COPPER, 50e-6).orElseThrow());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> condition.limit(Metal.LEAD, 50e-6))
                .withMessageContaining("prints no final temperature for lead");
    }

    @Test
    void onlyThermoplasticCoveringsAreWeakerOnThickWires() {
        assertThat(ConductorCondition.THERMOPLASTIC.temperature(Metal.COPPER, ConductorCondition.THICK))
                .hasValue(160);
        assertThat(ConductorCondition.THERMOSETTING.temperature(Metal.COPPER, 500e-6))
                .hasValue(250);
    }

    @Test
    void joinsAndLimitsNameThemselves() {
        for (JointType joint : JointType.values()) {
            assertThat(joint.label()).isNotBlank();
            joint.limit().ifPresent(limit -> assertThat(limit.subject()).isEqualTo(joint.label()));
        }
        assertThatIllegalArgumentException().isThrownBy(() -> new TemperatureLimit("none", Double.NaN, NONE));
    }

    @Test
    void metalsAreFoundWithTheirLabels() {
        assertThat(Metal.find("wood")).isEmpty();
        assertThat(Metal.STEEL_GALVANISED.label()).isEqualTo("galvanised steel");
        assertThat(ThermalTable.find(Metal.LEAD, ThermalEdition.IEEE_80_2013)).isEmpty();
        assertThat(ThermalTable.require(Metal.STEEL, ThermalEdition.IEEE_80_2013)
                        .source()
                        .text())
                .startsWith("IEEE Std 80-2013, table 1, row steel");
    }

    @Test
    void thermalConstantsArePositive() {
        for (int i = 0; i < 4; i++) {
            double[] v = {3.4e6, 1.72e-8, 0.00393, 234};
            v[i] = 0;
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new ThermalConstants(
                            Metal.COPPER,
                            ThermalEdition.IEEE_80_2013,
                            v[0],
                            v[1],
                            v[2],
                            v[3],
                            OptionalDouble.empty(),
                            NONE));
        }
    }

    /** IEC 60228:2004 table 1 and ASTM B258, from memory: how sizes are called. */
    @Test
    void sizesAreCalledAsTheirStandardsCallThem() {
        assertThat(SizeSeries.IEC_60228.sizes())
                .extracting(StandardSize::name)
                .startsWith("0.5 mm2", "0.75 mm2", "1 mm2", "1.5 mm2")
                .endsWith("1000 mm2")
                .hasSize(24);
        assertThat(SizeSeries.AWG_KCMIL.sizes())
                .extracting(StandardSize::name)
                .startsWith("18 AWG", "16 AWG")
                .contains("1 AWG", "1/0 AWG", "4/0 AWG", "250 kcmil")
                .endsWith("1000 kcmil");
        assertThat(SizeSeries.IEC_60228.atLeast(0)).isPresent();
        assertThat(SizeSeries.gaugeArea(-3)).isGreaterThan(SizeSeries.gaugeArea(-2));
        // Number 40 is 0.00314 in.
        assertThat(Math.sqrt(SizeSeries.gaugeArea(40) * 4 / Math.PI) / 0.0254).isCloseTo(0.00314, within(0.000005));
        assertThatIllegalArgumentException().isThrownBy(() -> SizeSeries.gaugeArea(41));
    }

    @Test
    void sectionsHaveTheirOutlines() {
        assertThat(new SolidRound(2e-3).perimeter()).isCloseTo(Math.PI * 4e-3, within(1e-18));
        assertThat(new Stranded(19, 1e-3).perimeter()).isCloseTo(Math.PI * 10e-3, within(1e-17));
        assertThat(new Tube(0.02, 0.003).perimeter()).isCloseTo(Math.PI * 0.04, within(1e-16));
        assertThat(new Tube(0.02, 0.003).area()).isCloseTo(Math.PI * (0.02 * 0.02 - 0.017 * 0.017), within(1e-18));
        assertThat(new Tube(0.02, 0.003).equivalentRadius()).isEqualTo(0.02);
        assertThat(new Tape(0.03, 0.002).perimeter()).isCloseTo(0.064, within(1e-17));
        assertThat(new SolidRound(2e-3).equivalentRadius()).isEqualTo(2e-3);
    }

    /** Dwight's thin tube: the mean distance within a ring is its radius less a third of the wall. */
    @Test
    void geometricMeanRadiusOfAThinTube() {
        double relative = 9e-4;
        assertThat(new Tube(1, relative).geometricMeanRadius()).isCloseTo(1 - relative / 3, within(1e-7));
        double thick = 0.1;
        assertThat(new Tube(1, thick).geometricMeanRadius())
                .isCloseTo(1 - thick / 3 + thick * thick / 18, within(1e-4));
    }

    @Test
    void aBreakOfNoLengthAddsNoPoint() {
        TemperatureHistory history = TemperatureHistory.of(
                COPPER,
                SolidRound.ofArea(35e-6),
                40,
                20,
                HeatTransfer.NONE,
                List.of(new Shot(1000, 1, 1, 0), new Shot(1000, 2, 1, 0)),
                2);
        assertThat(history.points())
                .extracting(TemperatureHistory.Point::time)
                .containsExactly(0.0, 0.5, 1.0, 2.0, 3.0);
    }
}
