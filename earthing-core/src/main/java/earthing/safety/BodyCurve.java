package earthing.safety;

import earthing.safety.BodyImpedance.Percentile;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Permissible voltages computed from the body itself: the current of a curve, corrected by the heart-current factor of
 * the path, through the impedance of the body at the voltage across it, plus whatever is credited in series: U = U_body
 * + (I/F) R.
 *
 * @param impedance which table of body impedance
 * @param percentile share of persons with a lower impedance
 * @param current body current over duration
 * @param touchPath path taken for touch, hand to feet
 */
public record BodyCurve(BodyImpedance impedance, Percentile percentile, BodyCurrent current, BodyPath touchPath)
        implements VoltageCurve {

    /**
     * Checks that no part is missing and that the path is one of touch.
     *
     * @param impedance which table of body impedance
     * @param percentile share of persons with a lower impedance
     * @param current body current over duration
     * @param touchPath path taken for touch, hand to feet
     */
    public BodyCurve {
        Objects.requireNonNull(impedance);
        Objects.requireNonNull(percentile);
        Objects.requireNonNull(current);
        switch (touchPath) {
            case LEFT_HAND_TO_FEET, RIGHT_HAND_TO_FEET, BOTH_HANDS_TO_FEET, LEFT_HAND_TO_FOOT, RIGHT_HAND_TO_FOOT -> {}
            default ->
                throw new IllegalArgumentException(
                        "the touch path must go from hand to foot; have " + touchPath.label());
        }
    }

    @Override
    public String name() {
        return "IEC/TS 60479-1 body model, " + current.name() + ", " + impedance.label() + ", "
                + switch (percentile) {
                    case P5 -> "5 %";
                    case P50 -> "50 %";
                    case P95 -> "95 %";
                };
    }

    @Override
    public String edition() {
        return impedance.source().title();
    }

    @Override
    public Permissible at(Contact contact, double duration, Standing standing) {
        VoltageCurve.checked(duration);
        List<String> remarks = new ArrayList<>();
        Points points = current.points();
        boolean beyond = duration > points.last();
        if (beyond && current.sustained().isEmpty()) {
            return new NoPermissibleVoltage(
                    name(), "the body current curve ends at " + points.last() + " s without a sustained value");
        }
        double reference = beyond ? current.sustained().orElseThrow() : points.at(duration);
        if (!beyond && duration < points.first()) {
            remarks.add("shorter than the first point at " + points.first() + " s, whose value is used");
        }
        BodyPath path = switch (contact) {
            case HAND_TO_FEET -> touchPath;
            case HAND_TO_HAND -> BodyPath.HAND_TO_HAND;
            case FOOT_TO_FOOT -> BodyPath.FOOT_TO_FOOT;
        };
        double onPath = path.pathCurrent(reference);
        double body = impedance.voltage(path, onPath, percentile);
        if (body > 1000) {
            remarks.add("body voltage above 1000 V, where the impedance table ends");
        }
        double series = creditedResistance(contact, standing);
        remarks.add("path " + path.label() + ", heart-current factor " + path.heartCurrentFactor());
        return new PermissibleVoltage(
                body + onPath * series,
                contact,
                duration,
                beyond,
                name(),
                edition(),
                contact == Contact.HAND_TO_HAND
                        ? Footwear.NONE.name()
                        : standing.footwear().name(),
                standing.surface(),
                series,
                beyond ? "sustained body current" : points.rule().label(),
                remarks,
                current.source());
    }

    /**
     * Resistance in series with the body: covering and footwear, nothing for bare soil.
     *
     * @param contact between which parts of the body
     * @param standing what the person stands on and in
     * @return resistance [Ω]
     */
    public static double creditedResistance(Contact contact, Standing standing) {
        return contact == Contact.HAND_TO_HAND ? 0 : series(contact, standing);
    }

    private static double series(Contact contact, Standing standing) {
        double surface = 0;
        if (standing.covering().isPresent()) {
            SurfaceCovering layer = standing.covering().get();
            surface = SurfaceLayerFactor.series(standing.soilResistivity(), layer) * layer.resistivity();
        }
        double shoes = standing.footwear().resistance();
        return contact == Contact.FOOT_TO_FOOT ? 6 * surface + 4 * shoes : 1.5 * surface + shoes;
    }
}
