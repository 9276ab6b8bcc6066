package earthing.site;

/** Other high-voltage equipment on the pole. */
public record HighVoltageEquipment(
        @Key(text = Key.Text.NAME, required = true, example = "external voltage transformer", doc = "What it is.")
        String name,

        @Key(required = true, example = "tank-earth-point", doc = "Where its metal is earthed.")
        EquipmentEarth earthedAt) {}
