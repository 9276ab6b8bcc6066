package earthing.report.render;

import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.report.markup.Markup;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;

/** A document as one self-contained HTML page, well-formed as XML too; nothing is fetched from anywhere. */
public final class HtmlRenderer {

    /** The table whose rows have the names of findings. */
    private static final String VERDICTS = "verdict-checks";
    /** A table of so many rows stays on one page, unless its cells hold sentences. */
    private static final int SHORT = 12;
    /** More characters than these are a sentence. */
    private static final int SENTENCE = 80;

    private final Markup page = new Markup();
    private final boolean print;

    /** From the id of a finding to the anchor of its line of working. */
    private final Map<String, String> workings = new HashMap<>();

    /** From the name of a finding to that anchor; empty where several have the name. */
    private final Map<String, String> named = new HashMap<>();

    private int workingsWritten;

    private Document document = new Document("", "en", List.of());

    private HtmlRenderer(boolean print) {
        this.print = print;
    }

    /**
     * Renders a document.
     *
     * @param document the document
     * @return the page
     */
    public static String render(Document document) {
        HtmlRenderer renderer = new HtmlRenderer(false);
        renderer.page(document, resource("report.css"));
        return "<!DOCTYPE html>\n" + renderer.page.end() + "\n";
    }

    /**
     * The same page for a printer that knows CSS 2.1 and pages: with bookmarks, a foot line and texts for drawings
     * where such a printer looks for them.
     *
     * @param document the document
     * @return the page as XHTML
     */
    public static String forPrint(Document document) {
        HtmlRenderer renderer = new HtmlRenderer(true);
        String foot = document.title().replaceAll("[\\\\'\"\\p{Cntrl}]", " ");
        renderer.page(document, resource("report-pdf.css").replace("FOOTER", foot));
        return renderer.page.end();
    }

    private void page(Document document, String style) {
        int number = 0;
        for (Block block : document.everyBlock()) {
            if (block instanceof Block.Working working) {
                number++;
                int end = working.subject().indexOf(": ");
                String anchor = "working-" + number;
                workings.putIfAbsent(
                        end < 0 ? working.subject() : working.subject().substring(0, end), anchor);
                if (end > 0) {
                    named.merge(working.subject().substring(end + 2), anchor, (one, other) -> "");
                }
            }
        }
        page.open("html", "lang", document.language(), "xmlns", "http://www.w3.org/1999/xhtml");
        page.text("\n").open("head").empty("meta", "charset", "utf-8");
        page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        page.leaf("title", document.title()).leaf("style", style);
        if (print && hasSections(document)) {
            bookmarks(document);
        }
        page.close();
        page.text("\n").open("body").open("main");
        page.leaf("h1", document.title());
        this.document = document;
        if (document.blocks().stream().noneMatch(block -> block instanceof Block.Contents)) {
            contents();
        }
        document.blocks().forEach(this::block);
        page.close();
        if (!print && document.everyBlock().stream().anyMatch(block -> block instanceof Block.Choice)) {
            page.leaf("script", resource("choice.js"));
        }
        page.close().close();
    }

    private void bookmarks(Document document) {
        page.open("bookmarks");
        document.blocks().forEach(this::bookmark);
        page.close();
    }

    private void bookmark(Block block) {
        if (block instanceof Block.Section section) {
            page.open("bookmark", "name", section.title(), "href", "#" + section.id());
            section.blocks().forEach(this::bookmark);
            page.close();
        }
    }

    private static boolean hasSections(Document document) {
        return document.blocks().stream().anyMatch(block -> block instanceof Block.Section);
    }

    private void contents() {
        if (!hasSections(document)) {
            return;
        }
        page.open("nav", "aria-label", "Contents");
        if (document.blocks().stream().anyMatch(block -> block instanceof Block.Contents)) {
            page.leaf("p", "Contents", "class", "contents");
        }
        List<Block.Section> sections = document.blocks().stream()
                .filter(Block.Section.class::isInstance)
                .map(Block.Section.class::cast)
                .toList();
        // Two lists side by side on paper: columns of the style sheet would lose the tags of the links.
        int half = print ? (sections.size() + 1) / 2 : sections.size();
        for (int from = 0; from < sections.size(); from += half) {
            page.open("ol");
            for (Block.Section section : sections.subList(from, Math.min(sections.size(), from + half))) {
                page.open("li")
                        .leaf("a", section.title(), "href", "#" + section.id())
                        .close();
            }
            page.close();
        }
        page.close();
    }

    private void block(Block block) {
        page.text("\n");
        if (block instanceof Block.Section section) {
            page.open("section", "id", section.id(), "aria-labelledby", section.id() + "-heading");
            page.leaf("h" + section.level(), section.title(), "id", section.id() + "-heading");
            section.blocks().forEach(this::block);
            page.close();
        } else if (block instanceof Block.Contents) {
            contents();
        } else if (block instanceof Block.Paragraph paragraph) {
            if (paragraph.text().endsWith(":")) {
                page.leaf("p", paragraph.text(), "class", "lead-in");
            } else {
                page.leaf("p", paragraph.text());
            }
        } else if (block instanceof Block.Headline headline) {
            page.open("p", "class", "headline " + statusClass(headline.status()));
            page.leaf("strong", headline.status()).text(" – " + headline.text()).close();
        } else if (block instanceof Block.Choice choice) {
            page.open("div", "class", "choice", "data-keys", Integer.toString(choice.keys()));
            table(choice.table());
            page.close();
        } else if (block instanceof Block.Table table) {
            table(table);
        } else if (block instanceof Block.Bullets bullets) {
            list(bullets.items());
        } else if (block instanceof Block.Figure figure) {
            figure(figure);
        } else if (block instanceof Block.Working working) {
            workingsWritten++;
            page.open("div", "class", "working", "id", "working-" + workingsWritten)
                    .leaf("p", working.subject());
            page.leaf("code", working.line().text());
            if (!working.basis().isEmpty()) {
                page.leaf("p", working.basis(), "class", "basis");
            }
            page.close();
        } else if (block instanceof Block.Caution caution) {
            page.open("aside", "class", "caution", "aria-label", caution.title());
            page.leaf("p", caution.title(), "class", "caution-title");
            list(caution.lines());
            page.close();
        } else if (block instanceof Block.Facts facts) {
            facts(facts);
        } else if (block instanceof Block.Preformatted preformatted) {
            page.leaf("p", preformatted.label());
            page.leaf("pre", preformatted.text(), "tabindex", "0");
        }
    }

    private void table(Block.Table table) {
        String size = isShort(table) ? "wide short" : "wide";
        page.open("div", "class", size, "tabindex", "0", "role", "group", "aria-label", table.caption());
        page.open("table", "id", table.id(), "class", "of-" + table.columns().size())
                .leaf("caption", table.caption());
        page.open("thead").open("tr");
        for (Block.Column column : table.columns()) {
            if (column.kind() == Block.Column.Kind.NUMBER) {
                page.leaf("th", column.heading(), "scope", "col", "class", "number");
            } else {
                page.leaf("th", column.heading(), "scope", "col");
            }
        }
        page.close().close().open("tbody");
        for (List<String> row : table.rows()) {
            page.text("\n").open("tr");
            for (int i = 0; i < row.size(); i++) {
                cell(table, i, row.get(i));
            }
            page.close();
        }
        page.close().close().close();
    }

    private static boolean isShort(Block.Table table) {
        return table.rows().size() <= SHORT
                && table.rows().stream().flatMap(List::stream).noneMatch(cell -> cell.length() > SENTENCE);
    }

    private void cell(Block.Table table, int place, String content) {
        if (place == 0) {
            String working =
                    workings.getOrDefault(content, table.id().equals(VERDICTS) ? named.getOrDefault(content, "") : "");
            if (working.isEmpty()) {
                page.leaf("th", content, "scope", "row");
            } else {
                page.open("th", "scope", "row")
                        .leaf("a", content, "href", "#" + working)
                        .close();
            }
            return;
        }
        switch (table.columns().get(place).kind()) {
            case NUMBER -> page.leaf("td", content, "class", "number");
            case STATUS -> page.leaf("td", content, "class", statusClass(content));
            case TEXT -> page.leaf("td", content);
        }
    }

    private void list(List<String> items) {
        page.open("ul");
        items.forEach(item -> page.leaf("li", item));
        page.close();
    }

    private void figure(Block.Figure figure) {
        page.open("figure", "id", figure.id());
        if (print) {
            page.raw(figure.svg().replaceFirst("<svg ", "<svg alt=\"" + attribute(figure.alternative()) + "\" "));
        } else {
            page.raw(figure.svg());
        }
        page.open("figcaption").text(figure.caption());
        page.open("details").leaf("summary", "In words").leaf("p", figure.alternative());
        page.close().close().close();
    }

    private static String attribute(String text) {
        return Matcher.quoteReplacement(
                text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;"));
    }

    private void facts(Block.Facts facts) {
        page.open("dl");
        for (Block.Fact fact : facts.facts()) {
            page.open("div").leaf("dt", fact.name());
            if (fact.toFillIn()) {
                page.open("dd", "class", "blank").text("\u00a0");
                if (!print) {
                    page.leaf("span", "to be filled in by hand", "class", "unseen");
                }
                page.close();
            } else {
                page.leaf("dd", fact.value());
            }
            page.close();
        }
        page.close();
    }

    private static String statusClass(String status) {
        return "status " + status.toLowerCase(Locale.ROOT).replace(' ', '-');
    }

    /** A style sheet or a script; it has none of the characters that HTML and XML would read differently. */
    private static String resource(String name) {
        try (InputStream in = HtmlRenderer.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the library");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
