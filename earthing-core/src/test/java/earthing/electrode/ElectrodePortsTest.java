package earthing.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.network.Waveform;
import earthing.soil.FixedSoil;
import earthing.soil.Layer;
import earthing.soil.PowerLawSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import earthing.soil.VisacroAlipioSoil;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class ElectrodePortsTest {

    private static final double RADIUS = 0.008;

    private static List<Bar> rods(double distance) {
        List<Bar> bars = new ArrayList<>(BarShapes.rod("main", 0, 0, 0, 3, RADIUS));
        bars.addAll(BarShapes.rod("cubicle", distance, 0, 0, 3, RADIUS));
        return bars;
    }

    private static HarmonicElectrode harmonic(SoilModel soil, SoilDispersion law, double distance) {
        Map<String, double[]> terminals = new LinkedHashMap<>();
        terminals.put("main", new double[] {0, 0});
        terminals.put("cubicle", new double[] {distance, 0});
        return HarmonicElectrode.of(soil, law, rods(distance), terminals);
    }

    private static ElectrodePorts ports(SoilModel soil, SoilDispersion law, double distance) {
        double r = EarthElectrodes.of(soil, rods(distance)).resistances().get(0, 0);
        return ElectrodePorts.of(harmonic(soil, law, distance), new int[] {0, 1}, new double[] {r, r});
    }

    /** At low frequency nothing but the matrix of resistances is left, in uniform ground and in layers. */
    @Test
    void lowFrequencyIsTheMatrixOfResistances() {
        for (SoilModel soil : List.of(
                SoilModel.uniform(100),
                SoilModel.twoLayer(400, 1.5, 100),
                SoilModel.of(List.of(new Layer(400, 0.7), new Layer(100, 2), Layer.below(1000))))) {
            var known = EarthElectrodes.of(soil, rods(5)).resistances();
            ElectrodePorts ports = ports(soil, new FixedSoil(10), 5);
            Complex[][] z = ports.impedances(100);
            double own = known.get(0, 0);
            assertThat(z[0][0].getReal()).isCloseTo(own, within(0.005 * own));
            assertThat(z[1][1].getReal()).isCloseTo(own, within(0.005 * own));
            assertThat(z[0][1].getReal()).isCloseTo(known.get(0, 1), within(0.005 * own));
        }
    }

    /** Far apart each is what it is alone; near each other the mutual falls with frequency faster than the own impedance. */
    @Test
    void distanceDampsTheMutualImpedance() {
        SoilModel soil = SoilModel.uniform(100);
        HarmonicElectrode pair = harmonic(soil, new FixedSoil(10), 5);
        Complex low = pair.impedances(1e3)[0][1];
        Complex high = pair.impedances(1e6)[0][1];
        // The skin depth at 1 MHz is 5.03 m: e^(−5/5.03) for middles 5 m apart, some percent more or less along the
        // rods.
        assertThat(high.abs() / low.abs()).isCloseTo(Math.exp(-5 / 5.033), withinPercentage(12));
        Complex alone = HarmonicElectrode.of(soil, new FixedSoil(10), BarShapes.rod("rod", 0, 0, 0, 3, RADIUS), 0, 0)
                .impedance(1e6);
        assertThat(harmonic(soil, new FixedSoil(10), 60)
                        .impedances(1e6)[0][0]
                        .subtract(alone)
                        .abs())
                .isLessThan(1e-4 * alone.abs());
    }

    /** Reciprocity, and that the mutual of two ports is the same whichever is called first. */
    @Property(seed = "20261125", tries = 10)
    void fitsArePassiveSymmetricAndClose(
            @ForAll @DoubleRange(min = 30, max = 1500) double rho,
            @ForAll @DoubleRange(min = 1, max = 20) double distance) {
        ElectrodePorts ports = ports(SoilModel.uniform(rho), PowerLawSoil.MEAN, distance);
        assertThat(ports.error()).isLessThan(0.01);
        assertThat(ports.admittance().order()).isBetween(4, 12);
        for (double f : new double[] {1, 1e4, 1e6, 1e8}) {
            Complex[][] z = ports.impedances(f);
            assertThat(z[0][0].getReal()).isGreaterThanOrEqualTo(0);
            assertThat(z[0][0].getReal() * z[1][1].getReal())
                    .isGreaterThanOrEqualTo(z[0][1].getReal() * z[0][1].getReal());
            assertThat(z[0][1].subtract(z[1][0]).abs()).isLessThan(1e-9 * z[0][0].abs());
        }
    }

    private static Waveform voltage(ElectrodePorts ports, Wave current, double end) {
        Circuit circuit = new Circuit.Builder()
                .currentSource("surge", Circuit.REFERENCE, "main", current)
                .resistor("open", "cubicle", Circuit.REFERENCE, 1e9)
                .admittance("earth", List.of("e", "f"), List.of("main", "cubicle"), ports.admittance())
                .build();
        TransientSolution s = TransientSolution.solve(circuit, TimeGrid.adaptive(end, 2e-9));
        return s.potential("main");
    }

    /**
     * The time domain against Fourier's integral of the solution over frequency itself: v(t) = (2/π) ∫ Re[Z·I] cos ωt dω,
     * no rational function in it. Current e^(−at) − e^(−bt) of 50 µs and 1 µs, whose spectrum is spent at 4 MHz.
     */
    @Test
    void timeDomainIsTheFourierIntegralOfTheImpedance() {
        double a = 1 / 50e-6;
        double b = 1 / 1e-6;
        SoilModel soil = SoilModel.uniform(300);
        HarmonicElectrode pair = harmonic(soil, PowerLawSoil.MEAN, 5);
        double r = EarthElectrodes.of(soil, rods(5)).resistances().get(0, 0);
        double scale = r / pair.impedances(100)[0][0].abs();
        Waveform v = voltage(ports(soil, PowerLawSoil.MEAN, 5), t -> Math.exp(-a * t) - Math.exp(-b * t), 40e-6);
        for (double t : new double[] {1e-6, 2e-6, 5e-6, 15e-6}) {
            assertThat(v.at(t))
                    .isCloseTo(
                            scale * fourier(pair, a, b, t),
                            within(0.008 * v.peak().value()));
        }
    }

    private static double fourier(HarmonicElectrode pair, double a, double b, double t) {
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(12);
        double sum = 0;
        double from = 0;
        double top = 2 * Math.PI * HarmonicElectrode.HIGHEST;
        // Pieces no longer than a quarter turn of cos ωt and no longer than a third of their own frequency.
        double to = 2 * Math.PI * HarmonicElectrode.LOWEST;
        while (from < top) {
            double start = from;
            double half = (to - start) / 2;
            for (int k = 0; k < rule.getNumberOfPoints(); k++) {
                double omega = start + half * (1 + rule.getPoint(k));
                Complex s = new Complex(0, omega);
                Complex current = s.add(a).reciprocal().subtract(s.add(b).reciprocal());
                double f = Math.max(HarmonicElectrode.LOWEST, omega / (2 * Math.PI));
                Complex z = pair.impedances(f)[0][0];
                sum += rule.getWeight(k) * half * z.multiply(current).getReal() * Math.cos(omega * t);
            }
            from = to;
            to = Math.min(top, from + Math.min(from, Math.PI / 2 / t));
        }
        return 2 / Math.PI * sum;
    }

    /** First stroke of table 1 in de Araujo et al., Electric Power Systems Research, 2021. */
    private static double first(double time) {
        double x = time / 1.8e-6;
        return 28e3 / 0.8231 * x * x / (1 + x * x) * Math.exp(-time / 95e-6);
    }

    /** The same paper, table 2: reduction of the rise of a 3 m rod in 1000 ohm.m by dispersion, first stroke. */
    @Test
    void dispersionLowersTheRiseAsPublished() {
        double[] rise = new double[2];
        List<Bar> rod = BarShapes.rod("rod", 0, 0, 0, 3, 0.0125);
        SoilDispersion[] laws = {new FixedSoil(10), new VisacroAlipioSoil()};
        for (int k = 0; k < 2; k++) {
            HarmonicElectrode electrode = HarmonicElectrode.of(SoilModel.uniform(1000), laws[k], rod, 0, 0);
            ElectrodePorts ports = ElectrodePorts.of(electrode, new int[] {0}, new double[] {
                electrode.impedance(100).abs()
            });
            Circuit circuit = new Circuit.Builder()
                    .currentSource("surge", Circuit.REFERENCE, "rod", ElectrodePortsTest::first)
                    .admittance("earth", List.of("e"), List.of("rod"), ports.admittance())
                    .build();
            rise[k] = TransientSolution.solve(circuit, TimeGrid.adaptive(60e-6, 5e-9))
                    .potential("rod")
                    .peak()
                    .value();
        }
        assertThat(rise[1] / rise[0]).isCloseTo(0.9101, within(0.025 * 0.9101));
    }

    /**
     * 1.06 µH for 3 m of 16 mm by Neumann's integral of a linear taper. The leakage of the solution is denser at the tip, so
     * that more current runs deep: 7 % more inductance, and less than the 3.37 µH of a current that does not taper.
     */
    @Test
    void inductanceOfTheTaperingCurrent() {
        HarmonicElectrode rod = HarmonicElectrode.of(
                SoilModel.uniform(100), new FixedSoil(10), BarShapes.rod("rod", 0, 0, 0, 3, RADIUS), 0, 0, 0.1);
        double closed = ImpulseParameters.taperedInductance(3, RADIUS);
        assertThat(closed).isCloseTo(1.06e-6, within(0.005e-6));
        assertThat(rod.inductances()[0][0]).isBetween(closed, 1.08 * closed);
        double[][] pair = harmonic(SoilModel.uniform(100), new FixedSoil(10), 5).inductances();
        assertThat(pair[0][1]).isBetween(0.0, 0.1 * pair[0][0]);
    }

    @Test
    void refusesWhatItCannotSolve() {
        Map<String, double[]> one = Map.of("main", new double[2]);
        assertThatThrownBy(() -> HarmonicElectrode.of(SoilModel.uniform(100), new FixedSoil(10), rods(5), one))
                .hasMessageContaining("terminal");
        List<Bar> touching = new ArrayList<>(BarShapes.rod("main", 0, 0, 0.5, 3, RADIUS));
        touching.addAll(BarShapes.wire("cubicle", 0, 0, 5, 0, 0.5, RADIUS));
        Map<String, double[]> both = new LinkedHashMap<>();
        both.put("main", new double[2]);
        both.put("cubicle", new double[2]);
        assertThatThrownBy(() -> HarmonicElectrode.of(SoilModel.uniform(100), new FixedSoil(10), touching, both))
                .hasMessageContaining("meet in one place");
        assertThatThrownBy(() -> ElectrodePorts.fit(List.of(1.0), List.of())).hasMessageContaining("more than 12");
        assertThatThrownBy(() -> ElectrodePorts.of(
                        harmonic(SoilModel.uniform(100), new FixedSoil(10), 5), new int[] {0}, new double[] {0}))
                .hasMessageContaining("resistance");
    }
}
