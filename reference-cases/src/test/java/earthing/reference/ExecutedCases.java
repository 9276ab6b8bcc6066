package earthing.reference;

import java.nio.file.Path;
import java.util.List;

/** The case files, run once for all tests of a run. */
final class ExecutedCases {

    static final Path FOLDER = Path.of("cases");

    private static final List<ReferenceCase> CASES = CaseReader.readFolder(FOLDER);
    private static final List<RowOutcome> OUTCOMES = CaseRunner.run(CASES, ReferenceModels.all());

    private ExecutedCases() {}

    static List<ReferenceCase> cases() {
        return CASES;
    }

    static List<RowOutcome> outcomes() {
        return OUTCOMES;
    }
}
