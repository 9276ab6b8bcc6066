package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.network.Branch;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The earth-path graph of every demonstration site against what its file says in words. */
class EarthPathsTest {

    private static List<String> inWords(EarthPaths paths) {
        return paths.members().stream()
                .filter(m -> m.role() != Role.ELECTRODE)
                .map(m -> m.role() + " " + m.name() + ": " + m.from() + " - " + m.to() + (m.intact() ? "" : ", parted"))
                .toList();
    }

    static Stream<Arguments> membersOfTheDemonstrationSites() {
        Map<String, List<String>> expected = new LinkedHashMap<>();
        expected.put(
                "brackenmire-mistakes.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "OWN_LEAD cubicle's own lead: cubicle - electrode cubicle",
                        "UNINTENDED steel conduit to a well pump: cubicle - earth",
                        "PARALLEL stay east: tank - earth",
                        "UNINTENDED external voltage transformer own earth: tank - earth",
                        "UNINTENDED auxiliary supply to the low-voltage earth: cubicle - earth"));
        expected.put(
                "cobblers-mere-neutral.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode ground rods",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle",
                        "PARALLEL line neutral: tank - earth"));
        expected.put(
                "fellmark-single-wire.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle"));
        expected.put(
                "harrowfell-steel-rock.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode ring and wires",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle",
                        "PARALLEL pole steel: tank - earth"));
        expected.put("lowgarth-short.yaml", List.of("MAIN_EARTH lead: tank - electrode main"));
        expected.put(
                "millgarth-two-wires.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode ground rods",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle",
                        "PARALLEL stay west: tank - earth",
                        "PARALLEL line neutral: tank - earth",
                        "PARALLEL shield wire: tank - earth"));
        expected.put(
                "ollinford-concrete-lv.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "UNINTENDED auxiliary supply to the low-voltage earth: cubicle - earth"));
        expected.put(
                "pellwharf-plate-concrete.yaml",
                List.of(
                        "MAIN_EARTH upper: tank - main earth at 3 m",
                        "MAIN_EARTH lower: main earth at 3 m - electrode main",
                        "OWN_LEAD cubicle's own lead: cubicle - electrode plate"));
        expected.put(
                "quernholm-resonant.yaml",
                List.of(
                        "MAIN_EARTH upper: tank - tee",
                        "MAIN_EARTH lower: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle"));
        expected.put(
                "ravensike-readings.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle"));
        expected.put(
                "ravensike-readings.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle"));
        expected.put(
                "skarrowen-antenna.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle",
                        "UNINTENDED antenna feeder screen: tank - cubicle"));
        expected.put(
                "ternhook-wood-separate.yaml",
                List.of(
                        "MAIN_EARTH upper: tank - main earth at 3 m",
                        "MAIN_EARTH lower: main earth at 3 m - electrode main",
                        "OWN_LEAD cubicle's own lead: cubicle - electrode cubicle"));
        expected.put(
                "ternhook-wood-shared.yaml",
                List.of(
                        "MAIN_EARTH upper: tank - tee",
                        "MAIN_EARTH lower: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle"));
        expected.put(
                "thornby-shield-wire.yaml",
                List.of(
                        "MAIN_EARTH upper lead: tank - tee",
                        "MAIN_EARTH lower lead: tee - electrode main",
                        "TEE tee: tee - cubicle",
                        "SCREEN cable screen: tank - cubicle",
                        "PARALLEL shield wire: tank - earth"));
        return expected.entrySet().stream().map(e -> Arguments.of(e.getKey(), e.getValue()));
    }

    @ParameterizedTest
    @MethodSource
    void membersOfTheDemonstrationSites(String name, List<String> expected) {
        assertThat(inWords(EarthPaths.of(DemoSite.read(name)))).containsExactlyElementsOf(expected);
    }

    @Test
    void everyDemonstrationSiteIsHeldToItsMembers() {
        assertThat(membersOfTheDemonstrationSites().map(a -> a.get()[0])).containsExactlyElementsOf(DemoSite.names());
    }

    static List<String> sites() {
        return DemoSite.names();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void namesAreUniqueAndEveryElectrodeEndsAtRemoteEarth(String name) {
        Site site = DemoSite.read(name);
        EarthPaths paths = EarthPaths.of(site);
        assertThat(paths.members().stream().map(Member::name)).doesNotHaveDuplicates();
        assertThat(paths.withRole(Role.ELECTRODE)).hasSameSizeAs(site.electrodes());
        assertThat(paths.withRole(Role.ELECTRODE))
                .allSatisfy(m -> assertThat(m.to()).isEqualTo(EarthPaths.EARTH));
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyWayIsAChainOfIntactMembersThatPassesNoNodeTwice(String name) {
        EarthPaths paths = EarthPaths.of(DemoSite.read(name));
        for (String from : List.of(EarthPaths.TANK, EarthPaths.CUBICLE)) {
            List<List<Member>> ways = paths.ways(from, EarthPaths.EARTH);
            assertThat(ways).doesNotHaveDuplicates();
            assertThat(ways.isEmpty()).isNotEqualTo(paths.connected(from, EarthPaths.EARTH));
            for (List<Member> way : ways) {
                List<String> passed = new ArrayList<>(List.of(from));
                for (Member member : way) {
                    String at = passed.get(passed.size() - 1);
                    assertThat(member.intact()).isTrue();
                    assertThat(List.of(member.from(), member.to())).contains(at);
                    passed.add(member.from().equals(at) ? member.to() : member.from());
                }
                assertThat(passed).endsWith(EarthPaths.EARTH).doesNotHaveDuplicates();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void aBrokenMemberIsOnNoWayAndAllOthersStay(String name) {
        EarthPaths paths = EarthPaths.of(DemoSite.read(name));
        for (Member member : paths.members()) {
            EarthPaths broken = paths.broken(member.name());
            assertThat(broken.member(member.name()).orElseThrow().intact()).isFalse();
            List<List<Member>> still = paths.ways(EarthPaths.TANK, EarthPaths.EARTH).stream()
                    .filter(way -> !way.contains(member))
                    .toList();
            assertThat(broken.ways(EarthPaths.TANK, EarthPaths.EARTH)).containsExactlyElementsOf(still);
            assertThat(broken.members()).hasSameSizeAs(paths.members());
        }
    }

    @Test
    void theSharedSiteHasOneWayFromTheTankBesideTheScreen() {
        EarthPaths paths = EarthPaths.of(DemoSite.read("ternhook-wood-shared.yaml"));
        List<List<String>> ways = paths.ways(EarthPaths.TANK, EarthPaths.EARTH).stream()
                .map(way -> way.stream().map(Member::name).toList())
                .toList();
        assertThat(ways)
                .containsExactly(
                        List.of("upper", "lower", "electrode main"),
                        List.of("cable screen", "tee", "lower", "electrode main"));
    }

    @Test
    void breakingTheLowerLeadOfTheSharedSiteFloatsTankAndCubicleTogether() {
        EarthPaths broken =
                EarthPaths.of(DemoSite.read("ternhook-wood-shared.yaml")).broken("lower");
        assertThat(broken.connected(EarthPaths.TANK, EarthPaths.EARTH)).isFalse();
        assertThat(broken.connected(EarthPaths.CUBICLE, EarthPaths.EARTH)).isFalse();
        assertThat(broken.connected(EarthPaths.TANK, EarthPaths.CUBICLE)).isTrue();
    }

    @Test
    void breakingTheUpperLeadOfTheSharedSiteLeavesTheScreenAsTheOnlyWay() {
        EarthPaths broken =
                EarthPaths.of(DemoSite.read("ternhook-wood-shared.yaml")).broken("upper");
        assertThat(broken.ways(EarthPaths.TANK, EarthPaths.EARTH))
                .singleElement()
                .satisfies(way -> assertThat(way.get(0).role()).isEqualTo(Role.SCREEN));
    }

    @Test
    void separateEarthsAreJoinedByNothingButTheGround() {
        EarthPaths paths = EarthPaths.of(DemoSite.read("ternhook-wood-separate.yaml"));
        assertThat(paths.connected(EarthPaths.TANK, EarthPaths.CUBICLE)).isTrue();
        EarthPaths lifted = paths.broken("electrode cubicle");
        assertThat(lifted.connected(EarthPaths.TANK, EarthPaths.CUBICLE)).isFalse();
        assertThat(lifted.connected(EarthPaths.TANK, EarthPaths.EARTH)).isTrue();
    }

    @Test
    void aSegmentFoundMissingIsDrawnAndDoesNotConnect() {
        String text = DemoSite.text("ternhook-wood-shared.yaml")
                .replaceFirst("(?s)(joint: exothermic\\s+intact: )yes", "$1no");
        EarthPaths paths = EarthPaths.of(DemoSite.parse(text));
        assertThat(paths.member("lower").orElseThrow().intact()).isFalse();
        assertThat(paths.connected(EarthPaths.TANK, EarthPaths.EARTH)).isFalse();
    }

    /** A bond that the drawing shows is a branch of the pole circuit, or a note says that it is not. */
    @ParameterizedTest
    @MethodSource("sites")
    void aBondThatIsShownIsModelled(String name) {
        Site site = SurveyedSoil.of(DemoSite.read(name)).site();
        EarthPaths paths = EarthPaths.of(site);
        try {
            Inputs in = new Inputs();
            SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, in, new EarthCache());
            PoleCircuit.Built built = PoleCircuit.of(site, paths, earth, t -> 1, false, in);
            List<String> branches =
                    built.circuit().branches().stream().map(Branch::name).toList();
            for (Member member : paths.members()) {
                if (!member.intact()) {
                    continue;
                }
                String branch = member.role() == Role.ELECTRODE
                        ? "earth of " + member.name().substring("electrode ".length())
                        : member.name();
                boolean used = member.role() != Role.ELECTRODE
                        || paths.members().stream()
                                .anyMatch(
                                        m -> m.role() != Role.ELECTRODE && m.intact() && m.to().equals(member.name()));
                boolean told = built.notes().stream()
                        .anyMatch(note -> note.contains(member.name()) || note.contains("the pole's metal"));
                assertThat(branches.stream().anyMatch(b -> b.startsWith(branch)) || !used || told)
                        .as(member.name())
                        .isTrue();
            }
        } catch (MissingInput missing) {
            // Only the short site lacks what a circuit needs, and it names the keys.
            assertThat(name).isEqualTo("lowgarth-short.yaml");
            assertThat(missing.gap("surge", Case.NONE).missingKeys()).isNotEmpty();
        }
    }
}
