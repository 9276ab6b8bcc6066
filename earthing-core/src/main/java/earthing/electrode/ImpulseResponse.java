package earthing.electrode;

import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.network.Waveform;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * An electrode under impulse: its impedance over frequency as a passive chain, and the chain's answer to a current.
 *
 * @param network the chain
 * @param frequencies frequencies of the solution [Hz], 100 Hz … 4 MHz at equal ratios
 * @param impedances impedance at each [Ω]
 */
public record ImpulseResponse(ElectrodeNetwork network, List<Double> frequencies, List<Complex> impedances) {

    private static final double FROM = 100;
    private static final int COUNT = 56;
    private static final String NODE = "electrode";

    /**
     * Copies the lists.
     *
     * @param network the chain
     * @param frequencies frequencies of the solution [Hz]
     * @param impedances impedance at each [Ω]
     */
    public ImpulseResponse {
        frequencies = List.copyOf(frequencies);
        impedances = List.copyOf(impedances);
    }

    /**
     * Solves an electrode over frequency and fits the chain.
     *
     * @param electrode the electrode
     * @return its response
     */
    public static ImpulseResponse of(HarmonicElectrode electrode) {
        List<Double> frequencies = new ArrayList<>();
        List<Complex> impedances = new ArrayList<>();
        double ratio = HarmonicElectrode.HIGHEST / FROM;
        for (int i = 0; i < COUNT; i++) {
            double f = i == COUNT - 1 ? HarmonicElectrode.HIGHEST : FROM * Math.pow(ratio, i / (COUNT - 1.0));
            frequencies.add(f);
            impedances.add(electrode.impedance(f));
        }
        return new ImpulseResponse(ElectrodeNetwork.fit(frequencies, impedances), frequencies, impedances);
    }

    /**
     * Voltage to remote earth while a current is imposed.
     *
     * @param current the current [A]
     * @param end how long it is followed [s], &gt; 0
     * @param firstStep first step in time [s], &gt; 0
     * @return the voltage [V]
     */
    public Waveform voltage(Wave current, double end, double firstStep) {
        Circuit.Builder circuit = new Circuit.Builder();
        network.add(circuit, NODE, NODE, Circuit.REFERENCE);
        circuit.currentSource("impulse", Circuit.REFERENCE, NODE, current);
        return TransientSolution.solve(circuit.build(), TimeGrid.adaptive(end, firstStep))
                .potential(NODE);
    }
}
