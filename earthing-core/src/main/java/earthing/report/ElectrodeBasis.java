package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.study.Case;
import earthing.study.ResistanceBasis;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Ground, method and second method of the electrodes' resistances, for every page that shows one. */
final class ElectrodeBasis {

    /** All bounds that a resistance is told for. */
    static final List<String> EVERY_BOUND = List.of("low", "nominal", "high");

    /** The nominal ground alone, where the other bounds are told elsewhere. */
    static final List<String> NOMINAL = List.of("nominal");

    private static final String PREFIX = "electrode.";
    private static final String SUFFIX = ".resistance";

    private ElectrodeBasis() {}

    /**
     * One line an electrode and bound.
     *
     * @param input site and results
     * @param bounds bounds to tell
     * @return a list, or nothing where no resistance is known
     */
    static List<Block> of(ReportInput input, List<String> bounds) {
        List<String> lines = new ArrayList<>();
        Set<String> names = new LinkedHashSet<>();
        input.site().electrodes().forEach(electrode -> names.add(electrode.name()));
        // The butt of a pole and the anchors of stays stand in no list of the file.
        input.results()
                .under(PREFIX)
                .map(Result::id)
                .filter(id -> id.endsWith(SUFFIX) && !ConvergenceTable.belongs(id))
                .forEach(id -> names.add(id.substring(PREFIX.length(), id.length() - SUFFIX.length())));
        for (String name : names) {
            for (String bound : bounds) {
                input.results()
                        .one(PREFIX + name + SUFFIX, Case.NONE, bound)
                        .ifPresent(r -> lines.add("Resistance of " + name + " at " + bound + ", "
                                + Amount.text(r.value(), r.unit()) + ": "
                                + ResistanceBasis.of(input.results(), name, bound) + "."));
            }
        }
        return lines.isEmpty() ? List.of() : List.of(new Block.Bullets(lines));
    }
}
