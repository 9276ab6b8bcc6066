package earthing.electrode.wire;

import earthing.soil.PointSource;
import earthing.soil.Reading;
import earthing.soil.SoilModel;
import earthing.soil.SoundingForward;
import java.util.ArrayList;
import java.util.List;

/** All readings of a rod that is driven deeper and deeper, over one ground whose images are found once. */
final class DrivenRodReadings implements SoundingForward {

    /** A layer thinner than this part of the shortest rod is not looked for. */
    private static final double THINNEST = 0.1;
    /** A resistance is one number a depth that all layers around the rod add to: more layers than this it does not hold. */
    private static final int MOST_LAYERS = 3;

    private final List<DrivenRod> rods = new ArrayList<>();
    private final double[] inUnitGround;

    DrivenRodReadings(List<Reading> readings) {
        for (Reading reading : readings) {
            if (!(reading.array() instanceof DrivenRod rod)) {
                throw new IllegalArgumentException("readings of one sounding must be of one kind of array");
            }
            rods.add(rod);
        }
        inUnitGround = resistances(SoilModel.uniform(1));
    }

    private double[] resistances(SoilModel soil) {
        PointSource ground = PointSource.of(soil);
        return rods.stream()
                .mapToDouble(rod -> EarthElectrodes.of(
                                ground, DrivenRod.bar(rod.length(), rod.radius()), Discretisation.STANDARD)
                        .resistances()
                        .get(0, 0))
                .toArray();
    }

    @Override
    public double[] apparentResistivities(SoilModel soil) {
        double[] values = resistances(soil);
        for (int i = 0; i < values.length; i++) {
            values[i] /= inUnitGround[i];
        }
        return values;
    }

    @Override
    public double thinnest() {
        return THINNEST * rods.stream().mapToDouble(DrivenRod::length).min().orElseThrow();
    }

    @Override
    public int mostLayers() {
        return MOST_LAYERS;
    }
}
