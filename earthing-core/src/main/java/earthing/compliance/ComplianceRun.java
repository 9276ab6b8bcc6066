package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.AuxiliaryReference;
import earthing.site.AuxiliarySupply;
import earthing.site.Criteria;
import earthing.site.Departure;
import earthing.site.MeasurementKind;
import earthing.site.Site;
import earthing.study.EarthPaths;
import earthing.study.Gap;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Runs every check on a site and its results. */
public final class ComplianceRun {

    private static final Source ISOLATION = Source.owner("auxiliary-supply.isolation-level");
    private static final Source CONTINGENCY = Source.tool("each earth path broken in turn, docs/theory/earth-paths.md");

    /**
     * What the findings of a check rest on. A check that rests on a part of the studies finds the same with that part alone
     * as with all of them.
     */
    public enum Basis {
        /** The site file alone. */
        DESCRIPTION,
        /** Electrodes, faults, touch and heating; the duty of the arresters in a fault is among it. */
        POWER_FREQUENCY,
        /** Surges. */
        SURGE,
        /** Several of them, or readings. */
        EVERYTHING
    }

    private record Asked(Basis basis, Check check) {}

    /** All checks, in the order of the report. */
    private static final List<Asked> CHECKS = List.of(
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::detection),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::backUp),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::epr),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::touch),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::exposure),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::step),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::transfer),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::heating),
            new Asked(Basis.SURGE, CableEndChecks::cableEnds),
            new Asked(Basis.SURGE, SurgeChecks::screen),
            new Asked(Basis.SURGE, SurgeChecks::gaps),
            new Asked(Basis.SURGE, SurgeChecks::arresterMargin),
            new Asked(Basis.POWER_FREQUENCY, SurgeChecks::arresterRating),
            new Asked(Basis.POWER_FREQUENCY, PowerChecks::controlCable),
            new Asked(Basis.DESCRIPTION, ConstructionChecks::antennaSuppressor),
            new Asked(Basis.POWER_FREQUENCY, ComplianceRun::auxiliarySupply),
            new Asked(Basis.EVERYTHING, ComplianceRun::contingency),
            new Asked(Basis.DESCRIPTION, PathChecks::singleMainEarth),
            new Asked(Basis.DESCRIPTION, PathChecks::arrestersThroughTank),
            new Asked(Basis.DESCRIPTION, PathChecks::cubicleTee),
            new Asked(Basis.DESCRIPTION, PathChecks::commonPoint),
            new Asked(Basis.DESCRIPTION, ConstructionChecks::minimumArea),
            new Asked(Basis.DESCRIPTION, ConstructionChecks::separation),
            new Asked(Basis.DESCRIPTION, ConstructionChecks::cableLength),
            new Asked(Basis.DESCRIPTION, ConstructionChecks::conductingPole),
            new Asked(Basis.DESCRIPTION, ConstructionChecks::corrosionCouple),
            new Asked(Basis.POWER_FREQUENCY, ElectrodeChecks::resistance),
            new Asked(Basis.POWER_FREQUENCY, ElectrodeChecks::modelAgreement),
            new Asked(Basis.POWER_FREQUENCY, ElectrodeChecks::surveyQuality),
            new Asked(Basis.POWER_FREQUENCY, ElectrodeChecks::calibration),
            new Asked(Basis.EVERYTHING, TestChecks::validity),
            new Asked(Basis.EVERYTHING, TestChecks::agreement),
            new Asked(Basis.EVERYTHING, TestChecks::continuity));

    private ComplianceRun() {}

    /**
     * Checks a site.
     *
     * @param site the site
     * @param results what the studies found
     * @return the findings in the order of the report, accepted departures applied
     */
    public static List<Finding> of(Site site, StudyResults results) {
        return of(site, results, Set.of(Basis.values()));
    }

    /**
     * Checks a site as far as a part of the studies goes.
     *
     * @param site the site
     * @param results what that part of the studies found
     * @param bases which checks are asked
     * @return their findings in the order of the report, accepted departures applied
     */
    public static List<Finding> of(Site site, StudyResults results, Set<Basis> bases) {
        Design design = Design.of(site, results);
        List<Finding> findings = new ArrayList<>();
        for (Asked asked : CHECKS) {
            if (bases.contains(asked.basis())) {
                for (Finding finding : asked.check().examine(design)) {
                    findings.add(withDeparture(site, finding));
                }
            }
        }
        return List.copyOf(findings);
    }

    private static Finding withDeparture(Site site, Finding finding) {
        Criteria criteria = site.criteria();
        if (criteria == null || finding.status() != Status.NOT_MET) {
            return finding;
        }
        for (Departure departure : criteria.departures()) {
            if (departure.finding().equals(finding.id())) {
                return new Finding(
                        finding.id(),
                        finding.group(),
                        finding.subject(),
                        Status.ACCEPTED_DEPARTURE,
                        finding.value(),
                        finding.limit(),
                        finding.unit(),
                        finding.margin(),
                        finding.circumstances(),
                        finding.bound(),
                        finding.basis(),
                        finding.worked(),
                        finding.reason() + "; accepted by " + departure.reference() + " of " + departure.date(),
                        finding.advice());
            }
        }
        return finding;
    }

    private static List<Finding> auxiliarySupply(Design design) {
        Draft draft = new Draft("aux-supply.isolation", Group.SURGE, "auxiliary supply", ISOLATION);
        AuxiliarySupply supply = design.site().auxiliarySupply();
        if (supply == null) {
            return List.of(draft.notApplicable("no auxiliary supply is declared"));
        }
        if (supply.earthReference() == AuxiliaryReference.UNKNOWN) {
            return List.of(draft.missing(
                    "whose earth the supply is referenced to is declared unknown", "auxiliary-supply.earth-reference"));
        }
        if (supply.earthReference() == AuxiliaryReference.MAIN_EARTH) {
            return List.of(draft.met("the supply is referenced to the main earth; no stress across its isolation"));
        }
        if (supply.earthReference() == AuxiliaryReference.LV_NETWORK) {
            return List.of(draft.advice("put an isolating transformer between the low-voltage earth and the cubicle")
                    .notMet("the cubicle is joined to the earth of the low-voltage network through its supply"));
        }
        Optional<Result> stress =
                design.own("aux-supply.isolation.voltage").stream().max(Comparator.comparingDouble(Result::value));
        if (stress.isEmpty()) {
            List<Gap> gaps = design.gapsOf("aux-supply.isolation");
            return List.of(draft.gap(gaps, "aux-supply.isolation.voltage"));
        }
        Result voltage = stress.get();
        draft.in(voltage.circumstances(), voltage.at());
        Measure level = supply.isolationLevel();
        if (level == null || !level.isKnown()) {
            return List.of(draft.value(voltage.value(), "V")
                    .missing("the isolation level of the supply is not given", "auxiliary-supply.isolation-level"));
        }
        return List.of(draft.advice("an isolating transformer of higher level, or a supply on the pole's own earth")
                .atMost(voltage.value(), level.at(Measure.Bound.LOW), "V", "potential rise across the isolation"));
    }

    /**
     * One finding for each path that can break: a break that can be seen, or that a continuity reading would show, is
     * met; what it does is told either way.
     */
    private static List<Finding> contingency(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Result result : design.results().of("contingency.visible")) {
            String path = result.circumstances().keys().getOrDefault("broken", "");
            Draft draft = new Draft("path.contingency", Group.CONTINGENCY, "broken: " + path, CONTINGENCY)
                    .in(result.circumstances(), result.at())
                    .advice("look at this path at every visit, protect it against theft and damage, measure its"
                            + " continuity");
            Optional<EarthPaths.Member> broken = design.paths().member(path);
            boolean measured = design.site().measurements().stream()
                    .anyMatch(m -> m.kind() == MeasurementKind.BOND_CONTINUITY
                            && broken.map(member -> member.isPartOf(m.of())).orElse(false)
                            && m.value().isKnown());
            String follows = result.model() + SurgeConsequence.of(design, path);
            if (result.value() > 0) {
                findings.add(draft.met("the break can be seen from the ground; " + follows));
            } else if (measured) {
                findings.add(draft.met("the break is hidden, a continuity reading is on record; " + follows));
            } else if (design.beforeTests()) {
                findings.add(draft.dueLater(
                        "the break is hidden; its continuity is measured when it has been built; " + follows));
            } else {
                findings.add(draft.missing(
                        "the break is hidden and no continuity reading is on record; " + follows, "measurements"));
            }
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("path.contingency", Group.CONTINGENCY, "earth paths broken in turn", CONTINGENCY)
                    .gap(design.gapsOf("contingency"), "contingency"));
        }
        return findings;
    }
}
