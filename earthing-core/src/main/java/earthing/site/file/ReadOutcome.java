package earthing.site.file;

import earthing.site.Site;
import java.util.List;
import java.util.Objects;

/** What came of reading a site file: a site, or every problem that was found. */
public sealed interface ReadOutcome {

    /**
     * A site was read.
     *
     * @param site the site
     * @param file name of the file as its reader was told
     * @param text the text of the file, without a byte order mark
     * @param sha256 SHA-256 of the bytes of the file, in hexadecimal
     */
    record Valid(Site site, String file, String text, String sha256) implements ReadOutcome {

        /**
         * Checks that no part is missing.
         *
         * @param site the site
         * @param file name of the file as its reader was told
         * @param text the text of the file, without a byte order mark
         * @param sha256 SHA-256 of the bytes of the file, in hexadecimal
         */
        public Valid {
            Objects.requireNonNull(site);
            Objects.requireNonNull(file);
            Objects.requireNonNull(text);
            Objects.requireNonNull(sha256);
        }
    }

    /**
     * The file was refused.
     *
     * @param problems every problem, in the order of the file, at least one
     */
    record Invalid(List<Problem> problems) implements ReadOutcome {

        /**
         * Refuses an empty list.
         *
         * @param problems every problem, in the order of the file, at least one
         */
        public Invalid {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("a file is refused for a reason");
            }
        }
    }
}
