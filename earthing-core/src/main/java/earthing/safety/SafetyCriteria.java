package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * A set of criteria as data, each value with its source. A set that lacks a value it needs refuses to run.
 *
 * @param name name of the set
 * @param curve permissible voltages, empty if not given
 * @param needs which values the set cannot do without
 * @param values the values that are given
 */
public record SafetyCriteria(
        String name, Optional<VoltageCurve> curve, Set<Need> needs, Map<Need, SourcedValue> values) {

    /** Values of a set. */
    public enum Need {
        /** Dead time below which two shocks are one exposure [s]. */
        MERGING_DEAD_TIME("merging dead time"),
        /** EPR over permissible touch voltage up to which nothing more is to be proven. */
        FIRST_GATE("first gate of the earth potential rise"),
        /** EPR over permissible touch voltage above which the touch voltage itself has to be proven. */
        SECOND_GATE("second gate of the earth potential rise"),
        /** EPR over permissible touch voltage above which step voltages have to be assessed. */
        STEP_GATE("gate of the earth potential rise for step voltages");

        private final String label;

        Need(String label) {
            this.label = label;
        }

        /**
         * Words for the report.
         *
         * @return readable name
         */
        public String label() {
            return label;
        }
    }

    /**
     * Copies the collections.
     *
     * @param name name of the set
     * @param curve permissible voltages, empty if not given
     * @param needs which values the set cannot do without
     * @param values the values that are given
     */
    public SafetyCriteria {
        Objects.requireNonNull(name);
        Objects.requireNonNull(curve);
        needs = Set.copyOf(needs);
        values = Map.copyOf(values);
    }

    private static final Source FLOW = Source.standard(
            "EN 50522:2010",
            "figure 5 and table E.1: 2 and 4 times the permissible touch voltage, as quoted",
            Status.READ);
    private static final Source STEP_2022 = Source.standard(
            "EN 50522:2022", "step voltages above 20 times the permissible touch voltage, as quoted", Status.READ);
    private static final SourcedValue MERGING = new SourcedValue(0.5, Exposure.SOURCE);

    /** EN 50522, edition of 2010. */
    public static final SafetyCriteria EN_50522_2010 = new SafetyCriteria(
            "EN 50522:2010",
            Optional.of(TouchTables.EN_50522_2010),
            EnumSet.of(Need.MERGING_DEAD_TIME, Need.FIRST_GATE, Need.SECOND_GATE),
            Map.of(
                    Need.MERGING_DEAD_TIME, MERGING,
                    Need.FIRST_GATE, new SourcedValue(2, FLOW),
                    Need.SECOND_GATE, new SourcedValue(4, FLOW)));

    /** EN 50522, edition of 2022. */
    public static final SafetyCriteria EN_50522_2022 = new SafetyCriteria(
            "EN 50522:2022",
            Optional.of(TouchTables.EN_50522_2022),
            EnumSet.allOf(Need.class),
            Map.of(
                    Need.MERGING_DEAD_TIME, MERGING,
                    Need.FIRST_GATE, new SourcedValue(2, FLOW),
                    Need.SECOND_GATE, new SourcedValue(4, FLOW),
                    Need.STEP_GATE, new SourcedValue(20, STEP_2022)));

    /**
     * IEEE Std 80; it knows no gates, every touch and step voltage is proven.
     *
     * @param weight body weight
     * @return the set
     */
    public static SafetyCriteria ieee80(BodyWeight weight) {
        Ieee80Curve curve = Ieee80Curve.of(weight);
        return new SafetyCriteria(
                curve.name(),
                Optional.of(curve),
                EnumSet.of(Need.MERGING_DEAD_TIME),
                Map.of(Need.MERGING_DEAD_TIME, MERGING));
    }

    /**
     * The body model itself; it knows no gates, every touch and step voltage is proven.
     *
     * @param curve whose body, which current and path
     * @return the set
     */
    public static SafetyCriteria body(BodyCurve curve) {
        return new SafetyCriteria(
                curve.name(),
                Optional.of(curve),
                EnumSet.of(Need.MERGING_DEAD_TIME),
                Map.of(Need.MERGING_DEAD_TIME, MERGING));
    }

    /**
     * The same set with one value replaced, as an owner may declare.
     *
     * @param need which value
     * @param value the value with its source
     * @return the changed set
     */
    public SafetyCriteria with(Need need, SourcedValue value) {
        Map<Need, SourcedValue> changed = new EnumMap<>(Need.class);
        changed.putAll(values);
        changed.put(need, value);
        return new SafetyCriteria(name, curve, needs, changed);
    }

    /**
     * The same set with another curve.
     *
     * @param other the curve
     * @return the changed set
     */
    public SafetyCriteria with(VoltageCurve other) {
        return new SafetyCriteria(name, Optional.of(other), needs, values);
    }

    /**
     * What the set lacks.
     *
     * @return names of missing values, empty if complete
     */
    public List<String> missing() {
        List<String> missing = new ArrayList<>();
        if (curve.isEmpty()) {
            missing.add("curve of permissible voltages");
        }
        for (Need need : Need.values()) {
            if (needs.contains(need) && !values.containsKey(need)) {
                missing.add(need.label());
            }
        }
        return List.copyOf(missing);
    }

    /**
     * Groups the shocks of a sequence and looks up each exposure.
     *
     * @param shocks all shocks in order
     * @param contact between which parts of the body
     * @param standing what the person stands on and in
     * @return every exposure with its permissible voltage, in order
     * @throws IncompleteCriteriaException if the set lacks a value
     */
    public List<Assessed> assess(List<Shock> shocks, Contact contact, Standing standing) {
        VoltageCurve complete = requireComplete();
        double merging = value(Need.MERGING_DEAD_TIME);
        List<Assessed> assessed = new ArrayList<>();
        for (Exposure exposure : Exposure.of(shocks, merging)) {
            assessed.add(new Assessed(exposure, complete.at(contact, exposure.duration(), standing)));
        }
        return List.copyOf(assessed);
    }

    /**
     * The gate that an earth potential rise stands at.
     *
     * @param rise earth potential rise [V], ≥ 0
     * @param permissibleTouch permissible touch voltage without additional resistance [V], &gt; 0
     * @return the gate
     * @throws IncompleteCriteriaException if the set lacks a value, or knows no gates
     */
    public EprGate gate(double rise, double permissibleTouch) {
        requireComplete();
        List<String> missing = new ArrayList<>();
        for (Need need : List.of(Need.FIRST_GATE, Need.SECOND_GATE)) {
            if (!values.containsKey(need)) {
                missing.add(need.label());
            }
        }
        if (!missing.isEmpty()) {
            throw new IncompleteCriteriaException(name, missing);
        }
        Optional<Double> step = Optional.ofNullable(values.get(Need.STEP_GATE)).map(SourcedValue::value);
        return EprGate.of(rise, permissibleTouch, value(Need.FIRST_GATE), value(Need.SECOND_GATE), step);
    }

    private VoltageCurve requireComplete() {
        List<String> missing = missing();
        if (!missing.isEmpty()) {
            throw new IncompleteCriteriaException(name, missing);
        }
        return curve.orElseThrow();
    }

    private double value(Need need) {
        return Objects.requireNonNull(values.get(need)).value();
    }

    /**
     * An exposure with what is permissible for it.
     *
     * @param exposure the exposure
     * @param permissible the voltage, or why there is none
     */
    public record Assessed(Exposure exposure, Permissible permissible) {

        /**
         * Checks that no part is missing.
         *
         * @param exposure the exposure
         * @param permissible the voltage, or why there is none
         */
        public Assessed {
            Objects.requireNonNull(exposure);
            Objects.requireNonNull(permissible);
        }
    }

    /**
     * The exposure that governs: one without a permissible voltage if there is any, else the one with the lowest.
     *
     * @param assessed exposures, at least one
     * @return the governing one
     */
    public static Assessed governing(List<Assessed> assessed) {
        if (assessed.isEmpty()) {
            throw new IllegalArgumentException("there must be at least one exposure");
        }
        Assessed governing = assessed.get(0);
        double lowest = Double.POSITIVE_INFINITY;
        for (Assessed one : assessed) {
            if (!(one.permissible() instanceof PermissibleVoltage voltage)) {
                return one;
            }
            if (voltage.value() < lowest) {
                lowest = voltage.value();
                governing = one;
            }
        }
        return governing;
    }
}
