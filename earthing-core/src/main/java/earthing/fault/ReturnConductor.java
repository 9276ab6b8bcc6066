package earthing.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.apache.commons.math3.complex.Complex;

/**
 * Neutral or shield wire along the line, earthed at its poles, from the station to the pole of the fault and on to its
 * end.
 *
 * @param spans spans from the station outwards, at least as many as lead to the faulted pole
 * @param spansToPole number of spans between station and faulted pole, ≥ 1
 * @param bondedAtPole whether the wire is tied to the tank's earth at the faulted pole
 * @param bondHeight height at which it is tied to the earth lead [m], &gt; 0
 * @param brokenSpan index of a broken span, counted from 0 at the station; empty when whole
 */
public record ReturnConductor(
        List<Span> spans, int spansToPole, boolean bondedAtPole, double bondHeight, OptionalInt brokenSpan) {

    /**
     * One span with the pole at its far end.
     *
     * @param self series impedance of the wire with earth return, whole span [Ω], not zero
     * @param mutual mutual impedance of wire and phases with earth return, whole span [Ω]
     * @param poleEarthAdmittance admittance of the earth of the pole at the far end [S], without the faulted pole's own
     *     tank earth; zero where the pole is not earthed
     */
    public record Span(Complex self, Complex mutual, Complex poleEarthAdmittance) {

        /**
         * Refuses impedances that are not passive.
         *
         * @param self series impedance of the wire with earth return, whole span [Ω], not zero
         * @param mutual mutual impedance of wire and phases with earth return, whole span [Ω]
         * @param poleEarthAdmittance admittance of the earth of the pole at the far end [S], without the faulted pole's own
         *     tank earth; zero where the pole is not earthed
         */
        public Span {
            if (!(self.getReal() >= 0) || !(self.abs() > 0) || !Double.isFinite(self.abs())) {
                throw new IllegalArgumentException(
                        "self impedance of a span must be finite and not zero; have " + self);
            }
            if (!Double.isFinite(mutual.abs())) {
                throw new IllegalArgumentException("mutual impedance of a span must be finite; have " + mutual);
            }
            if (!(poleEarthAdmittance.getReal() >= 0) || !Double.isFinite(poleEarthAdmittance.abs())) {
                throw new IllegalArgumentException(
                        "admittance of a pole earth must be finite and passive; have " + poleEarthAdmittance);
            }
        }
    }

    /**
     * Refuses counts and heights out of range.
     *
     * @param spans spans from the station outwards, at least as many as lead to the faulted pole
     * @param spansToPole number of spans between station and faulted pole, ≥ 1
     * @param bondedAtPole whether the wire is tied to the tank's earth at the faulted pole
     * @param bondHeight height at which it is tied to the earth lead [m], &gt; 0
     * @param brokenSpan index of a broken span, counted from 0 at the station; empty when whole
     */
    public ReturnConductor {
        spans = List.copyOf(spans);
        if (spansToPole < 1 || spansToPole > spans.size()) {
            throw new IllegalArgumentException("the faulted pole must be 1 to " + spans.size()
                    + " spans away from the station; have " + spansToPole);
        }
        if (!(bondHeight > 0) || !Double.isFinite(bondHeight)) {
            throw new IllegalArgumentException("bond height must be > 0 m; have " + bondHeight);
        }
        if (brokenSpan.isPresent() && (brokenSpan.getAsInt() < 0 || brokenSpan.getAsInt() >= spans.size())) {
            throw new IllegalArgumentException(
                    "the broken span must be one of " + spans.size() + "; have " + brokenSpan.getAsInt());
        }
    }

    /**
     * A wire of equal spans and equal pole earths, whole, bonded at the faulted pole.
     *
     * @param selfPerMetre series impedance with earth return [Ω/m]
     * @param mutualPerMetre mutual impedance with the phases [Ω/m]
     * @param spanLength length of a span [m], &gt; 0
     * @param poleEarth earth of every pole but the faulted one [Ω], &gt; 0; the faulted pole has only the tank's earth
     * @param spansToPole spans from the station to the faulted pole, ≥ 1
     * @param spansBeyond spans beyond the faulted pole, ≥ 0
     * @param bondHeight height of the bond [m], &gt; 0
     * @return the wire
     */
    public static ReturnConductor uniform(
            Complex selfPerMetre,
            Complex mutualPerMetre,
            double spanLength,
            double poleEarth,
            int spansToPole,
            int spansBeyond,
            double bondHeight) {
        if (!(spanLength > 0) || !(poleEarth > 0)) {
            throw new IllegalArgumentException(
                    "span length and pole earth must be > 0; have " + spanLength + " m, " + poleEarth + " ohm");
        }
        if (spansToPole < 1 || spansBeyond < 0) {
            throw new IllegalArgumentException(
                    "a wire needs >= 1 span to the pole and >= 0 beyond; have " + spansToPole + " and " + spansBeyond);
        }
        Complex self = selfPerMetre.multiply(spanLength);
        Complex mutual = mutualPerMetre.multiply(spanLength);
        Span earthed = new Span(self, mutual, new Complex(1 / poleEarth, 0));
        Span bare = new Span(self, mutual, Complex.ZERO);
        List<Span> spans = new ArrayList<>();
        for (int k = 1; k <= spansToPole + spansBeyond; k++) {
            spans.add(k == spansToPole ? bare : earthed);
        }
        return new ReturnConductor(spans, spansToPole, true, bondHeight, OptionalInt.empty());
    }

    /**
     * The same wire, broken.
     *
     * @param span index of the broken span, 0 at the station
     * @return the contingency
     */
    public ReturnConductor broken(int span) {
        return new ReturnConductor(spans, spansToPole, bondedAtPole, bondHeight, OptionalInt.of(span));
    }

    /**
     * The same wire, not tied to the tank at the faulted pole.
     *
     * @return the contingency
     */
    public ReturnConductor unbonded() {
        return new ReturnConductor(spans, spansToPole, false, bondHeight, brokenSpan);
    }

    /** The same wire without coupling to the phases. */
    ReturnConductor uncoupled() {
        List<Span> alone = spans.stream()
                .map(s -> new Span(s.self(), Complex.ZERO, s.poleEarthAdmittance()))
                .toList();
        return new ReturnConductor(alone, spansToPole, bondedAtPole, bondHeight, brokenSpan);
    }
}
