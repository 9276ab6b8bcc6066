package earthing.safety;

import earthing.quantity.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A permissible touch voltage given by points: the tables of EN 50522, HD 637 and an owner's own.
 *
 * <p>Footwear and covering are credited where a body current stands beside the points: U = U_Tp + I_B (R_F1 + R_F2),
 * EN 50522:2010 annex B, with R_F2 = 1.5 ρs. A covering of finite thickness counts with its surface-layer factor, which
 * the standard leaves out.
 *
 * @param name name of the curve
 * @param edition edition or reference
 * @param points permissible touch voltage without additional resistance [V] over duration [s]
 * @param bodyCurrent body current [A] over duration [s], empty where none is known: then nothing is credited
 * @param sustained what holds beyond the last point, empty where the source says nothing
 * @param source where the points stand
 */
public record TabulatedCurve(
        String name,
        String edition,
        Points points,
        Optional<Points> bodyCurrent,
        Optional<SustainedLimit> sustained,
        Source source)
        implements VoltageCurve {

    /**
     * Checks that no part is missing.
     *
     * @param name name of the curve
     * @param edition edition or reference
     * @param points permissible touch voltage without additional resistance [V] over duration [s]
     * @param bodyCurrent body current [A] over duration [s], empty where none is known: then nothing is credited
     * @param sustained what holds beyond the last point, empty where the source says nothing
     * @param source where the points stand
     */
    public TabulatedCurve {
        Objects.requireNonNull(name);
        Objects.requireNonNull(edition);
        Objects.requireNonNull(points);
        Objects.requireNonNull(bodyCurrent);
        Objects.requireNonNull(sustained);
        Objects.requireNonNull(source);
    }

    /**
     * The same curve read by another rule between its points.
     *
     * @param rule the rule
     * @return the curve
     */
    public TabulatedCurve with(Interpolation rule) {
        return new TabulatedCurve(
                name, edition, points.with(rule), bodyCurrent.map(p -> p.with(rule)), sustained, source);
    }

    @Override
    public Permissible at(Contact contact, double duration, Standing standing) {
        VoltageCurve.checked(duration);
        if (contact == Contact.FOOT_TO_FOOT) {
            return new NoPermissibleVoltage(
                    name, "this curve is for touch and sets no step voltage; choose a curve that has one");
        }
        List<String> remarks = new ArrayList<>();
        boolean beyond = duration > points.last();
        double value;
        String rule;
        Source where = source;
        if (beyond) {
            if (sustained.isEmpty()) {
                return new NoPermissibleVoltage(
                        name,
                        "the curve ends at " + points.last() + " s and its source gives no value for sustained faults");
            }
            value = sustained.get().value();
            where = sustained.get().source();
            rule = "value for sustained faults, beyond " + points.last() + " s";
        } else {
            value = points.at(duration);
            rule = points.rule().label();
            if (duration < points.first()) {
                remarks.add("shorter than the first point at " + points.first() + " s, whose value is used");
            }
        }
        double credited = 0;
        if (contact == Contact.HAND_TO_HAND) {
            remarks.add("hand-to-feet curve used for hand to hand; nothing credited under the feet");
        } else {
            credited = credit(standing, remarks);
            if (credited > 0 && bodyCurrent.isPresent()) {
                value += credited * bodyCurrent(bodyCurrent.get(), beyond, duration);
                remarks.add("prospective voltage with the additional resistance credited");
            }
        }
        return new PermissibleVoltage(
                value,
                contact,
                duration,
                beyond,
                name,
                edition,
                contact == Contact.HAND_TO_HAND
                        ? Footwear.NONE.name()
                        : standing.footwear().name(),
                standing.surface(),
                credited,
                rule,
                remarks,
                where);
    }

    private double bodyCurrent(Points current, boolean beyond, double duration) {
        if (!beyond) {
            return current.at(Math.min(duration, current.last()));
        }
        // No sustained body current is printed: scaled with the voltage, so that crediting shoes cannot overtake it.
        return current.at(current.last()) * Math.min(1, sustained.orElseThrow().value() / points.at(points.last()));
    }

    private double credit(Standing standing, List<String> remarks) {
        double declared = standing.footwear().resistance();
        if (standing.covering().isPresent()) {
            SurfaceCovering layer = standing.covering().get();
            double factor = SurfaceLayerFactor.series(standing.soilResistivity(), layer);
            declared += 1.5 * factor * layer.resistivity();
        }
        if (declared > 0 && bodyCurrent.isEmpty()) {
            remarks.add("no body current belongs to this curve: footwear and covering are not credited");
            return 0;
        }
        return declared;
    }
}
