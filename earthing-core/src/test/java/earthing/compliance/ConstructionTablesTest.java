package earthing.compliance;

import static earthing.compliance.Status.INSUFFICIENT_DATA;
import static earthing.compliance.Status.MET;
import static earthing.compliance.Status.NOT_APPLICABLE;
import static earthing.compliance.Status.NOT_MET;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rules about earth paths and construction. They are common practice without a published source, unless said otherwise. */
class ConstructionTablesTest {

    private static final String CUBICLE = "{height: 3 m, earth: shared, tee-length: 0.2 m}";
    private static final String CUBICLE_BLOCK = "cubicle: " + CUBICLE + "\n";
    private static final String ELECTRODE = "  - {name: main, material: copper, rod: {length: 3 m, diameter: 16 mm}}\n";
    private static final String OWN =
            ELECTRODE + "  - {name: own, at: {x: 5 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm}}\n";
    private static final String EQUIPMENT =
            "other-equipment:\n  - {name: voltage transformer, earthed-at: tank-earth-point}\n";
    private static final String MAIN_EARTH = """
            main-earth:
              conductor: {material: copper, area: 70 mm2}
              electrode: main
            """;

    private static Question cubicle(String id, String changed) {
        return Question.of(id).with(ELECTRODE, OWN).with(CUBICLE, changed);
    }

    static Stream<Question> paths() {
        String one = "path.single-main-earth";
        String tank = "path.arresters-through-tank";
        String tee = "path.cubicle-tee";
        String common = "path.common-point";
        return Stream.of(
                Question.of(one).is(MET, "one main earth"),
                Question.of(one)
                        .with("pole: {material: wood,", "pole: {material: steel, bonded-to-main-earth: yes,")
                        .is(MET, "in parallel on purpose: pole steel"),
                cubicle(one, "{height: 3 m, earth: both, tee-length: 0.2 m, electrode: own}")
                        .is(NOT_MET, "a way of its own"),
                Question.of(one)
                        .with(CUBICLE, "{height: 3 m, earth: shared, tee-length: 0.2 m, other-paths: [water pipe]}")
                        .is(NOT_MET, "unintended ways or loops: water pipe"),
                Question.of(one)
                        .with(ELECTRODE, OWN)
                        .with("  electrode: main\n", "  electrode: main\n  second-lead-electrode: own\n")
                        .is(NOT_MET, "a second lead"),
                Question.of(one)
                        .with("isolation-level: 4 kV", "isolation-level: 4 kV")
                        .with("earth-reference: isolated", "earth-reference: lv-network")
                        .is(NOT_MET, "auxiliary supply to the low-voltage earth"),
                Question.of(one)
                        .with(
                                "suppressor: bulkhead",
                                "suppressor: bulkhead, feeder-separation: 0.3 m, bracket-bonded-to-main-earth: yes")
                        .is(NOT_MET, "antenna feeder screen"),
                Question.of(one).with("  electrode: main\n", """
                                  electrode: main
                                  segments:
                                    - {name: upper, from-height: 9 m, to-height: 3 m, intact: no}
                                    - {name: lower, from-height: 3 m, to-height: 0 m}
                                """).is(NOT_MET, "upper is missing", "restore upper"),
                Question.of(one).with(MAIN_EARTH, "").is(INSUFFICIENT_DATA, "main-earth"),
                Question.of(one).with(CUBICLE_BLOCK, "").is(INSUFFICIENT_DATA, "cubicle"),
                Question.of(one).with("earth: shared", "earth: unknown").is(INSUFFICIENT_DATA, "cubicle.earth"),
                Question.of(tank).is(MET, "on the tank"),
                Question.of(tank)
                        .with("earthed-at: tank}\nother", "earthed-at: main-earth}\nother")
                        .is(NOT_MET, "series"),
                Question.of(tank)
                        .with("earthed-at: tank}\nother", "earthed-at: own-lead}\nother")
                        .is(NOT_MET, "series"),
                Question.of(tank)
                        .with("earthed-at: tank}\nother", "earthed-at: unknown}\nother")
                        .is(INSUFFICIENT_DATA, "arresters.earthed-at"),
                Question.of(tank)
                        .with("arresters: {side: both, earthed-at: tank}\n", "")
                        .is(INSUFFICIENT_DATA, "arresters"),
                Question.of(tank).with("side: both", "side: none").is(NOT_APPLICABLE, "no arresters are fitted"),
                Question.of(tee).is(MET),
                Question.of(tee).with("tee-length: 0.2 m", "tee-length: 0.5 m").is(MET),
                Question.of(tee).with("tee-length: 0.2 m", "tee-length: 0.51 m").is(NOT_MET, "shorten the tee"),
                Question.of(tee)
                        .with("tee-length: 0.2 m", "tee-length: {low: 0.2 m, nominal: 0.3 m, high: 0.6 m}")
                        .is(NOT_MET, "shorten the tee"),
                cubicle(tee, "{height: 3 m, earth: separate, electrode: own}").is(NOT_MET, "electrode of its own"),
                cubicle(tee, "{height: 3 m, earth: both, tee-length: 0.2 m, electrode: own}")
                        .is(NOT_MET, "and an electrode"),
                Question.of(tee)
                        .with(CUBICLE, "{height: 3 m, earth: unearthed}")
                        .is(NOT_MET, "not earthed"),
                Question.of(tee)
                        .with(CUBICLE, "{height: 3 m, earth: shared}")
                        .is(INSUFFICIENT_DATA, "cubicle.tee-length"),
                Question.of(tee).with("earth: shared", "earth: unknown").is(INSUFFICIENT_DATA, "cubicle.earth"),
                Question.of(tee).with(CUBICLE_BLOCK, "").is(INSUFFICIENT_DATA, "cubicle"),
                Question.of(common).is(MET, "tank's earth point"),
                Question.of(common)
                        .with("earthed-at: tank-earth-point", "earthed-at: own-electrode")
                        .is(NOT_MET, "voltage transformer"),
                Question.of(common)
                        .with("earthed-at: tank-earth-point", "earthed-at: main-earth")
                        .is(NOT_MET, "voltage transformer"),
                Question.of(common)
                        .with("main-earth:\n", "hv-cable: {screen-earthed-at: none}\nmain-earth:\n")
                        .is(NOT_MET, "high-voltage cable screen"),
                Question.of(common)
                        .with("earthed-at: tank-earth-point", "earthed-at: unknown")
                        .is(INSUFFICIENT_DATA, "other-equipment.earthed-at"),
                Question.of(common).with(EQUIPMENT, "").is(NOT_APPLICABLE));
    }

    static Stream<Question> sizesAndDistances() {
        String upper = "conductor.upper-lead.minimum-area";
        String copper = "{material: copper, area: 70 mm2}";
        String separation = "separation.control-cable";
        String length = "cable.length";
        return Stream.of(
                Question.of(upper).is(MET),
                Question.of(upper)
                        .with(copper, "{material: copper, area: 16 mm2}")
                        .is(MET),
                Question.of(upper)
                        .with(copper, "{material: copper, area: 15.9 mm2}")
                        .is(NOT_MET, "16 mm²"),
                // Ratios of IEC 62305-3 table 6, copper 16, aluminium 25, steel 50 mm² (from memory).
                Question.of(upper)
                        .with(copper, "{material: aluminium, area: 25 mm2}")
                        .is(MET),
                Question.of(upper)
                        .with(copper, "{material: aluminium, area: 24.9 mm2}")
                        .is(NOT_MET),
                Question.of(upper)
                        .with(copper, "{material: steel, area: 50 mm2}")
                        .is(MET),
                Question.of(upper)
                        .with(copper, "{material: steel, area: 49 mm2}")
                        .is(NOT_MET),
                Question.of(upper)
                        .with(copper, "{material: galvanised-steel, area: 50 mm2}")
                        .is(MET),
                Question.of(upper)
                        .with(copper, "{material: galvanised-steel, area: 49 mm2}")
                        .is(NOT_MET),
                Question.of(upper)
                        .with(copper, "{material: stainless-steel, area: 49 mm2}")
                        .is(NOT_MET),
                Question.of(upper)
                        .with(copper, "{material: copper-clad-steel, area: 50 mm2}")
                        .is(MET),
                Question.of(upper)
                        .with(copper, "{material: copper-clad-steel, area: 49 mm2}")
                        .is(NOT_MET),
                Question.of(upper)
                        .with(copper, "{material: copper, area: {low: 12 mm2, nominal: 16 mm2, high: 16 mm2}}")
                        .is(NOT_MET),
                Question.of(upper)
                        .with(copper, "{material: unknown, area: 70 mm2}")
                        .is(INSUFFICIENT_DATA, "main-earth.conductor"),
                Question.of(upper)
                        .with(copper, "{material: copper, area: unknown}")
                        .is(INSUFFICIENT_DATA, "main-earth.conductor"),
                Question.of("conductor.tee.minimum-area").is(MET),
                Question.of("conductor.tee.minimum-area")
                        .with("tee-length: 0.2 m", "tee-length: 0.2 m, tee: {material: copper, area: 6 mm2}")
                        .is(NOT_MET),
                cubicle("conductor.cubicle-s-own-lead.minimum-area", "{height: 3 m, earth: separate, electrode: own}")
                        .is(INSUFFICIENT_DATA, "cubicle.own-lead"),
                Question.of("conductor.lead.minimum-area")
                        .with(MAIN_EARTH, "")
                        .with(CUBICLE_BLOCK, "")
                        .is(INSUFFICIENT_DATA, "main-earth"),
                Question.of(separation).is(MET),
                Question.of(separation)
                        .with("separation: 0.25 m", "separation: 200 mm")
                        .is(MET),
                Question.of(separation)
                        .with("separation: 0.25 m", "separation: 199 mm")
                        .is(NOT_MET, "wood"),
                Question.of(separation)
                        .with("material: wood", "material: concrete")
                        .with("separation: 0.25 m", "separation: 199 mm")
                        .is(NOT_MET, "concrete"),
                Question.of(separation)
                        .with("material: wood", "material: composite")
                        .with("separation: 0.25 m", "separation: 199 mm")
                        .is(NOT_MET),
                Question.of(separation)
                        .with("material: wood", "material: steel")
                        .with("separation: 0.25 m", "separation: 150 mm")
                        .is(MET),
                Question.of(separation)
                        .with("material: wood", "material: steel")
                        .with("separation: 0.25 m", "separation: 149 mm")
                        .is(NOT_MET, "steel"),
                Question.of(separation)
                        .with("separation: 0.25 m", "separation: {low: 0.1 m, nominal: 0.25 m, high: 0.3 m}")
                        .is(NOT_MET),
                Question.of(separation)
                        .with("separation: 0.25 m", "separation: unknown")
                        .is(INSUFFICIENT_DATA, "control-cable.separation"),
                Question.of(separation)
                        .with("material: wood", "material: unknown")
                        .is(INSUFFICIENT_DATA, "pole.material"),
                Question.of(length).is(MET),
                Question.of(length).with("length: 7.3 m", "length: 8.03 m").is(MET),
                Question.of(length).with("length: 7.3 m", "length: 8.1 m").is(NOT_MET, "cut the cable"),
                Question.of(length).with("length: 7.3 m", "length: 7.2 m").is(NOT_MET, "shorter than its parts"),
                Question.of(length).with("coiled: no", "coiled: yes").is(NOT_MET, "coiled"),
                Question.of(length).with("coiled: no", "coiled: unknown").is(INSUFFICIENT_DATA, "control-cable.coiled"),
                Question.of(length).with("  drip-loop: 0.6 m\n", "").is(INSUFFICIENT_DATA, "control-cable.drip-loop"),
                Question.of(length)
                        .with("  length: 7.3 m\n", "  length: unknown\n")
                        .is(INSUFFICIENT_DATA, "control-cable.length"));
    }

    static Stream<Question> bonds() {
        String suppressor = "antenna.suppressor";
        String pole = "pole.conducting";
        String couple = "corrosion.couple";
        String aux = "aux-supply.isolation";
        String stay = "stays:\n  - {name: stay east, top-height: 9 m, anchor-distance: 6 m, insulated: %s,"
                + " bonded-to-main-earth: %s, anchor-material: %s}\nantenna:";
        return Stream.of(
                Question.of(suppressor).is(MET),
                Question.of(suppressor)
                        .with("suppressor: bulkhead", "suppressor: loose")
                        .is(NOT_MET, "lead of its own"),
                Question.of(suppressor)
                        .with("suppressor: bulkhead", "suppressor: none")
                        .is(NOT_MET, "without a suppressor"),
                Question.of(suppressor)
                        .with("suppressor: bulkhead", "suppressor: unknown")
                        .is(INSUFFICIENT_DATA, "antenna.suppressor"),
                Question.of(suppressor)
                        .with("antenna: {height: 10 m, suppressor: bulkhead}\n", "")
                        .is(NOT_APPLICABLE),
                Question.of(pole).is(NOT_APPLICABLE, "does not conduct"),
                Question.of(pole).with("material: wood", "material: composite").is(NOT_APPLICABLE),
                Question.of(pole)
                        .with("material: wood", "material: steel, bonded-to-main-earth: yes")
                        .is(MET, "surface to touch"),
                Question.of(pole)
                        .with("material: wood", "material: steel, bonded-to-main-earth: no")
                        .is(NOT_MET),
                Question.of(pole)
                        .with("material: wood", "material: concrete, bonded-to-main-earth: no")
                        .is(NOT_MET),
                Question.of(pole)
                        .with("material: wood", "material: steel")
                        .is(INSUFFICIENT_DATA, "pole.bonded-to-main-earth"),
                Question.of(pole)
                        .with("material: wood", "material: concrete, bonded-to-main-earth: unknown")
                        .is(INSUFFICIENT_DATA, "pole.bonded-to-main-earth"),
                Question.of(pole).with("material: wood", "material: unknown").is(INSUFFICIENT_DATA, "pole.material"),
                Question.of(couple).is(MET),
                Question.of(couple)
                        .with("antenna:", stay.formatted("no", "yes", "galvanised-steel"))
                        .is(NOT_MET, "stay east"),
                Question.of(couple)
                        .with("antenna:", stay.formatted("yes", "yes", "galvanised-steel"))
                        .is(MET),
                Question.of(couple)
                        .with("antenna:", stay.formatted("no", "no", "galvanised-steel"))
                        .is(MET),
                Question.of(couple)
                        .with("antenna:", stay.formatted("no", "yes", "copper"))
                        .is(MET),
                Question.of(couple)
                        .with("material: wood", "material: steel, butt-contact: bare, bonded-to-main-earth: yes")
                        .is(NOT_MET, "pole butt"),
                Question.of(couple)
                        .with("material: wood", "material: steel, butt-contact: coated, bonded-to-main-earth: yes")
                        .is(MET),
                Question.of(couple)
                        .with("{material: copper, area: 70 mm2}", "{material: unknown, area: 70 mm2}")
                        .is(INSUFFICIENT_DATA, "main-earth.conductor"),
                Question.of(couple)
                        .with("name: main, material: copper", "name: main, material: galvanised-steel")
                        .is(NOT_MET, "electrode main (steel or zinc against copper)"),
                Question.of(couple)
                        .with("name: main, material: copper", "name: main, material: copper-clad-steel")
                        .is(MET),
                Question.of(couple)
                        .with("name: main, material: copper", "name: main, material: unknown")
                        .is(INSUFFICIENT_DATA, "electrodes.material"),
                Question.of(couple)
                        .with("name: main, material: copper", "name: main")
                        .is(INSUFFICIENT_DATA, "electrode main"),
                Question.of(aux).result("aux-supply.isolation.voltage", 3000).is(MET),
                Question.of(aux).result("aux-supply.isolation.voltage", 4000).is(MET),
                Question.of(aux).result("aux-supply.isolation.voltage", 4001).is(NOT_MET, "isolating transformer"),
                Question.of(aux)
                        .with(", isolation-level: 4 kV", "")
                        .result("aux-supply.isolation.voltage", 3000)
                        .is(INSUFFICIENT_DATA, "auxiliary-supply.isolation-level"),
                Question.of(aux)
                        .gap("aux-supply.isolation", "the soil is not known", "soil.resistivity")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"),
                Question.of(aux).is(Status.NOT_ASSESSED),
                Question.of(aux)
                        .with("earth-reference: isolated", "earth-reference: unknown")
                        .is(INSUFFICIENT_DATA, "auxiliary-supply.earth-reference"),
                Question.of(aux)
                        .with("earth-reference: isolated", "earth-reference: main-earth")
                        .is(MET),
                Question.of(aux)
                        .with("earth-reference: isolated", "earth-reference: lv-network")
                        .is(NOT_MET),
                Question.of(aux)
                        .with("auxiliary-supply: {kind: solar, earth-reference: isolated, isolation-level: 4 kV}\n", "")
                        .is(NOT_APPLICABLE));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"paths", "sizesAndDistances", "bonds"})
    void answers(Question question) {
        question.check();
    }

    @Test
    void marginIsTheRelativeDistanceToTheLimit() {
        Finding thin = Question.of("separation.control-cable")
                .with("separation: 0.25 m", "separation: 150 mm")
                .answer();
        assertThat(thin.value()).hasValue(0.15);
        assertThat(thin.limit()).hasValue(0.2);
        assertThat(thin.margin().orElseThrow()).isCloseTo(-0.25, within(1e-12));
        assertThat(thin.unit()).isEqualTo("m");
    }

    @Test
    void rulesWithoutAPublishedSourceSayThatTheyAreCommonPractice() {
        assertThat(Question.of("separation.control-cable").answer().basis().text())
                .startsWith("common practice, no published source");
        assertThat(Question.of("conductor.upper-lead.minimum-area")
                        .answer()
                        .basis()
                        .text())
                .startsWith("common practice, no published source");
    }
}
