package earthing.study;

import earthing.site.Site;
import java.util.List;
import java.util.function.Predicate;

/** Power frequency: earth faults, then what they do to persons and conductors. */
final class PowerStudy {

    private PowerStudy() {}

    static StudyResults of(Site site, EarthCache cache) {
        FaultStudy.Outcome faults = FaultStudy.of(site, cache);
        if (faults.cases().isEmpty()) {
            return faults.results();
        }
        return StudyResults.join(List.of(
                faults.results(),
                TouchStudy.of(forTouch(faults.cases()), site),
                HeatingStudy.of(forHeating(faults.cases()), site)));
    }

    private static boolean isDouble(PowerCase fault) {
        return fault.circumstances().keys().getOrDefault("fault", "").startsWith(FaultStudy.DOUBLE_FAULT);
    }

    /** A load current says nothing of the heating by a fault. */
    private static boolean isLoad(PowerCase fault) {
        return fault.circumstances().keys().getOrDefault("fault", "").equals(FaultStudy.NORMAL_LOAD);
    }

    /** EN 50522 table 1: touch follows the single earth fault for every treatment of the neutral. */
    static List<PowerCase> forTouch(List<PowerCase> cases) {
        return cases.stream().filter(Predicate.not(PowerStudy::isDouble)).toList();
    }

    /** EN 50522 table 1: heating follows the double earth fault where the neutral is isolated or resonant. */
    static List<PowerCase> forHeating(List<PowerCase> cases) {
        List<PowerCase> doubles = cases.stream().filter(PowerStudy::isDouble).toList();
        return doubles.isEmpty()
                ? cases.stream().filter(Predicate.not(PowerStudy::isLoad)).toList()
                : doubles;
    }
}
