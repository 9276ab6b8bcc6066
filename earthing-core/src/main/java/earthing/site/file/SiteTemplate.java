package earthing.site.file;

import earthing.site.Key;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;

/**
 * A commented file for the command {@code new}, valid as it stands. The short form is filled in with examples; every
 * other key stands there with its meaning, switched off by a {@code #} in the first column.
 */
public final class SiteTemplate {

    private static final int WIDTH = 96;

    private static final List<String> HEAD = List.of(
            "# Site file, version 1: the earthing of a pole-mounted switchgear site.",
            "#",
            "# The values below are examples of an invented site: replace every one of them.",
            "# Every physical value is a number with its unit. Where you do not know it, write unknown.",
            "# A value may have bounds and an origin:",
            "#   {low: 80 ohm.m, nominal: 140 ohm.m, high: 420 ohm.m, origin: measured, date: 2026-03-02, by: field crew}",
            "# Origins: " + String.join(", ", ValueReader.origins()) + ".",
            "# To use a key that is switched off, remove the # in the first column of its line, and of",
            "# the lines of the block that it stands in. Of the shapes of an electrode keep exactly one.",
            "# Heights count from the ground up, depths from the ground down, both positive.",
            "#",
            "# This file helps a decision; a competent and licensed person is responsible for it, and local",
            "# codes and the owner's rules come first.",
            "");

    private final List<String> lines = new ArrayList<>(HEAD);

    private SiteTemplate() {}

    /**
     * The template.
     *
     * @return text of a valid site file, ends with a line break
     */
    public static String text() {
        SiteTemplate template = new SiteTemplate();
        template.block(Block.site(), "", true, "");
        return String.join("\n", template.lines) + '\n';
    }

    /**
     * The site of the template.
     *
     * @return an invented site in the short form
     */
    public static Site site() {
        return ((ReadOutcome.Valid) SiteFile.read(text(), "template")).site();
    }

    /** Appends the keys of a block; the first of them may stand behind the hyphen of a list. */
    private void block(Block block, String indent, boolean on, String hyphen) {
        String first = hyphen;
        for (Entry entry : block.entries()) {
            Key meaning = entry.meaning();
            boolean keyOn = on && (meaning.required() || meaning.brief());
            if (indent.isEmpty() && entry.kind() == Entry.Kind.BLOCK) {
                lines.add("");
            }
            explain(entry, indent, on);
            String start = first.isEmpty() ? indent : indent.substring(2) + first;
            first = "";
            if (entry.kind() == Entry.Kind.BLOCK) {
                key(start + entry.key() + ':', keyOn);
                block(entry.block(), indent + (entry.isList() ? "    " : "  "), keyOn, entry.isList() ? "- " : "");
            } else {
                key(start + entry.key() + ": " + example(entry), keyOn);
            }
        }
    }

    static String example(Entry entry) {
        String example = entry.meaning().example();
        return (entry.kind() == Entry.Kind.TEXT || entry.kind() == Entry.Kind.TABLE) && !entry.isList()
                ? ScalarText.of(example, false)
                : example;
    }

    private void key(String line, boolean on) {
        lines.add(on ? line : '#' + line);
    }

    /** The meaning as a comment above the key, wrapped. */
    private void explain(Entry entry, String indent, boolean on) {
        StringBuilder meaning = new StringBuilder(entry.meaning().doc());
        if (!entry.words().isEmpty()) {
            meaning.append(" One of ").append(String.join(", ", entry.words())).append('.');
        }
        StringBuilder line = new StringBuilder();
        for (String word : meaning.toString().split(" ", -1)) {
            if (!line.isEmpty() && indent.length() + line.length() + word.length() > WIDTH) {
                comment(line, indent, on);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        comment(line, indent, on);
    }

    private void comment(StringBuilder line, String indent, boolean on) {
        lines.add((on ? "" : "#") + indent + "# " + line);
        line.setLength(0);
    }
}
