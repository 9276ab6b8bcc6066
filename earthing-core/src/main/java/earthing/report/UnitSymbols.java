package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import java.util.List;

/**
 * Units behind a number as they are printed everywhere else: what the studies tell in words has the ASCII units of the site
 * file. What the file itself says, and lines of working, stay as they are.
 */
final class UnitSymbols {

    private UnitSymbols() {}

    static List<Block> in(List<Block> blocks) {
        return Rewording.of(blocks, Amount::withSymbols, UnitSymbols::ofTheFile);
    }

    private static boolean ofTheFile(Block.Table table) {
        return table.id().startsWith("inputs-") && !table.id().equals("inputs-effective");
    }
}
