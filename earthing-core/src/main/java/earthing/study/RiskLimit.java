package earthing.study;

import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.Protector;
import earthing.site.Site;
import earthing.site.Termination;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an end of a core bears, in the order of the verdict: rating of its protector, declared tested arrangement, declared
 * withstand.
 *
 * @param where core and end, as in the ids of results
 * @param words core and end in words
 * @param current whether the limit is one of the short-circuit current [A]; else of the open voltage [V]
 * @param value the limit
 * @param basis what it is
 */
record RiskLimit(String where, String words, boolean current, double value, String basis) {

    /** The limits of all ends; an end without one becomes a gap. */
    static List<RiskLimit> of(Site site, StudyResults studied, List<Gap> gaps) {
        ControlCable cable = site.controlCable();
        if (cable == null || cable.cores().isEmpty()) {
            gaps.add(new Gap(
                    "surge.risk.cores",
                    Case.NONE,
                    "no core of the control cable is described",
                    List.of("control-cable.cores")));
            return List.of();
        }
        List<RiskLimit> limits = new ArrayList<>();
        for (Core core : cable.cores()) {
            for (String end : List.of("tank", "cubicle")) {
                Termination termination = end.equals("tank") ? core.tankEnd() : core.cubicleEnd();
                if (termination == Termination.TANK) {
                    continue;
                }
                Protector protector = end.equals("tank") ? core.tankProtector() : core.cubicleProtector();
                Optional<RiskLimit> limit = of(core, end, protector, studied);
                limit.ifPresentOrElse(
                        limits::add,
                        () -> gaps.add(new Gap(
                                "surge.risk." + EarthPaths.key(core.name()) + "." + end,
                                Case.NONE,
                                "no protector, tested arrangement or withstand says what this end bears",
                                List.of(
                                        "control-cable.cores." + end + "-protector",
                                        "tested-arrangement",
                                        "control-cable.cores.withstand"))));
            }
        }
        return limits;
    }

    private static Optional<RiskLimit> of(
            Core core, String end, @org.jspecify.annotations.Nullable Protector protector, StudyResults studied) {
        String where = EarthPaths.key(core.name()) + "." + end;
        String words = core.name() + ", " + end + " end";
        if (protector != null && protector.current().isKnown()) {
            return Optional.of(new RiskLimit(
                    where, words, true, protector.current().at(Bound.LOW), "rated current of the protector"));
        }
        List<Result> tested = studied.of("surge.tested-arrangement.open-voltage");
        if (!tested.isEmpty()) {
            return Optional.of(new RiskLimit(
                    where, words, false, tested.get(0).value(), "open voltage in the declared tested arrangement"));
        }
        Measure withstand = core.withstand();
        if (withstand != null && withstand.isKnown()) {
            return Optional.of(new RiskLimit(where, words, false, withstand.at(Bound.LOW), "declared withstand"));
        }
        return Optional.empty();
    }
}
