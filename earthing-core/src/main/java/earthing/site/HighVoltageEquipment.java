package earthing.site;

/** Other high-voltage equipment on the pole. */
public record HighVoltageEquipment(
        @Key(required = true, example = "external voltage transformer", doc = "What it is.")
        String name,

        @Key(
                required = true,
                example = "tank-earth-point",
                doc = "Where its metal is earthed: tank-earth-point, main-earth, own-electrode, none or unknown.")
        EquipmentEarth earthedAt) {}
