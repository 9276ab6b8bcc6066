package earthing.reference;

import earthing.electrode.ElectrodePorts;
import earthing.electrode.ImpulseParameters;
import earthing.electrode.ImpulseResponse;
import earthing.electrode.SoilIonisation;
import earthing.electrode.formula.EffectiveLengthGrcev;
import earthing.electrode.formula.EffectiveLengthGupta;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.soil.FixedSoil;
import earthing.soil.LongmireSmithSoil;
import earthing.soil.MessierSoil;
import earthing.soil.PowerLawSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import earthing.soil.VisacroAlipioSoil;
import earthing.surge.Heidler;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/** Binds soil over frequency and electrodes under impulse. */
final class ImpulseModels {

    private ImpulseModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("soil.dispersion", given -> {
            SoilDispersion law = law(given);
            double sigma = 1 / given.value("resistivity");
            double f = given.value("frequency");
            return Map.of("rho", 1 / law.conductivity(sigma, f), "permittivity", law.relativePermittivity(sigma, f));
        });
        models.put("soil.dispersion.causality", given -> {
            double sigma = 1 / given.value("resistivity");
            double f = given.value("frequency");
            double infinite = 2 * Math.PI * f * SoilDispersion.EPSILON0 * PowerLawSoil.MEAN.highPermittivity();
            double stored = PowerLawSoil.MEAN.admittivity(sigma, f).getImaginary() - infinite;
            return Map.of("ratio", stored / (PowerLawSoil.MEAN.conductivity(sigma, f) - sigma));
        });
        models.put("electrode.rod.harmonic", given -> {
            List<Bar> rod = BarShapes.rod("rod", 0, 0, 0, given.value("length"), given.value("radius"));
            HarmonicElectrode electrode = HarmonicElectrode.of(
                    SoilModel.uniform(given.value("resistivity")),
                    new FixedSoil(given.value("permittivity")),
                    rod,
                    0,
                    0);
            return Map.of(
                    "impedance", electrode.impedance(given.value("frequency")).abs());
        });
        models.put("electrode.two-rods.harmonic", given -> {
            Complex[][] z = twoRods(given).impedances(given.value("frequency"));
            return Map.of("own", z[0][0].abs(), "mutual", z[0][1].abs());
        });
        models.put("electrode.two-rods.ports", given -> {
            HarmonicElectrode rods = twoRods(given);
            double low = rods.impedance(100).abs();
            Complex[][] z = ElectrodePorts.of(rods, new int[] {0, 1}, new double[] {low, low})
                    .impedances(given.value("frequency"));
            return Map.of("own", z[0][0].abs());
        });
        models.put("electrode.ports.dispersion", given -> {
            List<Bar> rod = BarShapes.rod("rod", 0, 0, 0, given.value("length"), given.value("radius"));
            double rho = given.value("resistivity");
            String stroke = given.word("stroke");
            double dispersive = peakAtPort(rod, rho, law(given), stroke);
            double fixed = peakAtPort(rod, rho, new FixedSoil(given.value("permittivity")), stroke);
            return Map.of("alpha", dispersive / fixed);
        });
        models.put(
                "electrode.rod.tapered-inductance",
                given -> Map.of(
                        "inductance",
                        ImpulseParameters.taperedInductance(given.value("length"), given.value("radius"))));
        models.put("electrode.impulse.dispersion", given -> {
            List<Bar> rod = BarShapes.rod("rod", 0, 0, 0, given.value("length"), given.value("radius"));
            double rho = given.value("resistivity");
            String stroke = given.word("stroke");
            double dispersive = peak(rod, rho, law(given), stroke);
            double fixed = peak(rod, rho, new FixedSoil(given.value("permittivity")), stroke);
            return Map.of("alpha", dispersive / fixed);
        });
        models.put("electrode.impulse.dispersion-scaling", ImpulseModels::scaling);
        models.put("electrode.ionisation", given -> {
            double resistance = given.value("resistance");
            double limit = SoilIonisation.limitCurrent(resistance, given.value("resistivity"), given.value("field"));
            double ionised = SoilIonisation.resistance(resistance, given.value("current"), limit);
            return Map.of("limit", limit, "ionised", ionised, "coefficient", ionised / resistance);
        });
        models.put("electrode.effective-length", given -> {
            double rho = given.value("resistivity");
            double front = given.value("front");
            double length = EffectiveLengthGrcev.length(rho, front).get();
            return Map.of(
                    "grcev",
                    length,
                    "coefficient",
                    EffectiveLengthGrcev.coefficient(rho, front, 2 * length).get(),
                    "gupta-end",
                    EffectiveLengthGupta.fedAtEnd(rho, front),
                    "gupta-middle",
                    EffectiveLengthGupta.fedInMiddle(rho, front));
        });
    }

    /** The print shows the cross in a figure only; the ratio moves by less than 1 % from arms of 1 m to arms of 3 m. */
    private static Map<String, Double> scaling(Given given) {
        List<Bar> cross = BarShapes.star("cross", 0, 0, 4, 1.5, 1.5, 0.0125);
        // The permittivity belongs to the non-dispersive comparison of the same paper and is read so that it counts.
        new FixedSoil(given.value("permittivity"));
        String stroke = given.word("stroke");
        return Map.of(
                "ratio",
                peak(cross, given.value("resistivity"), law(given), stroke)
                        / peak(cross, given.value("resistivity-of-base"), law(given), stroke));
    }

    private static double peak(List<Bar> bars, double resistivity, SoilDispersion law, String stroke) {
        ImpulseResponse response =
                ImpulseResponse.of(HarmonicElectrode.of(SoilModel.uniform(resistivity), law, bars, 0, 0));
        boolean first = stroke.equals("first");
        return response.voltage(wave(first), first ? 100e-6 : 50e-6, first ? 2e-9 : 0.5e-9)
                .peak()
                .value();
    }

    private static HarmonicElectrode twoRods(Given given) {
        double length = given.value("length");
        double radius = given.value("radius");
        double distance = given.value("distance");
        List<Bar> bars = new ArrayList<>(BarShapes.rod("one", 0, 0, 0, length, radius));
        bars.addAll(BarShapes.rod("other", distance, 0, 0, length, radius));
        Map<String, double[]> terminals = new LinkedHashMap<>();
        terminals.put("one", new double[] {0, 0});
        terminals.put("other", new double[] {distance, 0});
        return HarmonicElectrode.of(
                SoilModel.uniform(given.value("resistivity")),
                new FixedSoil(given.value("permittivity")),
                bars,
                terminals);
    }

    /** The rod as the surge circuit of a pole holds it. */
    private static double peakAtPort(List<Bar> rod, double resistivity, SoilDispersion law, String stroke) {
        HarmonicElectrode electrode = HarmonicElectrode.of(SoilModel.uniform(resistivity), law, rod, 0, 0);
        ElectrodePorts ports = ElectrodePorts.of(
                electrode, new int[] {0}, new double[] {electrode.impedance(100).abs()});
        boolean first = stroke.equals("first");
        Circuit circuit = new Circuit.Builder()
                .currentSource("stroke", Circuit.REFERENCE, "rod", wave(first))
                .admittance("earth", List.of("leak"), List.of("rod"), ports.admittance())
                .build();
        return TransientSolution.solve(circuit, TimeGrid.adaptive(first ? 100e-6 : 50e-6, first ? 2e-9 : 0.5e-9))
                .potential("rod")
                .peak()
                .value();
    }

    /** Table 1 of the paper: nominal amplitude over its correction, time constants, exponent 2. */
    private static Wave wave(boolean first) {
        if (first) {
            return new Heidler(28e3 / 0.8231, 1.8e-6, 95e-6, 2);
        }
        Heidler fast = new Heidler(10.7e3 / 0.6394, 0.25e-6, 2.5e-6, 2);
        Heidler slow = new Heidler(6.5e3 / 0.8765, 2e-6, 230e-6, 2);
        return time -> fast.at(time) + slow.at(time);
    }

    private static SoilDispersion law(Given given) {
        String law = given.word("soil-law");
        return switch (law) {
            case "Alipio-Visacro 2014" -> PowerLawSoil.MEAN;
            case "Alipio-Visacro 2014 relatively conservative" -> PowerLawSoil.CAUTIOUS;
            case "Alipio-Visacro 2014 conservative" -> PowerLawSoil.CONSERVATIVE;
            case "Visacro-Alipio 2012" -> new VisacroAlipioSoil();
            case "Longmire-Smith 1975" -> new LongmireSmithSoil();
            case "Messier 1985" -> new MessierSoil();
            default -> throw new IllegalArgumentException("no soil law is called " + law);
        };
    }
}
