package earthing.report;

import earthing.report.document.Block;
import java.util.ArrayList;
import java.util.List;

/** What is signed comes first and is short; how it was found follows as annexes, for whoever checks it. */
final class ReadingOrder {

    /** The part that is signed, in this order. */
    private static final List<String> SIGNED = List.of(
            "summary",
            "control",
            "verdict",
            "elevation",
            "criteria",
            "contingencies",
            "remedies",
            "sensitivity",
            "acceptance",
            "assumptions");

    private ReadingOrder() {}

    /** The cautions at head and foot, the signed part, the annexes with their letters, each as it was built. */
    static List<Block> of(List<Block> built) {
        List<Block> ordered = new ArrayList<>(List.of(Cautions.head()));
        for (String id : SIGNED) {
            built.stream()
                    .filter(block -> block instanceof Block.Section section
                            && section.id().equals(id))
                    .forEach(ordered::add);
            if (id.equals("control")) {
                ordered.add(new Block.Contents());
            }
        }
        int letter = 0;
        for (Block block : built) {
            if (block instanceof Block.Section section && !SIGNED.contains(section.id())) {
                ordered.add(new Block.Section(
                        section.id(),
                        section.level(),
                        "Annex " + letters(letter) + " – " + section.title(),
                        section.blocks()));
                letter++;
            }
        }
        ordered.add(Cautions.foot());
        return ordered;
    }

    /** A to Z, then AA. */
    private static String letters(int number) {
        char last = (char) ('A' + number % 26);
        return number < 26 ? String.valueOf(last) : letters(number / 26 - 1) + last;
    }
}
