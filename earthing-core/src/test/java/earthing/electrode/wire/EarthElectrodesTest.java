package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.formula.HorizontalWireDwight;
import earthing.electrode.formula.RingDwight;
import earthing.electrode.formula.RodTwoLayer;
import earthing.electrode.formula.StarDwight;
import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EarthElectrodesTest {

    private static final SoilModel UNIFORM = SoilModel.uniform(100);

    private static double resistance(SoilModel soil, List<Bar> bars) {
        return resistance(soil, bars, 8);
    }

    private static double resistance(SoilModel soil, List<Bar> bars, int perBar) {
        return EarthElectrodes.of(soil, bars, new Discretisation(perBar, 50, 1))
                .resistances()
                .get(0, 0);
    }

    private static List<Bar> rod(double length, double radius) {
        return BarShapes.rod("rod", 0, 0, 0, length, radius);
    }

    @Test
    void rodLiesBetweenInscribedAndCircumscribedSpheroid() {
        // Exact: half a prolate spheroid with semi-axes A and B has R = ρ/(2πc)·ln((A+c)/B), c² = A² − B². Of two
        // nested
        // bodies the outer one has the lower resistance; the cylinder contains the spheroid (L, a) and lies within the
        // one through its edge, (√2·L, √2·a).
        for (double[] size : new double[][] {{2.4, 0.0075}, {3, 0.008}, {1.8, 0.15}, {15, 0.03}}) {
            double r = resistance(UNIFORM, rod(size[0], size[1]), 32);
            assertThat(r).isLessThan(spheroid(size[0], size[1]));
            assertThat(r).isGreaterThan(spheroid(Math.sqrt(2) * size[0], Math.sqrt(2) * size[1]));
        }
    }

    private static double spheroid(double a, double b) {
        double c = Math.sqrt(a * a - b * b);
        return 100 / (2 * Math.PI * c) * Math.log((a + c) / b);
    }

    private static double withFloor(List<Bar> bars, double floor) {
        return EarthElectrodes.of(UNIFORM, bars, new Discretisation(400, 50, floor))
                .resistances()
                .get(0, 0);
    }

    @Test
    void rodConvergesToTheAxisymmetricBoundaryElementValue() {
        // Independent boundary-element value of a solid rod 2.4 m × 15 mm in 100 Ω·m: 40.43 Ω.
        assertThat(resistance(UNIFORM, rod(2.4, 0.0075))).isCloseTo(40.43, within(0.002 * 40.43));
        double[] r = {withFloor(rod(2.4, 0.0075), 4), withFloor(rod(2.4, 0.0075), 2), withFloor(rod(2.4, 0.0075), 1)};
        assertThat(r[2]).isCloseTo(40.43, within(0.0006 * 40.43));
        assertThat((r[1] - r[2]) / (r[0] - r[1])).isBetween(0.3, 0.8);
    }

    @Test
    void thickBarConvergesWithTheKernelOfTheTube() {
        // The kernel of the axis has no limit on a pole butt of 0.3 m; that of the tube has one, approached in
        // proportion to the shortest element.
        List<Bar> butt = BarShapes.poleButt("pole", 0, 0, 1.8, 0.3);
        double[] r = {withFloor(butt, 1), withFloor(butt, 0.5), withFloor(butt, 0.25)};
        assertThat((r[1] - r[2]) / (r[0] - r[1])).isBetween(0.4, 0.6);
        double limit = 2 * r[2] - r[1];
        assertThat(resistance(UNIFORM, butt)).isCloseTo(limit, within(0.015 * limit));
    }

    @Test
    void stubLiesALittleAboveTheClosedCylinderAfterSmythe1962() {
        // Smythe, J. Appl. Phys. 33, 1962 (from memory): capacitance of a solid cylinder of radius a and length 2b,
        // C = (8 + 6.95·(b/a)^0.76)·ε·a. A tube without an end face must lie above it.
        double a = 0.15;
        double b = 0.6;
        double closed = 2 * 100 / (a * (8 + 6.95 * Math.pow(b / a, 0.76)));
        double tube = withFloor(BarShapes.rod("stub", 0, 0, 0, b, a), 0.1);
        assertThat(tube / closed).isBetween(1.0, 1.025);
    }

    @Test
    void floorLimitsTheNumberOfElements() {
        Discretisation rule = new Discretisation(500, 50, 2);
        assertThat(EarthElectrodes.of(UNIFORM, BarShapes.poleButt("pole", 0, 0, 1.8, 0.3), rule)
                        .elementCount())
                .isBetween(4, 6);
        assertThat(EarthElectrodes.of(UNIFORM, rod(3, 0.008)).elementCount()).isEqualTo(8);
        assertThat(EarthElectrodes.of(UNIFORM, BarShapes.wire("w", 0, 0, 60, 0, 0.5, 0.005))
                        .elementCount())
                .isEqualTo(25);
        assertThat(EarthElectrodes.of(SoilModel.twoLayer(100, 1, 300), rod(3, 0.008))
                        .elementCount())
                .isEqualTo(10);
        assertThatThrownBy(() -> new Discretisation(0, 1, 1)).hasMessageContaining("at least one");
        assertThatThrownBy(() -> new Discretisation(1, Double.NaN, 1)).hasMessageContaining("element length");
        assertThatThrownBy(() -> new Discretisation(1, 1, Double.NaN)).hasMessageContaining("floor");
        assertThatThrownBy(() -> new Discretisation(1, 1, 1, 0)).hasMessageContaining("another bar");
        assertThat(Discretisation.STANDARD.shorter(2)).isEqualTo(new Discretisation(16, 1.5, 0.25, 0.4));
    }

    /** Wires of 25 m in elements of 3 m would not see that a butt beside them floats: 2 % high without halving. */
    @Test
    void elementsAreHalvedBesideAnotherConductorAndNowhereElse() {
        SoilModel rock = SoilModel.twoLayer(320, 0.9, 3600);
        List<Bar> bars = new ArrayList<>(BarShapes.poleButt("butt", 0, 0, 2, 0.32));
        bars.addAll(BarShapes.star("star", 0.46, 0.46, 4, 25, 0.5, 0.005));
        double refined = EarthElectrodes.of(rock, bars, new Discretisation(96, 0.75, 0.25, 0.25))
                .resistances()
                .alone("butt");
        EarthElectrodes standard = EarthElectrodes.of(rock, bars);
        assertThat(standard.resistances().alone("butt")).isCloseTo(refined, within(0.01 * refined));
        int without = EarthElectrodes.elementCount(rock, bars, new Discretisation(8, 3, 0.5, Double.POSITIVE_INFINITY));
        assertThat(standard.elementCount()).isBetween(without + 1, without + 16);
        // Side by side nothing changes along the wires but where one of them ends.
        List<Bar> parallel = new ArrayList<>(BarShapes.wire("one", 0, 0, 40, 0, 0.6, 0.004));
        parallel.addAll(BarShapes.wire("other", -40, 0.5, 80, 0.5, 0.6, 0.004));
        assertThat(EarthElectrodes.elementCount(UNIFORM, parallel, Discretisation.STANDARD))
                .isLessThanOrEqualTo(EarthElectrodes.elementCount(
                                UNIFORM, parallel, new Discretisation(8, 3, 0.5, Double.POSITIVE_INFINITY))
                        + 24);
    }

    /** A rod that ends where better ground begins leaks at its tip; three elements in the worse ground missed 2 %. */
    @Test
    void theTipBeforeBetterGroundIsCutFiner() {
        for (double boundary : new double[] {1.5, 1.8, 1.801, 1.82, 1.9}) {
            SoilModel soil = SoilModel.twoLayer(1000, boundary, 100);
            for (double radius : new double[] {0.008, 0.15}) {
                List<Bar> bars = rod(1.8, radius);
                double refined = EarthElectrodes.of(soil, bars, new Discretisation(96, 0.75, 0.25, 0.25))
                        .resistances()
                        .get(0, 0);
                assertThat(EarthElectrodes.of(soil, bars).resistances().get(0, 0))
                        .as("boundary %s m, radius %s m", boundary, radius)
                        .isCloseTo(refined, within((radius > 0.1 ? 0.01 : 0.005) * refined));
            }
        }
    }

    @Test
    void rodsThroughTwoLayersMomentMethodTable() {
        double[][] rows = {
            {100, 300, 1, 3, 64.575}, {300, 50, 1.5, 6, 11.273}, {1000, 100, 2, 6, 25.03}, {100, 1000, 2, 6, 54.966}
        };
        for (double[] row : rows) {
            double r = resistance(SoilModel.twoLayer(row[0], row[2], row[1]), rod(row[3], 0.008), 16);
            assertThat(r).isCloseTo(row[4], within(0.002 * row[4]));
        }
    }

    @Test
    void rodsWithinTheUpperLayerLieBelowTheSeriesOfTaggAndSunde() {
        double[][] rows = {
            {100, 300, 5, 3, 0.008}, {100, 20, 5, 3, 0.008}, {300, 100, 4, 3, 0.008}, {200, 2000, 6, 2.4, 0.00635}
        };
        double[] printed = {35.753, 31.804, 95.348, 92.947};
        for (int i = 0; i < rows.length; i++) {
            double[] row = rows[i];
            double series = RodTwoLayer.withinUpper(row[0], row[1], row[2], row[3], row[4])
                    .get();
            assertThat(series).isCloseTo(printed[i], within(0.001));
            double r = resistance(SoilModel.twoLayer(row[0], row[2], row[1]), rod(row[3], row[4]), 16);
            assertThat(series / r).isBetween(1.004, 1.016);
        }
    }

    @Test
    void seasonOnATopDepth() {
        SoilModel dry = UNIFORM.seasonal(0.8, 10);
        assertThat(resistance(dry, rod(3, 0.008)) / resistance(UNIFORM, rod(3, 0.008)))
                .isCloseTo(1.26, within(0.005));
        assertThat(resistance(dry, rod(1.5, 0.008)) / resistance(UNIFORM, rod(1.5, 0.008)))
                .isCloseTo(1.70, within(0.005));
    }

    @Test
    void multipleRodsIeee142Table14RecomputedByMomentMethod() {
        // 16 mm × 3 m rods one length apart: in line, then along a hollow square. F of the standard itself is a rule of
        // thumb.
        double one = resistance(UNIFORM, rod(3, 0.008));
        int[] n = {2, 3, 4, 8, 12};
        double[] line = {1.130, 1.222, 1.293, 1.479, 1.596};
        for (int i = 0; i < n.length; i++) {
            double group = resistance(UNIFORM, BarShapes.rodsInLine("g", 0, 0, n[i], 3, 0, 3, 0.008));
            assertThat(group * n[i] / one).isCloseTo(line[i], within(0.004));
        }
        double square = resistance(UNIFORM, BarShapes.rodsInRing("g", 0, 0, 4, 3 / Math.sqrt(2), 0, 3, 0.008));
        assertThat(square * 4 / one).isCloseTo(1.359, within(0.004)).isCloseTo(1.36, within(0.005));
    }

    @Test
    void utilisationCoefficientsOfRodsInARowTextbookTable66() {
        int[] n = {2, 3, 4, 5, 6, 10};
        double[][] printed = {
            {0.85, 0.78, 0.73, 0.7, 0.65, 0.59},
            {0.91, 0.87, 0.83, 0.81, 0.77, 0.74},
            {0.94, 0.91, 0.89, 0.87, 0.85, 0.81}
        };
        double one = resistance(UNIFORM, rod(3, 0.025));
        for (int spacing = 1; spacing <= 3; spacing++) {
            for (int i = 0; i < n.length; i++) {
                List<Bar> row = BarShapes.rodsInLine("g", 0, 0, n[i], 3.0 * spacing, 0, 3, 0.025);
                double eta = one / (n[i] * resistance(UNIFORM, row, 6));
                assertThat(eta).isCloseTo(printed[spacing - 1][i], within(0.04 * eta));
            }
        }
    }

    @Test
    void horizontalElectrodesAfterDwight() {
        double wire = resistance(UNIFORM, BarShapes.wire("w", -5, 0, 5, 0, 0.5, 0.005), 16);
        assertThat(HorizontalWireDwight.resistance(100, 10, 0.005, 0.5).get() / wire)
                .isBetween(1.0, 1.015);
        double ring = resistance(UNIFORM, BarShapes.ring("r", 0, 0, 5, 40, 0.5, 0.005), 1);
        assertThat(ring).isCloseTo(RingDwight.resistance(100, 10, 0.005, 0.5).get(), within(0.015 * ring));
        for (StarDwight.Arms shape : StarDwight.Arms.values()) {
            List<Bar> bars = shape == StarDwight.Arms.RIGHT_ANGLE
                    ? List.of(new Bar("s", 0, 0, 0.5, 6, 0, 0.5, 0.005), new Bar("s", 0, 0, 0.5, 0, 6, 0.5, 0.005))
                    : BarShapes.star("s", 0, 0, shape.count(), 6, 0.5, 0.005);
            double formula = StarDwight.resistance(shape, 100, 6, 0.005, 0.5).get();
            // Dwight lets the current leave evenly, as one element an arm does; the true value is lower.
            assertThat(formula).isCloseTo(resistance(UNIFORM, bars, 1), within(0.006 * formula));
            assertThat(resistance(UNIFORM, bars, 12)).isLessThan(formula);
        }
    }

    @Test
    void squareGridOfIeee80AnnexBByAnotherMomentMethod() {
        // An independent moment method on the grid of B.1 gave 2.646 Ω and 967 V in the corner mesh at 1908 A.
        List<Bar> mat = BarShapes.mat("grid", 0, 0, 70, 70, 10, 10, 0.5, 0.005);
        EarthElectrodes grid = EarthElectrodes.of(SoilModel.uniform(400), mat, new Discretisation(2, 50, 2));
        assertThat(grid.resistances().alone("grid")).isCloseTo(2.646, within(0.005));
        EnergisedElectrodes field = grid.carrying(Map.of("grid", 1908.0));
        double worst = 0;
        for (double x = 1; x < 6; x += 0.25) {
            worst = Math.max(worst, field.potentialOf("grid") - field.potential(x, x, 0));
        }
        assertThat(worst).isCloseTo(967, within(0.015 * 967));
    }

    @Test
    void concreteHighContrastAndThinSeasonalLayersStayBetweenTheirUniformLimits() {
        SoilModel soil =
                SoilModel.of(List.of(new Layer(2000, 0.3), new Layer(30, 2), new Layer(400, 3), Layer.below(1500)));
        double r = resistance(soil, rod(3, 0.008));
        assertThat(r)
                .isBetween(
                        resistance(SoilModel.uniform(30), rod(3, 0.008)),
                        resistance(SoilModel.uniform(1500), rod(3, 0.008)));
        // A fitted three-layer ground whose two lower layers are almost alike is the exact two-layer one.
        SoilModel almost = SoilModel.of(List.of(new Layer(100, 2), new Layer(1000, 4), Layer.below(1000.001)));
        double exact = resistance(SoilModel.twoLayer(100, 2, 1000), rod(3, 0.008));
        assertThat(resistance(almost, rod(3, 0.008))).isCloseTo(exact, within(2e-5 * exact));
    }

    @Test
    void matrixIsSymmetricAndOthersFloatingIsNotOthersAbsent() {
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.rod("main", 0, 0, 0, 3, 0.008));
        bars.addAll(BarShapes.rod("cubicle", 0.6, 0, 0, 3, 0.008));
        EarthElectrodes pair = EarthElectrodes.of(SoilModel.twoLayer(100, 2, 1000), bars);
        ResistanceMatrix r = pair.resistances();
        assertThat(r.get(0, 1)).isEqualTo(r.get(1, 0));
        assertThat(r.alone("main")).isLessThan(pair.resistanceWithoutOthers("main"));
        assertThat(pair.resistanceWithoutOthers("main"))
                .isCloseTo(resistance(SoilModel.twoLayer(100, 2, 1000), bars.subList(0, 1)), within(1e-9));
        assertThat(r.joined("main", "cubicle")).isBetween(r.mutual("main", "cubicle"), r.alone("main"));
        assertThat(pair.residual()).isLessThan(1e-11);
        assertThat(pair.condition()).isBetween(1.0, 1e6);
        assertThat(pair.names()).containsExactly("main", "cubicle");
    }

    @Test
    void overRockSeparateElectrodesCoupleSeveralTimesMore() {
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.rod("main", 0, 0, 0, 1.5, 0.008));
        bars.addAll(BarShapes.rod("cubicle", 5, 0, 0, 1.5, 0.008));
        double uniform = EarthElectrodes.of(UNIFORM, bars).resistances().mutual("main", "cubicle");
        double rock = EarthElectrodes.of(SoilModel.twoLayer(100, 2, 5000), bars)
                .resistances()
                .mutual("main", "cubicle");
        assertThat(rock / uniform).isGreaterThan(4);
    }

    @Test
    void refusesWhatIsNotBuriedOrNotThere() {
        assertThatThrownBy(() -> new Bar("a", 0, 0, -0.1, 0, 0, 2, 0.01)).hasMessageContaining("below ground");
        assertThatThrownBy(() -> new Bar("a", 0, 0, 0, 0, 0, 0.01, 0.01)).hasMessageContaining("as long as thick");
        assertThatThrownBy(() -> new Bar("a", 0, 0, 0, 5, 0, 0, 0.01)).hasMessageContaining("covered");
        assertThatThrownBy(() -> new Bar("a", 0, 0, 0, 0, 0, 3, Double.NaN)).hasMessageContaining("radius");
        assertThatThrownBy(() -> new Bar(" ", 0, 0, 0, 0, 0, 3, 0.01)).hasMessageContaining("name");
        assertThatThrownBy(() -> EarthElectrodes.of(UNIFORM, List.of())).hasMessageContaining("at least one");
        EarthElectrodes one = EarthElectrodes.of(UNIFORM, rod(3, 0.008));
        assertThatThrownBy(() -> one.resistances().alone("other")).hasMessageContaining("no electrode");
        assertThatThrownBy(() -> one.atPotentials(Map.of())).hasMessageContaining("each of");
        assertThatThrownBy(() -> one.potentialPerAmpere("rod", 0, 0, Double.NaN))
                .hasMessageContaining("depth");
        List<Bar> twice = new ArrayList<>(rod(3, 0.008));
        twice.addAll(BarShapes.rod("again", 0, 0, 0, 3, 0.008));
        assertThatThrownBy(() -> EarthElectrodes.of(UNIFORM, twice)).hasMessageContaining("run into each other");
    }
}
