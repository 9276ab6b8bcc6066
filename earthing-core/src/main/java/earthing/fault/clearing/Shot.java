package earthing.fault.clearing;

/**
 * One time that fault current flows in a reclose sequence.
 *
 * @param current r.m.s. current [A], ≥ 0
 * @param duration how long it flows [s], ≥ 0
 * @param deadTime how long the line is then dead before it is closed again [s]; infinity after the last shot
 */
public record Shot(double current, double duration, double deadTime) {

    /**
     * Refuses negative values.
     *
     * @param current r.m.s. current [A], ≥ 0
     * @param duration how long it flows [s], ≥ 0
     * @param deadTime how long the line is then dead before it is closed again [s]; infinity after the last shot
     */
    public Shot {
        if (!(current >= 0 && duration >= 0 && deadTime >= 0) || !Double.isFinite(current + duration)) {
            throw new IllegalArgumentException("a shot needs current, duration and dead time >= 0; have " + current
                    + " A, " + duration + " s, " + deadTime + " s");
        }
    }

    /**
     * Joule integral of this shot.
     *
     * @return I²t [A²s]
     */
    public double jouleIntegral() {
        return current * current * duration;
    }
}
