package earthing.study;

import earthing.electrode.wire.EarthElectrodes;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.safety.Contact;
import earthing.safety.Exposure;
import earthing.safety.Footwear;
import earthing.safety.NoPermissibleVoltage;
import earthing.safety.PermissibleVoltage;
import earthing.safety.SafetyCriteria;
import earthing.safety.SafetyCriteria.Assessed;
import earthing.safety.Shock;
import earthing.safety.SourcedValue;
import earthing.safety.Standing;
import earthing.safety.SurfaceCovering;
import earthing.site.ContactExposure;
import earthing.site.Covering;
import earthing.site.Criteria;
import earthing.site.Cubicle;
import earthing.site.MainEarth;
import earthing.site.OperatorMat;
import earthing.site.Pole;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.site.Tank;
import earthing.site.YesNo;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Touch at every reachable part, hand to hand between earths, step, each against its permissible value. */
final class TouchStudy {

    private static final Source FIELD =
            Source.tool("potential of the ground from the thin-wire solution, worst place within reach by search");
    private static final Source REACH =
            Source.standard("EN 50522:2010", "touch distance 1 m", Source.Status.FROM_MEMORY);

    /** Height up to which a standing person reaches [m]. */
    private static final double REACH_HEIGHT = 2.5;

    private final Site site;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    /** Where results go: the list above, or that of a point beside the bounds which may govern. */
    private List<Result> sink = results;

    private final Map<String, Governing> beside = new LinkedHashMap<>();
    private final Set<Gap> gaps = new LinkedHashSet<>();
    private final Set<String> notes = new LinkedHashSet<>();
    private final List<Curve> curves = new ArrayList<>();
    private final UnitFields fields;

    private Optional<PersonRisk> risk = Optional.empty();
    private boolean gateTold;

    private TouchStudy(Site site, UnitFields fields) {
        this.site = site;
        this.fields = fields;
    }

    static StudyResults of(List<PowerCase> cases, Site site, EarthCache cache) {
        return new TouchStudy(site, new UnitFields(cache)).run(cases);
    }

    private StudyResults run(List<PowerCase> cases) {
        if (site.criteria() == null) {
            Gap none = new Gap(
                    "touch",
                    Case.NONE,
                    "no criterion of the permissible touch voltage is named",
                    List.of("criteria.touch"));
            gaps.add(none);
            gaps.add(new Gap("step", Case.NONE, none.reason(), none.missingKeys()));
        } else {
            risk = personRisk(site.criteria());
            searchAhead(cases);
            cases.forEach(this::examine);
            beside.values().forEach(worst -> results.addAll(worst.results()));
        }
        return new StudyResults(results, curves, List.copyOf(gaps), in.assumptions(), List.copyOf(notes));
    }

    /** The worst of the points beside the bounds, of one part and one protection. */
    private record Governing(double margin, List<Result> results) {}

    /** Whether a voltage has to be told: of points beside the bounds, of which a sweep has thousands, only the worst can govern. */
    private boolean told(String id, PowerCase fault, double voltage, List<Assessed> assessed) {
        sink = results;
        if (GoverningResults.beside(fault.at())
                && SafetyCriteria.governing(assessed).permissible() instanceof PermissibleVoltage limit) {
            String group = id + fault.circumstances().keys().getOrDefault(Case.PROTECTION, "");
            double margin = (limit.value() - voltage) / Math.abs(limit.value());
            Governing worst = beside.get(group);
            if (worst != null && margin >= worst.margin()) {
                return false;
            }
            sink = new ArrayList<>();
            beside.put(group, new Governing(margin, sink));
        }
        return true;
    }

    /** The searches for every pattern of currents at once; what they find is kept, and told in order afterwards. */
    private void searchAhead(List<PowerCase> cases) {
        fields.patterns(cases).parallelStream().forEach(fault -> new TouchStudy(site, fields).examine(fault));
    }

    private Optional<PersonRisk> personRisk(Criteria criteria) {
        ContactExposure exposure = criteria.exposure();
        if (exposure == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(PersonRisk.of(exposure, criteria.body(), in));
        } catch (MissingInput missing) {
            gaps.add(missing.gap("exposure", Case.NONE));
            return Optional.empty();
        }
    }

    /** Individual risk at a part of the site as it is, where the file asks for it. */
    private void risk(String part, PowerCase fault, double voltage, Basis basis, Contact contact) {
        boolean backUp = fault.circumstances().keys().containsKey(Case.PROTECTION);
        if (risk.isEmpty() || !own(fault) || backUp) {
            return;
        }
        double merging = Objects.requireNonNull(basis.criteria().values().get(SafetyCriteria.Need.MERGING_DEAD_TIME))
                .value();
        try {
            sink.addAll(risk.get()
                    .at(part, fault, voltage, contact, basis.standing(), Exposure.of(basis.shocks(), merging)));
        } catch (MissingInput missing) {
            gaps.add(missing.gap("exposure." + part, fault.circumstances()));
        }
    }

    /** Up to which ratio of the potential rise the set asks for no further proof; told once. */
    private void gate(SafetyCriteria set) {
        SourcedValue gate = set.values().get(SafetyCriteria.Need.FIRST_GATE);
        if (gate != null && !gateTold) {
            gateTold = true;
            results.add(Result.of(
                    "criteria.proven-up-to",
                    Case.NONE,
                    "nominal",
                    gate.value(),
                    "",
                    "potential rise over permissible touch voltage, " + set.name(),
                    gate.source()));
        }
    }

    private void examine(PowerCase fault) {
        Criteria criteria = site.criteria();
        if (criteria == null) {
            return;
        }
        try {
            if (!fault.earth().hasFields()) {
                throw new MissingInput(
                        "the shape of the electrodes is not known, so the potential of the ground cannot be computed",
                        "electrodes.rod");
            }
            for (String name : fault.electrodeCurrents().keySet()) {
                if (!fault.earth().hasShape(name)) {
                    throw new MissingInput(
                            "the shape of electrode " + name
                                    + " is not known, so the potential of the ground cannot be computed",
                            "electrodes.rod");
                }
            }
            UnitFields.Unit field = fields.of(fault.earth(), fault.electrodeCurrents());
            Basis basis = basis(criteria, fault);
            gate(basis.criteria());
            double reach = reach();
            parts(fault, field, basis, reach);
            betweenEarths(fault, basis);
            if (own(fault)) {
                results.add(result(
                        "step.worst.voltage",
                        fault,
                        field.worstStep(),
                        "worst pace of 1 m around the electrodes",
                        FIELD));
                permissible("step.worst", fault, assessed(basis, Contact.FOOT_TO_FOOT), Contact.FOOT_TO_FOOT);
            }
            boolean figure = fault.at().equals("nominal")
                    && fault.earth().tabulated().isEmpty()
                    && curves.isEmpty()
                    && own(fault)
                    && fault.circumstances().keys().getOrDefault("fault", "").equals("maximum");
            if (figure) {
                curves.add(TouchFigures.profile(fault, field, basis, leadX()));
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap("touch", fault.circumstances()));
            gaps.add(missing.gap("step", fault.circumstances()));
        }
    }

    private boolean own(PowerCase fault) {
        String arrangement = site.cubicle() == null
                ? ""
                : Arrangement.of(site.cubicle().earth()).map(Arrangement::word).orElse("");
        return !fault.circumstances().keys().containsKey("broken")
                && fault.circumstances()
                        .keys()
                        .getOrDefault("arrangement", arrangement)
                        .equals(arrangement);
    }

    /** What the permissible values rest on in one case. */
    record Basis(SafetyCriteria criteria, List<Shock> shocks, Standing standing) {

        /** Permissible touch voltage hand to feet of the governing exposure [V]; empty if the curve has none. */
        Optional<Double> permissibleTouch() {
            return SafetyCriteria.governing(criteria.assess(shocks, Contact.HAND_TO_FEET, standing))
                                    .permissible()
                            instanceof PermissibleVoltage voltage
                    ? Optional.of(voltage.value())
                    : Optional.empty();
        }
    }

    private Basis basis(Criteria criteria, PowerCase fault) throws MissingInput {
        SafetyCriteria set = CriteriaSet.of(criteria, in);
        Standing standing = Standing.bare(fault.earth().soil().resistivity(0));
        Covering covering = criteria.covering();
        if (covering != null) {
            standing = standing.on(new SurfaceCovering(
                    "declared covering",
                    in.need(covering.resistivity(), "criteria.covering.resistivity"),
                    in.need(covering.thickness(), "criteria.covering.thickness"),
                    Source.owner("criteria.covering")));
        }
        if (criteria.footwearResistance() != null) {
            standing = standing.in(new Footwear(
                    "declared footwear",
                    in.need(criteria.footwearResistance(), "criteria.footwear-resistance"),
                    Source.owner("criteria.footwear-resistance")));
        }
        List<Shock> shocks = fault.shots().stream()
                .map(s ->
                        Double.isInfinite(s.duration()) ? Shock.neverCleared() : new Shock(s.duration(), s.deadTime()))
                .toList();
        return new Basis(set, shocks, standing);
    }

    private void parts(PowerCase fault, UnitFields.Unit field, Basis basis, double reach) throws MissingInput {
        double lead = leadX();
        part("cubicle", EarthPaths.CUBICLE, lead, fault, field, basis, reach);
        MainEarth main = site.mainEarth();
        if (main != null && !guarded(main, fault)) {
            part("down-lead", EarthPaths.TANK, lead, fault, field, basis, reach);
        }
        Pole pole = site.pole();
        if (pole != null && ElectrodeBars.conducts(pole) && pole.bondedToMainEarth() == YesNo.YES) {
            part("pole", EarthPaths.TANK, 0, fault, field, basis, reach);
        }
        Tank tank = site.tank();
        if (tank != null && tank.handleHeight() != null) {
            if (tank.handleBonded() == YesNo.YES) {
                part("tank-handle", EarthPaths.TANK, lead, fault, field, basis, reach);
            } else {
                gaps.add(new Gap(
                        "touch.tank-handle",
                        fault.circumstances(),
                        "the handle is within reach and not declared bonded to the main earth",
                        List.of("tank.handle-bonded")));
            }
        }
        for (Stay stay : site.stays()) {
            if (stay.anchorResistance() != null
                    && StayAnchors.named(site, stay.name()).isPresent()) {
                gaps.add(new Gap(
                        "touch.stay-" + EarthPaths.key(stay.name()),
                        fault.circumstances(),
                        "the shape of its anchor is not known, so the potential of the ground beside it cannot be computed",
                        List.of("stays.anchor")));
            } else if (stay.insulated() != YesNo.YES && stay.bondedToMainEarth() == YesNo.YES) {
                double distance = in.need(stay.anchorDistance(), "stays.anchor-distance");
                part("stay-" + EarthPaths.key(stay.name()), EarthPaths.TANK, distance, fault, field, basis, reach);
            }
        }
    }

    /** Places of the parts of a site, and how far a person reaches there. */
    static Set<TabulatedGround.Place> places(Site site) throws MissingInput {
        TouchStudy study = new TouchStudy(site, new UnitFields(new EarthCache()));
        double reach = study.reach();
        Set<TabulatedGround.Place> places = new LinkedHashSet<>();
        places.add(new TabulatedGround.Place(study.leadX(), reach));
        if (site.pole() != null && ElectrodeBars.conducts(site.pole())) {
            places.add(new TabulatedGround.Place(0, reach));
        }
        for (Stay stay : site.stays()) {
            if (stay.anchorDistance().isKnown()) {
                places.add(new TabulatedGround.Place(stay.anchorDistance().nominal(), reach));
            }
        }
        return places;
    }

    private double reach() throws MissingInput {
        return site.cubicle() == null
                ? 1
                : in.orElse(site.cubicle().reach(), "cubicle.reach", 1, Dimension.LENGTH, REACH);
    }

    private double leadX() throws MissingInput {
        MainEarth main = site.mainEarth();
        return main == null || main.offset() == null ? 0.15 : in.need(main.offset(), "main-earth.offset");
    }

    /** An insulating guard up to reach takes the lead out of reach, if it is declared to bear a voltage. */
    private boolean guarded(MainEarth main, PowerCase fault) throws MissingInput {
        if (main.guardHeight() == null) {
            in.choice(
                    "main-earth.guard-height",
                    "0 m, no guard",
                    Source.tool("no guard is credited that is not declared"));
            return false;
        }
        boolean high = in.need(main.guardHeight(), "main-earth.guard-height") >= REACH_HEIGHT;
        if (!high || main.guardVoltage() == null || !main.guardVoltage().isKnown()) {
            return false;
        }
        double rise = Math.abs(fault.rise().getOrDefault(EarthPaths.TANK, 0.0));
        boolean bears = main.guardVoltage().at(Measure.Bound.LOW) >= rise;
        if (!bears && own(fault)) {
            notes.add("the guard of the main earth bears less than the potential rise and is not credited");
        }
        return bears;
    }

    private void part(
            String part, String node, double x, PowerCase fault, UnitFields.Unit field, Basis basis, double reach)
            throws MissingInput {
        Double potential = fault.rise().get(node);
        if (potential == null) {
            gaps.add(new Gap(
                    "touch." + part,
                    fault.circumstances(),
                    "the potential of the " + node + " cannot be computed: it floats",
                    List.of("cubicle.capacitance-to-earth")));
            return;
        }
        double beside = field.worstTouch(x, reach, potential);
        Optional<Double> onMat = onMat(part, potential, fault, field);
        double voltage = onMat.orElse(beside);
        String id = "touch." + part;
        List<Assessed> assessed = assessed(basis, Contact.HAND_TO_FEET);
        if (!told(id, fault, voltage, assessed)) {
            return;
        }
        double ground = potential - voltage;
        onMat.ifPresent(v -> sink.add(result(
                id + ".beside-the-mat",
                fault,
                beside,
                "prospective, feet off the mat at the worst place within " + Numbers.full(reach) + " m",
                FIELD)));
        sink.add(result(
                        id + ".voltage",
                        fault,
                        voltage,
                        onMat.isPresent()
                                ? "prospective, feet at the worst place on the operator's mat, and nowhere else"
                                : "prospective, feet at the worst place within " + Numbers.full(reach) + " m",
                        FIELD)
                .withWorked(Worked.of("U_vT", "U_E - U_S")
                        .with("U_E", potential, "V")
                        .with("U_S", ground, "V")
                        .gives(voltage, "V")));
        permissible(id, fault, assessed, Contact.HAND_TO_FEET);
        risk(part, fault, voltage, basis, Contact.HAND_TO_FEET);
        sink = results;
    }

    /** Voltage on the operator's mat, for the parts that are worked from it. */
    private Optional<Double> onMat(String part, double potential, PowerCase fault, UnitFields.Unit field)
            throws MissingInput {
        Cubicle cubicle = fault.site().cubicle();
        boolean worked = part.equals("cubicle") || part.equals("tank-handle");
        if (!worked || cubicle == null || OperatorPlace.bondedTo(fault.site()).isEmpty()) {
            return Optional.empty();
        }
        OperatorMat mat = cubicle.operatorMat();
        return mat == null
                ? Optional.empty()
                : Optional.of(field.scale() * OperatorPlace.worstOn(mat, field.field(), potential / field.scale(), in));
    }

    /** Hand to hand between the main earth and a cubicle that has no tee to it. */
    private void betweenEarths(PowerCase fault, Basis basis) {
        boolean teed = fault.paths().withRole(Role.TEE).stream().anyMatch(EarthPaths.Member::intact);
        Double tank = fault.rise().get(EarthPaths.TANK);
        Double cubicle = fault.rise().get(EarthPaths.CUBICLE);
        if (teed || tank == null || cubicle == null) {
            return;
        }
        double between = Math.abs(tank - cubicle);
        List<Assessed> assessed = assessed(basis, Contact.HAND_TO_HAND);
        if (!told("touch.between-earths", fault, between, assessed)) {
            return;
        }
        sink.add(result("touch.between-earths.voltage", fault, between, "main earth to cubicle, hand to hand", FIELD)
                .withWorked(Worked.of("U", "abs(U_1 - U_2)")
                        .with("U_1", tank, "V")
                        .with("U_2", cubicle, "V")
                        .gives(between, "V")));
        permissible("touch.between-earths", fault, assessed, Contact.HAND_TO_HAND);
        risk("between-earths", fault, between, basis, Contact.HAND_TO_HAND);
        sink = results;
    }

    private static List<Assessed> assessed(Basis basis, Contact contact) {
        return basis.criteria().assess(basis.shocks(), contact, basis.standing());
    }

    private void permissible(String id, PowerCase fault, List<Assessed> assessed, Contact contact) {
        Assessed governing = SafetyCriteria.governing(assessed);
        if (governing.permissible() instanceof PermissibleVoltage voltage) {
            sink.add(result(id + ".permissible", fault, voltage.value(), voltage.basis(), voltage.source()));
        } else if (governing.permissible() instanceof NoPermissibleVoltage none && contact == Contact.FOOT_TO_FOOT) {
            notes.add(none.curve() + ", step: " + none.reason() + "; the worst step voltage is shown without a limit");
        } else if (governing.permissible() instanceof NoPermissibleVoltage none) {
            gaps.add(
                    new Gap(id, fault.circumstances(), none.curve() + ": " + none.reason(), List.of("criteria.touch")));
        }
        if (assessed.size() > 1 && id.equals("touch.cubicle") && own(fault)) {
            for (int i = 0; i < assessed.size(); i++) {
                if (assessed.get(i).permissible() instanceof PermissibleVoltage voltage) {
                    sink.add(result(
                            id + ".exposure." + (i + 1) + ".permissible",
                            fault,
                            voltage.value(),
                            voltage.basis(),
                            voltage.source()));
                }
            }
        }
    }

    private static Result result(String id, PowerCase fault, double value, String model, Source source) {
        return Result.of(id, fault.circumstances(), fault.at(), value, "V", model, source);
    }

    /** The plan of the ground for a report: maximum fault, nominal inputs, the site as it is; empty where it cannot be. */
    static Optional<Curve> plan(List<PowerCase> cases, Site site) {
        TouchStudy study = new TouchStudy(site, new UnitFields(new EarthCache()));
        Criteria criteria = site.criteria();
        for (PowerCase fault : cases) {
            boolean maximum = fault.at().equals("nominal")
                    && fault.circumstances().keys().getOrDefault("fault", "").equals("maximum")
                    && study.own(fault);
            Optional<EarthElectrodes> electrodes = fault.earth().fields();
            boolean shaped = fault.electrodeCurrents().keySet().stream()
                    .allMatch(name -> fault.earth().hasShape(name));
            if (criteria == null || !maximum || electrodes.isEmpty() || !shaped) {
                continue;
            }
            try {
                return Optional.of(study.plan(fault, electrodes.get(), criteria));
            } catch (MissingInput missing) {
                // The touch results tell what is missing.
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private Curve plan(PowerCase fault, EarthElectrodes electrodes, Criteria criteria) throws MissingInput {
        UnitFields.Unit field = fields.of(electrodes, fault.electrodeCurrents());
        Basis basis = basis(criteria, fault);
        double reach = reach();
        return TouchFigures.plan(fault, field, basis, site, electrodes.bars(), leadX(), reach);
    }
}
