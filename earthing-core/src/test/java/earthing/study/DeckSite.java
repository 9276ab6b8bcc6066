package earthing.study;

import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.nio.charset.StandardCharsets;

/** The geometry of the pole decks in reference-cases/decks as a site file. */
final class DeckSite {

    private static final String TEXT = """
            file-version: 1
            site: {name: deck geometry, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              neutral: {method: solid}
            soil: {resistivity: %s}
            tank: {height: 9 m}
            pole: {material: wood, height: 10.5 m, diameter: 0.26 m}
            main-earth:
              conductor: {material: copper, area: 89.92 mm2}
              offset: 0.15 m
              electrode: main
            electrodes:
              - {name: main, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
              - {name: own, at: {x: 5 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
            cubicle: {height: 3 m, earth: %s, tee-length: 0.3 m, own-lead-offset: 0.3 m%s}
            control-cable:
              separation: 0.2 m
              diameter: 14 mm
              core-diameter: 1.5 mm
              screen: {bond: %s, area: 6 mm2, tank-bond-lead: 0 m, cubicle-bond-lead: 0 m}
              cores:
                - {name: trip, tank-end: tank, cubicle-end: unknown}
            """;

    private DeckSite() {}

    static Site of(String resistivity, String earth, String bond) {
        return read(text(resistivity, earth, bond));
    }

    /** The same as text, to which further blocks may be added. */
    static String text(String resistivity, String earth, String bond) {
        String own = earth.equals("separate") || earth.equals("both") ? ", electrode: own" : "";
        return TEXT.formatted(resistivity, earth, own, bond);
    }

    static Site read(String text) {
        return read(text, "");
    }

    /** The same with one file beside it, whatever name it is asked for by. */
    static Site read(String text, String beside) {
        ReadOutcome outcome = SiteFile.read(
                text.getBytes(StandardCharsets.UTF_8), "test.yaml", name -> beside.getBytes(StandardCharsets.UTF_8));
        if (outcome instanceof ReadOutcome.Valid valid) {
            return valid.site();
        }
        throw new AssertionError(outcome.toString());
    }
}
