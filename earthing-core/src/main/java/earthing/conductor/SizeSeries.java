package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Series of standard cross-sections. */
@SuppressWarnings("ImmutableEnumChecker") // unmodifiable lists of records
public enum SizeSeries {
    /** Nominal cross-sections in square millimetres. */
    IEC_60228(Source.standard("IEC 60228:2004", "table 1", Status.FROM_MEMORY), metric()),
    /** Wire gauge up to 4/0 and thousands of circular mils above. */
    AWG_KCMIL(
            Source.standard(
                    "ASTM B258", "diameter 0.005 in × 92^((36 − n)/39); 1 kcmil = 0.5067 mm²", Status.FROM_MEMORY),
            american());

    private final Source source;
    private final List<StandardSize> sizes;

    SizeSeries(Source source, List<StandardSize> sizes) {
        this.source = source;
        this.sizes = sizes;
    }

    /**
     * Where the series stands.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * All sizes.
     *
     * @return sizes, smallest first, unmodifiable
     */
    public List<StandardSize> sizes() {
        return sizes;
    }

    /**
     * The smallest size that is large enough.
     *
     * @param area required area [m²], ≥ 0
     * @return the next size up, empty if the series ends below
     */
    public Optional<StandardSize> atLeast(double area) {
        if (!(area >= 0)) {
            throw new IllegalArgumentException("required area must be >= 0 m²; have " + area);
        }
        // A part in 1e12 of slack: 70 mm² computed must not ask for 95 mm².
        return sizes.stream().filter(s -> s.area() >= area * (1 - 1e-12)).findFirst();
    }

    /**
     * Area of a wire gauge.
     *
     * @param gauge gauge number n, −3 for 4/0, −2 for 3/0, −1 for 2/0, 0 for 1/0, up to 40
     * @return area [m²]
     */
    public static double gaugeArea(int gauge) {
        if (!(gauge >= -3 && gauge <= 40)) {
            throw new IllegalArgumentException("wire gauge must be from -3 (4/0) to 40; have " + gauge);
        }
        double diameter = 0.005 * 0.0254 * Math.pow(92, (36 - gauge) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }

    private static List<StandardSize> metric() {
        double[] areas = {
            0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630, 800, 1000
        };
        List<StandardSize> sizes = new ArrayList<>();
        for (double area : areas) {
            String number = area == Math.rint(area) ? Integer.toString((int) area) : Double.toString(area);
            sizes.add(new StandardSize(number + " mm2", area * 1e-6));
        }
        return List.copyOf(sizes);
    }

    private static List<StandardSize> american() {
        List<StandardSize> sizes = new ArrayList<>();
        int[] gauges = {18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
        for (int gauge : gauges) {
            String name = gauge > 0 ? Integer.toString(gauge) : (1 - gauge) + "/0";
            sizes.add(new StandardSize(name + " AWG", gaugeArea(gauge)));
        }
        int[] mils = {250, 300, 350, 400, 500, 600, 700, 750, 800, 900, 1000};
        for (int kcmil : mils) {
            sizes.add(new StandardSize(kcmil + " kcmil", kcmil * AdiabaticHeating.KCMIL));
        }
        return List.copyOf(sizes);
    }
}
