package earthing.compliance;

import java.util.Locale;

/** What a finding says. */
public enum Status {
    /** The requirement is met. */
    MET,
    /** It is not met. */
    NOT_MET,
    /** It is not met and the departure has been accepted, with reference and date. */
    ACCEPTED_DEPARTURE,
    /** The model that would answer is not there; the reason is told. */
    NOT_ASSESSED,
    /** An input is missing; the key to fill in is told. */
    INSUFFICIENT_DATA,
    /** The requirement does not concern this site. */
    NOT_APPLICABLE,
    /** A test or record that belongs to a later stage. */
    DUE_LATER;

    /**
     * The word of the contract.
     *
     * @return for example {@code not-met}
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The words of the report.
     *
     * @return for example {@code not met}
     */
    public String text() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * How heavily it weighs in a headline.
     *
     * @return larger for a heavier one; 0 for what does not concern the site
     */
    public int weight() {
        return switch (this) {
            case NOT_MET -> 6;
            case INSUFFICIENT_DATA -> 5;
            case NOT_ASSESSED -> 4;
            case ACCEPTED_DEPARTURE -> 3;
            case MET -> 2;
            case DUE_LATER -> 1;
            case NOT_APPLICABLE -> 0;
        };
    }
}
