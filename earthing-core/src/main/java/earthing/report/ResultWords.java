package earthing.report;

import java.util.Map;

/** The id of a result in words. */
final class ResultWords {

    private static final String CABLE_END = "surge.cable-end.";

    /** What the parts of an id do not tell well enough. */
    private static final Map<String, String> WORDS = Map.of(
            "surge.risk.line-flashes", "flashes a year to the line within reach of this pole",
            "surge.risk.pole-flashes", "further flashes a year to the antenna or the top of the pole",
            "cable.power-frequency.voltage", "voltage across the control cable",
            "cable.power-frequency.screen-current", "current in the cable screen",
            "aux-supply.isolation.voltage", "voltage across the isolation of the auxiliary supply",
            "contingency.visible", "the break can be seen",
            "contingency.cleared", "the protection clears the fault",
            "criteria.proven-up-to", "potential rise over permissible touch voltage up to which it is proven");

    private ResultWords() {}

    /** For example {@code electrode main: resistance} for {@code electrode.main.resistance}. */
    static String of(String id) {
        return WORDS.getOrDefault(id, plain(id)).replace(" s ", "'s ");
    }

    private static String plain(String id) {
        int first = id.indexOf('.');
        int last = id.lastIndexOf('.');
        if (first < 0) {
            return id;
        }
        String group = id.substring(0, first);
        String quantity = id.substring(last + 1).replace('-', ' ');
        String subject = first == last
                ? ""
                : id.substring(first + 1, last).replace('.', ' ').replace('-', ' ');
        return switch (group) {
            case "epr" ->
                "earth potential rise, "
                        + id.substring(first + 1).replace('.', ' ').replace("-assumed", " (assumed)");
            case "touch", "step", "transfer" -> voltage(group, subject, quantity);
            case "exposure" -> "person exposed, " + subject + ": " + quantity;
            case "surge" -> surge(id, subject, quantity);
            case "fault" -> "earth fault" + (subject.isEmpty() ? "" : ", " + subject) + ": " + quantity;
            case "circuit" ->
                quantity.equals("mutual inductance")
                        ? "mutual inductance " + id.substring(first + 1, last).replace(".", " – ")
                        : subject + ": " + quantity;
            case "electrode" ->
                subject.startsWith("mutual")
                        ? "mutual resistance "
                                + id.substring(first + 1 + "mutual.".length()).replace(".", " – ")
                        : "electrode " + subject.replace(" resistance", "") + ": "
                                + switch (quantity) {
                                    case "formula" -> "resistance, closed form";
                                    case "even leakage" -> "resistance, even leakage";
                                    default -> quantity;
                                };
            default -> group.replace('-', ' ') + (subject.isEmpty() ? "" : " " + subject) + ": " + quantity;
        };
    }

    private static String voltage(String group, String subject, String quantity) {
        String where = subject.isEmpty()
                ? ""
                : ", " + subject.replace("stay stay ", "stay ").replace(" exposure ", ", exposure ");
        return switch (quantity) {
            case "voltage" -> group + " voltage" + where;
            case "permissible" -> "permissible " + group + " voltage" + where;
            default -> group + " " + quantity + where;
        };
    }

    private static String surge(String id, String subject, String quantity) {
        String where = cableEnd(id);
        if (!where.isEmpty()) {
            return where + ": " + quantity;
        }
        return SurgeWords.of(id).orElse((subject.isEmpty() ? "" : subject + ": ") + quantity);
    }

    /** Core and end of the control cable that a result belongs to; empty for any other result. */
    static String cableEnd(String id) {
        if (!id.startsWith(CABLE_END) || id.lastIndexOf('.') < CABLE_END.length()) {
            return "";
        }
        String rest = id.substring(CABLE_END.length(), id.lastIndexOf('.'));
        int end = rest.lastIndexOf('.');
        return end > 0 ? rest.substring(0, end) + ", " + rest.substring(end + 1) + " end" : "";
    }

    /** The quantity without core and end; the whole words for any other result. */
    static String quantity(String id) {
        return cableEnd(id).isEmpty()
                ? of(id)
                : id.substring(id.lastIndexOf('.') + 1).replace('-', ' ');
    }
}
