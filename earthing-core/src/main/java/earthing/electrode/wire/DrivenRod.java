package earthing.electrode.wire;

import earthing.quantity.Source;
import earthing.soil.ElectrodeArray;
import earthing.soil.Reading;
import earthing.soil.SoilModel;
import earthing.soil.SoundingForward;
import java.util.List;
import java.util.Optional;

/**
 * Sounding by a rod that is driven deeper step by step: the resistivity of the uniform ground in which the rod would have
 * the resistance it has. Rod and ground are solved numerically; no closed form of a layered ground enters.
 *
 * @param length length in the ground [m], at least twice the radius
 * @param radius radius [m], &gt; 0
 */
public record DrivenRod(double length, double radius) implements ElectrodeArray {

    /** Deeper, a slipped unit would ask for thousands of elements [m]. */
    private static final double LONGEST = 1000;

    /** Where the method comes from. */
    public static final Source SOURCE = Source.standard(
            "IEEE Std 81-2012", "variation of depth: resistance of a rod driven deeper", Source.Status.FROM_MEMORY);

    /** The resistance tells of the ground about as deep as the rod reaches, as that of a Wenner array does of a third of AB. */
    private static final double SPREADS = 3;

    /**
     * Refuses a rod that is no bar.
     *
     * @param length length in the ground [m], at least twice the radius, ≤ 1000
     * @param radius radius [m], &gt; 0
     */
    public DrivenRod {
        if (length > LONGEST) {
            throw new IllegalArgumentException(
                    "no rod is driven deeper than 1000 m; have " + length + " m, is the unit right?");
        }
        bar(length, radius);
    }

    static List<Bar> bar(double length, double radius) {
        return BarShapes.rod("rod", 0, 0, 0, length, radius);
    }

    /**
     * Resistance of the rod.
     *
     * @param soil the ground; its lowest layer must conduct
     * @return resistance to remote earth [Ω]
     */
    @Override
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
        return geometricFactor() * resistance;
    }

    /**
     * Factor from resistance to apparent resistivity: the inverse of the rod's resistance in 1 Ω·m.
     *
     * @return K [m]
     */
    @Override
    public double geometricFactor() {
        return 1 / resistance(SoilModel.uniform(1));
    }

    @Override
    public double spread() {
        return SPREADS * length;
    }

    @Override
    public Optional<SoundingForward> forward(List<Reading> readings) {
        return Optional.of(new DrivenRodReadings(readings));
    }

    /**
     * Apparent resistivity over a model of the ground.
     *
     * @param soil the ground; its lowest layer must conduct
     * @return ρa [Ω·m]
     */
    @Override
    public double apparentResistivity(SoilModel soil) {
        return apparentResistivity(resistance(soil));
    }
}
