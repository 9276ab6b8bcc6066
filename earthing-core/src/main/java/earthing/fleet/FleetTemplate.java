package earthing.fleet;

import earthing.site.Site;
import earthing.site.file.SideFiles;
import earthing.site.file.SiteCells;
import earthing.site.file.SiteColumn;
import earthing.site.file.SiteRows;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Writes tables of sites: a template to start from, or the rows of sites that are there already. */
public final class FleetTemplate {

    private static final int WIDTH = 96;

    private FleetTemplate() {}

    /**
     * A commented table with one row, valid as it stands.
     *
     * @param example the site of the row
     * @param form how it is written
     * @return the table
     */
    public static String text(Site example, TableForm form) {
        List<SiteColumn> columns = SiteCells.columns(List.of(example));
        List<String> lines = new ArrayList<>();
        lines.add("Table of sites: the earthing of pole-mounted switchgear, one pole a row, one line a row.");
        lines.add("");
        lines.add("The row below is an invented site: replace it. Each column is a key of the site file with the"
                + " unit of its cells; leave out columns you do not need, add others (docs/site-file.md).");
        lines.add("A blank cell is unknown and becomes a finding, never a default. A " + SiteRows.NOT_GIVEN
                + " says that there is no such value.");
        lines.add("Items of a list have numbers, such as electrodes[2].name; an item of which all cells are"
                + " blank is not there.");
        lines.add("Bounds are columns of their own: soil.layers[1].resistivity.low [ohm.m] and .high; so are .origin,"
                + " .date and .by.");
        lines.add("What all poles share may stand in a site file, complete or not: fleet TABLE --base SITE.");
        lines.add("Lines that begin with # are comments. The next one says what stands between the cells: comma or"
                + " semicolon.");
        StringBuilder text = new StringBuilder();
        lines.forEach(line -> comment(line, text));
        text.append(form.declaration()).append('\n');
        if (!form.decimalComma() && form.separator() == ';') {
            comment("Numbers with a decimal comma need one more line: \"decimal: comma\".", text);
        }
        comment("", text);
        columns.forEach(column -> comment(column.head() + ": " + column.meaning(), text));
        return text + rows(List.of(example), columns, form);
    }

    /**
     * A site with its file.
     *
     * @param site the site
     * @param file its file, beside which the files are that it names
     */
    public record Source(Site site, Path file) {}

    /**
     * Sites as a table.
     *
     * @param text the table
     * @param lost number of a site, from 0, to the first key that its row does not tell; empty if nothing is lost
     */
    public record Rows(String text, Map<Integer, String> lost) {
        /**
         * Copies the losses.
         *
         * @param text the table
         * @param lost number of a site, from 0, to the first key that its row does not tell; empty if nothing is lost
         */
        public Rows {
            lost = Collections.unmodifiableMap(new TreeMap<>(lost));
        }
    }

    /**
     * The rows of sites, with the columns that they need together; each is read again and compared.
     *
     * @param files the site files, at least one
     * @param form how the table is written
     * @return the table
     */
    public static Rows of(List<Source> files, TableForm form) {
        List<Site> sites = files.stream().map(Source::site).toList();
        List<SiteColumn> columns = SiteCells.columns(sites);
        Map<Integer, String> lost = new TreeMap<>();
        for (int i = 0; i < sites.size(); i++) {
            String key = SiteCells.lost(
                    sites.get(i), columns, SideFiles.beside(files.get(i).file()));
            if (!key.isEmpty()) {
                lost.put(i, key);
            }
        }
        return new Rows(form.declaration() + '\n' + rows(sites, columns, form), lost);
    }

    private static String rows(List<Site> sites, List<SiteColumn> columns, TableForm form) {
        ResultsTable table = new ResultsTable(form);
        StringBuilder text = new StringBuilder(
                table.line(columns.stream().map(SiteColumn::head).toList()));
        for (Site site : sites) {
            text.append(table.line(SiteCells.of(site, columns, form.decimalComma())));
        }
        return text.toString();
    }

    private static void comment(String words, StringBuilder text) {
        StringBuilder line = new StringBuilder("#");
        for (String word : words.split(" ", -1)) {
            if (line.length() > 1 && line.length() + word.length() > WIDTH) {
                text.append(line).append('\n');
                line = new StringBuilder("#  ");
            }
            line.append(word.isEmpty() ? "" : " ").append(word);
        }
        text.append(line).append('\n');
    }
}
