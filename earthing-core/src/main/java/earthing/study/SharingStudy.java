package earthing.study;

import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Site;
import earthing.site.Surges;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What sharing the earth buys on a surge and what it costs during an earth fault: the four arrangements of the cubicle's
 * earth read off the results of the other studies, at nominal soil, largest source and standard current into the tank.
 */
final class SharingStudy {

    private static final Source COMPARISON =
            Source.tool("the arrangements of the cubicle's earth compared, docs/theory/earth-paths.md");
    private static final String ENTRY = "current-into-tank";
    private static final String CABLE_END = "surge.cable-end.";
    private static final String OPEN = ".open-voltage";
    private static final String NOMINAL = "nominal";
    /** A gain that is no more than the scatter of separations and lengths [1]. */
    private static final double LITTLE = 0.05;

    private static final String TOUCH = "touch.cubicle.voltage";
    private static final String CABLE = "cable.power-frequency.voltage";

    private final Site site;
    private final StudyResults found;
    private final List<Result> results = new ArrayList<>();

    private SharingStudy(Site site, StudyResults found) {
        this.site = site;
        this.found = found;
    }

    /** Compares; nothing is added for a site without a cubicle or where too little could be computed. */
    static StudyResults of(Site site, StudyResults found) {
        return new SharingStudy(site, found).run();
    }

    private StudyResults run() {
        if (site.cubicle() == null) {
            return StudyResults.EMPTY;
        }
        for (String wave : Surges.verdictWaves(site.surges())) {
            for (String bond : bonds()) {
                surge(Case.NONE.with("wave", wave).with("entry", ENTRY).with("screen-bond", bond));
            }
        }
        for (String fault : List.of("maximum", FaultStudy.DOUBLE_FAULT)) {
            Case named = Case.NONE.with("fault", fault);
            touch(named);
            cable(named);
            if (ownBond().equals("both")) {
                // Joined by the screen, "separate" earths are not separate: the plain cable is shown beside.
                touch(named.with("screen-bond", otherBond()));
                cable(named.with("screen-bond", otherBond()));
            }
        }
        List<Curve> curves = curve();
        return new StudyResults(results, curves, List.of(), List.of(), List.of());
    }

    private String ownBond() {
        return SurgeStudy.word(SurgeStudy.bond(site));
    }

    private String otherBond() {
        return SurgeStudy.word(SurgeStudy.otherBond(SurgeStudy.bond(site)));
    }

    private List<String> bonds() {
        return List.of(ownBond(), otherBond());
    }

    private Optional<Result> one(String id, Case circumstances) {
        return found.of(id).stream()
                .filter(r -> r.at().equals(NOMINAL) && r.circumstances().equals(circumstances))
                .findFirst();
    }

    private static Case in(Case rest, Arrangement arrangement) {
        return rest.with("arrangement", arrangement.word());
    }

    /** The core and the end with the highest open voltage stand for the cable in each arrangement. */
    private void surge(Case rest) {
        Map<Arrangement, Result> open = new LinkedHashMap<>();
        for (Arrangement arrangement : Arrangement.values()) {
            Case circumstances = in(rest, arrangement);
            Optional<Result> hardest = found.under(CABLE_END)
                    .filter(r -> r.id().endsWith(OPEN)
                            && r.at().equals(NOMINAL)
                            && r.circumstances().equals(circumstances))
                    .max(java.util.Comparator.comparingDouble(r -> Math.abs(r.value())));
            if (hardest.isEmpty()) {
                continue;
            }
            String place = hardest.get().id().substring(0, hardest.get().id().length() - OPEN.length());
            String where = place.substring(CABLE_END.length()).replace(".", ", ") + " end";
            open.put(arrangement, hardest.get());
            add(
                    "sharing.cable-end.open-voltage",
                    circumstances,
                    Math.abs(hardest.get().value()),
                    "V",
                    where);
            one(place + ".short-circuit-current", circumstances)
                    .ifPresent(r -> add(
                            "sharing.cable-end.short-circuit-current", circumstances, Math.abs(r.value()), "A", where));
        }
        Result shared = open.get(Arrangement.SHARED);
        Result separate = open.get(Arrangement.SEPARATE);
        if (shared == null || separate == null || !(Math.abs(shared.value()) > 0)) {
            return;
        }
        double together = Math.abs(shared.value());
        double apart = Math.abs(separate.value());
        results.add(Result.of(
                        "sharing.surge-gain",
                        rest,
                        NOMINAL,
                        apart / together,
                        "",
                        gain(rest, together, apart),
                        COMPARISON)
                .withWorked(Worked.of("n", "U_2 / U_1")
                        .with("U_2", apart, "V")
                        .with("U_1", together, "V")
                        .gives(apart / together, "")));
    }

    private String gain(Case rest, double together, double apart) {
        String wave = rest.keys().getOrDefault("wave", "") + " into the tank, screen bonded "
                + words(rest.keys().getOrDefault("screen-bond", ""));
        String pair = volts(apart) + " separate, " + volts(together) + " shared";
        if (Math.abs(apart / together - 1) < LITTLE) {
            return wave + ": sharing changes little at the ends of the control cable (" + pair + ")";
        }
        if (apart > together) {
            return wave + ": sharing lowers the open voltage at the ends of the control cable by a factor of "
                    + Numbers.brief(apart / together) + " (" + pair + ")";
        }
        Optional<Result> screen = one("surge.screen.current.peak", in(rest, Arrangement.SEPARATE));
        return wave + ": sharing gains nothing at the ends of the control cable (" + pair + ")"
                + screen.map(r -> "; with separate earths the screen pays for it with " + amperes(r.value()))
                        .orElse("");
    }

    private static String words(String bond) {
        return switch (bond) {
            case "both" -> "at both ends";
            case "none" -> "nowhere";
            default -> "at the " + bond + " only";
        };
    }

    private void touch(Case rest) {
        Map<Arrangement, Result> touch = new LinkedHashMap<>();
        for (Arrangement arrangement : Arrangement.values()) {
            Case circumstances = in(rest, arrangement);
            Optional<Result> voltage = one(TOUCH, circumstances);
            Optional<Result> permissible = one("touch.cubicle.permissible", circumstances);
            voltage.ifPresent(r -> touch.put(arrangement, r));
            if (voltage.isPresent()
                    && permissible.isPresent()
                    && permissible.get().value() > 0) {
                double share = voltage.get().value() / permissible.get().value();
                results.add(Result.of(
                                "sharing.touch-utilisation",
                                circumstances,
                                NOMINAL,
                                share,
                                "",
                                "touch voltage at the cubicle over its permissible value",
                                COMPARISON)
                        .withWorked(Worked.of("u", "U_vT / U_p")
                                .with("U_vT", voltage.get().value(), "V")
                                .with("U_p", permissible.get().value(), "V")
                                .gives(share, "")));
            }
        }
        Result shared = touch.get(Arrangement.SHARED);
        Result separate = touch.get(Arrangement.SEPARATE);
        if (shared == null || separate == null) {
            return;
        }
        double cost = shared.value() - separate.value();
        results.add(Result.of("sharing.touch-cost", rest, NOMINAL, cost, "V", cost(rest, shared, separate), COMPARISON)
                .withWorked(Worked.of("dU", "U_1 - U_2")
                        .with("U_1", shared.value(), "V")
                        .with("U_2", separate.value(), "V")
                        .gives(cost, "V")));
    }

    private String cost(Case rest, Result shared, Result separate) {
        StringBuilder text = new StringBuilder(fault(rest));
        text.append(shared.value() > separate.value() ? ": sharing raises" : ": sharing does not raise")
                .append(" the touch voltage at the cubicle, ")
                .append(volts(separate.value()))
                .append(" separate, ")
                .append(volts(shared.value()))
                .append(" shared");
        if (separate.value() > shared.value()) {
            text.append(" (the feet stand on ground that rises with the main electrode, the hand is on a cubicle that"
                    + " rises less)");
        }
        one("touch.cubicle.permissible", shared.circumstances())
                .ifPresent(limit -> text.append("; permissible ")
                        .append(volts(limit.value()))
                        .append(shared.value() > limit.value() ? ", exceeded when shared" : ", kept when shared")
                        .append(separate.value() > limit.value() ? ", exceeded when separate" : ""));
        one("touch.between-earths.voltage", separate.circumstances()).ifPresent(between -> {
            text.append("; separate earths put ")
                    .append(volts(between.value()))
                    .append(" between the two hands of a person who reaches both");
            one("touch.between-earths.permissible", separate.circumstances())
                    .ifPresent(limit -> text.append(", permissible ").append(volts(limit.value())));
        });
        return text.toString();
    }

    private void cable(Case rest) {
        Optional<Result> shared = one(CABLE, in(rest, Arrangement.SHARED));
        Optional<Result> separate = one(CABLE, in(rest, Arrangement.SEPARATE));
        if (shared.isEmpty() || separate.isEmpty()) {
            return;
        }
        double relief = separate.get().value() - shared.get().value();
        String text = fault(rest) + ": sharing takes "
                + (relief > 0 ? volts(relief) : "nothing") + " off the control cable for the whole clearing time ("
                + volts(separate.get().value()) + " separate, "
                + volts(shared.get().value()) + " shared)";
        Case joined = in(rest, Arrangement.SEPARATE);
        Optional<Result> screen = one(
                "cable.power-frequency.screen-current",
                ownBond().equals("both") ? joined : joined.with("screen-bond", "both"));
        String paid = rest.keys().containsKey("screen-bond")
                ? ""
                : screen.map(r -> "; with the screen bonded at both ends separate earths send " + amperes(r.value())
                                + " through it")
                        .orElse("");
        results.add(Result.of("sharing.cable-relief", rest, NOMINAL, relief, "V", text + paid, COMPARISON)
                .withWorked(Worked.of("dU", "U_2 - U_1")
                        .with("U_2", separate.get().value(), "V")
                        .with("U_1", shared.get().value(), "V")
                        .gives(relief, "V")));
    }

    private static String fault(Case rest) {
        String fault = rest.keys().getOrDefault("fault", "").equals("maximum")
                ? "earth fault at the largest source"
                : "double earth fault at two poles";
        String bond = rest.keys().get("screen-bond");
        return bond == null ? fault : fault + ", screen bonded " + words(bond);
    }

    /** Data of the figure: one trace for each quantity, over the number of the arrangement. */
    private List<Curve> curve() {
        List<Curve.Trace> traces = new ArrayList<>();
        // The first wave stands for the others, which the table holds.
        String wave = Surges.verdictWaves(site.surges()).get(0);
        for (String bond : bonds()) {
            Case rest = Case.NONE.with("wave", wave).with("entry", ENTRY).with("screen-bond", bond);
            trace(
                    wave + " surge, screen bonded " + words(bond) + ": cable end, open",
                    "sharing.cable-end.open-voltage",
                    rest,
                    results,
                    traces);
        }
        Case fault = Case.NONE.with("fault", "maximum");
        trace("earth fault: touch voltage at the cubicle", TOUCH, fault, found.results(), traces);
        trace("permissible touch voltage", "touch.cubicle.permissible", fault, found.results(), traces);
        trace("earth fault: across the control cable", CABLE, fault, found.results(), traces);
        return traces.isEmpty()
                ? List.of()
                : List.of(new Curve(
                        "sharing.arrangements",
                        "The cubicle's earth in four arrangements: what the electronics and what the hand have to bear",
                        "arrangement: 1 shared, 2 separate, 3 both, 4 unearthed",
                        "",
                        "voltage, peak for surges, r.m.s. for earth faults",
                        "V",
                        traces));
    }

    private static void trace(String name, String id, Case rest, List<Result> among, List<Curve.Trace> traces) {
        List<double[]> points = new ArrayList<>();
        Arrangement[] order = Arrangement.values();
        for (int i = 0; i < order.length; i++) {
            int number = i + 1;
            Case circumstances = in(rest, order[i]);
            among.stream()
                    .filter(r -> r.id().equals(id)
                            && r.at().equals(NOMINAL)
                            && r.circumstances().equals(circumstances))
                    .findFirst()
                    .ifPresent(r -> points.add(new double[] {number, r.value()}));
        }
        if (!points.isEmpty()) {
            traces.add(new Curve.Trace(
                    name,
                    points.stream().mapToDouble(p -> p[0]).toArray(),
                    points.stream().mapToDouble(p -> p[1]).toArray()));
        }
    }

    private void add(String id, Case circumstances, double value, String unit, String where) {
        results.add(Result.of(id, circumstances, NOMINAL, value, unit, "hardest core and end: " + where, COMPARISON));
    }

    private static String volts(double value) {
        return Math.abs(value) >= 1000
                ? Numbers.brief(value / 1000) + " kV"
                : Math.abs(value) < 1 && value != 0 ? Numbers.brief(1000 * value) + " mV" : Numbers.brief(value) + " V";
    }

    private static String amperes(double value) {
        return Math.abs(value) >= 1000 ? Numbers.brief(value / 1000) + " kA" : Numbers.brief(value) + " A";
    }
}
