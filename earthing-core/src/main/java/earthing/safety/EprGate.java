package earthing.safety;

import java.util.Objects;
import java.util.Optional;

/**
 * What an earth potential rise asks for. A rise above a gate is no failure: it says what has to be proven.
 *
 * @param rise earth potential rise [V]
 * @param permissibleTouch permissible touch voltage [V]
 * @param ratio rise over permissible touch voltage
 * @param demand what has to be proven
 * @param assessStep whether step voltages at the edge have to be assessed as well
 */
public record EprGate(double rise, double permissibleTouch, double ratio, Demand demand, boolean assessStep) {

    /** What has to be proven. */
    public enum Demand {
        /** The rise is so low that the touch voltage is kept without further proof. */
        NOTHING_FURTHER,
        /** Recognised measures of annex E, or the touch voltage itself. */
        MEASURES_OR_TOUCH,
        /** The touch voltage itself. */
        TOUCH
    }

    /**
     * Checks that no part is missing.
     *
     * @param rise earth potential rise [V]
     * @param permissibleTouch permissible touch voltage [V]
     * @param ratio rise over permissible touch voltage
     * @param demand what has to be proven
     * @param assessStep whether step voltages at the edge have to be assessed as well
     */
    public EprGate {
        Objects.requireNonNull(demand);
    }

    /**
     * Finds the gate.
     *
     * @param rise earth potential rise [V], ≥ 0
     * @param permissibleTouch permissible touch voltage without additional resistance [V], &gt; 0
     * @param first first gate, &gt; 0
     * @param second second gate, ≥ first
     * @param step gate for step voltages, empty where the edition has none
     * @return what has to be proven
     */
    public static EprGate of(double rise, double permissibleTouch, double first, double second, Optional<Double> step) {
        if (!(rise >= 0 && rise < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("earth potential rise must be >= 0 V; have " + rise);
        }
        if (!(permissibleTouch > 0)) {
            throw new IllegalArgumentException("permissible touch voltage must be > 0 V; have " + permissibleTouch);
        }
        if (!(first > 0 && second >= first)) {
            throw new IllegalArgumentException("gates must rise; have " + first + " and " + second);
        }
        double ratio = rise / permissibleTouch;
        Demand demand = rise <= first * permissibleTouch
                ? Demand.NOTHING_FURTHER
                : rise <= second * permissibleTouch ? Demand.MEASURES_OR_TOUCH : Demand.TOUCH;
        boolean assessStep = step.isPresent() && rise > step.get() * permissibleTouch;
        return new EprGate(rise, permissibleTouch, ratio, demand, assessStep);
    }
}
