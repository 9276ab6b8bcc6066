package earthing.study;

import earthing.network.Wave;
import earthing.surge.DoubleExponential;
import earthing.surge.Heidler;
import earthing.surge.Impulse;
import earthing.surge.PowerExponential;
import earthing.surge.SampledImpulse;
import java.util.List;

/** A wave of a given name, with how long and how finely it has to be followed. */
record SurgeWave(String name, Impulse unit) {

    /** Names that are understood, in the order in which they are offered. */
    static final List<String> NAMES = List.of("8/20", "4/10", "10/350", "1/200", "0.25/100", "1.2/50");

    /** Name of a recorded current of the site file. */
    static final String RECORDED = "own";

    /** Time in which the current of a shorted loop of cores has decayed [s]. */
    private static final double LOOP_DECAY = 1e-3;

    static SurgeWave named(String name) throws MissingInput {
        Impulse shape = switch (name) {
            case "8/20" -> PowerExponential.impulse820(1);
            case "4/10" -> PowerExponential.impulse410(1);
            case "10/350" -> Heidler.firstPositive(1);
            case "1/200" -> Heidler.firstNegative(1);
            case "0.25/100" -> Heidler.subsequent(1);
            case "1.2/50" -> DoubleExponential.impulse1250(1);
            default ->
                throw new MissingInput(
                        "wave \"" + name + "\" is not known; known are " + String.join(", ", NAMES), "surges.waves");
        };
        return new SurgeWave(name, shape);
    }

    /** A recorded current, as it stands. */
    static SurgeWave recorded(SampledImpulse impulse) {
        return new SurgeWave(RECORDED, impulse);
    }

    Wave current(double peak) {
        return unit.scaled(peak);
    }

    double end() {
        // Half of the way to 1e-6 of the peak leaves 1e-3 of it. A loop of cores decays on, with L/R of some 0.2 ms:
        // the
        // charge through a protector counts that too.
        double followed = unit instanceof SampledImpulse ? unit.duration() : unit.duration() / 2;
        return Math.max(followed, LOOP_DECAY);
    }

    double firstStep() {
        return unit.frontScale() / 200;
    }

    double at(double time) {
        return unit.at(time);
    }

    double slope(double time) {
        return unit.rate(time);
    }
}
