package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * How much more current an insulated conductor bears because some heat leaves into the insulation during the fault:
 * I = ε · I of the adiabatic law. A bare conductor has no insulation: ε = 1.
 */
public final class NonAdiabaticFactor {

    /** The factor and its constants. */
    public static final Source SOURCE =
            Source.standard("IEC 60949:1988", "clause 5, eq. (5), tables II and III", Status.FROM_MEMORY);

    /** Below this ratio of duration to area the standard keeps to the adiabatic law [s/m²]. */
    public static final double LEAST_RATIO = 0.1e6;

    private NonAdiabaticFactor() {}

    /** Insulations for which the simplified constants are printed. */
    public enum Insulation {
        /** Thermoplastic (PVC), cables up to 3 kV. */
        PVC_TO_3_KV(0.29, 0.06, 0.40, 0.08),
        /** Thermoplastic (PVC), cables above 3 kV. */
        PVC_ABOVE_3_KV(0.27, 0.05, 0.37, 0.07),
        /** Cross-linked polyethylene. */
        XLPE(0.41, 0.12, 0.57, 0.16),
        /** Ethylene propylene rubber, cables up to 3 kV. */
        EPR_TO_3_KV(0.38, 0.10, 0.52, 0.14),
        /** Ethylene propylene rubber, cables above 3 kV. */
        EPR_ABOVE_3_KV(0.32, 0.07, 0.44, 0.10),
        /** Fluid-filled paper. */
        PAPER_FLUID_FILLED(0.45, 0.14, 0.62, 0.20),
        /** Other impregnated paper. */
        PAPER(0.29, 0.06, 0.40, 0.08);

        private final double xCopper;
        private final double yCopper;
        private final double xAluminium;
        private final double yAluminium;

        Insulation(double xCopper, double yCopper, double xAluminium, double yAluminium) {
            this.xCopper = xCopper;
            this.yCopper = yCopper;
            this.xAluminium = xAluminium;
            this.yAluminium = yAluminium;
        }
    }

    /**
     * The factor of a conductor, ε = √(1 + X √(t/S) + Y t/S) with t in s and S in mm².
     *
     * @param metal copper or aluminium
     * @param insulation what surrounds it
     * @param area area S [m²], &gt; 0
     * @param duration duration t [s], 0 to 5 s
     * @return ε ≥ 1; 1 where the duration is so short that the standard stays with the adiabatic law
     * @throws IllegalArgumentException for other metals and longer durations, for which no constants are printed
     */
    public static double conductor(Metal metal, Insulation insulation, double area, double duration) {
        if (!(area > 0)) {
            throw new IllegalArgumentException("conductor area must be > 0 m²; have " + area);
        }
        checkDuration(duration);
        boolean copper = metal.family() == Metal.Family.COPPER;
        if (!copper && metal.family() != Metal.Family.ALUMINIUM) {
            throw new IllegalArgumentException(
                    "the non-adiabatic constants are printed for copper and aluminium; have " + metal.label());
        }
        // Exactly on the limit, as 1 s on 10 mm², the formula holds; division alone would fall short of it by its last
        // bit.
        if (duration < LEAST_RATIO * area * (1 - 1e-12)) {
            return 1;
        }
        return formula(
                copper ? insulation.xCopper : insulation.xAluminium,
                copper ? insulation.yCopper : insulation.yAluminium,
                area,
                duration);
    }

    /**
     * The bare formula, for constants from elsewhere.
     *
     * @param x constant X [√(mm²/s)], ≥ 0
     * @param y constant Y [mm²/s], ≥ 0
     * @param area area S [m²], &gt; 0
     * @param duration duration t [s], ≥ 0
     * @return ε
     */
    public static double formula(double x, double y, double area, double duration) {
        if (!(x >= 0 && y >= 0 && area > 0 && duration >= 0)) {
            throw new IllegalArgumentException("constants and duration must be >= 0 and area > 0; have X " + x + ", Y "
                    + y + ", area " + area + ", duration " + duration);
        }
        double ratio = duration / (area * 1e6);
        return Math.sqrt(1 + x * Math.sqrt(ratio) + y * ratio);
    }

    /**
     * The factor of a screen or sheath, ε = 1 + 0.61 z − 0.069 z² + 0.0043 z³ with z = M √t.
     *
     * @param m constant M of screen and neighbouring materials [1/√s], ≥ 0
     * @param duration duration t [s], 0 to 5 s
     * @return ε ≥ 1
     * @throws IllegalArgumentException if M √t exceeds 5, where the printed polynomial stops rising
     */
    public static double screen(double m, double duration) {
        checkDuration(duration);
        double z = m * Math.sqrt(duration);
        if (!(z >= 0 && z <= 5)) {
            throw new IllegalArgumentException("M·sqrt(t) must be from 0 to 5; have " + z);
        }
        return 1 + 0.61 * z - 0.069 * z * z + 0.0043 * z * z * z;
    }

    private static void checkDuration(double duration) {
        if (!(duration >= 0 && duration <= 5)) {
            throw new IllegalArgumentException("IEC 60949 holds for durations from 0 to 5 s; have " + duration);
        }
    }
}
