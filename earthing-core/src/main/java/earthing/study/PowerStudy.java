package earthing.study;

import earthing.site.Site;
import earthing.study.SweptFaults.Swept;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Predicate;

/** Power frequency: earth faults, then what they do to persons and conductors. */
final class PowerStudy {

    private PowerStudy() {}

    static StudyResults of(Site site, EarthCache cache) {
        return of(site, cache, StudyScope.ALL_ARRANGEMENTS);
    }

    static StudyResults of(Site site, EarthCache cache, StudyScope scope) {
        Inputs in = new Inputs();
        boolean point = scope == StudyScope.POINT;
        Site adverse = point ? site : AdverseInputs.of(site, in);
        FaultStudy.Outcome faults = FaultStudy.of(adverse, cache, scope);
        if (faults.cases().isEmpty()) {
            return faults.results();
        }
        List<PowerCase> touched = new ArrayList<>(forTouch(faults.cases()));
        List<PowerCase> heated = new ArrayList<>(forHeating(faults.cases()));
        boolean doubles = heated.stream().anyMatch(PowerStudy::isDouble);
        for (Swept swept : faults.swept()) {
            PowerCase power = swept.fault().power();
            if (swept.touch() && !isDouble(power)) {
                touched.add(power);
            }
            if (isDouble(power) == doubles) {
                heated.add(power);
            }
        }
        CompletableFuture<StudyResults> heating = point
                ? CompletableFuture.completedFuture(HeatingStudy.of(heated, adverse))
                : Beside.of(() -> HeatingStudy.of(heated, adverse));
        StudyResults touch = TouchStudy.of(touched, adverse, cache);
        StudyResults governing = GoverningResults.of(
                StudyResults.join(List.of(
                        faults.results(),
                        new StudyResults(
                                List.of(),
                                List.of(),
                                List.of(),
                                in.assumptions(),
                                point
                                        ? List.of()
                                        : AdverseInputs.heldNominal(site).stream()
                                                .toList()),
                        touch,
                        heating.join())),
                own(adverse));
        return StudyResults.join(List.of(governing, between(faults, governing)));
    }

    /** The faults themselves of those points between that govern anything. */
    private static StudyResults between(FaultStudy.Outcome faults, StudyResults governing) {
        Set<Point> kept = new HashSet<>();
        for (Result result : governing.results()) {
            if (SweptFaults.swept(result.at())) {
                kept.add(new Point(result.circumstances(), result.at()));
            }
        }
        FaultResults between = new FaultResults(faults.clearing());
        for (Swept swept : faults.swept()) {
            PowerCase power = swept.fault().power();
            boolean first = !power.circumstances().keys().containsKey(Case.PROTECTION);
            if (first && kept.contains(new Point(power.circumstances(), power.at()))) {
                between.fault(swept.fault());
            }
        }
        return new StudyResults(between.results(), List.of(), List.of(), List.of(), List.of());
    }

    private record Point(Case circumstances, String at) {}

    private static Predicate<Case> own(Site site) {
        String arrangement = site.cubicle() == null
                ? ""
                : Arrangement.of(site.cubicle().earth()).map(Arrangement::word).orElse("");
        return c -> c.keys().getOrDefault("arrangement", arrangement).equals(arrangement)
                && !c.keys().containsKey("broken")
                && !c.keys().containsKey("screen-bond");
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
