package earthing.conductor;

import earthing.quantity.Source;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The printed tables of thermal constants. A metal that a table does not hold has no constants there; none is lent. */
public final class ThermalTable {

    private static final Map<ThermalEdition, Map<Metal, ThermalConstants>> ROWS = rows();

    private ThermalTable() {}

    /**
     * Looks a metal up.
     *
     * @param metal the metal
     * @param edition the table
     * @return the row, empty if the table has none for this metal
     */
    public static Optional<ThermalConstants> find(Metal metal, ThermalEdition edition) {
        return Optional.ofNullable(ROWS.getOrDefault(edition, Map.of()).get(metal));
    }

    /**
     * Looks a metal up that has to be there.
     *
     * @param metal the metal
     * @param edition the table
     * @return the row
     * @throws IllegalArgumentException if the table has no row for this metal
     */
    public static ThermalConstants require(Metal metal, ThermalEdition edition) {
        return find(metal, edition)
                .orElseThrow(() -> new IllegalArgumentException(
                        edition.source().text() + " holds no thermal constants for " + metal.label()));
    }

    private static Map<ThermalEdition, Map<Metal, ThermalConstants>> rows() {
        Map<ThermalEdition, Map<Metal, ThermalConstants>> rows = new EnumMap<>(ThermalEdition.class);
        for (ThermalEdition edition : ThermalEdition.values()) {
            rows.put(edition, new EnumMap<>(Metal.class));
        }
        // q [J/(K·mm³)], β [K], ρ₂₀ [Ω·mm] as printed.
        iec(rows, Metal.COPPER, 3.45e-3, 234.5, 17.241e-6);
        iec(rows, Metal.COPPER_HARD_DRAWN, 3.45e-3, 234.5, 17.241e-6);
        iec(rows, Metal.ALUMINIUM, 2.5e-3, 228, 28.264e-6);
        iec(rows, Metal.STEEL, 3.8e-3, 202, 138e-6);
        iec(rows, Metal.STEEL_GALVANISED, 3.8e-3, 202, 138e-6);
        iec(rows, Metal.LEAD, 1.45e-3, 230, 214e-6);
        // α₂₀ [1/K], K₀ [K], fusing [°C], ρ₂₀ [µΩ·cm], heat capacity [J/(cm³·K)] as printed.
        ThermalEdition y2000 = ThermalEdition.IEEE_80_2000;
        ieee(rows, y2000, Metal.COPPER, 0.00393, 234, 1083, 1.72, 3.42);
        ieee(rows, y2000, Metal.COPPER_HARD_DRAWN, 0.00381, 242, 1084, 1.78, 3.42);
        ieee(rows, y2000, Metal.COPPER_CLAD_STEEL_40, 0.00378, 245, 1084, 4.40, 3.85);
        ieee(rows, y2000, Metal.COPPER_CLAD_STEEL_30, 0.00378, 245, 1084, 5.86, 3.85);
        ieee(rows, y2000, Metal.COPPER_CLAD_STEEL_20, 0.00378, 245, 1084, 8.62, 3.85);
        ieee(rows, y2000, Metal.ALUMINIUM, 0.00403, 228, 657, 2.86, 2.56);
        ieee(rows, y2000, Metal.ALUMINIUM_5005, 0.00353, 263, 652, 3.22, 2.60);
        ieee(rows, y2000, Metal.ALUMINIUM_6201, 0.00347, 268, 654, 3.28, 2.60);
        ieee(rows, y2000, Metal.ALUMINIUM_CLAD_STEEL, 0.00360, 258, 657, 8.48, 3.58);
        ieee(rows, y2000, Metal.STEEL, 0.00160, 605, 1510, 15.90, 3.28);
        ieee(rows, y2000, Metal.STAINLESS_CLAD_STEEL, 0.00160, 605, 1400, 17.50, 4.44);
        ieee(rows, y2000, Metal.STEEL_GALVANISED, 0.00320, 293, 419, 20.10, 3.93);
        ieee(rows, y2000, Metal.STAINLESS_STEEL, 0.00130, 749, 1400, 72.00, 4.03);
        ThermalEdition y2013 = ThermalEdition.IEEE_80_2013;
        ieee(rows, y2013, Metal.COPPER, 0.00393, 234, 1083, 1.72, 3.4);
        ieee(rows, y2013, Metal.COPPER_HARD_DRAWN, 0.00381, 242, 1084, 1.78, 3.4);
        ieee(rows, y2013, Metal.COPPER_CLAD_STEEL_40, 0.00378, 245, 1084, 4.40, 3.8);
        ieee(rows, y2013, Metal.COPPER_CLAD_STEEL_30, 0.00378, 245, 1084, 5.86, 3.8);
        ieee(rows, y2013, Metal.COPPER_CLAD_STEEL_17, 0.00378, 245, 1084, 10.1, 3.8);
        ieee(rows, y2013, Metal.ALUMINIUM, 0.00403, 228, 657, 2.86, 2.6);
        ieee(rows, y2013, Metal.ALUMINIUM_5005, 0.00353, 263, 652, 3.22, 2.6);
        ieee(rows, y2013, Metal.ALUMINIUM_6201, 0.00347, 268, 654, 3.28, 2.6);
        ieee(rows, y2013, Metal.ALUMINIUM_CLAD_STEEL, 0.00360, 258, 657, 8.48, 3.561);
        ieee(rows, y2013, Metal.STEEL, 0.00377, 245, 1510, 15.90, 3.8);
        ieee(rows, y2013, Metal.STAINLESS_CLAD_STEEL, 0.00377, 245, 1400, 17.50, 4.4);
        ieee(rows, y2013, Metal.STEEL_GALVANISED, 0.00320, 293, 419, 20.10, 3.9);
        ieee(rows, y2013, Metal.STAINLESS_STEEL, 0.00130, 749, 1400, 72.00, 4.0);
        return rows;
    }

    private static void iec(
            Map<ThermalEdition, Map<Metal, ThermalConstants>> rows,
            Metal metal,
            double heatCapacity,
            double beta,
            double resistivity) {
        ThermalEdition edition = ThermalEdition.IEC_60949;
        put(
                rows,
                new ThermalConstants(
                        metal,
                        edition,
                        heatCapacity * 1e9,
                        resistivity * 1e-3,
                        1 / (beta + 20),
                        beta,
                        OptionalDouble.empty(),
                        row(edition, metal)));
    }

    private static void ieee(
            Map<ThermalEdition, Map<Metal, ThermalConstants>> rows,
            ThermalEdition edition,
            Metal metal,
            double alpha,
            double beta,
            double fusing,
            double resistivity,
            double heatCapacity) {
        put(
                rows,
                new ThermalConstants(
                        metal,
                        edition,
                        heatCapacity * 1e6,
                        resistivity * 1e-8,
                        alpha,
                        beta,
                        OptionalDouble.of(fusing),
                        row(edition, metal)));
    }

    private static Source row(ThermalEdition edition, Metal metal) {
        Source table = edition.source();
        return new Source(table.kind(), table.title(), table.locus() + ", row " + metal.label(), table.status());
    }

    private static void put(Map<ThermalEdition, Map<Metal, ThermalConstants>> rows, ThermalConstants constants) {
        Map<Metal, ThermalConstants> table = rows.get(constants.edition());
        if (table == null || table.put(constants.metal(), constants) != null) {
            throw new IllegalStateException(
                    "row given twice: " + constants.source().text());
        }
    }
}
