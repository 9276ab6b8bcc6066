package earthing.network;

import java.util.List;
import java.util.Optional;

/** The value of a source as a function of time, in the unit of the source [A] or [V]. */
@FunctionalInterface
public interface Wave {

    /**
     * The value at a time.
     *
     * @param time time since the start of the solution [s]
     * @return value [A] or [V]
     */
    double at(double time);

    /**
     * Times after the start at which the value itself jumps. The solver restarts there; a bend of the wave needs no
     * mention. The start of the solution always counts as a jump.
     *
     * @return ascending times [s]
     */
    default List<Double> jumps() {
        return List.of();
    }

    /**
     * The wave as an expression of a general-purpose circuit simulator in the variable {@code time}.
     *
     * @return the expression; empty where the wave can only be sampled
     */
    default Optional<String> expression() {
        return Optional.empty();
    }

    /**
     * A value that is switched on at the start and stays.
     *
     * @param value value [A] or [V]
     * @return the wave
     */
    static Wave constant(double value) {
        return time -> value;
    }

    /**
     * The wave multiplied by a number.
     *
     * @param factor the number
     * @return the scaled wave
     */
    default Wave times(double factor) {
        Wave unit = this;
        return new Wave() {
            @Override
            public double at(double time) {
                return factor * unit.at(time);
            }

            @Override
            public List<Double> jumps() {
                return unit.jumps();
            }

            @Override
            public Optional<String> expression() {
                return unit.expression().map(e -> factor + "*(" + e + ")");
            }
        };
    }
}
