package earthing.electrode.wire;

import earthing.soil.SoilModel;
import java.util.List;

/**
 * Sounding by a rod that is driven deeper step by step: the resistivity of the uniform ground in which the rod would have
 * the resistance it has. Rod and ground are solved numerically; no closed form of a layered ground enters.
 *
 * @param length length in the ground [m], at least twice the radius
 * @param radius radius [m], &gt; 0
 */
public record DrivenRod(double length, double radius) {

    /**
     * Refuses a rod that is no bar.
     *
     * @param length length in the ground [m], at least twice the radius
     * @param radius radius [m], &gt; 0
     */
    public DrivenRod {
        bar(length, radius);
    }

    private static List<Bar> bar(double length, double radius) {
        return BarShapes.rod("rod", 0, 0, 0, length, radius);
    }

    /**
     * Resistance of the rod.
     *
     * @param soil the ground; its lowest layer must conduct
     * @return resistance to remote earth [Ω]
     */
    public double resistance(SoilModel soil) {
        return EarthElectrodes.of(soil, bar(length, radius)).resistances().get(0, 0);
    }

    /**
     * Apparent resistivity of a measured resistance.
     *
     * @param resistance measured resistance to remote earth [Ω], &gt; 0
     * @return ρa [Ω·m]
     */
    public double apparentResistivity(double resistance) {
        if (!(resistance > 0)) {
            throw new IllegalArgumentException("resistance must be > 0 ohm; have " + resistance);
        }
        return resistance / resistance(SoilModel.uniform(1));
    }

    /**
     * Apparent resistivity over a model of the ground.
     *
     * @param soil the ground; its lowest layer must conduct
     * @return ρa [Ω·m]
     */
    public double apparentResistivity(SoilModel soil) {
        return apparentResistivity(resistance(soil));
    }
}
