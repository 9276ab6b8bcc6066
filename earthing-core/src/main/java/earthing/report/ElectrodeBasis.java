package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.site.Electrode;
import earthing.study.Case;
import earthing.study.ResistanceBasis;
import java.util.ArrayList;
import java.util.List;

/** Ground, method and second method of the electrodes' resistances, for every page that shows one. */
final class ElectrodeBasis {

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
        for (Electrode electrode : input.site().electrodes()) {
            for (String bound : bounds) {
                input.results()
                        .one("electrode." + electrode.name() + ".resistance", Case.NONE, bound)
                        .ifPresent(r -> lines.add("Resistance of " + electrode.name() + " at " + bound + ", "
                                + Amount.text(r.value(), r.unit()) + ": "
                                + ResistanceBasis.of(input.results(), electrode.name(), bound) + "."));
            }
        }
        return lines.isEmpty() ? List.of() : List.of(new Block.Bullets(lines));
    }
}
