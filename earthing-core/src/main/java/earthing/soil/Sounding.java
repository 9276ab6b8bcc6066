package earthing.soil;

import java.util.ArrayList;
import java.util.List;

/**
 * Readings along one line over the ground, or of several lines that are read as one. A spacing may be read more than
 * once.
 *
 * @param traverse name of the line, may be empty
 * @param readings the readings in the order they were taken, at least one
 */
public record Sounding(String traverse, List<Reading> readings) {

    /**
     * Copies the readings and refuses none at all.
     *
     * @param traverse name of the line, may be empty
     * @param readings the readings in the order they were taken, at least one
     */
    public Sounding {
        readings = List.copyOf(readings);
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("a sounding needs at least one reading");
        }
    }

    /**
     * Several lines read as one.
     *
     * @param name name of the whole
     * @param soundings the lines, at least one
     * @return all their readings, line by line
     */
    public static Sounding pooled(String name, List<Sounding> soundings) {
        List<Reading> all = new ArrayList<>();
        soundings.forEach(sounding -> all.addAll(sounding.readings()));
        return new Sounding(name, all);
    }

    /**
     * The smallest spacing.
     *
     * @return spacing as of a Wenner array [m]
     */
    public double shortest() {
        return readings.stream().mapToDouble(Reading::spacing).min().orElseThrow();
    }

    /**
     * The greatest spacing.
     *
     * @return spacing as of a Wenner array [m]
     */
    public double longest() {
        return readings.stream().mapToDouble(Reading::spacing).max().orElseThrow();
    }

    /**
     * The greatest ratio between this line and another one at like spacings, a sign of ground that is not layered
     * flat.
     *
     * @param other the other line
     * @return greater over smaller apparent resistivity, at least 1; NaN where no spacings agree within 5 %
     */
    public double greatestRatio(Sounding other) {
        double greatest = Double.NaN;
        for (Reading here : readings) {
            for (Reading there : other.readings) {
                if (Math.abs(Math.log(here.spacing() / there.spacing())) < 0.05) {
                    double ratio = here.apparentResistivity() / there.apparentResistivity();
                    double folded = Math.max(ratio, 1 / ratio);
                    greatest = greatest >= folded ? greatest : folded;
                }
            }
        }
        return greatest;
    }
}
