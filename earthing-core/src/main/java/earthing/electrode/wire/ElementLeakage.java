package earthing.electrode.wire;

/**
 * Current that one element gives to the soil.
 *
 * @param electrode name of its electrode
 * @param x east of its middle [m]
 * @param y north of its middle [m]
 * @param depth depth of its middle [m]
 * @param length length [m]
 * @param current current into the soil [A]
 */
public record ElementLeakage(String electrode, double x, double y, double depth, double length, double current) {

    /**
     * Current a metre.
     *
     * @return leakage [A/m]
     */
    public double perMetre() {
        return current / length;
    }
}
