package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.site.Site;
import org.junit.jupiter.api.Test;

/** Electrodes in ground that breaks down, in the surge circuit: Weck's law by hand, and what it must not touch. */
class IonisedElectrodeTest {

    private static final String GROUND = "100 ohm.m, frequency-dependence: {law: none, ionisation-field: 400 kV/m}";

    private static StudyResults study(String ground, String earth, String surges) {
        Site site = DeckSite.read(DeckSite.text(ground, earth, "none") + "surges: {" + surges + "}\n");
        return SurgeStudy.of(site, new EarthCache());
    }

    private static double value(StudyResults results, String id, String arrangement, String wave) {
        return results.one(
                        id,
                        Case.NONE
                                .with("wave", wave)
                                .with("arrangement", arrangement)
                                .with("screen-bond", "none"),
                        "nominal")
                .orElseThrow()
                .value();
    }

    /** R_i = R/sqrt(1 + I/I_g), I_g = E_0 rho/(2 pi R^2): 33.5 ohm, 5.7 kA, 20 ohm at 10 kA (Weck, CIGRE TB 63, from memory). */
    @Test
    void resistanceAtTheCrestByHand() {
        double r = 33.49;
        double limit = 400e3 * 100 / (2 * Math.PI * r * r);
        double hand = r / Math.sqrt(1 + 10e3 / limit) * 10e3;
        StudyResults results = study(GROUND, "shared", "waves: [10/350], electrode-model: ionised");
        assertThat(value(results, "surge.tank.peak", "shared", "10/350")).isCloseTo(hand, withinPercentage(1.5));
        assertThat(value(results, "surge.energy.residual", "shared", "10/350")).isLessThan(1e-3);
        assertThat(results.notes()).anyMatch(note -> note.contains("never for touch or step"));
    }

    /** A small current finds the ground whole. */
    @Test
    void aSmallCurrentFindsTheGroundWhole() {
        for (String earth : new String[] {"shared", "separate", "both"}) {
            double linear = value(study(GROUND, earth, "current: 1 A"), "surge.tank.peak", earth, "8/20");
            double broken = value(
                    study(GROUND, earth, "current: 1 A, electrode-model: ionised"), "surge.tank.peak", earth, "8/20");
            assertThat(broken).as(earth).isCloseTo(linear, withinPercentage(0.05));
        }
    }

    /** No electrode stands in the voltage of a shared earth; it does in that of separate ones, and falls there. */
    @Test
    void onlySeparateEarthsFeelIt() {
        StudyResults linear = study(GROUND, "separate", "electrode-model: resistance");
        StudyResults broken = study(GROUND, "separate", "electrode-model: ionised");
        String pair = "surge.cable-end.trip.cubicle.open-voltage";
        assertThat(value(broken, pair, "shared", "8/20"))
                .isCloseTo(value(linear, pair, "shared", "8/20"), withinPercentage(0.1));
        assertThat(value(broken, pair, "separate", "8/20"))
                .isBetween(
                        0.4 * value(linear, pair, "separate", "8/20"), 0.8 * value(linear, pair, "separate", "8/20"));
        double whole = value(broken, pair, "separate", "8/20");
        double parts = value(broken, "surge.cable-end.trip.cubicle.resistive", "separate", "8/20")
                + value(broken, "surge.cable-end.trip.cubicle.inductive", "separate", "8/20");
        assertThat(parts).isCloseTo(whole, withinPercentage(1e-6));
        assertThat(value(broken, "surge.cable-end.trip.cubicle.resistive", "separate", "8/20"))
                .isGreaterThan(0.7 * whole);
    }

    @Test
    void withoutTheFieldTheKeyIsNamed() {
        StudyResults results = study("100 ohm.m", "shared", "electrode-model: ionised");
        assertThat(results.gaps())
                .anySatisfy(
                        gap -> assertThat(gap.missingKeys()).contains("soil.frequency-dependence.ionisation-field"));
    }
}
