package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.electrode.ImpulseParameters;
import earthing.network.Circuit;
import earthing.network.FrequencySolution;
import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Measure.Bound;
import earthing.site.ElectrodeModel;
import earthing.site.Site;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** The models of the electrodes in the surge circuit of the pole. */
class ElectrodeModelTest {

    private static final List<String> MODELS = List.of("resistance", "lumped", "frequency");

    private static Site site(String earth, String model, boolean law) {
        String text = DeckSite.text("100 ohm.m", earth, "none") + "surges: {electrode-model: " + model + "}\n";
        return DeckSite.read(
                law
                        ? text.replace(
                                "soil: {resistivity: 100 ohm.m}",
                                "soil: {resistivity: 100 ohm.m, frequency-dependence: {law: alipio-visacro-2014}}")
                        : text);
    }

    private static SurgeCase.Outcome solve(Site site, String wave) throws MissingInput {
        return SurgeCase.solve(
                site, EarthPaths.of(site), new EarthCache(), Bound.NOMINAL, SurgeWave.named(wave), 10e3, new Inputs());
    }

    /** An earth shared by tee leaves the electrodes out of the loop of the cable; a separate one has them in it. */
    @Test
    void theSharedCableEndDoesNotNoticeTheModel() throws MissingInput {
        double[] shared = new double[3];
        double[] separate = new double[3];
        double[] tank = new double[3];
        for (int k = 0; k < 3; k++) {
            SurgeCase.Outcome outcome = solve(site("shared", MODELS.get(k), true), "0.25/100");
            shared[k] = outcome.open().voltage();
            tank[k] = outcome.tank();
            separate[k] = solve(site("separate", MODELS.get(k), true), "0.25/100")
                    .open()
                    .voltage();
            assertThat(outcome.recheck().within(1e-3)).isTrue();
        }
        assertThat(shared[1]).isCloseTo(shared[0], withinPercentage(0.001));
        assertThat(shared[2]).isCloseTo(shared[0], withinPercentage(0.001));
        // Inductance raises the fast front; the ground's dispersion takes a part of it back.
        assertThat(tank[1]).isGreaterThan(1.02 * tank[0]);
        assertThat(tank[2]).isLessThan(tank[1]);
        assertThat(separate[1]).isGreaterThan(1.02 * separate[0]);
        assertThat(separate[2]).isLessThan(separate[1]);
    }

    /**
     * By hand: V = (L₉ + L_e)·dI/dt + R·I, R·I later by R·C = ρε = 8.85 ns. L_e of a linear taper is 7 % below the solution's.
     */
    @Test
    void lumpedTankByHand() throws MissingInput {
        Site site = site("shared", "lumped", true);
        SurgeWave wave = SurgeWave.named("0.25/100");
        SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, new Inputs(), new EarthCache());
        double r = earth.resistance("main", "main");
        double radius = Math.sqrt(89.92e-6 / Math.PI);
        double lead = 2e-7 * (9 * Math.log((9 + Math.hypot(9, radius)) / radius) - Math.hypot(9, radius) + radius);
        double taper = ImpulseParameters.taperedInductance(3, 0.008);
        double[] peaks = new double[2];
        for (int k = 0; k < 2; k++) {
            for (double t = 1e-9; t < 2e-6; t += 1e-9) {
                double v = 10e3
                        * ((lead + taper * (1 + 0.07 * k)) * wave.slope(t) + r * wave.at(Math.max(0, t - 8.854e-9)));
                peaks[k] = Math.max(peaks[k], v);
            }
        }
        double found = solve(site, "0.25/100").tank();
        assertThat(found).isBetween(0.995 * peaks[0], 1.005 * peaks[1]);
    }

    /** Both domains: the spectrum of the potential in time over that of the current is the impedance at one frequency. */
    @Test
    void bothDomainsAgreeOnTheWholePole() throws MissingInput {
        for (String model : List.of("lumped", "frequency")) {
            Site site = site("separate", model, true);
            SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, new Inputs(), new EarthCache());
            double fast = 1 / 0.3e-6;
            double slow = 1 / 3e-6;
            Circuit circuit = PoleCircuit.of(
                            site,
                            EarthPaths.of(site),
                            earth,
                            t -> Math.exp(-slow * t) - Math.exp(-fast * t),
                            true,
                            new Inputs())
                    .circuit();
            TransientSolution s = TransientSolution.solve(circuit, new TimeGrid(150e-6, 1e-9, 1e-5));
            assertThat(KirchhoffCheck.of(s).within(1e-3)).isTrue();
            Circuit phasor = circuit.toBuilder()
                    .remove(PoleCircuit.SOURCE)
                    .currentSource(PoleCircuit.SOURCE, Circuit.REFERENCE, EarthPaths.TANK, Complex.ONE)
                    .build();
            for (double f : new double[] {2e3, 2e4, 2e5, 1e6}) {
                double omega = 2 * Math.PI * f;
                Complex in = new Complex(slow, omega).reciprocal().subtract(new Complex(fast, omega).reciprocal());
                FrequencySolution due = FrequencySolution.solve(phasor, f);
                for (String node : List.of(EarthPaths.TANK, EarthPaths.CUBICLE)) {
                    Complex found = spectrum(s.potential(node), omega).divide(in);
                    assertThat(found.subtract(due.potential(node)).abs())
                            .isLessThan(3e-3 * due.potential(EarthPaths.TANK).abs());
                }
            }
        }
    }

    /** Fourier's integral of a waveform that is straight between its samples. */
    private static Complex spectrum(Waveform wave, double omega) {
        Complex sum = Complex.ZERO;
        for (int k = 1; k < wave.size(); k++) {
            double h = wave.time(k) - wave.time(k - 1);
            double first = k == 1 ? wave.value(1) : wave.value(k - 1);
            int pieces = (int) Math.ceil(omega * h / 0.2);
            for (int p = 0; p < pieces; p++) {
                // Simpson's rule on pieces that are short against the period.
                double t = wave.time(k - 1) + h * p / pieces;
                double d = h / pieces;
                for (int q = 0; q < 3; q++) {
                    double at = t + q * d / 2;
                    double value = first + (wave.value(k) - first) * (at - wave.time(k - 1)) / h;
                    sum = sum.add(new Complex(Math.cos(omega * at), -Math.sin(omega * at))
                            .multiply(value * d * (q == 1 ? 4 : 1) / 6));
                }
            }
        }
        return sum;
    }

    /** The table of docs/theory/surge-path.md. A guard against drift, no check. */
    @Test
    void theTableOfTheTheoryPage() throws MissingInput {
        Site site = DemoSite.parse(DemoSite.text("ternhook-wood-separate.yaml")
                .replace("\nsoil:\n", "\nsoil:\n  frequency-dependence: {law: alipio-visacro-2014}\n"));
        Map<ElectrodeModel, double[]> kilovolts = Map.of(
                ElectrodeModel.RESISTANCE,
                new double[] {46.5, 28.1, 747, 399},
                ElectrodeModel.LUMPED,
                new double[] {48.4, 29.8, 863, 512},
                ElectrodeModel.FREQUENCY,
                new double[] {43.2, 29.0, 779, 440});
        for (Map.Entry<ElectrodeModel, double[]> row : kilovolts.entrySet()) {
            Site modelled = SiteVariant.modelled(site, row.getKey());
            SurgeCase.Outcome slow = solve(modelled, "8/20");
            SurgeCase.Outcome fast = solve(modelled, "0.25/100");
            double[] due = row.getValue();
            assertThat(slow.tank()).isCloseTo(1e3 * due[0], within(50.0));
            assertThat(slow.open().voltage()).isCloseTo(1e3 * due[1], within(50.0));
            assertThat(fast.tank()).isCloseTo(1e3 * due[2], within(500.0));
            assertThat(fast.open().voltage()).isCloseTo(1e3 * due[3], within(500.0));
        }
    }

    @Test
    void whatIsMissingIsNamed() {
        StudyResults results = SurgeStudy.of(site("shared", "frequency", false), new EarthCache());
        assertThat(results.gaps()).anyMatch(g -> g.missingKeys().contains("soil.frequency-dependence.law"));
        assertThat(results.results()).noneMatch(r -> r.id().equals("surge.tank.peak"));
    }

    /** The report compares the models, and tells order and error of the functions. */
    @Test
    void theOutlookComparesTheModels() {
        Site site = site("separate", "resistance", true);
        StudyResults results = SurgeOutlook.added(site, SiteStudy.of(site));
        for (String model : MODELS) {
            for (String wave : List.of("8/20", "0.25/100")) {
                Result open = results.one(
                                "surge.electrode-model." + model + ".open-voltage",
                                Case.NONE.with("wave", wave),
                                "nominal")
                        .orElseThrow();
                assertThat(open.value()).isPositive();
                assertThat(results.one(
                                        "surge.electrode-model." + model + ".energy-residual",
                                        Case.NONE.with("wave", wave),
                                        "nominal")
                                .orElseThrow()
                                .value())
                        .isCloseTo(0, within(1e-3));
            }
        }
        assertThat(results.one("surge.electrode-model.frequency.fit-error", Case.NONE, "nominal")
                        .orElseThrow()
                        .value())
                .isLessThan(0.01);
        assertThat(results.one("surge.electrode-model.lumped.main.inductance", Case.NONE, "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(1.06e-6, withinPercentage(8));
        assertThat(results.notes()).anyMatch(n -> n.endsWith("hold the model resistance"));
        assertThat(SurgeStudy.of(site("separate", "frequency", true), new EarthCache())
                        .notes())
                .anyMatch(n -> n.startsWith("electrodes of the surge circuit over frequency, 100 Hz to 4 MHz, Alipio"));
    }
}
