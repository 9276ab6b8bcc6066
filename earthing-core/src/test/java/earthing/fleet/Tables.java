package earthing.fleet;

import earthing.site.file.Problem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tables of short sites for the tests: quick to study, each with an answer of its own. */
final class Tables {

    static final String BASE = """
            site: {stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              earth-fault-current: 300 A
              neutral: {method: resistor, resistance: 40 ohm}
            protection: {clearing-time: 0.5 s}
            pole: {material: wood, height: 11 m}
            main-earth:
              conductor: {material: copper, area: 35 mm2}
              electrode: main
            electrodes:
              - name: main
                rod: {length: 3 m, diameter: 16 mm}
            cubicle: {height: 3 m, earth: shared}
            criteria: {touch: en-50522-2022}
            """;

    static final String HEAD = "site.pole,site.name,site.latitude [deg],site.longitude [deg],tank.height [m],"
            + "soil.resistivity [ohm.m]\n";

    private Tables() {}

    /** A table of so many rows, one in twenty broken in one of several ways. */
    static Path written(Path folder, int rows) throws IOException {
        StringBuilder text = new StringBuilder("# separator: comma\n").append(HEAD);
        for (int i = 1; i <= rows; i++) {
            String broken = i % 20 == 7 ? Integer.toString(i / 20 % 5) : "";
            text.append(
                    switch (broken) {
                        case "0" -> "P" + i + ",Alder " + i + ",54,1,nine," + (50 + i);
                        case "1" -> "P" + i + ",Alder " + i + ",54,1,9";
                        case "2" -> "P1,Alder " + i + ",54,1,9," + (50 + i);
                        case "3" -> "P" + i + ",\"Alder " + i + ",54,1,9," + (50 + i);
                        case "4" -> "P" + i + ",Alder\u0000" + i + ",54,1,9," + (50 + i);
                        default ->
                            "P" + i + ",Alder " + i + "," + (54 + i / 1000.0) + ",-" + i / 100.0 + ",9,"
                                    + (i % 10 == 0 ? "" : Integer.toString(50 + i % 50));
                    });
            text.append('\n');
        }
        Path table = folder.resolve("poles.csv");
        Files.writeString(table, text.toString());
        Files.writeString(folder.resolve("base.yaml"), BASE);
        return table;
    }

    static FleetTable open(Path table) {
        Path base = table.resolveSibling("base.yaml");
        FleetTable.Opened opened = FleetTable.open(table, Optional.empty(), Optional.empty(), Optional.of(base));
        if (opened instanceof FleetTable.Opened.Refused refused) {
            throw new AssertionError(
                    refused.problems().stream().map(Problem::text).toList().toString());
        }
        return ((FleetTable.Opened.Good) opened).table();
    }

    static FleetRun.Order order(Path table, Path results, int threads, boolean resume) {
        return new FleetRun.Order(
                Optional.of(table.resolveSibling("base.yaml")),
                results,
                threads,
                resume,
                "test",
                outcome -> outcome.row() + " " + outcome.pole() + " "
                        + outcome.getClass().getSimpleName() + "\n");
    }

    /** Follows a run and stops it when so many rows are done. */
    static FleetRun.Watcher until(int rows) {
        return new FleetRun.Watcher() {
            private volatile boolean stopped;

            @Override
            public void done(int done) {
                stopped = done >= rows;
            }

            @Override
            public boolean isStopped() {
                return stopped;
            }
        };
    }

    static List<PoleResult> results(Path folder, TableForm form) throws IOException {
        List<PoleResult> results = new ArrayList<>();
        FleetSummary.results(folder, form, results::add);
        return results;
    }

    static String text(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.UTF_8);
    }
}
