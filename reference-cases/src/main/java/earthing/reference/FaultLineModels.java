package earthing.reference;

import earthing.fault.line.CapacitiveCurrent;
import earthing.fault.line.EarthReturn;
import earthing.fault.line.LineCapacitance;
import earthing.fault.line.LineConductor;
import earthing.fault.line.PoleEarthChain;
import earthing.fault.line.SequenceImpedances;
import earthing.fault.line.SeriesImpedance;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/** Binds the model names that begin with {@code fault.line.} and {@code fault.chain.}. */
final class FaultLineModels {

    private FaultLineModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("fault.line.entry", FaultLineModels::entry);
        models.put("fault.line.sequence", FaultLineModels::sequence);
        models.put("fault.line.bonded", FaultLineModels::bonded);
        models.put("fault.line.capacitance", FaultLineModels::capacitance);
        models.put("fault.line.earth-return", FaultLineModels::earthReturn);
        models.put("fault.line.return-depth", given -> {
            double frequency = given.value("frequency");
            return Map.of(
                    "depth", EarthReturn.returnDepth(frequency, given.value("resistivity")),
                    "resistance", EarthReturn.returnResistance(frequency));
        });
        models.put("fault.line.resistivity-change", given -> {
            double frequency = given.value("frequency");
            LineConductor wire = new LineConductor("a", 0, 10, 0, given.value("radius"), given.value("radius"));
            LineConductor far = new LineConductor("b", given.value("distance"), 10, 0, 1e-3, 1e-3);
            EarthReturn form = form(given);
            double from = given.value("from");
            double to = given.value("to");
            return Map.of(
                    "own",
                    form.self(wire, frequency, to).getImaginary()
                                    / form.self(wire, frequency, from).getImaginary()
                            - 1,
                    "mutual",
                    form.mutual(wire, far, frequency, to).getImaginary()
                                    / form.mutual(wire, far, frequency, from).getImaginary()
                            - 1);
        });
        models.put(
                "fault.line.capacitive-rule",
                given -> Map.of(
                        "current",
                        CapacitiveCurrent.overheadLineRule(given.value("line-voltage"), given.value("length"))));
        models.put(
                "fault.chain.infinite",
                given -> parts(PoleEarthChain.infinite(
                        FaultModels.complex(given, "span"), new Complex(given.value("pole-earth"), 0))));
        models.put(
                "fault.chain.finite",
                given -> parts(PoleEarthChain.finite(
                        FaultModels.complex(given, "span"),
                        new Complex(given.value("pole-earth"), 0),
                        given.count("spans"))));
        models.put("fault.chain.lines-and-neutrals", FaultLineModels::linesAndNeutrals);
        models.put(
                "fault.chain.split",
                given -> Map.of(
                        "share",
                        PoleEarthChain.splitFactor(
                                new Complex(given.value("earth"), 0), FaultModels.complex(given, "wires"))));
    }

    private static Map<String, Double> parts(Complex z) {
        return Map.of("resistance", z.getReal(), "reactance", z.getImaginary(), "magnitude", z.abs());
    }

    private static List<LineConductor> conductors(Given given) {
        List<String> names = given.words("names");
        List<List<Double>> table = given.table("conductors");
        List<LineConductor> line = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            List<Double> row = table.get(i);
            double diameter = row.size() > 4 ? row.get(4) : 2 * row.get(3);
            line.add(new LineConductor(names.get(i), row.get(0), row.get(1), row.get(2), row.get(3), diameter / 2));
        }
        return line;
    }

    static SeriesImpedance matrix(Given given) {
        SeriesImpedance z = SeriesImpedance.of(
                conductors(given), form(given), given.value("frequency"), given.value("resistivity"));
        return given.has("earthed") ? z.withEarthed(given.words("earthed")) : z;
    }

    private static EarthReturn form(Given given) {
        return EarthReturn.valueOf(given.word("earth-return").replace('-', '_').toUpperCase(Locale.ROOT));
    }

    private static Map<String, Double> entry(Given given) {
        return parts(matrix(given).at(given.word("row"), given.word("column")));
    }

    private static Map<String, Double> sequence(Given given) {
        SequenceImpedances z = matrix(given).sequence("a", "b", "c");
        return Map.of(
                "r0", z.zero().getReal(),
                "x0", z.zero().getImaginary(),
                "r1", z.positive().getReal(),
                "x1", z.positive().getImaginary());
    }

    private static Map<String, Double> bonded(Given given) {
        SeriesImpedance z = matrix(given).bonded(given.words("bonded"), "wire");
        Complex self = z.at("wire", "wire");
        Complex screening = z.at("a", "wire").divide(self);
        Complex chain =
                PoleEarthChain.infinite(self.multiply(given.value("span")), new Complex(given.value("pole-earth"), 0));
        return Map.of(
                "resistance", self.getReal(),
                "reactance", self.getImaginary(),
                "screening-real", screening.getReal(),
                "screening-imaginary", screening.getImaginary(),
                "chain-resistance", chain.getReal(),
                "chain-reactance", chain.getImaginary());
    }

    private static Map<String, Double> capacitance(Given given) {
        LineCapacitance c = LineCapacitance.of(conductors(given));
        return given.has("row")
                ? Map.of("capacitance", c.at(given.word("row"), given.word("column")))
                : Map.of("three-phases", c.threePhasesToEarth("a", "b", "c"));
    }

    /** The earth's part alone, in units of ωµ₀/π as Carson writes P and Q. */
    private static Map<String, Double> earthReturn(Given given) {
        double frequency = 50;
        double resistivity = 100;
        double length = Math.sqrt(resistivity / (2 * Math.PI * frequency * EarthReturn.MU_0));
        double distance = given.value("distance") * length;
        double angle = Math.toRadians(given.value("angle"));
        double heights = distance * Math.cos(angle);
        double across = distance * Math.sin(angle);
        double shift = across > 0 ? 0 : 0.1;
        LineConductor a = new LineConductor("a", 0, (heights - shift) / 2, 0, 1e-3, 1e-3);
        LineConductor b = new LineConductor("b", across, (heights + shift) / 2, 0, 1e-3, 1e-3);
        double unit = 2 * EarthReturn.MU_0 * frequency;
        Complex z = form(given)
                .mutual(a, b, frequency, resistivity)
                .subtract(new Complex(0, unit / 2 * Math.log(a.imageDistance(b) / a.distance(b))))
                .divide(unit);
        return Map.of("p", z.getReal(), "q", z.getImaginary());
    }

    private static Map<String, Double> linesAndNeutrals(Given given) {
        int lines = given.count("lines");
        int neutrals = given.count("neutrals");
        Complex line = FaultModels.complex(given, "line");
        Complex neutral = FaultModels.complex(given, "neutral").divide(neutrals);
        return parts(lines == 0 ? neutral : PoleEarthChain.parallel(line.divide(lines), neutral));
    }
}
