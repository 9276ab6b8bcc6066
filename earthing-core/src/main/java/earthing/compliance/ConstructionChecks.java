package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Antenna;
import earthing.site.AntennaSuppressor;
import earthing.site.ButtContact;
import earthing.site.Conductor;
import earthing.site.ConductorMaterial;
import earthing.site.ControlCable;
import earthing.site.Cubicle;
import earthing.site.CubicleEarth;
import earthing.site.Electrode;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.site.YesNo;
import earthing.study.EarthPaths;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Rules about how things are built: sizes, distances, lengths, bonds. */
final class ConstructionChecks {

    private static final Source LEAST_AREA =
            Source.commonPractice("the main earth is at least 16 mm² copper or the equivalent");
    private static final Source SEPARATION = Source.commonPractice(
            "control cable at least 200 mm from the main earth on wood or concrete, 150 mm on steel");
    private static final Source CABLE_LENGTH = Source.commonPractice(
            "cable length = route + drip loop + entry curves; surplus is cut, not coiled; 10 % is left for cutting");
    private static final Source SUPPRESSOR = Source.commonPractice(
            "the antenna feeder enters through a bulkhead suppressor bonded to the cubicle's reference");
    private static final Source UNLIKE_METALS =
            Source.standard("EN 50522", "annex on corrosion", Source.Status.FROM_MEMORY);
    private static final Source CONDUCTING_POLE =
            Source.tool("a conducting pole is a path, an electrode and a surface to touch");

    /** Least copper cross-section of the main earth [m²]. */
    static final double LEAST_COPPER = 16e-6;
    /** A cut cable may exceed the sum of its parts by this fraction before it counts as surplus [1]. */
    static final double LENGTH_TOLERANCE = 0.1;

    private ConstructionChecks() {}

    static List<Finding> minimumArea(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Member member : design.paths().members()) {
            if (member.role() != Role.MAIN_EARTH
                    && member.role() != Role.TEE
                    && member.role() != Role.OWN_LEAD
                    && !member.name().equals("second lead")) {
                continue;
            }
            Draft draft = new Draft(
                    "conductor." + key(member.name()) + ".minimum-area", Group.EARTH_PATHS, member.name(), LEAST_AREA);
            if (member.conductor().isEmpty()) {
                findings.add(draft.missing("the conductor is not described", conductorKey(member)));
                continue;
            }
            Conductor conductor = member.conductor().get();
            if (!conductor.area().isKnown() || conductor.material() == ConductorMaterial.UNKNOWN) {
                findings.add(draft.missing("material or cross-section is declared unknown", conductorKey(member)));
                continue;
            }
            double area = conductor.area().at(Bound.LOW);
            double equivalent = LEAST_COPPER * copperEquivalent(conductor.material());
            findings.add(draft.at(Bound.LOW)
                    .advice("use at least 16 mm² copper or its equivalent")
                    .worked(Worked.of("A_min", "A_Cu * m")
                            .with("A_Cu", LEAST_COPPER, "m2")
                            .with("m", copperEquivalent(conductor.material()), "")
                            .gives(equivalent, "m2"))
                    .atLeast(
                            area,
                            equivalent,
                            "m2",
                            conductor.material().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " conductor"));
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("conductor.lead.minimum-area", Group.EARTH_PATHS, "main earth", LEAST_AREA)
                    .missing("the file describes no main earth", "main-earth"));
        }
        return findings;
    }

    /** Cross-section for the mechanical strength and corrosion of 1 mm² copper: the ratios of IEC 62305-3 table 6. */
    private static double copperEquivalent(ConductorMaterial material) {
        return switch (material) {
            case COPPER -> 1;
            case ALUMINIUM -> 25.0 / 16.0;
            case STEEL, GALVANISED_STEEL, STAINLESS_STEEL, COPPER_CLAD_STEEL -> 50.0 / 16.0;
            case UNKNOWN -> Double.NaN;
        };
    }

    private static String conductorKey(Member member) {
        return switch (member.role()) {
            case TEE -> "cubicle.tee";
            case OWN_LEAD -> "cubicle.own-lead";
            default -> "main-earth.conductor";
        };
    }

    static List<Finding> separation(Design design) {
        Draft draft =
                new Draft("separation.control-cable", Group.EARTH_PATHS, "control cable to main earth", SEPARATION);
        Site site = design.site();
        Pole pole = site.pole();
        ControlCable cable = site.controlCable();
        if (cable == null || cable.separation() == null || !cable.separation().isKnown()) {
            return List.of(draft.missing("the separation is not given", "control-cable.separation"));
        }
        if (pole == null || pole.material() == PoleMaterial.UNKNOWN) {
            return List.of(draft.missing("the material of the pole is not given", "pole.material"));
        }
        double least = pole.material() == PoleMaterial.STEEL ? 0.150 : 0.200;
        return List.of(draft.at(Bound.LOW)
                .advice("fix the cable further away from the main earth")
                .atLeast(
                        cable.separation().at(Bound.LOW),
                        least,
                        "m",
                        "on a pole of " + pole.material().name().toLowerCase(Locale.ROOT)));
    }

    static List<Finding> cableLength(Design design) {
        Draft draft = new Draft("cable.length", Group.EARTH_PATHS, "control cable", CABLE_LENGTH);
        ControlCable cable = design.site().controlCable();
        if (cable == null) {
            return List.of(draft.missing("the file describes no control cable", "control-cable"));
        }
        if (cable.coiled() == YesNo.YES) {
            return List.of(draft.advice("cut the cable to length").notMet("surplus cable is coiled"));
        }
        Measure length = cable.length();
        Measure route = cable.routeLength();
        Measure loop = cable.dripLoop();
        Measure curve = cable.entryCurve();
        if (length == null
                || route == null
                || loop == null
                || curve == null
                || !length.isKnown()
                || !route.isKnown()
                || !loop.isKnown()
                || !curve.isKnown()) {
            return List.of(draft.missing(
                    "length and its parts are not all given",
                    "control-cable.length",
                    "control-cable.route-length",
                    "control-cable.drip-loop",
                    "control-cable.entry-curve"));
        }
        if (cable.coiled() == null || cable.coiled() == YesNo.UNKNOWN) {
            return List.of(draft.missing("whether surplus is coiled is not given", "control-cable.coiled"));
        }
        double parts = route.nominal() + loop.nominal() + curve.nominal();
        if (length.nominal() < parts * (1 - 1e-9)) {
            return List.of(draft.at(Bound.NOMINAL)
                    .advice("check the lengths")
                    .atLeast(length.nominal(), parts, "m", "the cable is shorter than its parts"));
        }
        return List.of(draft.at(Bound.NOMINAL)
                .advice("cut the cable to length")
                .worked(Worked.of("l_max", "(l_r + l_d + l_e) * (1 + p)")
                        .with("l_r", route.nominal(), "m")
                        .with("l_d", loop.nominal(), "m")
                        .with("l_e", curve.nominal(), "m")
                        .with("p", LENGTH_TOLERANCE, "")
                        .gives(parts * (1 + LENGTH_TOLERANCE), "m"))
                .atMost(
                        length.nominal(),
                        parts * (1 + LENGTH_TOLERANCE),
                        "m",
                        "route, drip loop and entry curves with 10 % tolerance"));
    }

    static List<Finding> antennaSuppressor(Design design) {
        Draft draft = new Draft("antenna.suppressor", Group.SURGE, "antenna feeder", SUPPRESSOR);
        Antenna antenna = design.site().antenna();
        if (antenna == null) {
            return List.of(draft.notApplicable("no antenna is declared"));
        }
        if (antenna.suppressor() == AntennaSuppressor.UNKNOWN) {
            return List.of(draft.missing("the suppressor is declared unknown", "antenna.suppressor"));
        }
        draft.advice("fit a bulkhead suppressor in the cubicle wall, bonded to its reference");
        return List.of(
                switch (antenna.suppressor()) {
                    case BULKHEAD -> draft.met("bulkhead suppressor bonded to the cubicle's reference");
                    case LOOSE -> draft.notMet("the suppressor sits inside the cubicle on a lead of its own");
                    case NONE, UNKNOWN -> draft.notMet("the feeder enters without a suppressor");
                });
    }

    static List<Finding> conductingPole(Design design) {
        Draft draft = new Draft("pole.conducting", Group.EARTH_PATHS, "pole", CONDUCTING_POLE);
        Pole pole = design.site().pole();
        if (pole == null || pole.material() == PoleMaterial.UNKNOWN) {
            return List.of(draft.missing("the material of the pole is not given", "pole.material"));
        }
        if (pole.material() == PoleMaterial.WOOD || pole.material() == PoleMaterial.COMPOSITE) {
            return List.of(draft.notApplicable("the pole does not conduct"));
        }
        if (pole.bondedToMainEarth() == null || pole.bondedToMainEarth() == YesNo.UNKNOWN) {
            return List.of(draft.missing(
                    "whether the pole's metal is bonded to the main earth is not given", "pole.bonded-to-main-earth"));
        }
        return List.of(
                pole.bondedToMainEarth() == YesNo.YES
                        ? draft.met(
                                "the pole's metal is bonded; it is modelled as a path, an electrode and a surface to"
                                        + " touch")
                        : draft.advice("bond the pole's metal to the main earth")
                                .notMet("the pole's metal is not bonded to the main earth and can take another"
                                        + " potential within reach"));
    }

    /** Metals that stand close together in the galvanic series in soil. */
    private enum InSoil {
        COPPER,
        STEEL_OR_ZINC,
        STAINLESS_STEEL,
        ALUMINIUM;

        static InSoil of(ConductorMaterial material) {
            return switch (material) {
                case COPPER, COPPER_CLAD_STEEL -> COPPER;
                case STEEL, GALVANISED_STEEL -> STEEL_OR_ZINC;
                case STAINLESS_STEEL -> STAINLESS_STEEL;
                case ALUMINIUM -> ALUMINIUM;
                case UNKNOWN -> throw new IllegalArgumentException("an unknown metal has no place in the series");
            };
        }

        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    static List<Finding> corrosionCouple(Design design) {
        Draft draft = new Draft("corrosion.couple", Group.OTHER, "unlike metals in soil", UNLIKE_METALS);
        Site site = design.site();
        ConductorMaterial main =
                site.mainEarth() == null ? null : site.mainEarth().conductor().material();
        if (main == null || main == ConductorMaterial.UNKNOWN) {
            return List.of(draft.missing("the material of the main earth is not given", "main-earth.conductor"));
        }
        Map<String, ConductorMaterial> buried = buriedMetal(site);
        List<String> untold = buried.entrySet().stream()
                .filter(e -> e.getValue() == ConductorMaterial.UNKNOWN)
                .map(Map.Entry::getKey)
                .toList();
        InSoil own = InSoil.of(main);
        List<String> couples = new ArrayList<>();
        buried.forEach((name, material) -> {
            if (material != ConductorMaterial.UNKNOWN && InSoil.of(material) != own) {
                couples.add(name + " (" + InSoil.of(material).word() + " against " + own.word() + ")");
            }
        });
        if (!couples.isEmpty()) {
            return List.of(
                    draft.advice("insulate the stay, coat the butt, or use an electrode of a like metal; inspect")
                            .notMet("unlike metals bonded in soil: " + String.join(", ", couples)));
        }
        if (!untold.isEmpty()) {
            return List.of(draft.missing(
                    "the metal in soil is not told of " + String.join(", ", untold),
                    "electrodes.material",
                    "stays.anchor-material"));
        }
        return List.of(draft.met("all metal that is declared bonded in soil is " + own.word()));
    }

    /** What is bonded to the main earth in the soil, with its metal. */
    private static Map<String, ConductorMaterial> buriedMetal(Site site) {
        Map<String, ConductorMaterial> buried = new LinkedHashMap<>();
        Optional<String> main = EarthPaths.mainElectrode(site);
        Cubicle cubicle = site.cubicle();
        for (Electrode electrode : site.electrodes()) {
            boolean bonded = main.filter(electrode.name()::equals).isPresent()
                    || (cubicle != null
                            && cubicle.earth() == CubicleEarth.BOTH
                            && electrode.name().equals(cubicle.electrode()));
            if (bonded) {
                buried.put("electrode " + electrode.name(), told(electrode.material()));
            }
        }
        for (Stay stay : site.stays()) {
            if (stay.bondedToMainEarth() == YesNo.YES && stay.insulated() != YesNo.YES) {
                buried.put(stay.name(), told(stay.anchorMaterial()));
            }
        }
        Pole pole = site.pole();
        if (pole != null
                && pole.material() == PoleMaterial.STEEL
                && pole.bondedToMainEarth() == YesNo.YES
                && pole.buttContact() != ButtContact.COATED
                && pole.buttContact() != ButtContact.INSULATED) {
            buried.put("steel pole butt", ConductorMaterial.STEEL);
        }
        return buried;
    }

    private static ConductorMaterial told(@Nullable ConductorMaterial material) {
        return material == null ? ConductorMaterial.UNKNOWN : material;
    }

    static String key(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    }
}
