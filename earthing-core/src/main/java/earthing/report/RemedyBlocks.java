package earthing.report;

import static earthing.report.ResultSections.capital;

import earthing.compliance.Finding;
import earthing.decision.Remedies;
import earthing.decision.RemedyTrial;
import earthing.decision.RemedyTrial.Change;
import earthing.decision.RemedyTrial.Direction;
import earthing.decision.RemedyTrial.Effect;
import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What a search for remedies found, as blocks of a document. */
final class RemedyBlocks {

    /** Sets of which everything is told; of the others only what they consist of. */
    private static final int TOLD_IN_FULL = 3;

    static final List<String> CAUTIONS = List.of(
            "A remedy here is an aid to a decision, from a model. A competent and licensed person is responsible for the"
                    + " design, the work and the release; local codes and the owner's rules govern.",
            "No row is a permission to remove or to disconnect an earth. Never do so on energised plant. A changed pole is"
                    + " tested anew.");

    private final Remedies remedies;

    /** Sets whose effects were told, with their place. */
    private final Map<String, String> told = new HashMap<>();

    private RemedyBlocks(Remedies remedies) {
        this.remedies = remedies;
    }

    /** The section of the report; without a search it says how to get one. */
    static Block section(ReportInput input) {
        return new Block.Section(
                "remedies",
                2,
                "Remedies tried",
                input.remedies()
                        .map(RemedyBlocks::of)
                        .orElseGet(
                                () -> List.of(new Block.Paragraph("Not asked for: with --remedies every change of the"
                                        + " catalogue is tried alone and in sets, each as a study and check of the whole changed"
                                        + " site; the command remedy does the same without a report."))));
    }

    static List<Block> of(Remedies remedies) {
        return new RemedyBlocks(remedies).blocks();
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Caution("About remedies", CAUTIONS));
        blocks.add(new Block.Paragraph(summary()));
        if (!remedies.readings().isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "Not met and left out, because a reading belongs to the pole that was measured and"
                            + " only a new test answers it: " + names(remedies.readings()) + "."));
        }
        if (!remedies.notMet().isEmpty() && !remedies.open().isEmpty()) {
            blocks.add(
                    new Block.Paragraph("Open for want of an input, which no change of the pole answers; while one is"
                            + " open, the check of a changed site says so too. To be asked:"));
            blocks.add(new Block.Bullets(remedies.open().stream()
                    .map(finding -> capital(name(finding)) + ": " + finding.reason()
                            + (finding.advice().isBlank() ? "" : "; " + finding.advice()))
                    .toList()));
        }
        if (!remedies.withheld().isEmpty()) {
            blocks.add(new Block.Paragraph("Not tried, because the owner has to allow it: "
                    + remedies.withheld().stream()
                            .map(remedy -> remedy.title() + " (" + remedy.id() + ", --allow "
                                    + remedy.permission().orElse("") + ")")
                            .collect(Collectors.joining(", "))
                    + "."));
        }
        if (remedies.notMet().isEmpty()) {
            return blocks;
        }
        sets(blocks);
        List<Block> alone = new ArrayList<>();
        remedies.notMet().forEach(finding -> alone(finding, alone));
        blocks.add(new Block.Section("remedies-alone", 3, "Each finding not met, and what meets it alone", alone));
        List<Block> elsewhere = new ArrayList<>();
        elsewhere(elsewhere);
        blocks.add(new Block.Section("remedies-elsewhere", 3, "What these changes do elsewhere", elsewhere));
        return blocks;
    }

    private String summary() {
        int notMet = remedies.notMet().size();
        if (notMet == 0) {
            return "No finding calls for a remedy.";
        }
        if (remedies.sizes().isEmpty()) {
            return notMet + (notMet == 1 ? " finding is" : " findings are")
                    + " not met. Only the named changes were tried.";
        }
        String sizes = remedies.sizes().stream()
                .map(size -> size.tried() == size.possible()
                        ? "every set of " + size.size() + " (" + size.tried() + ")"
                        : size.tried() + " of " + size.possible() + " sets of " + size.size())
                .collect(Collectors.joining(", "));

        return notMet + (notMet == 1 ? " finding is" : " findings are")
                + " not met. Tried, each as the whole study and every"
                + " check on the changed site: " + remedies.singles().size() + " single changes ("
                + remedies.strongest().size() + " of the catalogue apply here, at each step that can be made); then "
                + sizes
                + ", each change at the step that does most alone. A set that fails in one part of the studies was not"
                + " studied further. "
                + (remedies.cutShort()
                        ? "The search was cut short there: a set that was not tried may do as well; --sets and --runs widen it."
                        : "No such set was left out.");
    }

    private void sets(List<Block> blocks) {
        List<Block> inside = new ArrayList<>();
        if (remedies.sets().isEmpty()) {
            inside.add(new Block.Paragraph("No set that was tried meets every finding."));
            remedies.further().ifPresent(trial -> {
                inside.add(new Block.Paragraph((trial.meetsAll()
                                ? "A larger set meets every finding. No change of it can be spared; whether a smaller set"
                                        + " does as well was not shown. "
                                : "The larger set below leaves " + trial.left() + " of them: " + names(left(trial))
                                        + ". It is no solution, but shows how far it goes. ")
                        + "Larger sets were not all tried: this one was grown by the change that brings it furthest, then"
                        + " mended by other steps."));
                inside.add(changes("further", "Changes of the larger set", trial));
                told(trial, inside);
            });
            hopeless(inside);
        }
        int number = 0;
        for (RemedyTrial set : remedies.sets()) {
            number++;
            String cost = cost(remedies.costs().of(set));
            inside.add(changes("set-" + number, "Set " + number + (cost.isEmpty() ? "" : ", cost " + cost), set));
            if (number <= TOLD_IN_FULL) {
                told(set, inside);
                told.put(text(set), "set " + number);
            }
        }
        blocks.add(new Block.Section("remedies-sets", 3, "Smallest sets that meet every finding", inside));
    }

    /** Findings that nothing in the catalogue meets, with the reason. */
    private void hopeless(List<Block> blocks) {
        List<String> lines = new ArrayList<>();
        for (Finding finding : remedies.notMet()) {
            boolean met = !remedies.meeting(finding).isEmpty()
                    || remedies.further().map(trial -> trial.meets(finding)).orElse(false);
            if (!met) {
                lines.add(capital(name(finding)) + ": " + reason(finding));
            }
        }
        if (!lines.isEmpty()) {
            blocks.add(new Block.Paragraph("Met by no change of the catalogue alone, nor by the larger set:"));
            blocks.add(new Block.Bullets(lines));
        }
    }

    private String reason(Finding finding) {
        String advice = finding.advice().isBlank() ? "" : " Advice of the check: " + finding.advice() + ".";
        return remedies.furthest(finding)
                        .map(trial -> words(trial) + " brings it furthest, from a margin of "
                                + Amount.margin(finding.margin()) + " to "
                                + Amount.margin(trial.now(finding).orElseThrow().margin()) + ".")
                        .orElse("no change alone brings it nearer to its limit.")
                + advice;
    }

    private List<Finding> left(RemedyTrial trial) {
        return trial.effects().isEmpty()
                ? remedies.notMet()
                : trial.findings().stream().filter(trial::standsAgainst).toList();
    }

    private Block changes(String id, String caption, RemedyTrial trial) {
        List<List<String>> rows = new ArrayList<>();
        for (Change change : trial.changes()) {
            Double cost = remedies.costs().of().get(change.remedy().id());
            rows.add(List.of(
                    capital(change.remedy().title()),
                    change.text(),
                    cost == null ? "–" : cost(OptionalDouble.of(cost)),
                    change.remedy().id()));
        }
        List<Column> columns = List.of(
                Column.text("What is built"), Column.text("How much"), Column.number("Cost"), Column.text("Id"));
        return new Block.Table("remedies-" + id, caption, columns, rows).withoutEmptyColumns();
    }

    private String cost(OptionalDouble cost) {
        String unit = remedies.costs().unit();
        return cost.isEmpty() ? "" : Numbers.brief(cost.getAsDouble()) + (unit.isEmpty() ? "" : " " + unit);
    }

    private void alone(Finding finding, List<Block> blocks) {
        List<RemedyTrial> meeting = remedies.meeting(finding);
        String head = capital(name(finding)) + " (" + finding.id() + "): "
                + (finding.value().isPresent() && finding.limit().isPresent()
                        ? Amount.text(finding.value(), finding.unit()) + " of "
                                + Amount.text(finding.limit(), finding.unit()) + ", margin "
                                + Amount.margin(finding.margin())
                        : finding.reason());
        if (meeting.isEmpty()) {
            blocks.add(new Block.Paragraph(head + ". No change of the catalogue meets it alone; " + reason(finding)));
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        for (RemedyTrial trial : meeting) {
            rows.add(List.of(
                    capital(trial.changes().get(0).remedy().title()),
                    trial.changes().get(0).text(),
                    trial.now(finding)
                            .map(f -> Amount.text(f.value(), f.unit()))
                            .orElse("no longer arises"),
                    trial.now(finding).map(f -> Amount.margin(f.margin())).orElse("–"),
                    Integer.toString(trial.worsened().size()),
                    Integer.toString(trial.left()),
                    trial.changes().get(0).remedy().id()));
        }
        blocks.add(new Block.Paragraph(head + "."));
        blocks.add(new Block.Table(
                "remedies-for-" + finding.id().replace('.', '-') + "-" + blocks.size(),
                "Changes that meet " + name(finding) + " alone, each at its least step that does",
                List.of(
                        Column.text("What is built"),
                        Column.text("How much"),
                        Column.number("Value"),
                        Column.number("Margin"),
                        Column.number("Worse"),
                        Column.number("Unmet"),
                        Column.text("Id")),
                rows));
    }

    /** Everything that the changes named above do, the worsened findings first. */
    private void elsewhere(List<Block> blocks) {
        Map<String, RemedyTrial> named = new LinkedHashMap<>();
        for (Finding finding : remedies.notMet()) {
            remedies.meeting(finding).forEach(trial -> named.putIfAbsent(text(trial), trial));
        }
        if (named.isEmpty()) {
            blocks.add(new Block.Paragraph("No single change meets a finding."));
        }
        named.forEach((text, trial) -> {
            String place = told.get(text);
            blocks.add(new Block.Paragraph(
                    capital(words(trial)) + (place == null ? ":" : ": told above, " + place + ".")));
            if (place == null) {
                told(trial, blocks);
            }
        });
    }

    private void told(RemedyTrial trial, List<Block> blocks) {
        List<String> lines = new ArrayList<>();
        for (Effect effect : trial.effects()) {
            lines.add(word(effect.direction()) + ": " + effect(effect));
        }
        if (lines.isEmpty()) {
            lines.add("no finding differs");
        }
        trial.changes()
                .forEach(change -> lines.add((trial.changes().size() == 1
                                ? "caution: "
                                : "caution, " + change.remedy().title() + ": ")
                        + change.remedy().caution()));
        blocks.add(new Block.Bullets(lines));
    }

    private static String word(Direction direction) {
        return direction.name().toLowerCase(Locale.ROOT);
    }

    private String effect(Effect effect) {
        String name = name(effect.finding());
        if (effect.after().isEmpty()) {
            return name + " no longer arises, was "
                    + effect.before().orElseThrow().status().text();
        }
        Finding now = effect.after().get();
        if (effect.before().isEmpty()) {
            return name + " is new, " + now.status().text() + margin(now);
        }
        Finding old = effect.before().get();
        String status = effect.ofStatus()
                ? " " + old.status().text() + " → " + now.status().text()
                : " " + now.status().text();
        if (old.margin().isPresent() && now.margin().isPresent()) {
            return name + status + ", margin " + Amount.margin(old.margin()) + " → " + Amount.margin(now.margin());
        }
        if (old.value().isPresent() && now.value().isPresent()) {
            List<String> values = Amount.row(List.of(old.value(), now.value()), now.unit());
            return name + status + ", " + values.get(0) + " → " + values.get(1);
        }
        return name + status + margin(now);
    }

    private static String margin(Finding finding) {
        return finding.margin().isPresent() ? ", margin " + Amount.margin(finding.margin()) : "";
    }

    static String text(RemedyTrial trial) {
        return trial.changes().stream()
                .map(change -> change.remedy().id() + " (" + change.text() + ")")
                .collect(Collectors.joining(", "));
    }

    /** The same for a reader: what is built, not its id. */
    private static String words(RemedyTrial trial) {
        return trial.changes().stream()
                .map(change -> change.remedy().title() + " (" + change.text() + ")")
                .collect(Collectors.joining(", "));
    }

    private static String names(List<Finding> findings) {
        return findings.stream().map(RemedyBlocks::name).distinct().collect(Collectors.joining("; "));
    }

    private static String name(Finding finding) {
        return CheckWords.of(finding);
    }
}
