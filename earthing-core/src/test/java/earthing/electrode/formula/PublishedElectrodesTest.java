package earthing.electrode.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PublishedElectrodesTest {

    @Test
    void rodMilHdbk419aExample() {
        assertThat(RodDwight.resistance(100, 3.048, 0.01905 / 2).get()).isCloseTo(32, within(0.5));
    }

    @Test
    void rodEtl1110AnodeAndUfcAnode() {
        // Printed with a shape factor rounded to three digits.
        assertThat(RodDwight.resistance(45, 1.524, 0.0254).get()).isCloseTo(21.06, within(0.004 * 21.06));
        assertThat(RodDwight.resistance(20, 2.1336, 0.127).get()).isCloseTo(4.77, within(0.004 * 4.77));
    }

    @Test
    void rodOfFourMetresAfterBs7430() {
        assertThat(RodDwight.resistance(500, 4, 0.0125 / 2).get()).isCloseTo(136.23, within(0.005));
        // An earlier print of the same example left out the −1 and gave 156.19.
        assertThat(RodDwight.resistance(500, 4, 0.0125 / 2).get()).isLessThan(150);
    }

    @Test
    void pipesOfCalculationSheetIs3043() {
        double[] d = {0.04, 0.05, 0.1};
        double[] printed = {19.67, 18.9, 16.51};
        for (int i = 0; i < 3; i++) {
            assertThat(PipeIs3043.resistance(65, 3, d[i]).get()).isCloseTo(printed[i], within(0.006));
        }
        assertThat(PipeIs3043.resistance(100, 2.4, 0.015).get()).isCloseTo(42.85, within(0.005));
    }

    @Test
    void rodInBackfillColumnCorrosionCourse() {
        // The page prints a tenth of both resistivities; its answers need 10 and 0.5 Ω·m.
        double column = RodDwight.resistance(10, 0.7110984, 0.21588984 / 2).get();
        double inside = RodDwight.resistance(0.5, 0.52062888, 0.143256 / 2).get();
        double shell = RodDwight.resistance(0.5, 0.7110984, 0.21588984 / 2).get();
        assertThat(column).isCloseTo(5.074, within(0.003 * 5.074));
        assertThat(inside).isCloseTo(0.3614, within(0.003 * 0.3614));
        assertThat(shell).isCloseTo(0.2538, within(0.003 * 0.2538));
        assertThat(column + inside - shell).isCloseTo(5.181, within(0.003 * 5.181));
        assertThat(RodDwight.resistance(10, 0.5, 0.1).holds()).isFalse();
    }

    @Test
    void twoRodsAfterDwightTabulated() {
        double[] printed = {41.0, 38.1, 36.7};
        for (int s = 1; s <= 3; s++) {
            assertThat(TwoRodsDwight.resistance(200, 3, 0.01, s).get()).isCloseTo(printed[s - 1], within(0.055));
        }
        assertThat(TwoRodsDwight.resistance(200, 3, 0.01, 6.0000001).get())
                .isCloseTo(TwoRodsDwight.resistance(200, 3, 0.01, 6).get(), within(0.03));
        double apart = TwoRodsDwight.resistance(200, 3, 0.01, 1e6).get();
        assertThat(apart).isCloseTo(RodDwight.resistance(200, 3, 0.01).get() / 2, within(1e-4));
    }

    @Test
    void ringOfWireEtl1110() {
        // The print uses 0.0016 for 1/(2π²) in its units (exact 0.001662) and gives 1.32 Ω.
        double ring =
                RingDwight.resistance(20, 8.62584, 0.001588008 / 2, 6.4008).get();
        assertThat(ring).isCloseTo(1.3711, within(0.0014));
        assertThat(ring * 0.0016 / 0.001662).isCloseTo(1.32, within(0.005));
    }

    @Test
    void polynomialsOfStarsIeee142Table13() {
        double[] q = {0.05, 0.1, 0.3};
        double[] two = {-0.226311515, -0.21480924, -0.16394844};
        double[] three = {1.06114466, 1.0524746, 1.0292826};
        double[] four = {2.86006159, 2.8113355, 2.64757558};
        for (int i = 0; i < 3; i++) {
            assertThat(StarDwight.Arms.RIGHT_ANGLE.polynomial(q[i])).isCloseTo(two[i], within(1e-7));
            assertThat(StarDwight.Arms.THREE.polynomial(q[i])).isCloseTo(three[i], within(1e-7));
            assertThat(StarDwight.Arms.FOUR.polynomial(q[i])).isCloseTo(four[i], within(1e-7));
        }
    }

    @Test
    void horizontalWireAfterDwight() {
        assertThat(HorizontalWireDwight.resistance(100, 10, 0.005, 0.5).get()).isCloseTo(14.940328161, within(1e-8));
        assertThat(HorizontalWireSunde.resistance(100, 6.1, 0.00635, 0.762).get())
                .isCloseTo(19.93, within(0.01));
    }

    @Test
    void stripIsWireOfAQuarterOfTheWidth() {
        double strip = StripDwight.resistance(100, 20, 0.04, 0.001, 0.5).get();
        double wire = HorizontalWireDwight.resistance(100, 20, 0.01, 0.5).get();
        assertThat(strip).isCloseTo(wire, within(0.01 * wire));
    }

    @Test
    void roundPlateFarBelowIsAFreeDisc() {
        for (RoundPlateDwight.Lie lie : RoundPlateDwight.Lie.values()) {
            assertThat(RoundPlateDwight.resistance(lie, 100, 0.5, 5e4).get())
                    .isCloseTo(Disc.deep(100, 0.5), within(1e-3));
        }
        double flat = RoundPlateDwight.resistance(RoundPlateDwight.Lie.HORIZONTAL, 100, 0.5, 1)
                .get();
        double upright = RoundPlateDwight.resistance(RoundPlateDwight.Lie.VERTICAL, 100, 0.5, 1)
                .get();
        assertThat(flat).isCloseTo(25 + 100 / (8 * Math.PI) * (1 - 7.0 / 192 + 33.0 / 10240), within(1e-9));
        assertThat(upright).isCloseTo(25 + 100 / (8 * Math.PI) * (1 + 7.0 / 384 + 99.0 / 81920), within(1e-9));
    }

    @Test
    void lambdaOfHollowSquaresBs7430() {
        int[] n = {2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18};
        double[] printed = {2.71, 4.51, 5.48, 6.14, 6.63, 7.03, 7.36, 7.65, 7.9, 8.32, 8.67, 8.96, 9.22};
        for (int i = 0; i < n.length; i++) {
            assertThat(RodsBs7430.lambdaHollowSquare(n[i]))
                    .as("%s a side", n[i])
                    .isCloseTo(printed[i], within(0.006 * printed[i]));
        }
        assertThat(RodsBs7430.lambdaInLine(2)).isCloseTo(1, within(1e-12));
        assertThat(RodsBs7430.lambdaInLine(3)).isCloseTo(5.0 / 3, within(1e-12));
    }

    @Test
    void groupOfUsersExampleBs7430() {
        double single = RodDwight.resistance(244, 15, 0.0603 / 2).get();
        assertThat(single).isCloseTo(17.076, within(0.005));
        assertThat(RodsBs7430.alpha(244, single, 8.25)).isCloseTo(0.275657, within(1e-4));
        assertThat(RodsBs7430.resistance(244, single, 8.25, 9, 7.65).get()).isCloseTo(5.898, within(0.002));
    }

    @Test
    void parallelingFactorOfAnodesEtl1110() {
        assertThat(RodsEqualCurrents.resistance(45, 21.06, 9, 3.048).get()).isCloseTo(3.29, within(0.01));
        assertThat(RodsEqualCurrents.resistance(45, 21.06, 14, 3.048).get()).isCloseTo(2.26, within(0.007));
    }

    @Test
    void factorOfIeee142Table14() {
        assertThat(RodsIeee142.factor(4).get()).isEqualTo(1.36);
        assertThat(RodsIeee142.factor(5).holds()).isFalse();
    }

    @Test
    void gridWithRodsHandbookOfElectricalEngineering() {
        GridSchwarz grid = new GridSchwarz(5000, 1000, 120, 100, 0.01, 0.5, 6, 50, 0.02, 1.15, 4.75);
        assertThat(grid.grid()).isCloseTo(227.86, within(0.023));
        assertThat(grid.rodBed()).isCloseTo(17.541, within(0.002));
        assertThat(grid.mutual()).isCloseTo(30.82, within(0.005));
        assertThat(grid.joined().get()).isCloseTo(16.582, within(0.002));
        // The print takes the grid's six nodes a side for the number of rods; there are four.
        GridSchwarz four = new GridSchwarz(5000, 1000, 120, 100, 0.01, 0.5, 4, 50, 0.02, 1.15, 4.75);
        assertThat(four.joined().get()).isCloseTo(15.07, within(0.02));
    }

    @Test
    void gridsOfIeee80AnnexB() {
        GridIeee80 square = new GridIeee80(7, 0.5, 0.01, 1540, 280, 4900, 70, 70, 0, 0, false);
        assertThat(GridSverak.resistance(400, 4900, 1540, 0.5).get()).isCloseTo(2.78, within(0.008));
        assertThat(square.effectiveNumber()).isCloseTo(11, within(1e-9));
        assertThat(square.cornerWeight()).isCloseTo(0.57, within(0.005));
        assertThat(square.meshFactor()).isCloseTo(0.89, within(0.005));
        assertThat(square.irregularity()).isCloseTo(2.272, within(1e-9));
        assertThat(square.meshVoltage(400, 1908).get()).isCloseTo(1002.1, within(1.0));
        GridIeee80 rods = new GridIeee80(7, 0.5, 0.01, 1540, 280, 4900, 70, 70, 7.5, 150, true);
        assertThat(GridSverak.resistance(400, 4900, 1690, 0.5).get()).isCloseTo(2.75, within(0.006));
        assertThat(rods.meshVoltage(400, 1908).get()).isCloseTo(747.4, within(2.3));
        assertThat(rods.stepVoltage(400, 1908).get()).isCloseTo(548.9, within(0.6));
        GridIeee80 shaped = new GridIeee80(7, 0.5, 0.01, 1575, 350, 4900, 70, 105, 7.5, 180, true);
        assertThat(shaped.effectiveNumber()).isCloseTo(12.2, within(0.05));
        assertThat(shaped.meshVoltage(400, 1908).get()).isCloseTo(761.1, within(4.6));
    }

    @Test
    void concreteEncasedRodAfterFaganAndLee() {
        assertThat(ConcreteEncasedRod.resistance(100, 50, 3.05, 0.0127, 0.3).get())
                .isCloseTo(25.985, within(0.003));
        double bare = ConcreteEncasedRod.resistance(100, 100, 3.05, 0.0127, 0.3).get();
        assertThat(bare).isCloseTo(RodDwight.resistance(100, 3.05, 0.00635).get(), within(1e-9));
    }

    @Test
    void stepVoltageBesideRodsMilHdbk419aTable27() {
        double[] length = {1.524, 3.048, 6.096, 15.24, 30.48};
        double[] printed = {0.75, 0.68, 0.61, 0.53, 0.48};
        for (int i = 0; i < 5; i++) {
            double rod = RodDwight.resistance(1, length[i], 0.0127).get();
            double ratio = 1 - RodDwight.surfacePotential(1, length[i], 0.9144) / rod;
            assertThat(ratio).isCloseTo(printed[i], within(0.0075));
        }
    }

    @Test
    void squarePlateAndItsDiscOfEqualArea() {
        assertThat(GridLaurent.plate(100, 100)).isCloseTo(4.43113462726379, within(1e-12));
        assertThat(Disc.squareOnSurface(100, 10)).isCloseTo(4.339165, within(1e-4));
        assertThat(GridLaurent.plate(100, 100) / Disc.squareOnSurface(100, 10)).isCloseTo(1.021, within(5e-4));
    }

    @Test
    void exactBodies() {
        assertThat(Sphere.betweenTwoDeep(100, 0.5, 20).get()).isCloseTo(31.03521390291959, within(1e-9));
        assertThat(Sphere.touchingSurface(100, 0.5)).isCloseTo(22.961205, within(1e-6));
        assertThat(Disc.onSurface(100, 0.5)).isCloseTo(50, within(1e-12));
        assertThat(Hemisphere.twoInParallel(100, 0.5, 10).get()).isCloseTo(16.711269, within(1e-6));
        assertThat(Hemisphere.equivalentRadius(100, Hemisphere.resistance(100, 0.7)))
                .isCloseTo(0.7, within(1e-12));
    }

    @Test
    void rulesOfThumbOfALightningProtectionGuide() {
        assertThat(RulesOfThumb.strip(100, 10).get()).isEqualTo(20);
        assertThat(RulesOfThumb.ring(100, 78.54).get()).isCloseTo(6.667, within(0.02));
        assertThat(RulesOfThumb.foundation(100, 260.0).get()).isCloseTo(3.18, within(0.01));
        assertThat(RulesOfThumb.rod(100, 3).get()).isCloseTo(33.3, within(0.05));
        assertThat(RulesOfThumb.rod(100, 20).holds()).isFalse();
        assertThatThrownBy(() -> RulesOfThumb.rod(100, 20).get()).hasMessageContaining("L <= 3 m");
    }
}
