package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.quantity.Numbers;
import earthing.report.document.Block;
import earthing.report.render.TextRenderer;
import earthing.soil.FitParameter;
import earthing.soil.ReadingFit;
import earthing.soil.SoundingFit;
import earthing.soil.SoundingInversion;
import earthing.study.SurveyStudy;
import java.util.ArrayList;
import java.util.List;

/** A soil survey and the layers that fit it, for a terminal of 80 columns or for machines. */
public final class SurveyReport {

    private static final int WIDTH = 80;
    private static final String FORMAT = "earthing-survey/1";
    private static final String CAUTION = "A decision aid: a competent, licensed person is responsible, and local codes"
            + " and the owner's rules govern. The ground changes with the season.";

    private SurveyReport() {}

    /**
     * The survey as text, with the block to paste into a site file.
     *
     * @param file name of the survey file
     * @param array name of the probe arrangement
     * @param study the study
     * @param warnings what the reader remarked
     * @return lines, each ended by a line feed
     */
    public static String text(String file, String array, SurveyStudy study, List<String> warnings) {
        SoundingFit fit = study.pooled().best();
        StringBuilder text = new StringBuilder();
        paragraph(text, file + ": " + survey(array, study) + ".");
        text.append('\n');
        table(text, layers("layers", study.pooled()));
        paragraph(
                text,
                "In brackets the 90 % interval; ? where the readings do not hold a value within a factor of 2. Misfit "
                        + percent(fit.misfit()) + " r.m.s.");
        text.append('\n');
        if (study.pooled().fits().size() > 1) {
            table(text, counts(study.pooled()));
        }
        for (SoundingInversion one : study.each()) {
            table(text, layers("traverse-" + one.sounding().traverse(), one));
        }
        table(text, readings(study));
        List<String> remarks = new ArrayList<>(warnings);
        remarks.addAll(study.remarks());
        if (!study.widened(false).isEmpty()) {
            remarks.add("The block below bounds a resistivity no closer than "
                    + Numbers.brief(study.leastSpread(false))
                    + " times either way: the interval holds the scatter of the readings, not the ground beside the lines"
                    + " nor another season. A site file that describes the season and names this file by survey-file takes "
                    + Numbers.brief(study.leastSpread(true)) + " times. Common practice, no published source.");
        }
        remarks.add(CAUTION);
        remarks.forEach(remark -> paragraph(text, "- " + remark));
        text.append("\nFor the site file:\n\n").append(block(array, study));
        return text.toString();
    }

    /**
     * The block {@code soil} of a site file.
     *
     * @param array name of the probe arrangement
     * @param study the study
     * @return YAML
     */
    public static String block(String array, SurveyStudy study) {
        SoundingFit fit = study.pooled().best();
        StringBuilder yaml = new StringBuilder("soil:\n");
        if (fit.layers() == 1) {
            yaml.append("  resistivity: ")
                    .append(measure(study.taken(0, false), "ohm.m"))
                    .append('\n');
        } else {
            yaml.append("  layers:\n");
            for (int i = 0; i < fit.layers(); i++) {
                yaml.append("    - resistivity: ")
                        .append(measure(study.taken(i, false), "ohm.m"))
                        .append('\n');
                if (i < fit.layers() - 1) {
                    boolean held = fit.equivalent(i).isPresent();
                    yaml.append("      thickness: ")
                            .append(
                                    held
                                            ? Numbers.brief(fit.thickness(i).value()) + " m"
                                            : measure(fit.thickness(i), "m"))
                            .append('\n');
                }
            }
        }
        return yaml.append("  survey: ")
                .append(survey(array, study))
                .append('\n')
                .toString();
    }

    /**
     * The survey for machines, format {@code earthing-survey/1}: SI values at full precision.
     *
     * @param file name of the survey file
     * @param array name of the probe arrangement
     * @param study the study
     * @param warnings what the reader remarked
     * @return JSON
     */
    public static String json(String file, String array, SurveyStudy study, List<String> warnings) {
        JsonArray traverses = new JsonArray();
        study.each().forEach(one -> traverses.add(inversion(one)));
        JsonArray remarks = new JsonArray();
        warnings.forEach(remarks::add);
        study.remarks().forEach(remarks::add);
        return new JsonObject()
                        .add("format", FORMAT)
                        .add("file", file)
                        .add("array", array)
                        .add("pooled", inversion(study.pooled()))
                        .add("traverses", traverses)
                        .add("remarks", remarks)
                        .add("caution", CAUTION)
                        .add("site-file-block", block(array, study))
                        .toString(WriterConfig.PRETTY_PRINT)
                        .replace("\r\n", "\n")
                + "\n";
    }

    private static JsonObject inversion(SoundingInversion inversion) {
        JsonArray fits = new JsonArray();
        for (SoundingFit fit : inversion.fits()) {
            JsonArray parameters = new JsonArray();
            fit.parameters().forEach(parameter -> parameters.add(parameter(parameter)));
            fit.products().forEach(parameter -> parameters.add(parameter(parameter)));
            JsonArray readings = new JsonArray();
            for (ReadingFit one : fit.readings()) {
                readings.add(new JsonObject()
                        .add("spacing", one.reading().spacing())
                        .add("measured", one.reading().apparentResistivity())
                        .add("computed", one.computed())
                        .add("set-aside", one.setAside()));
            }
            fits.add(new JsonObject()
                    .add("layers", fit.layers())
                    .add("misfit", fit.misfit())
                    .add("criterion", fit.criterion())
                    .add("condition", fit.condition())
                    .add("parameters", parameters)
                    .add("readings", readings));
        }
        return new JsonObject()
                .add("traverse", inversion.sounding().traverse())
                .add("layers", inversion.best().layers())
                .add("fits", fits);
    }

    private static JsonObject parameter(FitParameter parameter) {
        String kind = switch (parameter.kind()) {
            case RESISTIVITY -> "resistivity";
            case THICKNESS -> "thickness";
            case TRANSVERSE_RESISTANCE -> "transverse-resistance";
            case LONGITUDINAL_CONDUCTANCE -> "longitudinal-conductance";
        };
        String unit = switch (parameter.kind()) {
            case RESISTIVITY -> "ohm.m";
            case THICKNESS -> "m";
            case TRANSVERSE_RESISTANCE -> "ohm.m2";
            case LONGITUDINAL_CONDUCTANCE -> "S";
        };
        return new JsonObject()
                .add("id", "soil.layer." + (parameter.layer() + 1) + "." + kind)
                .add("value", parameter.value())
                .add("low", parameter.low())
                .add("high", parameter.high())
                .add("unit", unit)
                .add("resolved", parameter.resolved());
    }

    private static String survey(String array, SurveyStudy study) {
        int traverses = study.traverses().size();
        int readings = study.pooled().sounding().readings().size();
        return array + " sounding, " + traverses + (traverses == 1 ? " traverse, " : " traverses, ") + readings
                + (study.byDrivenRods() ? " readings, depths " : " readings, spacings ")
                + Numbers.brief(study.pooled().sounding().shortest()) + " m to "
                + Numbers.brief(study.pooled().sounding().longest()) + " m";
    }

    private static Block.Table layers(String id, SoundingInversion inversion) {
        SoundingFit fit = inversion.best();
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < fit.layers(); i++) {
            rows.add(List.of(
                    Integer.toString(i + 1),
                    bounded(fit.resistivity(i)),
                    i == fit.layers() - 1 ? "to the depth" : bounded(fit.thickness(i))));
        }
        String name = inversion.sounding().traverse();
        return new Block.Table(
                id,
                name.isEmpty() || name.equals("all") ? "Layers that fit all readings" : "Layers of traverse " + name,
                List.of(
                        Block.Column.text("Layer"),
                        Block.Column.text("Resistivity ohm.m"),
                        Block.Column.text("Thickness m")),
                rows);
    }

    private static Block.Table counts(SoundingInversion inversion) {
        List<List<String>> rows = new ArrayList<>();
        for (SoundingFit fit : inversion.fits()) {
            rows.add(List.of(
                    Integer.toString(fit.layers()),
                    percent(fit.misfit()),
                    Numbers.significant(fit.criterion(), 4),
                    Integer.toString(fit.setAside().size()),
                    fit.layers() == inversion.best().layers() ? "taken" : ""));
        }
        return new Block.Table(
                "counts",
                "Layer counts tried; the fewest layers within 2 of the lowest criterion are taken",
                List.of(
                        Block.Column.number("Layers"),
                        Block.Column.number("Misfit"),
                        Block.Column.number("Criterion"),
                        Block.Column.number("Set aside"),
                        Block.Column.text("")),
                rows);
    }

    private static Block.Table readings(SurveyStudy study) {
        List<List<String>> rows = new ArrayList<>();
        List<ReadingFit> fits = study.pooled().best().readings();
        int next = 0;
        for (var traverse : study.traverses()) {
            for (int i = 0; i < traverse.readings().size(); i++) {
                ReadingFit one = fits.get(next++);
                rows.add(List.of(
                        traverse.traverse(),
                        Numbers.brief(one.reading().spacing()),
                        Numbers.brief(one.reading().apparentResistivity()),
                        Numbers.brief(one.computed()),
                        percent(one.residual()),
                        one.setAside() ? "set aside" : ""));
            }
        }
        return new Block.Table(
                "readings",
                "Readings and fit",
                List.of(
                        Block.Column.text("Traverse"),
                        Block.Column.number(study.byDrivenRods() ? "Depth m" : "Spacing m"),
                        Block.Column.number("Measured ohm.m"),
                        Block.Column.number("Computed ohm.m"),
                        Block.Column.number("Residual"),
                        Block.Column.text("")),
                rows);
    }

    private static String bounded(FitParameter parameter) {
        return Numbers.brief(parameter.value()) + " (" + Numbers.brief(parameter.low()) + " to "
                + Numbers.brief(parameter.high()) + ")" + (parameter.resolved() ? "" : " ?");
    }

    private static String measure(FitParameter parameter, String unit) {
        return "{low: " + Numbers.brief(parameter.low()) + " " + unit + ", nominal: " + Numbers.brief(parameter.value())
                + " " + unit + ", high: " + Numbers.brief(parameter.high()) + " " + unit + ", origin: measured}";
    }

    private static String percent(double ratio) {
        return Numbers.significant(100 * ratio, 2) + " %";
    }

    private static void table(StringBuilder text, Block.Table table) {
        paragraph(text, table.caption() + ":");
        text.append('\n').append(TextRenderer.table(table, WIDTH)).append('\n');
    }

    private static void paragraph(StringBuilder text, String sentence) {
        TextRenderer.lines(sentence, WIDTH).forEach(line -> text.append(line).append('\n'));
    }
}
