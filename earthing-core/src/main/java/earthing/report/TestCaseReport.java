package earthing.report;

import earthing.compliance.Expectations;
import earthing.compliance.Finding;
import earthing.quantity.Numbers;
import earthing.report.markup.Markup;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Findings as test cases in the XML that build servers read: what is not met fails, what could not be assessed is an error,
 * what does not concern the site or comes later is skipped. An expectation of the site file is a test case too.
 */
final class TestCaseReport {

    private TestCaseReport() {}

    static String of(ReportInput input) {
        List<Finding> findings = input.findings().stream()
                .sorted(Comparator.comparing(Finding::group))
                .toList();
        List<Expectations.Held> expectations = input.expectations();
        long off = expectations.stream().filter(held -> !held.holds()).count();
        Markup xml = new Markup();
        xml.open(
                "testsuite",
                "name",
                ReportInput.TOOL_NAME + " " + input.siteFileName(),
                "tests",
                Integer.toString(findings.size() + expectations.size()),
                "failures",
                Long.toString(count(findings, "failure") + off),
                "errors",
                Long.toString(count(findings, "error")),
                "skipped",
                Long.toString(count(findings, "skipped")));
        xml.open("properties");
        xml.empty("property", "name", "site", "value", input.site().site().name());
        xml.empty("property", "name", "sha256", "value", input.sha256());
        xml.empty("property", "name", "tool-version", "value", input.toolVersion());
        xml.close();
        Map<String, Integer> times = new HashMap<>();
        for (Finding finding : findings) {
            String name = finding.id() + ": " + finding.subject();
            int time = times.merge(name, 1, Integer::sum);
            xml.open(
                    "testcase",
                    "classname",
                    word(finding.group()),
                    "name",
                    time == 1 ? name : name + " (" + time + ")",
                    "status",
                    finding.status().id());
            outcome(xml, finding);
            xml.close();
        }
        for (Expectations.Held held : expectations) {
            xml.open(
                    "testcase",
                    "classname",
                    "expect",
                    "name",
                    held.path() + ": " + held.expectation().result());
            if (!held.holds()) {
                xml.leaf("failure", held.found(), "message", "expected " + held.expected(), "type", "expectation");
            }
            xml.close();
        }
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + xml.end().replace("<testcase", "\n<testcase").replace("</testsuite>", "\n</testsuite>\n");
    }

    private static void outcome(Markup xml, Finding finding) {
        String element = element(finding);
        if (element.isEmpty()) {
            xml.leaf("system-out", words(finding));
        } else if (element.equals("skipped")) {
            xml.leaf(element, words(finding), "message", finding.status().text());
        } else {
            xml.leaf(
                    element,
                    words(finding),
                    "message",
                    finding.status().text() + ": " + finding.reason(),
                    "type",
                    finding.status().id());
        }
    }

    private static long count(List<Finding> findings, String element) {
        return findings.stream().filter(f -> element(f).equals(element)).count();
    }

    private static String element(Finding finding) {
        return switch (finding.status()) {
            case NOT_MET -> "failure";
            case INSUFFICIENT_DATA, NOT_ASSESSED -> "error";
            case NOT_APPLICABLE, DUE_LATER -> "skipped";
            case MET, ACCEPTED_DEPARTURE -> "";
        };
    }

    private static String words(Finding finding) {
        StringBuilder words = new StringBuilder(finding.reason());
        String unit = finding.unit().isEmpty() ? "" : " " + finding.unit();
        finding.value()
                .ifPresent(v -> words.append("\nvalue: ")
                        .append(Numbers.significant(v, 6))
                        .append(unit));
        finding.limit()
                .ifPresent(v -> words.append("\nlimit: ")
                        .append(Numbers.significant(v, 6))
                        .append(unit));
        words.append("\nbasis: ").append(finding.basis().text());
        return finding.advice().isBlank()
                ? words.toString()
                : words.append("\nadvice: ").append(finding.advice()).toString();
    }

    private static String word(Finding.Group group) {
        return group.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
