package earthing.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.markup.Markup;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

final class PoleElevationTest {

    private static final String BARE = """
            file-version: 1
            site: {name: Fernmoor, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
            pole: {material: wood, height: 12 m}
            tank: {height: 9 m}
            """;

    private static Site site(String more) {
        ReadOutcome outcome = SiteFile.read(BARE + more, "a.yaml");
        if (outcome instanceof ReadOutcome.Valid valid) {
            return valid.site();
        }
        throw new IllegalStateException(
                ((ReadOutcome.Invalid) outcome).problems().toString());
    }

    private static Element svg(String markup) throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(markup)))
                .getDocumentElement();
    }

    @Test
    void aBarePoleCanBeDrawn() throws Exception {
        Element drawing = svg(PoleElevation.of(site(""), "f"));
        assertThat(drawing.getElementsByTagName("rect").getLength()).isEqualTo(2);
        assertThat(drawing.getTextContent()).contains("soil: not described");
    }

    private static final String EARTHS = """
            electrodes:
              - {name: main, rod: {length: 3 m, diameter: 16 mm}}
              - {name: own, rod: {length: 2 m, diameter: 16 mm}}
            main-earth: {conductor: {material: copper, area: 70 mm2}, electrode: main}
            cubicle: {height: 3 m, earth: separate, electrode: own}
            """;

    /** The labels without blanks, for their lines end where the margin does. */
    private static String labels(String more) throws Exception {
        NodeList texts = svg(PoleElevation.of(site(EARTHS + more), "f")).getElementsByTagName("text");
        StringBuilder labels = new StringBuilder();
        for (int i = 0; i < texts.getLength(); i++) {
            labels.append(texts.item(i).getTextContent()).append('\n');
        }
        return labels.toString().replaceAll("[\\s\u00a0]+", "");
    }

    @Test
    void whatTheFileDescribesStandsInTheDrawingAndNothingElse() throws Exception {
        assertThat(labels("")).doesNotContain("arresters").doesNotContain("controlcable");
        assertThat(labels("arresters: {side: both, earthed-at: tank, line-lead: 0.4 m, earth-lead: 0.6 m}\n"))
                .contains("surgearresters,", "earthedatthetank,linelead0.4m,earthlead0.6m");
        assertThat(labels("control-cable: {length: 7.3 m, separation: 0.25 m}\n"))
                .contains("controlcable,7.3m,screennotdescribed", "separation0.25m");
        assertThat(labels("control-cable: {length: 7.3 m, screen: {bond: both}}\n"))
                .contains("controlcable,7.3m,screenbonded")
                .doesNotContain("screennotdescribed");
    }

    /** A full dot is a bond, an open one none; a screen of which nothing is known has neither. */
    @ParameterizedTest
    @CsvSource({"both, 2, 0", "tank, 1, 1", "cubicle, 1, 1", "none, 0, 2", "unknown, 0, 0", "absent, 0, 0"})
    void theEndsOfTheScreenAreDrawnAsTheyAreBonded(String bond, int bonded, int open) throws Exception {
        Element without = svg(PoleElevation.of(site(EARTHS + "control-cable: {length: 7.3 m}\n"), "f"));
        Element drawing = svg(
                PoleElevation.of(site(EARTHS + "control-cable: {length: 7.3 m, screen: {bond: " + bond + "}}\n"), "f"));
        assertThat(circles(drawing, false) - circles(without, false)).isEqualTo(bonded);
        assertThat(circles(drawing, true) - circles(without, true)).isEqualTo(open);
    }

    private static int circles(Element drawing, boolean open) {
        NodeList circles = drawing.getElementsByTagName("circle");
        int count = 0;
        for (int i = 0; i < circles.getLength(); i++) {
            String fill = ((Element) circles.item(i)).getAttribute("fill");
            count += (fill.equals("none") || fill.equals("white") || fill.equals("#fff")) == open ? 1 : 0;
        }
        return count;
    }

    @Test
    void labelsHaveTheUnitsOfTheRestOfThePage() throws Exception {
        Element drawing = svg(PoleElevation.of(site("""
                soil: {resistivity: 60 ohm.m}
                electrodes: [{name: main, rod: {length: 3 m, diameter: 16 mm}}]
                main-earth: {conductor: {material: copper, area: 70 mm2, insulated: no}, electrode: main,
                  segments: [{name: lead, from-height: 9 m, to-height: 0 m}]}
                """), "f"));
        assertThat(drawing.getTextContent())
                .contains("60\u00a0Ω·m", "70\u00a0mm²")
                .doesNotContain("ohm")
                .doesNotContain("mm2");
    }

    @Test
    void heightsAreToScale() throws Exception {
        String earth = """
                main-earth:
                  conductor: {material: copper, area: 35 mm2}
                  segments:
                    - {name: upper, from-height: 9 m, to-height: 3 m, intact: yes}
                    - {name: lower, from-height: 3 m, to-height: 0 m, intact: no}
                """;
        NodeList lines = svg(PoleElevation.of(site(earth), "f")).getElementsByTagName("line");
        List<Double> lengths = new ArrayList<>();
        for (int i = 0; i < lines.getLength(); i++) {
            Element line = (Element) lines.item(i);
            boolean upright = line.getAttribute("x1").equals("470")
                    && line.getAttribute("x2").equals("470");
            if (upright) {
                lengths.add(number(line, "y2") - number(line, "y1"));
            }
        }
        assertThat(lengths.get(0) / lengths.get(1)).isCloseTo(2.0, org.assertj.core.data.Offset.offset(0.01));
    }

    @Test
    void brokenAndSecondPathsAreWrittenNotOnlyDrawn() throws Exception {
        String earth = """
                main-earth:
                  conductor: {material: copper, area: 35 mm2}
                  segments: [{name: upper, from-height: 9 m, to-height: 0 m, intact: no}]
                  electrode: main
                  second-lead-electrode: other
                electrodes:
                  - {name: main, rod: {length: 3 m, diameter: 16 mm}}
                  - {name: other, rod: {length: 3 m, diameter: 16 mm}}
                cubicle: {height: 3 m, earth: unearthed, other-paths: [water pipe]}
                arresters: {side: both, earthed-at: own-lead}
                """;
        Element drawing = svg(PoleElevation.of(site(earth), "f"));
        assertThat(drawing.getTextContent())
                .contains(
                        "BROKEN OR MISSING",
                        "SECOND LEAD",
                        "OTHER PATH TO EARTH: water pipe",
                        "earthed by a lead of their own");
        NodeList all = drawing.getElementsByTagName("*");
        List<String> dashes = new ArrayList<>();
        for (int i = 0; i < all.getLength(); i++) {
            dashes.add(((Element) all.item(i)).getAttribute("stroke-dasharray"));
        }
        assertThat(dashes).contains("2 6", "12 4 3 4");
    }

    @Property(seed = "20261125", tries = 100)
    void labelsNeverCoverEachOther(
            @ForAll @Size(min = 1, max = 20) List<@DoubleRange(min = 0, max = 600) Double> anchors,
            @ForAll @AlphaChars @StringLength(min = 1, max = 90) String text)
            throws Exception {
        LabelColumn column = new LabelColumn(200, true, 30);
        anchors.forEach(anchor -> column.add(text, 300, anchor));
        Markup svg = new Markup();
        svg.open("svg");
        column.draw(svg, 0, Math.max(600, column.height()));
        NodeList lines = svg(svg.end()).getElementsByTagName("text");
        List<Double> baselines = new ArrayList<>();
        for (int i = 0; i < lines.getLength(); i++) {
            baselines.add(number((Element) lines.item(i), "y"));
        }
        baselines.sort(Double::compare);
        assertThat(baselines.get(0)).isGreaterThanOrEqualTo(0);
        for (int i = 1; i < baselines.size(); i++) {
            assertThat(baselines.get(i) - baselines.get(i - 1)).isGreaterThanOrEqualTo(13.8);
        }
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }
}
