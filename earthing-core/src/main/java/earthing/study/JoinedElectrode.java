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
 * become bars at coordinates; the link between them is taken as insulated. Where something is buried already the part is laid a
 * quarter turn about the pole farther.
 */
public final class JoinedElectrode {

    /** Decimals of a coordinate in metres: a tenth of a millimetre. */
    private static final int DECIMALS = 4;

    /** Least distance from another electrode [m]: nearer, a spade's width apart, both are one in practice. */
    private static final double CLEAR = 0.1;

    private static final int QUARTERS = 4;

    private static final List<String> SHAPES =
            List.of("rod", "rods-in-line", "rods-in-ring", "wire", "star", "ring", "mat");

    private JoinedElectrode() {}

    /**
     * Bonds a part to an electrode.
     *
     * @param site the site
     * @param name name of the electrode
     * @param part shape of the part; its place counts from the foot of the pole
     * @return the changed site; empty where the electrode has no shape, stands in concrete, its shape is not known, or the
     *     part would lie in one place with the electrode or within 0.1 m of another one, however it is turned
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
            Optional<List<Bar>> laid = laid(site, electrode.name(), ElectrodeBars.of(part, null, in));
            laid.ifPresent(free -> free.forEach(bar -> bars.add(written(bar, x, y))));
            return laid.map(free -> bars);
        } catch (MissingInput unknown) {
            return Optional.empty();
        }
    }

    /** The part turned by as few quarters as leave it clear of what is buried. */
    private static Optional<List<Bar>> laid(Site site, String name, List<Bar> part) {
        List<Bar> buried;
        try {
            buried = SiteEarth.ground(site, Measure.Bound.NOMINAL).bars();
        } catch (MissingInput unknown) {
            return Optional.of(part); // the study of the changed site tells what is missing
        }
        List<Bar> turned = part;
        for (int quarter = 0; quarter < QUARTERS; quarter++) {
            List<Bar> now = turned;
            boolean clear = buried.stream()
                    .allMatch(there -> now.stream()
                            .allMatch(bar -> there.electrode().equals(name)
                                    ? !together(bar, there)
                                    : bar.distance(there) >= CLEAR));
            if (clear) {
                return Optional.of(now);
            }
            turned = now.stream().map(JoinedElectrode::aQuarterFarther).toList();
        }
        return Optional.empty();
    }

    private static Bar aQuarterFarther(Bar bar) {
        return new Bar(
                bar.electrode(), -bar.y1(), bar.x1(), bar.depth1(), -bar.y2(), bar.x2(), bar.depth2(), bar.radius());
    }

    /** Whether two bars share a length and not a point only: of two that do, most of the shorter lies within the other. */
    private static boolean together(Bar one, Bar other) {
        boolean less = one.length() < other.length();
        Bar shorter = less ? one : other;
        Bar longer = less ? other : one;
        int within = 0;
        for (double t : new double[] {0.25, 0.5, 0.75}) {
            double x = shorter.x1() + t * (shorter.x2() - shorter.x1());
            double y = shorter.y1() + t * (shorter.y2() - shorter.y1());
            double z = shorter.depth1() + t * (shorter.depth2() - shorter.depth1());
            within += apart(longer, x, y, z) < one.radius() + other.radius() ? 1 : 0;
        }
        return within > 1;
    }

    /** Distance of a point from the axis of a bar [m]. */
    private static double apart(Bar bar, double x, double y, double z) {
        double dx = bar.x2() - bar.x1();
        double dy = bar.y2() - bar.y1();
        double dz = bar.depth2() - bar.depth1();
        double along =
                ((x - bar.x1()) * dx + (y - bar.y1()) * dy + (z - bar.depth1()) * dz) / (bar.length() * bar.length());
        double t = Math.max(0, Math.min(1, along));
        double east = x - bar.x1() - t * dx;
        double north = y - bar.y1() - t * dy;
        double down = z - bar.depth1() - t * dz;
        return Math.sqrt(east * east + north * north + down * down);
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
