package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Source;
import earthing.site.Site;
import earthing.study.Case;
import earthing.study.DemoSite;
import earthing.study.Gap;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;

/** One row of a table of checks: a site, results made by hand, and what the check has to answer. */
final class Question {

    /** A site on which every rule of the trade is kept; the rows change single lines of it. */
    static final String SITE = """
            file-version: 1
            site: {name: one of everything, stage: in-service}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              neutral: {method: solid}
            protection:
              relay: {pickup: 50 A, curve: definite-time, delay: 0.2 s}
              detection-factor: "2"
            soil:
              resistivity: {low: 80 ohm.m, nominal: 100 ohm.m, high: 150 ohm.m, origin: measured}
              season: {depth: 0.5 m, factor: "2"}
              survey: Four-pin survey
              survey-date: 2026-03-02
            pole: {material: wood, height: 11 m}
            tank: {height: 9 m, switch-state: unknown}
            arresters: {side: both, earthed-at: tank}
            other-equipment:
              - {name: voltage transformer, earthed-at: tank-earth-point}
            main-earth:
              conductor: {material: copper, area: 70 mm2}
              electrode: main
            electrodes:
              - {name: main, material: copper, rod: {length: 3 m, diameter: 16 mm}}
            cubicle: {height: 3 m, earth: shared, tee-length: 0.2 m}
            control-cable:
              separation: 0.25 m
              length: 7.3 m
              route-length: 6.2 m
              drip-loop: 0.6 m
              entry-curve: 0.5 m
              coiled: no
              cores:
                - {name: trip, tank-end: coil, cubicle-end: contact}
              screen: {bond: none}
              insulation-level: 2 kV
            antenna: {height: 10 m, suppressor: bulkhead}
            auxiliary-supply: {kind: solar, earth-reference: isolated, isolation-level: 4 kV}
            neighbours:
              - {name: field fence, kind: fence, distance: 6 m, limit: 80 V}
            surges: {current: 10 kA, waves: [8/20]}
            criteria: {touch: en-50522-2022, electrode-resistance: 25 ohm, protective-margin: 20 %}
            measurements:
              - kind: electrode-resistance
                of: main
                value: 20 ohm
                method: fall-of-potential
                isolated: yes
                current-probe-distance: 40 m
                potential-probe-distance: 24.8 m
                date: 2026-05-20
              - kind: bond-continuity
                of: main-earth
                value: 2 mohm
                method: four-wire
                isolated: yes
                date: 2026-05-20
            """;

    private static final Source BY_HAND = Source.tool("made by hand for a test");

    private final String id;
    private String subject = "";
    private Status status = Status.MET;
    private final List<String> says = new ArrayList<>();
    private String text = SITE;
    private final StringBuilder changes = new StringBuilder();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();

    private Question(String id) {
        this.id = id;
    }

    /** A row about the findings of an id. */
    static Question of(String id) {
        return new Question(id);
    }

    /** Which of several findings of the id, by a part of its subject. */
    Question about(String part) {
        subject = part;
        return this;
    }

    /** The status that is due and words that reason or advice have to hold. */
    Question is(Status due, String... words) {
        status = due;
        says.addAll(List.of(words));
        return this;
    }

    /** Changes the site file; the old text has to be there. */
    Question with(String old, String changed) {
        assertThat(text).as(id).contains(old);
        text = text.replace(old, changed);
        changes.append(changes.isEmpty() ? "" : "; ")
                .append((changed.isBlank() ? "without " + old : changed).strip().replaceAll("\\s+", " "));
        return this;
    }

    /** A result without a case at the nominal bound. */
    Question result(String resultId, double value) {
        return result(resultId, Case.NONE, "nominal", value);
    }

    /** A result. */
    Question result(String resultId, Case circumstances, String at, double value) {
        results.add(Result.of(resultId, circumstances, at, value, "V", "by hand", BY_HAND));
        return this;
    }

    /** A gap that names keys. */
    Question gap(String gapId, String reason, String... keys) {
        return gap(gapId, Case.NONE, reason, keys);
    }

    /** A gap of a case. */
    Question gap(String gapId, Case circumstances, String reason, String... keys) {
        gaps.add(new Gap(gapId, circumstances, reason, List.of(keys)));
        return this;
    }

    Site site() {
        return DemoSite.parse(text);
    }

    /** All findings on this row's site and results. */
    List<Finding> findings() {
        return ComplianceRun.of(site(), new StudyResults(results, List.of(), gaps, List.of(), List.of()));
    }

    /** The finding asked for. */
    Finding answer() {
        List<Finding> all = findings();
        List<Finding> mine = all.stream()
                .filter(f -> f.id().equals(id) && f.subject().contains(subject))
                .toList();
        assertThat(mine)
                .as(id + " among " + all.stream().map(Finding::id).toList())
                .hasSize(1);
        return mine.get(0);
    }

    /** Holds the finding against the row. */
    void check() {
        Finding finding = answer();
        assertThat(finding.status())
                .as(finding.reason() + " / " + finding.advice())
                .isEqualTo(status);
        for (String words : says) {
            assertThat(finding.reason() + " / " + finding.advice()).contains(words);
        }
        assertThat(finding.reason()).isNotBlank();
        if (status == Status.NOT_MET || status == Status.INSUFFICIENT_DATA) {
            assertThat(finding.advice()).isNotBlank();
        }
        if (status == Status.MET) {
            assertThat(finding.advice()).isEmpty();
        }
    }

    @Override
    public String toString() {
        return id + " " + status.id() + " " + subject + (changes.isEmpty() ? "" : ": " + changes);
    }
}
