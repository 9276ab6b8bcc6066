package earthing.fault;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.apache.commons.math3.complex.Complex;

/**
 * Several return conductors on the same poles, coupled with each other and with the phases in every span, all ending at
 * the station's earth. The chain of nodes is eliminated from its far end, one small matrix a pole:
 * {@code (Y_g + Y_k + Y_(k+1))·V_k = Y_k·V_(k−1) + Y_(k+1)·V_(k+1) + b_k} with the inverse Y_k of the impedance matrix of the
 * conductors that are present in span k.
 */
final class CoupledLadder {

    private static final double FLOATING = 1e-12;

    /** Bond of two conductors at a pole, a few metres of copper [Ω]. */
    private static final double BOND = 1e-3;

    /**
     * Admittance to earth that every conductor bonded to the tank has at the pole here [S]: cut off on both sides it would hang
     * on nothing but the tank. Who joins the tank takes it away again.
     */
    static final double HELD = 0.1;

    private final List<ReturnConductor> wires;
    private final int pole;
    private final int nodes;
    private final Complex[][][] span; // admittance matrix of span k, from node k−1 to k
    private final Complex[][][] inverse; // inverse of the eliminated diagonal block of node k
    private final Complex station;
    private final Map<String, Response> responses = new ConcurrentHashMap<>();

    /** The chains eliminated last: the faults of a site over soils and sources ask for few of them many times. */
    private static final class Last {

        private record Chain(ReturnConductor first, SecondWire second, Complex stationEarth) {}

        private static final int MOST = 32;
        private static final Map<Chain, CoupledLadder> KEPT =
                Collections.synchronizedMap(new LinkedHashMap<>(MOST, 0.75f, true) {
                    @Override
                    protected boolean removeEldestEntry(Map.Entry<Chain, CoupledLadder> eldest) {
                        return size() > MOST;
                    }
                });
    }

    /**
     * The chain of two conductors, as eliminated before where it was.
     *
     * @param first the first conductor
     * @param second the second
     * @param stationEarth impedance of the station earth [Ω]
     */
    static CoupledLadder of(ReturnConductor first, SecondWire second, Complex stationEarth) {
        Last.Chain chain = new Last.Chain(first, second, stationEarth);
        CoupledLadder known = Last.KEPT.get(chain);
        if (known == null) {
            known = new CoupledLadder(first, second, stationEarth);
            Last.KEPT.put(chain, known);
        }
        return known;
    }

    /**
     * Eliminates the chain.
     *
     * @param first the first conductor
     * @param second the second
     * @param stationEarth impedance of the station earth [Ω]
     */
    CoupledLadder(ReturnConductor first, SecondWire second, Complex stationEarth) {
        if (first.spansToPole() != second.wire().spansToPole()) {
            throw new IllegalArgumentException("both return conductors must be as many spans from the station; have "
                    + first.spansToPole() + " and " + second.wire().spansToPole());
        }
        wires = List.of(first, second.wire());
        pole = first.spansToPole();
        nodes = wires.stream().mapToInt(w -> w.spans().size()).max().orElse(0) + 1;
        span = new Complex[nodes][][];
        inverse = new Complex[nodes][][];
        for (int k = 1; k < nodes; k++) {
            span[k] = admittance(k, second.mutualToFirst());
        }
        Complex[][] carried = zero();
        for (int k = nodes - 1; k >= 1; k--) {
            Complex[][] block = plus(carried, span[k]);
            if (k + 1 < nodes) {
                block = plus(block, span[k + 1]);
            }
            double scale = largest(block);
            for (int w = 0; w < wires.size(); w++) {
                block[w][w] = block[w][w].add(present(w, k) ? earth(w, k) : Complex.ONE);
                if (k == pole && wires.get(w).bondedAtPole()) {
                    block[w][w] = block[w][w].add(HELD);
                }
            }
            if (second.bondedToFirst()
                    && present(0, k)
                    && present(1, k)
                    && earth(0, k).abs() > 0) {
                tie(block);
            }
            inverse[k] = inverted(block, scale);
            carried = minus(times(times(span[k], inverse[k]), span[k]));
        }
        station = stationEarth.reciprocal().add(sum(span[1])).add(sum(carried));
    }

    /** Zero at the faulted pole: the tank's earth is joined from outside. */
    private Complex earth(int wire, int node) {
        return wires.get(wire).spans().get(node - 1).poleEarthAdmittance();
    }

    private boolean present(int wire, int node) {
        return node <= wires.get(wire).spans().size();
    }

    private boolean carries(int wire, int k) {
        ReturnConductor conductor = wires.get(wire);
        return present(wire, k)
                && !(conductor.brokenSpan().isPresent()
                        && conductor.brokenSpan().getAsInt() == k - 1);
    }

    private Complex[][] admittance(int k, Complex coupling) {
        Complex[][] y = zero();
        if (carries(0, k) && carries(1, k)) {
            Complex a = wires.get(0).spans().get(k - 1).self();
            Complex b = wires.get(1).spans().get(k - 1).self();
            Complex det = a.multiply(b).subtract(coupling.multiply(coupling));
            if (!(det.abs() > FLOATING * a.abs() * b.abs())) {
                throw new IllegalArgumentException(
                        "the return conductors are coupled more closely than their own impedances allow");
            }
            y[0][0] = b.divide(det);
            y[1][1] = a.divide(det);
            y[0][1] = coupling.negate().divide(det);
            y[1][0] = y[0][1];
        } else {
            for (int w = 0; w < wires.size(); w++) {
                if (carries(w, k)) {
                    y[w][w] = wires.get(w).spans().get(k - 1).self().reciprocal();
                }
            }
        }
        return y;
    }

    private static void tie(Complex[][] block) {
        Complex bond = new Complex(1 / BOND, 0);
        block[0][0] = block[0][0].add(bond);
        block[1][1] = block[1][1].add(bond);
        block[0][1] = block[0][1].subtract(bond);
        block[1][0] = block[1][0].subtract(bond);
    }

    /** What one ampere does: potentials [V] by node and conductor, both equal at node 0, and currents [A] by span. */
    static final class Response {

        private final Complex[][] potentials;
        private final Complex[][] currents; // counted away from the station

        private Response(Complex[][] potentials, Complex[][] currents) {
            this.potentials = potentials;
            this.currents = currents;
        }

        Complex potential(int node, int wire) {
            return potentials[node][wire];
        }

        Response plus(Response other, Complex factor) {
            return new Response(sum(potentials, other.potentials, factor), sum(currents, other.currents, factor));
        }

        Response times(Complex factor) {
            return plus(this, factor.subtract(1));
        }

        private static Complex[][] sum(Complex[][] a, Complex[][] b, Complex factor) {
            Complex[][] total = new Complex[a.length][];
            for (int k = 0; k < a.length; k++) {
                total[k] = new Complex[a[k].length];
                for (int w = 0; w < a[k].length; w++) {
                    total[k][w] = a[k][w].add(b[k][w].multiply(factor));
                }
            }
            return total;
        }
    }

    /** One ampere along the phases from the station to the pole, nothing entering any conductor. */
    Response induced() {
        return known("induced", () -> solve(true, Complex.ZERO, -1));
    }

    /** One ampere taken out of the station's earth. */
    Response drawnAtStation() {
        return known("drawn at the station", () -> solve(false, Complex.ONE.negate(), -1));
    }

    /** One ampere into a conductor at the faulted pole. */
    Response enteringAtPole(int wire) {
        return known("entering " + wire, () -> solve(false, Complex.ZERO, wire));
    }

    private Response known(String what, Supplier<Response> solution) {
        return responses.computeIfAbsent(what, key -> solution.get());
    }

    private Response solve(boolean phases, Complex atStation, int entering) {
        int count = wires.size();
        Complex[][] right = new Complex[nodes][];
        Complex[][] induced = new Complex[nodes][];
        for (int k = 0; k < nodes; k++) {
            right[k] = filled(count);
            induced[k] = phases && k >= 1 && k <= pole ? times(span[k], mutual(k)) : filled(count);
        }
        if (entering >= 0) {
            right[pole][entering] = Complex.ONE;
        }
        Complex top = atStation;
        for (int w = 0; w < count; w++) {
            top = top.add(induced[1][w]);
        }
        for (int k = nodes - 1; k >= 1; k--) {
            for (int w = 0; w < count; w++) {
                right[k][w] = right[k][w].subtract(induced[k][w]).add(k + 1 < nodes ? induced[k + 1][w] : Complex.ZERO);
            }
        }
        for (int k = nodes - 1; k >= 1; k--) {
            Complex[] passed = times(span[k], times(inverse[k], right[k]));
            for (int w = 0; w < count; w++) {
                if (k > 1) {
                    right[k - 1][w] = right[k - 1][w].add(passed[w]);
                } else {
                    top = top.add(passed[w]);
                }
            }
        }
        Complex[][] v = new Complex[nodes][];
        Complex[][] j = new Complex[nodes][];
        v[0] = filled(count);
        j[0] = filled(count);
        Arrays.fill(v[0], top.divide(station));
        for (int k = 1; k < nodes; k++) {
            Complex[] given = times(span[k], v[k - 1]);
            for (int w = 0; w < count; w++) {
                given[w] = given[w].add(right[k][w]);
            }
            v[k] = times(inverse[k], given);
            Complex[] along = new Complex[count];
            for (int w = 0; w < count; w++) {
                along[w] = v[k - 1][w].subtract(v[k][w]);
            }
            j[k] = times(span[k], along);
            for (int w = 0; w < count; w++) {
                j[k][w] = j[k][w].subtract(induced[k][w]);
            }
        }
        return new Response(v, j);
    }

    private Complex[] mutual(int k) {
        Complex[] m = filled(wires.size());
        for (int w = 0; w < wires.size(); w++) {
            if (carries(w, k)) {
                m[w] = wires.get(w).spans().get(k - 1).mutual();
            }
        }
        return m;
    }

    /** Voltage that the conductors' currents induce along the phases up to the pole [V]. */
    Complex drop(Response response) {
        Complex sum = Complex.ZERO;
        for (int k = 1; k <= pole; k++) {
            Complex[] m = mutual(k);
            for (int w = 0; w < wires.size(); w++) {
                sum = sum.add(m[w].multiply(response.currents[k][w]));
            }
        }
        return sum;
    }

    /** Number of conductors. */
    int count() {
        return wires.size();
    }

    ReturnConductor wire(int index) {
        return wires.get(index);
    }

    int poleNode() {
        return pole;
    }

    /** Currents of one conductor on both sides of the pole, and its potentials. */
    EarthFaultResult.Wire read(Response response, int w) {
        boolean bonded = wires.get(w).bondedAtPole();
        Complex towards = bonded ? Complex.ZERO.subtract(response.currents[pole][w]) : Complex.ZERO;
        Complex beyond = bonded && present(w, pole + 1) ? response.currents[pole + 1][w] : Complex.ZERO;
        List<Complex> profile = new ArrayList<>();
        for (int k = 0; k <= wires.get(w).spans().size(); k++) {
            profile.add(response.potentials[k][w]);
        }
        return new EarthFaultResult.Wire(bonded, wires.get(w).bondHeight(), towards, beyond, profile);
    }

    private Complex[][] zero() {
        Complex[][] m = new Complex[wires.size()][];
        for (int i = 0; i < m.length; i++) {
            m[i] = filled(m.length);
        }
        return m;
    }

    private static Complex[] filled(int count) {
        Complex[] values = new Complex[count];
        Arrays.fill(values, Complex.ZERO);
        return values;
    }

    private static Complex[][] plus(Complex[][] a, Complex[][] b) {
        Complex[][] c = new Complex[a.length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                c[i][j] = a[i][j].add(b[i][j]);
            }
        }
        return c;
    }

    private static Complex[][] minus(Complex[][] a) {
        Complex[][] c = new Complex[a.length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                c[i][j] = a[i][j].negate();
            }
        }
        return c;
    }

    private static Complex[][] times(Complex[][] a, Complex[][] b) {
        Complex[][] c = new Complex[a.length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                Complex sum = Complex.ZERO;
                for (int k = 0; k < a.length; k++) {
                    sum = sum.add(a[i][k].multiply(b[k][j]));
                }
                c[i][j] = sum;
            }
        }
        return c;
    }

    private static Complex[] times(Complex[][] a, Complex[] x) {
        Complex[] y = filled(x.length);
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < x.length; j++) {
                y[i] = y[i].add(a[i][j].multiply(x[j]));
            }
        }
        return y;
    }

    private static Complex sum(Complex[][] a) {
        Complex sum = Complex.ZERO;
        for (Complex[] row : a) {
            for (Complex value : row) {
                sum = sum.add(value);
            }
        }
        return sum;
    }

    private static double largest(Complex[][] a) {
        double largest = 0;
        for (Complex[] row : a) {
            for (Complex value : row) {
                largest = Math.max(largest, value.abs());
            }
        }
        return largest;
    }

    /** Inverse of a block of two; a section cut off from every earth leaves nothing but rounding on its diagonal. */
    private static Complex[][] inverted(Complex[][] block, double scale) {
        Complex det = block[0][0].multiply(block[1][1]).subtract(block[0][1].multiply(block[1][0]));
        double size = Math.max(scale, largest(block));
        boolean singular = !(block[0][0].abs() > FLOATING * scale)
                || !(block[1][1].abs() > FLOATING * scale)
                || !(det.abs() > FLOATING * size * Math.min(block[0][0].abs(), block[1][1].abs()));
        if (singular) {
            throw new IllegalArgumentException(
                    "a return conductor has a section without any earth; its potential cannot be computed");
        }
        return new Complex[][] {
            {block[1][1].divide(det), block[0][1].negate().divide(det)},
            {block[1][0].negate().divide(det), block[0][0].divide(det)}
        };
    }
}
