package earthing.compliance;

import earthing.quantity.Numbers;
import earthing.study.Result;
import java.util.Comparator;
import java.util.Optional;

/** What a surge does once an earth path is broken, in half a sentence for the finding on that path. */
final class SurgeConsequence {

    private SurgeConsequence() {}

    /** Begins with a semicolon; empty if no surge was computed for the path. */
    static String of(Design design, String path) {
        Optional<Result> voltage = worst(design, path, ".open-voltage");
        Optional<Result> current = worst(design, path, ".short-circuit-current");
        if (current.isEmpty()) {
            return "";
        }
        String amperes = Numbers.brief(current.get().value() / 1000) + " kA";
        String wave = current.get().circumstances().keys().getOrDefault("wave", "");
        if (voltage.isEmpty()) {
            return "; a surge then has no metal way to earth but the control cable: " + amperes + " (" + wave
                    + ") through what its cores end on";
        }
        String volts = voltage.get().value() == 0
                ? "no voltage"
                : voltage.get().value() >= 1000
                        ? Numbers.brief(voltage.get().value() / 1000) + " kV"
                        : Numbers.brief(voltage.get().value()) + " V";
        boolean strikes = design.results()
                .under("surge.flashover.")
                .anyMatch(r -> path.equals(r.circumstances().keys().get("broken")));
        return "; a surge then brings " + volts + " open and " + amperes + " short-circuited to the cores"
                + (strikes ? ", and a gap flashes over" : "");
    }

    private static Optional<Result> worst(Design design, String path, String quantity) {
        return design.results()
                .under("surge.cable-end.")
                .filter(r -> r.id().endsWith(quantity)
                        && path.equals(r.circumstances().keys().get("broken")))
                .max(Comparator.comparingDouble(Result::value));
    }
}
