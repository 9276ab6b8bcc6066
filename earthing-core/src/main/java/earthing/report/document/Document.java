package earthing.report.document;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A whole document.
 *
 * @param title title
 * @param language language tag
 * @param blocks its parts; sections among them have level 2
 */
public record Document(String title, String language, List<Block> blocks) {

    /**
     * Copies the parts; refuses sections of another level and anchors that stand twice.
     *
     * @param title title
     * @param language language tag
     * @param blocks its parts; sections among them have level 2
     */
    public Document {
        blocks = List.copyOf(blocks);
        Set<String> seen = new HashSet<>();
        for (Block block : all(blocks)) {
            String id = idOf(block);
            if (!id.isEmpty() && !seen.add(id)) {
                throw new IllegalArgumentException("the anchor " + id + " stands twice");
            }
        }
        for (Block block : blocks) {
            if (block instanceof Block.Section section && section.level() != 2) {
                throw new IllegalArgumentException("main sections must have level 2; have " + section.level());
            }
        }
    }

    /**
     * Every block, those inside sections and choices too, in reading order.
     *
     * @return the blocks
     */
    public List<Block> everyBlock() {
        return all(blocks);
    }

    private static List<Block> all(List<Block> blocks) {
        List<Block> all = new ArrayList<>();
        for (Block block : blocks) {
            all.add(block);
            if (block instanceof Block.Section section) {
                all.addAll(all(section.blocks()));
            } else if (block instanceof Block.Choice choice) {
                all.add(choice.table());
            }
        }
        return all;
    }

    private static String idOf(Block block) {
        if (block instanceof Block.Section section) {
            return section.id();
        }
        if (block instanceof Block.Table table) {
            return table.id();
        }
        return block instanceof Block.Figure figure ? figure.id() : "";
    }
}
