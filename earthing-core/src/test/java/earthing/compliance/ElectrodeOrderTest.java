package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.study.DemoSite;
import earthing.study.Result;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** In which order a file lists its electrodes says nothing about the site. */
class ElectrodeOrderTest {

    static List<String> sites() {
        return DemoSite.names().stream()
                .filter(name -> DemoSite.read(name).electrodes().size() > 1)
                .toList();
    }

    @Test
    void severalSitesHaveMoreThanOneElectrode() {
        assertThat(sites()).hasSizeGreaterThanOrEqualTo(3);
    }

    /** The text of a site file with its electrodes in reverse order. */
    private static String reversed(String text) {
        int start = text.indexOf("\nelectrodes:\n") + "\nelectrodes:\n".length();
        int end = start;
        while (text.startsWith(" ", end)) {
            end = text.indexOf('\n', end) + 1;
        }
        List<String> items = Arrays.asList(text.substring(start, end).split("(?m)(?=^  - name:)"));
        Collections.reverse(items);
        return text.substring(0, start) + String.join("", items) + text.substring(end);
    }

    private static String key(Result result) {
        String id = result.id();
        if (id.startsWith("electrode.mutual.")) {
            String[] names = id.substring("electrode.mutual.".length()).split("\\.");
            Arrays.sort(names);
            id = "electrode.mutual." + String.join(".", names);
        }
        return id + " | " + result.circumstances().text() + " | " + result.at();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void orderOfTheElectrodesDoesNotChangeResultsAndFindings(String name) {
        String text = DemoSite.text(name);
        String other = reversed(text);
        assertThat(other).isNotEqualTo(text).hasSameSizeAs(text);
        StudiedSite first = StudiedSite.of(name);
        StudiedSite second = StudiedSite.of(DemoSite.parse(other));
        assertThat(second.site().electrodes()).isNotEqualTo(first.site().electrodes());
        Map<String, Double> values = new HashMap<>();
        second.results().results().forEach(r -> values.put(key(r), r.value()));
        for (Result result : first.results().results()) {
            assertThat(values).containsKey(key(result));
            String voltage = key(result).replace(".time-of-peak", ".open-voltage");
            if (!voltage.equals(key(result)) && values.getOrDefault(voltage, 0.0) < 1e-6) {
                // Behind a screen without current the voltage is rounding, and its peak may stand anywhere.
                continue;
            }
            // A lead that carries nothing shows the rounding of kiloamperes.
            double allowed = 1e-6 * Math.abs(result.value()) + 1e-9;
            assertThat(values.get(key(result))).as(key(result)).isCloseTo(result.value(), within(allowed));
        }
        assertThat(second.findings().stream().map(f -> f.id() + f.subject() + f.status()))
                .containsExactlyInAnyOrderElementsOf(first.findings().stream()
                        .map(f -> f.id() + f.subject() + f.status())
                        .toList());
    }
}
