package earthing.conductor.inductance;

import earthing.numeric.ComplexBessel;
import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * Impedance inside a round conductor per metre over frequency: resistance with skin effect and the internal inductance.
 * It stands in series with the external inductance ({@link SelfInductance#filamentAtRadius} or the tube).
 *
 * <p>Displacement current inside the conductor is neglected, and so is the proximity of other conductors: both are below
 * 1 % for distances above ten radii.
 */
public final class SkinEffect {

    /** Source of the Bessel forms. */
    public static final Source SOURCE = Source.publication(
            "S. A. Schelkunoff, The electromagnetic theory of coaxial transmission lines and cylindrical shields, Bell"
                    + " Syst. Tech. J. 13 (1934) 532-579",
            "internal impedance of solid wire and tube",
            Source.Status.FROM_MEMORY);

    private static final double MU0 = 4 * Math.PI * 1e-7;

    private SkinEffect() {}

    private static void check(double angularFrequency, double resistivity, double relativePermeability) {
        if (!(angularFrequency > 0) || !Double.isFinite(angularFrequency)) {
            throw new IllegalArgumentException("angular frequency must be > 0 rad/s; have " + angularFrequency);
        }
        if (!(resistivity > 0) || !Double.isFinite(resistivity)) {
            throw new IllegalArgumentException("resistivity must be > 0 ohm.m; have " + resistivity);
        }
        if (!(relativePermeability >= 1) || !Double.isFinite(relativePermeability)) {
            throw new IllegalArgumentException("relative permeability must be >= 1; have " + relativePermeability);
        }
    }

    private static Complex waveNumber(double angularFrequency, double resistivity, double relativePermeability) {
        double size = Math.sqrt(angularFrequency * MU0 * relativePermeability / (2 * resistivity));
        return new Complex(size, size);
    }

    /**
     * Depth at which the current density has fallen to 1/e.
     *
     * @param angularFrequency ω [rad/s], above 0
     * @param resistivity ρ [Ω·m], above 0
     * @param relativePermeability μr, at least 1, taken as constant
     * @return δ [m]
     */
    public static double depth(double angularFrequency, double resistivity, double relativePermeability) {
        check(angularFrequency, resistivity, relativePermeability);
        return Math.sqrt(2 * resistivity / (angularFrequency * MU0 * relativePermeability));
    }

    /**
     * A solid round wire: Z = (ρ m / 2πr) I0(mr)/I1(mr), m = √(jωμ/ρ).
     *
     * @param angularFrequency ω [rad/s], above 0
     * @param radius r [m], above 0
     * @param resistivity ρ [Ω·m], above 0
     * @param relativePermeability μr, at least 1, taken as constant (a steel wire saturates: then a guess)
     * @return impedance [Ω/m]
     */
    public static Complex solid(
            double angularFrequency, double radius, double resistivity, double relativePermeability) {
        check(angularFrequency, resistivity, relativePermeability);
        if (!(radius > 0)) {
            throw new IllegalArgumentException("radius must be > 0 m; have " + radius);
        }
        Complex m = waveNumber(angularFrequency, resistivity, relativePermeability);
        return m.multiply(resistivity / (2 * Math.PI * radius)).divide(ComplexBessel.ratioI1I0(m.multiply(radius)));
    }

    /**
     * A tube whose current returns outside: Z = (ρ m / 2πb) [I0(mb) K1(ma) + K0(mb) I1(ma)] / [I1(mb) K1(ma) − K1(mb)
     * I1(ma)].
     *
     * @param angularFrequency ω [rad/s], above 0
     * @param inner inner radius a [m], above 0
     * @param outer outer radius b [m], above the inner
     * @param resistivity ρ [Ω·m], above 0
     * @param relativePermeability μr, at least 1, taken as constant
     * @return impedance at the outer surface [Ω/m]
     */
    public static Complex tube(
            double angularFrequency, double inner, double outer, double resistivity, double relativePermeability) {
        return tubeFraction(angularFrequency, inner, outer, resistivity, relativePermeability, false);
    }

    /**
     * Transfer impedance of a tube: the field on its inner surface by a current that returns outside. Z = ρ / (2πab
     * [I1(mb) K1(ma) − K1(mb) I1(ma)]).
     *
     * @param angularFrequency ω [rad/s], above 0
     * @param inner inner radius a [m], above 0
     * @param outer outer radius b [m], above the inner
     * @param resistivity ρ [Ω·m], above 0
     * @param relativePermeability μr, at least 1, taken as constant
     * @return transfer impedance [Ω/m]; the direct-current resistance at low frequency, then falling
     */
    public static Complex tubeTransfer(
            double angularFrequency, double inner, double outer, double resistivity, double relativePermeability) {
        return tubeFraction(angularFrequency, inner, outer, resistivity, relativePermeability, true);
    }

    private static Complex tubeFraction(
            double angularFrequency,
            double inner,
            double outer,
            double resistivity,
            double relativePermeability,
            boolean transfer) {
        check(angularFrequency, resistivity, relativePermeability);
        if (!(inner > 0) || !(outer > inner)) {
            throw new IllegalArgumentException(
                    "a tube needs 0 < inner radius < outer radius; have " + inner + " and " + outer + " m");
        }
        Complex m = waveNumber(angularFrequency, resistivity, relativePermeability);
        Complex ma = m.multiply(inner);
        Complex mb = m.multiply(outer);
        // With I = e^{z} Î and K = e^{−z} K̂ the common factor e^{m(b−a)} is taken out of numerator and denominator.
        Complex wall = ma.subtract(mb);
        Complex back = wall.multiply(2).exp();
        Complex i1a = ComplexBessel.scaledI(1, ma);
        Complex k1a = ComplexBessel.scaledK(1, ma);
        Complex i1b = ComplexBessel.scaledI(1, mb);
        Complex k1b = ComplexBessel.scaledK(1, mb);
        Complex below = i1b.multiply(k1a).subtract(k1b.multiply(i1a).multiply(back));
        if (transfer) {
            return wall.exp()
                    .multiply(resistivity / (2 * Math.PI * inner * outer))
                    .divide(below);
        }
        Complex above = ComplexBessel.scaledI(0, mb)
                .multiply(k1a)
                .add(ComplexBessel.scaledK(0, mb).multiply(i1a).multiply(back));
        return m.multiply(resistivity / (2 * Math.PI * outer)).multiply(above).divide(below);
    }
}
