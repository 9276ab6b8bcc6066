package earthing.site;

/** An accepted departure from a requirement. */
public record Departure(
        @Key(required = true, example = "separation.control-cable", doc = "Id of the finding.")
        String finding,

        @Key(required = true, example = "ENG-2031", doc = "Reference of the acceptance.")
        String reference,

        @Key(text = Key.Text.DATE, required = true, example = "2026-03-02", doc = "ISO date of the acceptance.")
        String date) {}
