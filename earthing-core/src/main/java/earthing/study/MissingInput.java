package earthing.study;

import java.util.List;

/** An input that a study needs and the site file does not give. Becomes a {@link Gap}. */
final class MissingInput extends Exception {

    private static final long serialVersionUID = 1L;

    private final transient List<String> keys;

    MissingInput(String reason, String... keys) {
        super(reason);
        this.keys = List.of(keys);
    }

    Gap gap(String id, Case circumstances) {
        return new Gap(id, circumstances, message(), keys);
    }

    private String message() {
        String message = getMessage();
        return message == null ? "an input is missing" : message;
    }
}
