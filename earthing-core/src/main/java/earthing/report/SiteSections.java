package earthing.report;

import earthing.compliance.Finding;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Quantity;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.figure.ElevationWords;
import earthing.report.figure.PoleElevation;
import earthing.site.Criteria;
import earthing.site.NeighbourKind;
import earthing.site.OwnerCriteria;
import earthing.site.Site;
import earthing.site.file.SiteTree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The earth paths, the inputs and the criteria. */
final class SiteSections {

    /** Anchor of the figure without which there is no report. */
    static final String ELEVATION_FIGURE = "figure-elevation";

    /** Facts about what else is joined to the earths, which every report shows. */
    static final String SCREEN = "Screen of the control cable";

    /** Whose earth the auxiliary supply is referenced to. */
    static final String SUPPLY = "Auxiliary supply";

    /** Where the earth of a low-voltage network is. */
    static final String LOW_VOLTAGE = "Low-voltage earth";

    private static final String ASSUMED = "ASSUMED";

    private static final String NOT_STATED = "not stated";

    /** The path of a field of a member of a list. */
    private static final Pattern MEMBER = Pattern.compile("(.*\\[[^\\[\\]]*])\\.[^\\[\\]]*");

    private SiteSections() {}

    static List<Block> of(ReportInput input, References references) {
        return List.of(elevation(input), inputs(input), criteria(input), limits(input, references));
    }

    private static Block elevation(ReportInput input) {
        String svg = PoleElevation.of(input.site(), ELEVATION_FIGURE);
        return new Block.Section(
                "elevation",
                2,
                "Site and earth paths",
                List.of(
                        new Block.Figure(
                                ELEVATION_FIGURE,
                                "Elevation of the pole. Heights and depths are to scale; distances to the side are not, they"
                                        + " are written. Solid: main earth and tee. Long dashes: own lead of the cubicle."
                                        + " Dash-dot: second lead. Dots: broken or missing. Circles on the main earth: joints."
                                        + " Dots at the ends of the control cable: full where its screen is bonded, open where not."
                                        + " It is drawn from the site file; compare it with the pole.",
                                ElevationWords.of(input.site()),
                                svg,
                                Optional.empty()),
                        joined(input.site())));
    }

    /** What the drawing cannot tell by a line alone. */
    private static Block joined(Site site) {
        String screen = site.controlCable() == null
                ? "no control cable is described"
                : site.controlCable().screen() == null
                        ? "none is described"
                        : ElevationWords.bond(
                                SiteTree.word(site.controlCable().screen().bond()));
        String supply = site.auxiliarySupply() == null
                ? "none is described"
                : SiteTree.word(site.auxiliarySupply().kind()).replace('-', ' ') + ", earth reference: "
                        + SiteTree.word(site.auxiliarySupply().earthReference()).replace('-', ' ');
        List<String> low = new ArrayList<>();
        if (site.lvTransformer() != null) {
            low.add("transformer on this pole, neutral joined to the main earth: "
                    + SiteTree.word(site.lvTransformer().neutralJoinedToMainEarth())
                    + (site.lvTransformer().electrode() == null
                            ? ""
                            : ", electrode " + site.lvTransformer().electrode()));
        }
        site.neighbours().stream()
                .filter(neighbour -> neighbour.kind() == NeighbourKind.LV_EARTH)
                .forEach(neighbour ->
                        low.add(neighbour.name() + ", " + or(neighbour.distance(), "") + " from the pole"));
        return new Block.Facts(List.of(
                new Block.Fact(SCREEN, screen),
                new Block.Fact(SUPPLY, supply),
                new Block.Fact(LOW_VOLTAGE, low.isEmpty() ? "none is described" : String.join("; ", low))));
    }

    private static Block inputs(ReportInput input) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(
                "Every value of the site file, as written; the last column repeats the nominal value in SI. Values that"
                        + " the author marked as assumed carry the word " + ASSUMED + ". A member of a list"
                        + " inside a block stands in one row where nothing else is to be told of its values."));
        Map<String, List<SiteTree.Entry>> heads = new LinkedHashMap<>();
        for (SiteTree.Entry entry : SiteTree.entries(input.site())) {
            heads.computeIfAbsent(topOf(entry.path()), key -> new ArrayList<>()).add(entry);
        }
        heads.forEach((head, entries) -> blocks.add(table(head, rows(head, entries))));
        return new Block.Section("inputs", 2, "Inputs", blocks);
    }

    /** A row for each entry; the plain entries of one member of an inner list stand in one. */
    private static List<List<String>> rows(String head, List<SiteTree.Entry> entries) {
        Map<String, List<SiteTree.Entry>> members = new LinkedHashMap<>();
        for (SiteTree.Entry entry : entries) {
            Matcher member = MEMBER.matcher(entry.path());
            members.computeIfAbsent(member.matches() ? member.group(1) : entry.path(), key -> new ArrayList<>())
                    .add(entry);
        }
        List<List<String>> rows = new ArrayList<>();
        members.forEach((path, mine) -> {
            // A member of a main list, an electrode for example, keeps a row for each value.
            boolean inner = !key(head, path).startsWith("[") || path.matches(".*\\[\\d+]");
            if (inner && mine.size() > 1 && mine.stream().allMatch(SiteSections::isPlain)) {
                List<String> values = new ArrayList<>();
                mine.forEach(entry -> values.add(entry.path().substring(path.length() + 1) + " "
                        + row("", entry.value()).get(2)));
                boolean measured = mine.stream().anyMatch(entry -> entry.value() instanceof Measure);
                rows.add(List.of(key(head, path), "", String.join(", ", values), "", measured ? NOT_STATED : "", ""));
            } else {
                mine.forEach(entry -> rows.add(row(key(head, entry.path()), entry.value())));
            }
        });
        return rows;
    }

    private static String key(String head, String path) {
        String key = path.startsWith(head) ? path.substring(head.length()) : path;
        return key.startsWith(".") ? key.substring(1) : key;
    }

    /** Whether a value has neither spread nor an origin worth a row. */
    private static boolean isPlain(SiteTree.Entry entry) {
        return !(entry.value() instanceof Measure measure)
                || (measure.isKnown() && !measure.hasSpread() && origin(measure).equals(NOT_STATED));
    }

    /** The block of the site file; keys outside any block stand beside the site. */
    private static String topOf(String path) {
        int end = path.length();
        for (char stop : new char[] {'.', '['}) {
            int at = path.indexOf(stop);
            end = at >= 0 ? Math.min(end, at) : end;
        }
        return end == path.length() ? "site" : path.substring(0, end);
    }

    /** A table without the columns of low and high where no value has a spread. */
    private static Block table(String block, List<List<String>> rows) {
        boolean spread = rows.stream().anyMatch(row -> !row.get(1).isEmpty());
        List<Column> columns = List.of(
                Column.text("Key"),
                Column.text("Low"),
                Column.text(spread ? "Nominal" : "Value"),
                Column.text("High"),
                Column.text("Origin, date"),
                Column.number("Nominal in SI"));
        return new Block.Table(
                "inputs-" + block,
                "Inputs: " + block.replace('-', ' '),
                spread ? columns : narrowed(columns),
                spread ? rows : rows.stream().map(SiteSections::narrowed).toList());
    }

    private static <T> List<T> narrowed(List<T> cells) {
        return List.of(cells.get(0), cells.get(2), cells.get(4), cells.get(5));
    }

    private static List<String> row(String key, Object value) {
        if (!(value instanceof Measure measure)) {
            String text = value instanceof Enum<?> word ? SiteTree.word(word) : value.toString();
            return List.of(key, "", text, "", "", "");
        }
        if (measure.bounds().isEmpty()) {
            return List.of(key, "", "UNKNOWN", "", origin(measure), "");
        }
        Measure.Bounds bounds = measure.bounds().get();
        String unit = measure.dimension().siUnit();
        String si = Numbers.significant(bounds.nominal().si(), 6);
        boolean spread = measure.hasSpread();
        return List.of(
                key,
                spread ? written(bounds.low()) : "",
                written(bounds.nominal()),
                spread ? written(bounds.high()) : "",
                origin(measure),
                trimmed(si) + (unit.isEmpty() ? "" : Amount.NO_BREAK + unit));
    }

    private static String written(Quantity quantity) {
        return quantity.text().replace(" ", Amount.NO_BREAK);
    }

    private static String trimmed(String digits) {
        if (digits.indexOf('.') < 0) {
            return digits;
        }
        int exponent = digits.indexOf('e');
        int end = exponent < 0 ? digits.length() : exponent;
        String tail = digits.substring(end);
        while (digits.charAt(end - 1) == '0') {
            end--;
        }
        return digits.substring(0, digits.charAt(end - 1) == '.' ? end - 1 : end) + tail;
    }

    private static String origin(Measure measure) {
        StringBuilder text = new StringBuilder();
        switch (measure.origin()) {
            case ASSUMED -> text.append(ASSUMED);
            case UNSTATED -> text.append(NOT_STATED);
            default ->
                text.append(measure.origin().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        }
        if (!measure.date().isEmpty()) {
            text.append(", ").append(measure.date());
        }
        if (!measure.by().isEmpty()) {
            text.append(", ").append(measure.by());
        }
        return text.toString();
    }

    private static Block criteria(ReportInput input) {
        List<Block> blocks = new ArrayList<>();
        Criteria criteria = input.site().criteria();
        if (criteria == null) {
            blocks.add(
                    new Block.Paragraph("The site file has no block criteria; the checks use the bases listed below."));
        } else {
            blocks.add(new Block.Facts(List.of(
                    new Block.Fact("Touch voltage", touch(criteria)),
                    new Block.Fact("Footwear credited", or(criteria.footwearResistance(), "none")),
                    new Block.Fact(
                            "Covering credited",
                            criteria.covering() == null
                                    ? "none"
                                    : or(criteria.covering().resistivity(), "") + " when wet, "
                                            + or(criteria.covering().thickness(), "") + " thick"),
                    new Block.Fact("Shocks merged below a dead time of", or(criteria.shockMergingTime(), "not given")),
                    new Block.Fact("Owner's electrode resistance", or(criteria.electrodeResistance(), "not given")),
                    new Block.Fact("Conductor before the fault", or(criteria.initialTemperature(), "not given")),
                    new Block.Fact("Owner's final temperature", or(criteria.finalTemperature(), "not given")),
                    new Block.Fact("Owner's protective margin", or(criteria.protectiveMargin(), "not given")))));
        }
        blocks.add(
                new Block.Paragraph(
                        "No credit for footwear or covering is taken unless it is declared above. Local codes and the owner's"
                                + " rules govern where they are stricter. Every limit with its clause stands under \"Limits used\"."));
        return new Block.Section("criteria", 2, "Criteria", blocks);
    }

    /** The name of a check beside its limit. */
    static String limited(Finding finding) {
        return ResultSections.capital(CheckWords.of(finding));
    }

    private static Block limits(ReportInput input, References references) {
        List<Block> blocks = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        input.findings().stream()
                .filter(f -> f.limit().isPresent())
                .map(f -> List.of(
                        limited(f), Amount.text(f.limit(), f.unit()), f.basis().text(), references.cite(f.basis())))
                .distinct()
                .forEach(rows::add);
        if (!rows.isEmpty()) {
            blocks.add(new Block.Table(
                    "criteria-limits",
                    "Limits used, with clause and edition",
                    List.of(Column.text("Check"), Column.number("Limit"), Column.text("Basis"), Column.text("Ref")),
                    rows));
        }
        return new Block.Section(
                "limits",
                2,
                "Limits used",
                blocks.isEmpty() ? List.of(new Block.Paragraph("No finding has a limit.")) : blocks);
    }

    private static String touch(Criteria criteria) {
        return switch (criteria.touch()) {
            case EN_50522_2010 -> "EN 50522:2010";
            case EN_50522_2022 -> "EN 50522:2022";
            case IEEE_80_50KG -> "IEEE Std 80, body weight 50 kg";
            case IEEE_80_70KG -> "IEEE Std 80, body weight 70 kg";
            case IEC_60479_1 -> "IEC/TS 60479-1:2005, body current through the body impedance";
            case OWNER -> criteria.owner() == null ? "the owner's own set, not given" : owner(criteria.owner());
        };
    }

    private static String owner(OwnerCriteria owner) {
        return owner.name() + ", " + owner.reference() + (owner.date() == null ? "" : " of " + owner.date());
    }

    private static String or(@Nullable Measure measure, String otherwise) {
        if (measure == null) {
            return otherwise;
        }
        return measure.bounds().map(b -> b.nominal().text()).orElse("unknown");
    }
}
