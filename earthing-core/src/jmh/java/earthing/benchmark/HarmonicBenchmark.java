package earthing.benchmark;

import earthing.electrode.ElectrodePorts;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.soil.Layer;
import earthing.soil.PowerLawSoil;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** Two electrodes over frequency in dispersive ground: a star of three wires of 15 m with a rod, and a rod 5 m away. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class HarmonicBenchmark {

    private static final double RADIUS = 0.008;

    /** Layers of the ground. */
    @Param({"1", "2", "3"})
    int layers = 1;

    private final List<Bar> bars = bars();
    private final Map<String, double[]> terminals = terminals();

    private static List<Bar> bars() {
        List<Bar> bars = new ArrayList<>(BarShapes.star("main", 0, 0, 3, 15, 0.6, RADIUS));
        bars.addAll(BarShapes.rod("main", 0, 0, 0.6, 3, RADIUS));
        bars.addAll(BarShapes.rod("cubicle", -3, 4, 0, 3, RADIUS));
        return bars;
    }

    private static Map<String, double[]> terminals() {
        Map<String, double[]> terminals = new LinkedHashMap<>();
        terminals.put("main", new double[] {0, 0});
        terminals.put("cubicle", new double[] {-3, 4});
        return terminals;
    }

    private SoilModel soil() {
        List<Layer> all = List.of(new Layer(400, 0.7), new Layer(100, 2), Layer.below(300));
        return SoilModel.of(all.subList(3 - layers, 3));
    }

    /** Preparation: the real grounds from which those of complex conductivity follow. */
    @Benchmark
    public HarmonicElectrode prepared() {
        return HarmonicElectrode.of(soil(), PowerLawSoil.MEAN, bars, terminals);
    }

    /** Preparation, 48 frequencies, and the passive functions for the time domain. */
    @Benchmark
    public ElectrodePorts ports() {
        var resistances = EarthElectrodes.of(soil(), bars).resistances();
        return ElectrodePorts.of(
                prepared(), new int[] {0, 1}, new double[] {resistances.get(0, 0), resistances.get(1, 1)});
    }
}
