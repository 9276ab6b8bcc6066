package earthing.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import earthing.quantity.Measure;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.document.Block.Fact;
import earthing.report.document.Document;
import earthing.report.figure.ElevationWords;
import earthing.site.Bar;
import earthing.site.ControlCable;
import earthing.site.Cubicle;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.MainEarth;
import earthing.site.Site;
import earthing.site.SiteIdentity;
import earthing.site.YesNo;
import earthing.site.file.ReadingsFile;
import earthing.site.file.SiteTree;
import earthing.study.Case;
import earthing.study.ResistanceBasis;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** The sheets that go to the pole: one to build from, one to test by; a page each. */
public final class FieldSheet {

    private static final String BLANK = "________";
    private static final String TICK = "[  ]";

    private FieldSheet() {}

    /**
     * The sheet to build from: paths, conductors, joints, electrodes and distances as designed, to be ticked off.
     *
     * @param input site and results
     * @return the sheet as a document
     */
    public static Document build(ReportInput input) {
        Site site = input.site();
        List<List<String>> rows = new ArrayList<>();
        paths(site, rows);
        for (Electrode electrode : site.electrodes()) {
            List<String> words = new ArrayList<>();
            SiteTree.entriesOf(electrode).stream()
                    .filter(entry ->
                            !entry.path().equals("name") && !entry.path().startsWith("bars["))
                    .forEach(entry ->
                            words.add(entry.path().replace('.', ' ').replace('-', ' ') + " " + written(entry.value())));
            if (!words.isEmpty()) {
                rows.add(item("Electrode " + electrode.name(), String.join(", ", words)));
            }
            int number = 0;
            for (Bar bar : electrode.bars()) {
                number++;
                rows.add(item(
                        "Electrode " + electrode.name() + ", bar " + number,
                        place(bar.x1(), bar.y1(), bar.depth1()) + " to " + place(bar.x2(), bar.y2(), bar.depth2())
                                + ", diameter " + text(bar.diameter())));
            }
        }
        cable(site, rows);
        if (site.arresters() != null) {
            rows.add(item(
                    "Arresters",
                    ElevationWords.earthed(site.arresters().earthedAt()) + ", line lead "
                            + text(site.arresters().lineLead()) + ", earth lead "
                            + text(site.arresters().earthLead())));
        }
        return sheet(
                input,
                "Build sheet",
                List.of(
                        new Block.Table(
                                "build",
                                "As designed; tick what is built so, write down what is not",
                                List.of(
                                        Column.text("Part"),
                                        Column.text("As designed"),
                                        Column.text("Built so"),
                                        Column.text("As built, if different")),
                                rows),
                        signed("Built")));
    }

    private static String place(@Nullable Measure x, @Nullable Measure y, @Nullable Measure depth) {
        return "(" + text(x) + " east, " + text(y) + " north) " + text(depth) + " deep";
    }

    private static void paths(Site site, List<List<String>> rows) {
        MainEarth main = site.mainEarth();
        if (main != null) {
            if (main.segments().isEmpty()) {
                rows.add(item(
                        "Main earth",
                        "one unbroken conductor from the earth terminal of the tank to the electrode, "
                                + conductor(SiteTree.entriesOf(main), "conductor.")
                                + (main.joint() == null ? "" : ", joint " + word(main.joint()))));
            }
            for (EarthSegment segment : main.segments()) {
                rows.add(item(
                        "Main earth, " + segment.name(),
                        "from " + text(segment.fromHeight()) + " to " + text(segment.toHeight()) + " above ground, "
                                + conductor(SiteTree.entriesOf(main), "conductor.")
                                + (segment.joint() == null ? "" : ", joint " + word(segment.joint()))));
            }
            if (main.guardHeight() != null) {
                rows.add(item("Guard of the main earth", "up to " + text(main.guardHeight())));
            }
        }
        Cubicle cubicle = site.cubicle();
        if (cubicle != null) {
            rows.add(item(
                    "Cubicle, " + text(cubicle.height()) + " above ground",
                    "earth " + SiteTree.word(cubicle.earth()).replace('-', ' ')
                            + (cubicle.teeLength() == null
                                    ? ""
                                    : ", tee " + text(cubicle.teeLength()) + ", "
                                            + conductor(SiteTree.entriesOf(cubicle), "tee."))));
        }
    }

    private static void cable(Site site, List<List<String>> rows) {
        ControlCable cable = site.controlCable();
        if (cable != null) {
            rows.add(item(
                    "Control cable",
                    text(cable.length()) + " long, no coil, " + text(cable.separation())
                            + " from the main earth on the whole route"
                            + (cable.screen() == null
                                    ? ""
                                    : ", screen "
                                            + ElevationWords.bond(
                                                    word(cable.screen().bond())))));
        }
    }

    /**
     * The sheet to test by, with the expected value of each reading.
     *
     * @param input site and results
     * @return the sheet as a document
     */
    public static Document test(ReportInput input) {
        List<List<String>> rows = new ArrayList<>();
        for (Reading reading : readings(input)) {
            rows.add(List.of(
                    reading.kind().replace('-', ' ') + ", " + reading.of(),
                    reading.expected(),
                    BLANK,
                    reading.method().replace('-', ' '),
                    reading.kind().startsWith("electrode") ? BLANK : "–",
                    reading.kind().startsWith("electrode") ? "C " + BLANK + " P " + BLANK : "–"));
        }
        return sheet(
                input,
                "Commissioning test sheet",
                List.of(
                        new Block.Table(
                                "test",
                                "Readings; low to high is the predicted band at the bounds of the soil",
                                List.of(
                                        Column.text("Reading"),
                                        Column.text("Expected"),
                                        Column.text("Read"),
                                        Column.text("Method"),
                                        Column.text("Isolated"),
                                        Column.text("Probes at, m")),
                                rows),
                        new Block.Facts(expectations(input)),
                        new Block.Facts(List.of(
                                new Fact("State of the ground: wet, dry, frozen", ""),
                                new Fact("Instrument, calibrated until", ""),
                                new Fact("Differences from the drawing", ""))),
                        signed("Tested")));
    }

    /**
     * The readings as a table to fill in, which can be read back into the site file.
     *
     * @param input site and results
     * @return comma-separated values, one head line, lines ended by a line feed
     */
    public static String readingsTable(ReportInput input) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            List<String> head = new ArrayList<>(ReadingsFile.KEYS);
            head.add(ReadingsFile.EXPECTED);
            csv.writeRecord(head);
            for (Reading reading : readings(input)) {
                csv.writeRecord(
                        reading.kind(),
                        reading.of(),
                        "",
                        reading.method(),
                        "",
                        "",
                        "",
                        "",
                        "",
                        reading.expected().replace(Amount.NO_BREAK, " "));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private record Reading(String kind, String of, String expected, String method) {}

    private static List<Reading> readings(ReportInput input) {
        Site site = input.site();
        List<Reading> readings = new ArrayList<>();
        for (Electrode electrode : site.electrodes()) {
            readings.add(new Reading(
                    "electrode-resistance",
                    electrode.name(),
                    band(input.results(), "electrode." + electrode.name() + ".resistance"),
                    "fall-of-potential"));
        }
        if (site.mainEarth() != null) {
            if (site.mainEarth().segments().isEmpty()) {
                readings.add(bond(input.results(), "main-earth"));
            }
            for (EarthSegment segment : site.mainEarth().segments()) {
                readings.add(bond(input.results(), segment.name()));
            }
        }
        if (site.cubicle() != null && site.cubicle().teeLength() != null) {
            readings.add(bond(input.results(), "tee"));
        }
        return readings;
    }

    /** What the expected resistances rest on, at nominal ground. */
    private static List<Fact> expectations(ReportInput input) {
        List<Fact> facts = new ArrayList<>();
        for (Electrode electrode : input.site().electrodes()) {
            String basis = ResistanceBasis.of(input.results(), electrode.name(), "nominal");
            if (!basis.isEmpty()) {
                facts.add(new Fact("Expected of " + electrode.name() + ", nominal", basis));
            }
        }
        return facts;
    }

    private static Reading bond(StudyResults results, String name) {
        return new Reading("bond-continuity", name, band(results, "conductor." + name + ".resistance"), "four-wire");
    }

    private static String band(StudyResults results, String id) {
        List<Result> found = results.of(id).stream()
                .filter(result -> !result.circumstances().keys().containsKey("broken"))
                .toList();
        Optional<Result> low = at(found, "low");
        Optional<Result> high = at(found, "high");
        if (low.isPresent() && high.isPresent()) {
            List<String> ends = Amount.row(
                    List.of(
                            OptionalDouble.of(low.get().value()),
                            OptionalDouble.of(high.get().value())),
                    low.get().unit());
            return ends.get(0).equals(ends.get(1)) ? ends.get(0) : ends.get(0) + " to " + ends.get(1);
        }
        return at(found, "nominal")
                .or(() -> found.stream().findFirst())
                .map(result -> Amount.text(result.value(), result.unit()))
                .orElse("–");
    }

    private static Optional<Result> at(List<Result> results, String bound) {
        return results.stream()
                .filter(result ->
                        result.at().equals(bound) && result.circumstances().within(Case.NONE))
                .findFirst();
    }

    private static Document sheet(ReportInput input, String title, List<Block> content) {
        SiteIdentity site = input.site().site();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Facts(List.of(
                new Fact("Site, pole", site.name() + (site.pole() == null ? "" : ", pole " + site.pole())),
                new Fact(
                        "Drawing, revision",
                        (site.drawing() == null ? "not given" : site.drawing()) + ", "
                                + (site.revision() == null ? "not given" : site.revision())),
                new Fact(
                        "From",
                        input.siteFileName() + ", SHA-256 " + input.sha256() + ", " + ReportInput.TOOL_NAME + " "
                                + input.toolVersion()))));
        blocks.add(new Block.Caution(
                "Before work",
                List.of(
                        "Isolate, prove dead and earth the line before an earth is opened. Earth leads and electrodes may be"
                                + " live also on a pole that looks dead; never disconnect an earth on energised plant.",
                        "Stop at thunder. A competent and licensed person is responsible; local codes and the owner's rules"
                                + " govern.")));
        blocks.addAll(content);
        return new Document(title + " – " + site.name(), "en", blocks);
    }

    private static Block signed(String what) {
        return new Block.Facts(List.of(
                new Fact(what + " by: name, date, signature", ""), new Fact("Checked by: name, date, signature", "")));
    }

    private static List<String> item(String part, String designed) {
        return List.of(part, designed, TICK, BLANK + BLANK);
    }

    private static String text(@Nullable Measure measure) {
        return measure == null
                ? "not given"
                : measure.bounds().map(bounds -> bounds.nominal().text()).orElse("unknown");
    }

    private static String word(Enum<?> word) {
        return SiteTree.word(word).replace('-', ' ');
    }

    private static String written(Object value) {
        if (value instanceof Measure measure) {
            return text(measure);
        }
        return value instanceof Enum<?> word ? word(word) : value.toString();
    }

    private static boolean yesNo(SiteTree.Entry entry) {
        return entry.value() instanceof YesNo;
    }

    private static String conductor(List<SiteTree.Entry> entries, String prefix) {
        List<String> words = new ArrayList<>();
        entries.stream()
                .filter(entry -> entry.path().startsWith(prefix) && entry.value() != YesNo.NO)
                .forEach(entry -> words.add(
                        entry.value() instanceof Measure || (entry.value() instanceof Enum<?> && !yesNo(entry))
                                ? written(entry.value())
                                : entry.path().substring(prefix.length()).toLowerCase(Locale.ROOT) + " "
                                        + entry.value()));
        return words.isEmpty() ? "conductor not given" : String.join(" ", words);
    }
}
