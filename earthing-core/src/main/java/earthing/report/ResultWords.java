package earthing.report;

/** The id of a result in words. */
final class ResultWords {

    private ResultWords() {}

    /** For example {@code electrode main: resistance} for {@code electrode.main.resistance}. */
    static String of(String id) {
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
            case "epr" -> "earth potential rise, " + id.substring(first + 1).replace('.', ' ');
            case "touch", "step", "transfer" -> group + ", " + (subject.isEmpty() ? "" : subject + ": ") + quantity;
            case "surge" -> (subject.isEmpty() ? "" : subject + ": ") + quantity;
            case "circuit" ->
                quantity.equals("mutual inductance")
                        ? "mutual inductance " + id.substring(first + 1, last).replace(".", " – ")
                        : subject + ": " + quantity;
            case "electrode" ->
                subject.startsWith("mutual")
                        ? "mutual resistance "
                                + id.substring(first + 1 + "mutual.".length()).replace(".", " – ")
                        : "electrode " + subject.replace(" resistance", "") + ": "
                                + (quantity.equals("formula") ? "resistance, closed form" : quantity);
            default -> group.replace('-', ' ') + (subject.isEmpty() ? "" : " " + subject) + ": " + quantity;
        };
    }
}
