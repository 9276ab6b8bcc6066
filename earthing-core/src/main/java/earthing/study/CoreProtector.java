package earthing.study;

import earthing.conductor.inductance.FilamentInductance;
import earthing.conductor.inductance.SelfInductance;
import earthing.network.Breakdown;
import earthing.network.Circuit;
import earthing.network.NonlinearResistance;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.Protector;
import earthing.site.ProtectorKind;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A declared surge protector between a core and chassis as a branch of the circuit. A clamping one follows a curve of the
 * usual shape through its declared level at its declared current; a switching one is a gap that fires at its level and
 * then burns.
 *
 * @param level protection level [V], above 0
 * @param current rated discharge current [A], above 0
 * @param kind how it limits
 * @param leadInductance inductance of its own two leads [H], 0 without leads
 */
record CoreProtector(double level, double current, ProtectorKind kind, double leadInductance) {

    private static final Source SHAPE = Source.commonPractice(
            "residual voltage of a clamping protector: 0.84, 0.94, 1, 1.10 of its level at 0.1, 0.5, 1, 2 of its current");
    private static final Source LEADS = Source.commonPractice(
            "leads of a protector in a cubicle of 6 mm2 copper, at right angles to the pole's conductors");
    private static final Source ARC = Source.tool("a fired gas tube burns at some tens of volts at kiloamperes");

    private static final double[] CURRENTS = {0.1, 0.5, 1, 2};
    private static final double[] VOLTAGES = {0.84, 0.94, 1, 1.10};
    /** Resistance of the arc in a fired protector [Ω]. */
    private static final double BURNING = 0.01;
    /** What an unfired protector leaks through [Ω]; fixes the potential of what lies between two of them. */
    private static final double LEAK = 10e6;

    /** Radius of a lead of 6 mm² [m]; it enters as a logarithm. */
    private static final double LEAD_RADIUS = PoleGeometry.radius(6e-6);

    /** The protector of a core end; empty if there is none or its level or current is not known. */
    static Optional<CoreProtector> of(@Nullable Protector declared, Inputs in) throws MissingInput {
        if (declared == null
                || !declared.level().isKnown()
                || !declared.current().isKnown()) {
            return Optional.empty();
        }
        ProtectorKind kind = declared.kind() == null ? ProtectorKind.UNKNOWN : declared.kind();
        if (kind == ProtectorKind.SWITCHING) {
            in.choice("", "a fired protector at a core: an arc of 0.01 ohm", ARC);
        } else {
            in.choice("", "curve of a clamping protector at a core: usual shape through its declared level", SHAPE);
        }
        // The highest level is what reaches the port, the lowest rating is what may be counted on.
        return Optional.of(new CoreProtector(
                declared.level().at(Bound.HIGH), declared.current().at(Bound.LOW), kind, leads(declared, in)));
    }

    private static double leads(Protector declared, Inputs in) throws MissingInput {
        if (declared.leadLength() == null) {
            return 0;
        }
        double length = in.need(declared.leadLength(), "protector.lead-length", Bound.HIGH);
        if (length == 0) {
            return 0;
        }
        in.choice("", "leads of a protector: 6 mm2 copper, at right angles to the pole's conductors", LEADS);
        double spacing = declared.leadSpacing() == null
                ? Double.POSITIVE_INFINITY
                : in.need(declared.leadSpacing(), "protector.lead-spacing", Bound.HIGH);
        return leadInductance(length, spacing);
    }

    /**
     * Inductance of the two leads [H]: 2 (L − M) of two straight wires of half the length that carry the current out and
     * back side by side; one straight wire where they run apart. They lie in the cubicle at right angles to the pole's
     * conductors and the tee and have no mutual inductance to them.
     *
     * @param length length of both together [m], above 0
     * @param spacing distance of their axes [m]; infinite where they run apart
     */
    static double leadInductance(double length, double spacing) {
        // A stump as short as it is thick is not a wire; its inductance is nothing beside the rest.
        double radius = Math.min(LEAD_RADIUS, length / 20);
        if (Double.isInfinite(spacing)) {
            return SelfInductance.filamentAtRadius(length, radius);
        }
        double apart = Math.max(spacing, 2 * radius);
        return 2
                * (SelfInductance.filamentAtRadius(length / 2, radius)
                        - FilamentInductance.sideBySide(length / 2, apart));
    }

    /** Name of the branch of the leads of a protector. */
    static String leadsOf(String name) {
        return "leads of " + name;
    }

    /** Adds leads and protector in series. */
    void addWithLeads(Circuit.Builder circuit, String name, String from, String to) {
        if (leadInductance == 0) {
            addTo(circuit, name, from, to);
            return;
        }
        circuit.inductor(leadsOf(name), from, name, 0, leadInductance);
        addTo(circuit, name, name, to);
    }

    private void addTo(Circuit.Builder circuit, String name, String from, String to) {
        if (kind == ProtectorKind.SWITCHING) {
            circuit.resistor(name + ", unfired", from, to, LEAK);
            circuit.gap(name, from, to, new Breakdown.Level(level), BURNING);
            return;
        }
        double[] currents = CURRENTS.clone();
        double[] voltages = VOLTAGES.clone();
        for (int k = 0; k < currents.length; k++) {
            currents[k] *= current;
            voltages[k] *= level;
        }
        circuit.nonlinear(name, from, to, new NonlinearResistance.LogLog(currents, voltages));
    }
}
