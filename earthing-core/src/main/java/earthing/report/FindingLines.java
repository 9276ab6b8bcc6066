package earthing.report;

import earthing.compliance.Finding;
import earthing.site.file.KeyPlaces;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The line of the site file that a finding has to do with. */
final class FindingLines {

    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9-]*(?:\\.[a-z][a-z0-9-]*)+");

    private final KeyPlaces places;

    FindingLines(String siteFileText) {
        places = KeyPlaces.of(siteFileText);
    }

    /** The line of the first key that advice, reason or basis names, or of the block that it would stand in; else 1. */
    int of(Finding finding) {
        Matcher key = KEY.matcher(finding.advice() + " " + finding.reason() + " "
                + finding.basis().text());
        while (key.find()) {
            int line = places.line(key.group());
            if (line > 0) {
                return line;
            }
        }
        return 1;
    }

    /** The line of a path, 1 if it is not there. */
    int of(String path) {
        return Math.max(1, places.line(path));
    }
}
