package earthing.site.file;

import earthing.soil.Sounding;
import java.util.List;

/** What came of reading a survey file: soundings, or every problem that was found. */
public sealed interface SurveyOutcome {

    /**
     * A survey was read.
     *
     * @param array name of the probe arrangement, {@code Wenner}, {@code Schlumberger} or {@code Driven rod}
     * @param traverses one sounding a traverse, in the order of the file
     * @param warnings what looks odd though it is possible, one line each with file and line
     */
    record Valid(String array, List<Sounding> traverses, List<String> warnings) implements SurveyOutcome {

        /**
         * Copies the lists.
         *
         * @param array name of the probe arrangement
         * @param traverses one sounding a traverse, in the order of the file
         * @param warnings what looks odd though it is possible
         */
        public Valid {
            traverses = List.copyOf(traverses);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * The file was refused.
     *
     * @param problems every problem, in the order of the file, at least one
     */
    record Invalid(List<Problem> problems) implements SurveyOutcome {

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
