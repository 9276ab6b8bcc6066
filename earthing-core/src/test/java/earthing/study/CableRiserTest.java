package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.site.Site;
import org.junit.jupiter.api.Test;

/** The screen of a high-voltage cable against Ohm's law before and after its far end answers. */
class CableRiserTest {

    private static final String MAIN = "surge.earth-of-main.current.peak";
    private static final String CABLE = "surge.high-voltage-cable-screen.current.peak";

    private static StudyResults study(String cable, String wave) {
        Site site = DeckSite.read(
                DeckSite.text("1000 ohm.m", "shared", "none") + cable + "surges: {waves: [" + wave + "]}\n");
        return SurgeStudy.of(site, new EarthCache());
    }

    private static String cable(String more) {
        return "hv-cable: {screen-earthed-at: tank-earth-point" + more + "}\n";
    }

    private static double value(StudyResults results, String id, String wave) {
        return results.one(
                        id,
                        Case.NONE
                                .with("wave", wave)
                                .with("arrangement", "shared")
                                .with("screen-bond", "none"),
                        "nominal")
                .orElseThrow()
                .value();
    }

    /** The electrode alone, as the study has it without the cable: its potential over its current in the tail. */
    private static double electrode() {
        StudyResults alone = study("", "10/350");
        return value(alone, "surge.tank.peak", "10/350") / value(alone, MAIN, "10/350");
    }

    /** In the tail of a long wave 5 ohm at the far end and 0.21 ohm along stand beside the electrode: Ohm's law, 3 % for the front. */
    @Test
    void theTailDividesByResistances() {
        StudyResults results = study(
                cable(", screen-remote-earth-resistance: 5 ohm, length: 300 m, screen-impedance: 0.7 ohm/km"),
                "10/350");
        double share = electrode() / (electrode() + 5.21 + 9 * 0.7e-3);
        assertThat(value(results, CABLE, "10/350")).isCloseTo(10e3 * share, withinPercentage(3));
        assertThat(value(results, "surge.energy.residual", "10/350")).isLessThan(1e-3);
    }

    /** Until the wave is back from 3 km, after 40 us, the cable is its surge impedance: 30 ohm beside the electrode. */
    @Test
    void theFrontDividesBySurgeImpedance() {
        StudyResults results = study(cable(", screen-remote-earth-resistance: 5 ohm, length: 6 km"), "8/20");
        double share = electrode() / (electrode() + 30);
        assertThat(value(results, CABLE, "8/20")).isCloseTo(10e3 * share, withinPercentage(2));
        StudyResults unknown = study(cable(", screen-remote-earth-resistance: 5 ohm"), "8/20");
        assertThat(value(unknown, CABLE, "8/20")).isCloseTo(10e3 * share, withinPercentage(2));
        assertThat(unknown.notes()).anyMatch(note -> note.contains("30 ohm"));
    }

    /** An open screen is charged: 30 ohm and the charge of 300 m, 67 nF, beside the electrode, by small steps. */
    @Test
    void anOpenScreenIsChargedAndNoMore() {
        StudyResults results = study(cable(", length: 300 m"), "8/20");
        double r = electrode();
        double capacitance = 300 / 1.5e8 / 30;
        double charge = 0;
        double into = 0;
        double main = 0;
        double step = 1e-9;
        for (double t = 0; t < 60e-6; t += step) {
            double current = 10e3 * 0.01243 * Math.pow(t * 1e6, 3) * Math.exp(-t / 3.911e-6);
            double cable = (current - charge / capacitance / r) / (1 + 30 / r);
            charge += cable * step;
            into = Math.max(into, Math.abs(cable));
            main = Math.max(main, current - cable);
        }
        assertThat(value(results, CABLE, "8/20")).isCloseTo(into, withinPercentage(1));
        assertThat(value(results, MAIN, "8/20")).isCloseTo(main, withinPercentage(1));
        assertThat(results.gaps())
                .noneMatch(gap -> gap.id().startsWith("surge") && gap.reason().contains("cable"));
    }

    /** A short cable is lumped: in the tail the same as a long one. */
    @Test
    void aShortCableIsLumped() {
        StudyResults results = study(cable(", screen-remote-earth-resistance: 5 ohm, length: 20 m"), "10/350");
        double share = electrode() / (electrode() + 5);
        assertThat(value(results, CABLE, "10/350")).isCloseTo(10e3 * share, withinPercentage(3));
        assertThat(value(results, "surge.far-earth-of-the-high-voltage-cable.current.peak", "10/350"))
                .isCloseTo(value(results, CABLE, "10/350"), withinPercentage(1e-6));
    }

    @Test
    void itCanBreakLikeEveryPath() {
        StudyResults results = study(cable(", screen-remote-earth-resistance: 5 ohm, length: 300 m"), "8/20");
        assertThat(results.of("surge.tank.peak"))
                .anyMatch(r -> "high-voltage cable screen"
                        .equals(r.circumstances().keys().get("broken")));
    }
}
