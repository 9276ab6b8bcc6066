package earthing.report;

import earthing.compliance.Explanation;
import earthing.compliance.Finding;
import earthing.report.document.Amount;
import earthing.report.render.TextRenderer;
import java.util.List;
import java.util.Optional;

/** A check in plain words, for a terminal of 80 columns, with what it found on a site. */
public final class ExplanationPage {

    private static final int WIDTH = 80;

    private ExplanationPage() {}

    /**
     * Explains a check.
     *
     * @param id id of a finding or of a check
     * @param findings findings of a site; empty if none is at hand
     * @return lines of at most 80 columns, each ended by a line feed
     * @throws IllegalArgumentException if there is no such check
     */
    public static String text(String id, List<Finding> findings) {
        Explanation told =
                Explanation.of(id).orElseThrow(() -> new IllegalArgumentException("there is no check " + id));
        StringBuilder text = new StringBuilder(id).append('\n');
        part(text, "What it means", told.meaning());
        part(text, "Why it matters", told.why());
        part(text, "What to do", told.action());
        if (!findings.isEmpty()) {
            List<Finding> mine = findings.stream()
                    .filter(finding -> finding.id().equals(id)
                            || (id.indexOf('<') >= 0
                                    && Explanation.of(finding.id()).equals(Optional.of(told))))
                    .toList();
            if (mine.isEmpty()) {
                part(text, "On this site", "this check has no finding here.");
            }
            mine.forEach(finding -> found(text, finding));
        }
        part(
                text,
                "Before any work",
                "earth leads and electrodes may be live; never disconnect an earth on energised plant. A competent and"
                        + " licensed person is responsible; local codes and the owner's rules govern.");
        return text.toString();
    }

    private static void found(StringBuilder text, Finding finding) {
        String amounts = finding.value().isPresent()
                ? " Value " + Amount.text(finding.value(), finding.unit())
                        + (finding.limit().isPresent()
                                ? ", limit " + Amount.text(finding.limit(), finding.unit()) + ", margin "
                                        + Amount.margin(finding.margin())
                                : "")
                        + "."
                : "";
        part(
                text,
                "On this site: " + finding.id() + ", " + finding.subject(),
                finding.status().text() + "." + amounts + " " + ResultSections.sentence(finding.reason())
                        + (finding.advice().isBlank() ? "" : " Advice: " + ResultSections.sentence(finding.advice())));
        part(text, "  Limit or rule from", finding.basis().text());
        finding.worked().ifPresent(worked -> part(text, "  Worked", worked.text()));
    }

    private static void part(StringBuilder text, String title, String sentence) {
        text.append('\n');
        TextRenderer.lines(title + ":", WIDTH).forEach(line -> text.append(line).append('\n'));
        TextRenderer.lines(sentence, WIDTH - 2)
                .forEach(line -> text.append("  ").append(line).append('\n'));
    }
}
