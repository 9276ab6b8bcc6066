package earthing.study;

import earthing.network.Wave;

/** A wave of unit peak, with how long and how finely it has to be followed. */
record SurgeWave(String name, Wave unit, double end, double firstStep) {

    static SurgeWave named(String name) throws MissingInput {
        return switch (name) {
            case "8/20" ->
                new SurgeWave(name, t -> 0.01243 * Math.pow(t * 1e6, 3) * Math.exp(-t * 1e6 / 3.911), 100e-6, 1e-8);
            case "10/350" -> heidler(name, 0.93, 19e-6, 485e-6);
            case "0.25/100" -> heidler(name, 0.993, 0.454e-6, 143e-6);
            default -> throw new MissingInput("wave " + name + " is not known", "surges.waves");
        };
    }

    private static SurgeWave heidler(String name, double k, double t1, double t2) {
        return new SurgeWave(
                name, t -> Math.pow(t / t1, 10) / (1 + Math.pow(t / t1, 10)) * Math.exp(-t / t2) / k, 5 * t2, t1 / 100);
    }

    Wave current(double peak) {
        return unit.times(peak);
    }

    double at(double time) {
        return unit.at(time);
    }

    double slope(double time) {
        double h = 1e-10;
        return (unit.at(time + h) - unit.at(time - h)) / (2 * h);
    }
}
