package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.Cubicle;
import earthing.site.CubicleEarth;
import earthing.site.EquipmentEarth;
import earthing.site.HighVoltageCable;
import earthing.site.HighVoltageEquipment;
import earthing.site.Site;
import earthing.study.EarthPaths;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The rules of the trade about earth paths, read off the earth-path graph. */
final class PathChecks {

    private static final Source ONE_MAIN_EARTH =
            Source.commonPractice("one main earth; the cubicle has no other way to earth than its tee");
    private static final Source THROUGH_TANK =
            Source.commonPractice("arresters are earthed through the tank, without a second lead");
    private static final Source SHORT_TEE = Source.commonPractice(
            "the cubicle is earthed only by a short tee to the main earth; up to 0.5 m is taken as short");
    private static final Source COMMON_POINT =
            Source.commonPractice("all high-voltage equipment has its earth in common with the tank's earth point");

    /** Longest tee that still counts as short [m]. */
    static final double LONGEST_TEE = 0.5;

    private PathChecks() {}

    static List<Finding> singleMainEarth(Design design) {
        Draft draft = new Draft("path.single-main-earth", Group.EARTH_PATHS, "ways to earth", ONE_MAIN_EARTH);
        Site site = design.site();
        EarthPaths paths = design.paths();
        if (site.mainEarth() == null) {
            return List.of(draft.missing("the file describes no main earth", "main-earth"));
        }
        List<Member> parted = paths.members().stream().filter(m -> !m.intact()).toList();
        if (!parted.isEmpty()) {
            return List.of(draft.advice("restore " + names(parted))
                    .notMet("the main earth is not whole: " + names(parted) + " is missing"));
        }
        if (!paths.connected(EarthPaths.TANK, EarthPaths.EARTH)) {
            return List.of(draft.advice("join the main earth to an electrode")
                    .notMet("no metallic way leads from the tank to an electrode"));
        }
        Cubicle cubicle = site.cubicle();
        if (cubicle == null) {
            return List.of(draft.missing("the file describes no cubicle", "cubicle"));
        }
        if (cubicle.earth() == CubicleEarth.UNKNOWN) {
            return List.of(draft.missing("how the cubicle is earthed is declared unknown", "cubicle.earth"));
        }
        List<String> faults = new ArrayList<>();
        List<Member> unintended = paths.withRole(Role.UNINTENDED);
        if (!unintended.isEmpty()) {
            faults.add("unintended ways or loops: " + names(unintended));
        }
        List<Member> ownLeads = paths.withRole(Role.OWN_LEAD);
        if (!ownLeads.isEmpty()) {
            faults.add("the cubicle has a way of its own to earth: " + names(ownLeads));
        }
        paths.member("second lead").ifPresent(lead -> faults.add("a second lead runs from the tank to " + lead.to()));
        List<Member> beside = paths.withRole(Role.PARALLEL).stream()
                .filter(m -> !m.name().equals("second lead"))
                .toList();
        String listed = beside.isEmpty() ? "" : "; in parallel on purpose: " + names(beside);
        if (faults.isEmpty()) {
            return List.of(draft.met("one main earth from tank to electrode" + listed));
        }
        return List.of(draft.advice("remove the second way, or record an accepted departure")
                .notMet(String.join("; ", faults) + listed));
    }

    static List<Finding> arrestersThroughTank(Design design) {
        Draft draft = new Draft("path.arresters-through-tank", Group.EARTH_PATHS, "arrester earth", THROUGH_TANK);
        Arresters arresters = design.site().arresters();
        if (arresters == null) {
            return List.of(draft.missing("the file describes no arresters", "arresters"));
        }
        if (arresters.side() == ArresterSide.NONE) {
            return List.of(draft.notApplicable("no arresters are fitted; see arrester.margin"));
        }
        return List.of(
                switch (arresters.earthedAt()) {
                    case TANK -> draft.met("the arresters are earthed on the tank");
                    case UNKNOWN ->
                        draft.missing("where the arresters are earthed is declared unknown", "arresters.earthed-at");
                    case MAIN_EARTH ->
                        draft.advice("move the arrester earth to the tank's earth terminal")
                                .notMet(
                                        "the arresters are earthed on the main earth below the tank; the lead between is in"
                                                + " series with the protected insulation");
                    case OWN_LEAD ->
                        draft.advice("remove the second lead and earth the arresters on the tank")
                                .notMet(
                                        "the arresters have a lead of their own to an electrode; the whole lead is in series"
                                                + " with the protected insulation");
                });
    }

    static List<Finding> cubicleTee(Design design) {
        Draft draft = new Draft("path.cubicle-tee", Group.EARTH_PATHS, "cubicle earth", SHORT_TEE);
        Cubicle cubicle = design.site().cubicle();
        if (cubicle == null) {
            return List.of(draft.missing("the file describes no cubicle", "cubicle"));
        }
        return List.of(
                switch (cubicle.earth()) {
                    case UNKNOWN -> draft.missing("how the cubicle is earthed is declared unknown", "cubicle.earth");
                    case UNEARTHED ->
                        draft.advice("join the cubicle to the main earth by a short tee")
                                .notMet("the cubicle is not earthed");
                    case SEPARATE ->
                        draft.advice("replace the separate earth by a short tee to the main earth")
                                .notMet("the cubicle is earthed on an electrode of its own, not by a tee");
                    case BOTH ->
                        draft.advice("remove the cubicle's own electrode or record an accepted departure")
                                .notMet("the cubicle has a tee and an electrode of its own");
                    case SHARED -> {
                        if (cubicle.teeLength() == null || !cubicle.teeLength().isKnown()) {
                            yield draft.missing("the length of the tee is not given", "cubicle.tee-length");
                        }
                        double length = cubicle.teeLength().at(Bound.HIGH);
                        yield draft.at(Bound.HIGH)
                                .advice("shorten the tee to " + Numbers.full(LONGEST_TEE) + " m or less")
                                .atMost(length, LONGEST_TEE, "m", "tee to the main earth");
                    }
                });
    }

    static List<Finding> commonPoint(Design design) {
        Draft draft = new Draft("path.common-point", Group.EARTH_PATHS, "high-voltage equipment", COMMON_POINT);
        List<String> elsewhere = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        for (HighVoltageEquipment equipment : design.site().otherEquipment()) {
            place(equipment.name(), equipment.earthedAt(), elsewhere, unknown);
        }
        HighVoltageCable cable = design.site().hvCable();
        if (cable != null) {
            place("high-voltage cable screen", cable.screenEarthedAt(), elsewhere, unknown);
        }
        if (design.site().otherEquipment().isEmpty() && cable == null) {
            return List.of(draft.notApplicable("no other high-voltage equipment is declared"));
        }
        if (!elsewhere.isEmpty()) {
            return List.of(draft.advice("bring these earths to the tank's earth point")
                    .notMet("not earthed at the tank's earth point: " + String.join(", ", elsewhere)));
        }
        if (!unknown.isEmpty()) {
            return List.of(draft.missing(
                    "where these are earthed is declared unknown: " + String.join(", ", unknown),
                    "other-equipment.earthed-at"));
        }
        return List.of(draft.met("all other high-voltage equipment is earthed at the tank's earth point"));
    }

    private static void place(String name, EquipmentEarth earthedAt, List<String> elsewhere, List<String> unknown) {
        if (earthedAt == EquipmentEarth.UNKNOWN) {
            unknown.add(name);
        } else if (earthedAt != EquipmentEarth.TANK_EARTH_POINT) {
            elsewhere.add(name);
        }
    }

    static Optional<Member> tee(EarthPaths paths) {
        return paths.withRole(Role.TEE).stream().findFirst();
    }

    static String names(List<Member> members) {
        return members.stream().map(Member::name).collect(Collectors.joining(", "));
    }
}
