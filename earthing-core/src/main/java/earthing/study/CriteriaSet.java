package earthing.study;

import earthing.quantity.ColumnTable;
import earthing.quantity.Source;
import earthing.safety.BodyCurrent;
import earthing.safety.BodyCurve;
import earthing.safety.BodyImpedance;
import earthing.safety.BodyPath;
import earthing.safety.BodyWeight;
import earthing.safety.Exposure;
import earthing.safety.OwnerCurve;
import earthing.safety.SafetyCriteria;
import earthing.safety.SafetyCriteria.Need;
import earthing.safety.SourcedValue;
import earthing.safety.SustainedLimit;
import earthing.safety.TabulatedCurve;
import earthing.site.BodyModel;
import earthing.site.Criteria;
import earthing.site.OwnerCriteria;
import earthing.site.TouchPath;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The set of touch criteria that a site file names, complete or refused. */
final class CriteriaSet {

    private static final String OWNER = "criteria.owner";
    private static final String MERGING = "criteria.shock-merging-time";
    private static final Source LEFT_HAND = Source.tool(
            "left hand to feet is the reference path of the current curves and the worst of the touch paths");

    private CriteriaSet() {}

    static SafetyCriteria of(Criteria criteria, Inputs in) throws MissingInput {
        SafetyCriteria set = switch (criteria.touch()) {
            case EN_50522_2010 -> SafetyCriteria.EN_50522_2010;
            case EN_50522_2022 -> SafetyCriteria.EN_50522_2022;
            case IEEE_80_50KG -> SafetyCriteria.ieee80(BodyWeight.KG_50);
            case IEEE_80_70KG -> SafetyCriteria.ieee80(BodyWeight.KG_70);
            case IEC_60479_1 -> SafetyCriteria.body(body(criteria.body(), in));
            case OWNER -> owner(criteria.owner(), in);
        };
        if (criteria.shockMergingTime() != null) {
            set = set.with(
                    Need.MERGING_DEAD_TIME,
                    new SourcedValue(in.need(criteria.shockMergingTime(), MERGING), Source.owner(MERGING)));
        } else if (set.values().containsKey(Need.MERGING_DEAD_TIME)) {
            in.choice(MERGING, "0.5 s", Exposure.SOURCE);
        }
        List<String> missing = set.missing();
        if (!missing.isEmpty()) {
            throw new MissingInput(
                    "the criteria set " + set.name() + " is not used, it lacks: " + String.join(", ", missing),
                    keys(set).toArray(String[]::new));
        }
        return set;
    }

    private static List<String> keys(SafetyCriteria set) {
        Map<String, Boolean> lacks = new LinkedHashMap<>();
        lacks.put(OWNER + ".touch-curve", set.curve().isEmpty());
        lacks.put(MERGING, !set.values().containsKey(Need.MERGING_DEAD_TIME));
        lacks.put(OWNER + ".proven-up-to", !set.values().containsKey(Need.FIRST_GATE));
        return lacks.entrySet().stream()
                .filter(Map.Entry::getValue)
                .map(Map.Entry::getKey)
                .toList();
    }

    /** An owner's set is nobody else's: nothing in it is filled in from a standard. */
    private static SafetyCriteria owner(@Nullable OwnerCriteria owner, Inputs in) throws MissingInput {
        if (owner == null) {
            throw new MissingInput("the owner's criteria are named and not given", OWNER);
        }
        String reference = owner.date() == null ? owner.reference() : owner.reference() + " of " + owner.date();
        Optional<SustainedLimit> sustained = owner.sustainedVoltage() == null
                ? Optional.empty()
                : Optional.of(new SustainedLimit(
                        in.need(owner.sustainedVoltage(), OWNER + ".sustained-voltage"),
                        Source.owner(OWNER + ".sustained-voltage, " + reference)));
        ColumnTable points = owner.touchCurve();
        Optional<TabulatedCurve> curve = points == null
                ? Optional.empty()
                : Optional.of(OwnerCurve.of(
                        points.column("time"), points.column("voltage"), owner.name(), reference, sustained));
        Map<Need, SourcedValue> values = owner.provenUpTo() == null
                ? Map.of()
                : Map.of(
                        Need.FIRST_GATE,
                        new SourcedValue(
                                in.need(owner.provenUpTo(), OWNER + ".proven-up-to"),
                                Source.owner(OWNER + ".proven-up-to, " + reference)));
        Set<Need> needs = EnumSet.of(Need.MERGING_DEAD_TIME, Need.FIRST_GATE);
        return new SafetyCriteria(owner.name(), curve.map(c -> c), needs, values);
    }

    private static BodyCurve body(@Nullable BodyModel body, Inputs in) throws MissingInput {
        if (body == null) {
            throw new MissingInput("the body behind the criterion iec-60479-1 is not given", "criteria.body");
        }
        if (body.path() == null) {
            in.choice("criteria.body.path", "left-hand-to-feet", LEFT_HAND);
        }
        return new BodyCurve(impedance(body), percentile(body), current(body), path(body.path()));
    }

    static BodyImpedance impedance(BodyModel body) {
        return switch (body.skin()) {
            case DRY -> BodyImpedance.DRY_2005;
            case WATER_WET -> BodyImpedance.WATER_WET_2005;
            case SALTWATER_WET -> BodyImpedance.SALTWATER_WET_2005;
        };
    }

    private static BodyImpedance.Percentile percentile(BodyModel body) {
        return switch (body.share()) {
            case FIVE_PERCENT -> BodyImpedance.Percentile.P5;
            case FIFTY_PERCENT -> BodyImpedance.Percentile.P50;
            case NINETY_FIVE_PERCENT -> BodyImpedance.Percentile.P95;
        };
    }

    private static BodyCurrent current(BodyModel body) {
        return switch (body.current()) {
            case C1 -> BodyCurrent.C1;
            case EN_50522 -> BodyCurrent.EN_50522;
        };
    }

    private static BodyPath path(@Nullable TouchPath path) {
        if (path == null) {
            return BodyPath.LEFT_HAND_TO_FEET;
        }
        return switch (path) {
            case LEFT_HAND_TO_FEET -> BodyPath.LEFT_HAND_TO_FEET;
            case RIGHT_HAND_TO_FEET -> BodyPath.RIGHT_HAND_TO_FEET;
            case BOTH_HANDS_TO_FEET -> BodyPath.BOTH_HANDS_TO_FEET;
            case LEFT_HAND_TO_FOOT -> BodyPath.LEFT_HAND_TO_FOOT;
            case RIGHT_HAND_TO_FOOT -> BodyPath.RIGHT_HAND_TO_FOOT;
        };
    }
}
