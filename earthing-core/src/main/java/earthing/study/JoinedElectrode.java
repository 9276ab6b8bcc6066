package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import earthing.site.Electrode;
import earthing.site.Position;
import earthing.site.Site;
import earthing.site.file.SiteEdit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An electrode with another buried part bonded to it. The site file gives an electrode one shape, so the two shapes
 * become bars at coordinates; the link between them is taken as insulated.
 */
public final class JoinedElectrode {

    /** Decimals of a coordinate in metres: a tenth of a millimetre. */
    private static final int DECIMALS = 4;

    private static final List<String> SHAPES =
            List.of("rod", "rods-in-line", "rods-in-ring", "wire", "star", "ring", "mat");

    private JoinedElectrode() {}

    /**
     * Bonds a part to an electrode.
     *
     * @param site the site
     * @param name name of the electrode
     * @param part shape of the part; its place counts from the foot of the pole
     * @return the changed site; empty where the electrode has no shape, stands in concrete, or its shape is not known
     */
    public static Optional<Site> of(Site site, String name, Electrode part) {
        for (int i = 0; i < site.electrodes().size(); i++) {
            Electrode electrode = site.electrodes().get(i);
            if (electrode.name().equals(name)) {
                String path = "electrodes[" + (i + 1) + "]";
                return bars(site, electrode, part).map(bars -> {
                    Site changed = site;
                    for (String shape : SHAPES) {
                        changed = SiteEdit.unset(changed, path + '.' + shape);
                    }
                    return SiteEdit.put(changed, path + ".bars", bars);
                });
            }
        }
        return Optional.empty();
    }

    private static Optional<List<earthing.site.Bar>> bars(Site site, Electrode electrode, Electrode part) {
        if (electrode.resistance() != null || electrode.concrete() != null || electrode.plate() != null) {
            return Optional.empty();
        }
        Inputs in = new Inputs();
        try {
            Position at = electrode.at();
            double x = at == null ? 0 : in.need(at.x(), "electrodes.at.x");
            double y = at == null ? 0 : in.need(at.y(), "electrodes.at.y");
            List<earthing.site.Bar> bars = new ArrayList<>(electrode.bars());
            if (bars.isEmpty()) {
                ElectrodeBars.of(electrode, site.pole(), in).forEach(bar -> bars.add(written(bar, x, y)));
            }
            ElectrodeBars.of(part, null, in).forEach(bar -> bars.add(written(bar, x, y)));
            return Optional.of(bars);
        } catch (MissingInput unknown) {
            return Optional.empty();
        }
    }

    private static earthing.site.Bar written(Bar bar, double x, double y) {
        return new earthing.site.Bar(
                metres(bar.x1() - x),
                metres(bar.y1() - y),
                metres(bar.depth1()),
                metres(bar.x2() - x),
                metres(bar.y2() - y),
                metres(bar.depth2()),
                metres(2 * bar.radius()));
    }

    private static Measure metres(double length) {
        double rounded = BigDecimal.valueOf(length)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .doubleValue();
        // No minus zero in a file.
        return Measure.exactly(Quantity.of(Dimension.LENGTH, rounded == 0 ? 0 : rounded));
    }
}
