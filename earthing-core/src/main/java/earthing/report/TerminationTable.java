package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.Protector;
import earthing.site.Termination;
import earthing.study.Case;
import earthing.study.EarthPaths;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Every end of every core for the site as it is: what it ends on, the pair, what the protector lets through. */
final class TerminationTable {

    /** Quantity of an end and the head of its column; a column without any value is left out. */
    private static final Map<String, String> QUANTITIES = quantities();

    private static Map<String, String> quantities() {
        Map<String, String> heads = new LinkedHashMap<>();
        heads.put("open-voltage", "Open");
        heads.put("short-circuit-current", "Shorted");
        heads.put("terminal-voltage", "Over the device");
        heads.put("terminal-current", "Through it");
        heads.put("let-through", "Let-through");
        heads.put("protector-lead-voltage", "Of it, leads");
        heads.put("protector-current", "Protector current");
        heads.put("protector-charge", "Charge");
        heads.put("protector-energy", "Energy");
        return heads;
    }

    private static final String NONE = "–";
    /** How many of the quantities tell of the ends themselves; the rest tell of protectors. */
    private static final int OF_ENDS = 4;
    /** More columns do not fit the page. */
    private static final int WIDEST = 8;

    private final List<Result> own;
    /** Cases in which a gap flashes over, so that their pair is prospective. */
    private final Set<Case> struck = new HashSet<>();

    private TerminationTable(List<Result> own, StudyResults all) {
        this.own = own;
        all.under(ResultTable.FLASHOVER).forEach(r -> struck.add(r.circumstances()));
    }

    /** One table for each wave; empty if no core is described or nothing was computed for the site as it is. */
    static List<Block> of(ReportInput input) {
        ControlCable cable = input.site().controlCable();
        if (cable == null || input.site().cubicle() == null) {
            return List.of();
        }
        String arrangement = word(input.site().cubicle().earth());
        String bond =
                cable.screen() == null ? "none" : word(cable.screen().bond()).replace("absent", "none");
        List<Result> own = input.results()
                .under("surge.cable-end.")
                .filter(r -> {
                    Map<String, String> keys = r.circumstances().keys();
                    return r.at().equals("nominal")
                            && keys.getOrDefault("entry", "").equals("current-into-tank")
                            && keys.getOrDefault("arrangement", "").equals(arrangement)
                            && keys.getOrDefault("screen-bond", "").equals(bond)
                            && !keys.containsKey("broken");
                })
                .toList();
        Set<String> waves = new LinkedHashSet<>();
        own.forEach(r -> waves.add(r.circumstances().keys().getOrDefault("wave", "")));
        TerminationTable table = new TerminationTable(own, input.results());
        List<Block> blocks = new ArrayList<>();
        for (String wave : waves) {
            List<List<String>> rows = table.rows(cable, wave);
            if (!rows.isEmpty()) {
                String id = "surge-terminations-" + (blocks.size() + 1);
                String caption = "What the cores end on, the site as it is: " + wave + ", nominal";
                Block.Table whole = filled(id, caption, rows, 0, QUANTITIES.size());
                if (whole.columns().size() <= WIDEST) {
                    blocks.add(whole);
                } else {
                    blocks.add(filled(id, caption, rows, 0, OF_ENDS));
                    blocks.add(filled(
                            id + "-protectors",
                            "What the protectors of the cores bear, the site as it is: " + wave + ", nominal",
                            rows,
                            OF_ENDS,
                            QUANTITIES.size()));
                }
            }
        }
        return blocks;
    }

    /** Some of the quantities, without the columns in which no row and the rows in which no column has a value. */
    private static Block.Table filled(String id, String caption, List<List<String>> rows, int first, int end) {
        List<Column> columns = new ArrayList<>(List.of(Column.text("Core and end"), Column.text("Ends on")));
        List<String> heads = List.copyOf(QUANTITIES.values());
        List<Integer> shown = new ArrayList<>(List.of(0, 1));
        for (int k = first; k < end; k++) {
            int column = k + 2;
            if (rows.stream().anyMatch(row -> !row.get(column).equals(NONE))) {
                columns.add(Column.number(heads.get(k)));
                shown.add(column);
            }
        }
        List<List<String>> lines = rows.stream()
                .map(row -> shown.stream().map(row::get).toList())
                .filter(line -> line.stream().skip(2).anyMatch(cell -> !cell.equals(NONE)))
                .toList();
        return new Block.Table(id, caption, columns, lines);
    }

    /** Ends that print alike share a row. */
    private List<List<String>> rows(ControlCable cable, String wave) {
        Map<List<String>, Set<String>> alike = new LinkedHashMap<>();
        for (Core core : cable.cores()) {
            for (String end : List.of("tank", "cubicle")) {
                boolean tank = end.equals("tank");
                List<String> cells = cells("surge.cable-end." + EarthPaths.key(core.name()) + "." + end, wave);
                cells.add(
                        0,
                        endsOn(
                                tank ? core.tankEnd() : core.cubicleEnd(),
                                tank ? core.tankProtector() : core.cubicleProtector()));
                alike.computeIfAbsent(cells, key -> new LinkedHashSet<>()).add(core.name() + ", " + end);
            }
        }
        List<List<String>> rows = new ArrayList<>();
        alike.forEach((cells, places) -> rows.add(line(ResultTable.places(places), cells)));
        String pair = "surge.cable-end.core-to-core.cubicle";
        if (value(pair + ".open-voltage", wave).isPresent()) {
            List<String> cells = cells(pair, wave);
            cells.add(0, NONE);
            rows.add(line("core to core", cells));
        }
        return rows;
    }

    private static List<String> line(String place, List<String> cells) {
        List<String> line = new ArrayList<>(List.of(place));
        line.addAll(cells);
        return line;
    }

    private static String endsOn(Termination termination, @Nullable Protector protector) {
        String what =
                termination == Termination.TANK ? "chassis" : word(termination).replace('-', ' ');
        return protector == null || termination == Termination.PROTECTOR ? what : what + ", protector";
    }

    private List<String> cells(String id, String wave) {
        List<String> cells = new ArrayList<>();
        for (String quantity : QUANTITIES.keySet()) {
            boolean pair = quantity.equals("open-voltage")
                    || quantity.equals("short-circuit-current")
                    || quantity.startsWith("terminal-");
            cells.add(value(id + "." + quantity, wave)
                    .map(r -> Amount.text(r.value(), r.unit())
                            + (pair && struck.contains(r.circumstances()) ? ResultTable.PROSPECTIVE : ""))
                    .orElse(NONE));
        }
        return cells;
    }

    private Optional<Result> value(String id, String wave) {
        return own.stream()
                .filter(r -> r.id().equals(id)
                        && r.circumstances().keys().getOrDefault("wave", "").equals(wave))
                .findFirst();
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
