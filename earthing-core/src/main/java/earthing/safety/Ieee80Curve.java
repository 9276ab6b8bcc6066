package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Tolerable touch and step voltages of IEEE Std 80: touch (1000 + 1.5 Cs ρs) I_B, step (1000 + 6 Cs ρs) I_B, metal to
 * metal 1000 I_B, with I_B = 0.116/√t or 0.157/√t. The body is 1000 Ω, whatever the voltage.
 *
 * @param weight body weight
 * @param layerRule how the surface-layer factor is found
 * @param sustained the owner's value for sustained faults; the standard has none
 */
public record Ieee80Curve(BodyWeight weight, LayerRule layerRule, Optional<SustainedLimit> sustained)
        implements VoltageCurve {

    /** Where the formulas stand. */
    public static final Source SOURCE =
            Source.standard("IEEE Std 80-2000", "clauses 6.1 and 8.3, eq. 8, 9, 29 to 33", Status.FROM_MEMORY);

    /** Shortest duration of the body current formula [s]. */
    public static final double SHORTEST = 0.03;

    /** Longest duration of the body current formula [s]. */
    public static final double LONGEST = 3;

    /** Resistance of the body [Ω]. */
    public static final double BODY = 1000;

    /** How the surface-layer factor is found. */
    public enum LayerRule {
        /** The printed series. */
        SERIES,
        /** The printed short formula, which is too high on thin layers. */
        SHORT_FORMULA,
        /** The disc on two layers, not printed in the standard. */
        DISC
    }

    /**
     * Checks that no part is missing.
     *
     * @param weight body weight
     * @param layerRule how the surface-layer factor is found
     * @param sustained the owner's value for sustained faults; the standard has none
     */
    public Ieee80Curve {
        Objects.requireNonNull(weight);
        Objects.requireNonNull(layerRule);
        Objects.requireNonNull(sustained);
    }

    /**
     * The curve as printed, with the surface-layer series and without a sustained value.
     *
     * @param weight body weight
     * @return the curve
     */
    public static Ieee80Curve of(BodyWeight weight) {
        return new Ieee80Curve(weight, LayerRule.SERIES, Optional.empty());
    }

    @Override
    public String name() {
        return "IEEE Std 80, " + weight.label();
    }

    @Override
    public String edition() {
        return "IEEE Std 80-2000";
    }

    /**
     * The surface-layer factor at a place.
     *
     * @param standing what the person stands on
     * @return Cs; 1 on bare soil
     */
    public double layerFactor(Standing standing) {
        if (standing.covering().isEmpty()
                || Double.isInfinite(standing.covering().get().thickness())) {
            return 1;
        }
        SurfaceCovering layer = standing.covering().get();
        double soil = standing.soilResistivity();
        return switch (layerRule) {
            case SERIES -> SurfaceLayerFactor.series(soil, layer);
            case SHORT_FORMULA -> SurfaceLayerFactor.shortFormula(soil, layer.resistivity(), layer.thickness());
            case DISC -> FootDisc.factor(SurfaceLayerFactor.reflection(soil, layer.resistivity()), layer.thickness());
        };
    }

    @Override
    public Permissible at(Contact contact, double duration, Standing standing) {
        VoltageCurve.checked(duration);
        List<String> remarks = new ArrayList<>();
        double surface = standing.covering().map(SurfaceCovering::resistivity).orElse(standing.soilResistivity());
        double effective = layerFactor(standing) * surface;
        double shoes = standing.footwear().resistance();
        double series = switch (contact) {
            case HAND_TO_FEET -> 1.5 * effective + shoes;
            // Shoes in parallel were declared; in a step they are in series, each twice as much.
            case FOOT_TO_FOOT -> 6 * effective + 4 * shoes;
            case HAND_TO_HAND -> 0;
        };
        if (shoes > 0 && contact != Contact.HAND_TO_HAND) {
            remarks.add("footwear credited by declaration, the standard counts none");
        }
        if (contact == Contact.HAND_TO_HAND) {
            remarks.add("metal to metal, nothing credited under the feet");
        }
        if (duration > LONGEST) {
            return beyond(contact, duration, standing, remarks);
        }
        if (duration < SHORTEST) {
            remarks.add("shorter than 0.03 s, whose value is used");
        }
        double value = (BODY + series) * weight.current(Math.max(duration, SHORTEST));
        return result(value, contact, duration, false, standing, series, "printed formula", remarks, SOURCE);
    }

    private Permissible beyond(Contact contact, double duration, Standing standing, List<String> remarks) {
        if (sustained.isEmpty() || contact == Contact.FOOT_TO_FOOT) {
            return new NoPermissibleVoltage(
                    name(),
                    "the formula ends at 3 s and the standard gives no value for sustained faults;"
                            + " the owner may declare one for touch");
        }
        SustainedLimit limit = sustained.get();
        return result(
                limit.value(),
                contact,
                duration,
                true,
                standing,
                0,
                "declared value for sustained faults, beyond 3 s",
                remarks,
                limit.source());
    }

    private PermissibleVoltage result(
            double value,
            Contact contact,
            double duration,
            boolean isSustained,
            Standing standing,
            double series,
            String rule,
            List<String> remarks,
            Source source) {
        return new PermissibleVoltage(
                value,
                contact,
                duration,
                isSustained,
                name(),
                edition(),
                contact == Contact.HAND_TO_HAND
                        ? Footwear.NONE.name()
                        : standing.footwear().name(),
                standing.surface(),
                series,
                rule,
                remarks,
                source);
    }
}
