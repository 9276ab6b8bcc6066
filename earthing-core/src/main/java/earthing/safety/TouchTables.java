package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.List;
import java.util.Optional;

/** The printed tables of permissible touch voltage, by edition. They are look-ups; nothing recomputes them. */
public final class TouchTables {

    private static final SustainedLimit EN_SUSTAINED = new SustainedLimit(
            80,
            Source.standard(
                    "EN 50522:2010",
                    "figure 4, note: 80 V where the current flows much longer than 10 s",
                    Status.FROM_MEMORY));

    /** EN 50522, edition of 2010. */
    public static final TabulatedCurve EN_50522_2010 = new TabulatedCurve(
            "EN 50522:2010 table B.3",
            "EN 50522:2010",
            Points.of(Interpolation.LOG_LOG, 0.05, 716, 0.10, 654, 0.20, 537, 0.50, 220, 1, 117, 2, 96, 5, 86, 10, 85),
            Optional.of(BodyCurrent.EN_50522.points()),
            Optional.of(EN_SUSTAINED),
            Source.standard("EN 50522:2010", "table B.3, as reprinted in the trade press", Status.READ));

    /** EN 50522, edition of 2022; values rounded to 5 V. */
    public static final TabulatedCurve EN_50522_2022 = new TabulatedCurve(
            "EN 50522:2022 table B.4",
            "EN 50522:2022",
            Points.of(Interpolation.LOG_LOG, 0.05, 725, 0.10, 655, 0.20, 525, 0.50, 225, 1, 115, 2, 95, 5, 85, 10, 85),
            Optional.of(BodyCurrent.EN_50522.points()),
            Optional.of(EN_SUSTAINED),
            Source.standard("EN 50522:2022", "table B.4, as reprinted in the trade press", Status.READ));

    /** The older harmonisation document, to re-read old reports. */
    public static final TabulatedCurve HD_637 = new TabulatedCurve(
            "HD 637 S1:1999 / CEI 11-1 table C-3",
            "HD 637 S1:1999",
            Points.of(
                    Interpolation.LOG_LOG,
                    0.04,
                    800,
                    0.08,
                    700,
                    0.14,
                    600,
                    0.20,
                    500,
                    0.29,
                    400,
                    0.39,
                    300,
                    0.49,
                    220,
                    0.64,
                    150,
                    0.72,
                    125,
                    1.1,
                    100,
                    10,
                    75),
            Optional.empty(),
            Optional.of(new SustainedLimit(
                    75, Source.standard("HD 637 S1:1999", "table C-3, last value", Status.FROM_MEMORY))),
            Source.standard("HD 637 S1:1999", "table C-3 of CEI 11-1, superseded", Status.FROM_MEMORY));

    private TouchTables() {}

    /**
     * All tables.
     *
     * @return the tables, newest first
     */
    public static List<TabulatedCurve> all() {
        return List.of(EN_50522_2022, EN_50522_2010, HD_637);
    }
}
