package earthing.report.figure;

import earthing.report.markup.Markup;
import earthing.site.Bar;
import earthing.site.Electrode;
import earthing.site.PlateLie;
import earthing.site.PlateShape;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.SoilLayer;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What lies below ground in the elevation: soil layers and electrodes, depths to scale. */
final class Ground {

    private static final double LEFT = 300;
    private static final double RIGHT = 650;
    private static final double DEEPEST_LAYER = 6;

    private final Site site;

    Ground(Site site) {
        this.site = site;
    }

    /** Depth [m] that the drawing has to show. */
    double deepest() {
        double deepest =
                site.pole() == null ? 1 : PoleElevation.nominal(site.pole().burial(), 1);
        for (Electrode electrode : site.electrodes()) {
            deepest = Math.max(deepest, bottom(electrode));
        }
        double interfaceDepth = 0;
        Soil soil = site.soil();
        if (soil != null) {
            for (SoilLayer layer : soil.layers()) {
                interfaceDepth += PoleElevation.nominal(layer.thickness(), 0);
                if (interfaceDepth < DEEPEST_LAYER) {
                    deepest = Math.max(deepest, interfaceDepth);
                }
            }
        }
        return deepest + 0.7;
    }

    void draw(Markup svg, double ground, double scale, double bottom, LabelColumn labels) {
        Soil soil = site.soil();
        if (soil == null) {
            labels.add("soil: not described", LEFT + 8, ground + 30);
            return;
        }
        if (soil.layers().isEmpty()) {
            band(svg, ground, bottom, 0);
            labels.add(
                    soil.isSurveyed()
                            ? "soil: layers are fitted to the readings of a survey, see Soil"
                            : "soil, uniform: "
                                    + (soil.resistivity() == null ? "unknown" : PoleElevation.text(soil.resistivity())),
                    LEFT + 8,
                    (ground + bottom) / 2);
            return;
        }
        double top = ground;
        for (int i = 0; i < soil.layers().size() && top < bottom; i++) {
            SoilLayer layer = soil.layers().get(i);
            double thickness = PoleElevation.nominal(layer.thickness(), Double.POSITIVE_INFINITY);
            double below = Math.min(bottom, top + thickness * scale);
            band(svg, top, below, i);
            labels.add(
                    "soil layer " + (i + 1) + ": " + PoleElevation.text(layer.resistivity())
                            + (layer.thickness() == null
                                    ? ""
                                    : ", " + PoleElevation.text(layer.thickness()) + " thick"),
                    LEFT + 8,
                    (top + below) / 2);
            top = below;
        }
    }

    private static void band(Markup svg, double top, double bottom, int number) {
        svg.empty(
                "rect",
                "x",
                Draw.n(LEFT),
                "y",
                Draw.n(top),
                "width",
                Draw.n(RIGHT - LEFT),
                "height",
                Draw.n(bottom - top),
                "fill",
                "currentColor",
                "fill-opacity",
                number % 2 == 0 ? "0.05" : "0.13");
        Draw.line(svg, LEFT, bottom, RIGHT, bottom, 0.6, "4 4");
    }

    /** Where the lead reaches the electrode on the paper. */
    double topOf(@Nullable String name, double ground, double scale) {
        Optional<Electrode> electrode = name == null
                ? site.electrodes().stream().findFirst()
                : site.electrodes().stream().filter(e -> e.name().equals(name)).findFirst();
        return ground + electrode.map(e -> top(e) * scale).orElse(14.0);
    }

    void electrode(Markup svg, Electrode electrode, double x, double ground, double scale, LabelColumn labels) {
        double top = ground + top(electrode) * scale;
        double bottom = ground + bottom(electrode) * scale;
        if (electrode.rod() != null) {
            bar(svg, x, top, x, bottom);
        } else if (electrode.rodsInLine() != null) {
            rods(svg, x, top, bottom, electrode.rodsInLine().count());
        } else if (electrode.rodsInRing() != null) {
            rods(svg, x, top, bottom, electrode.rodsInRing().count());
        } else if (!electrode.bars().isEmpty()) {
            bars(svg, electrode.bars(), x, ground, scale);
        } else if (electrode.wire() != null || electrode.star() != null) {
            bar(svg, x, top, x + 44, top);
            bar(svg, x, top, x - (electrode.star() == null ? 0 : 44), top);
        } else if (electrode.plate() != null) {
            boolean upright = electrode.plate().lie() == PlateLie.VERTICAL;
            bar(svg, upright ? x : x - 12, top, upright ? x : x + 12, bottom);
        } else if (electrode.ring() != null || electrode.mat() != null) {
            bar(svg, x - 30, top, x + 30, top);
            bar(svg, x - 30, top, x - 30, top + 5);
            bar(svg, x + 30, top, x + 30, top + 5);
        } else {
            for (int i = 0; i < 3; i++) {
                bar(svg, x - 14 + 5 * i, top + 5 * i, x + 14 - 5 * i, top + 5 * i);
            }
        }
        labels.add("electrode " + electrode.name() + ": " + ElevationWords.shape(electrode), x, (top + bottom) / 2);
    }

    private static void rods(Markup svg, double x, double top, double bottom, int count) {
        int shown = Math.min(count, 5);
        double start = x - 7.0 * (shown - 1);
        for (int i = 0; i < shown; i++) {
            bar(svg, start + 14 * i, top, start + 14 * i, bottom);
        }
        Draw.line(svg, start, top, start + 14 * (shown - 1), top, 1.5, "");
    }

    private static void bars(Markup svg, List<Bar> bars, double x, double ground, double scale) {
        double reach = 1;
        for (Bar bar : bars) {
            for (double end : new double[] {PoleElevation.nominal(bar.x1(), 0), PoleElevation.nominal(bar.x2(), 0)}) {
                reach = Math.max(reach, Math.abs(end));
            }
        }
        for (Bar bar : bars) {
            bar(
                    svg,
                    x + PoleElevation.nominal(bar.x1(), 0) / reach * 40,
                    ground + PoleElevation.nominal(bar.depth1(), 0) * scale,
                    x + PoleElevation.nominal(bar.x2(), 0) / reach * 40,
                    ground + PoleElevation.nominal(bar.depth2(), 0) * scale);
        }
    }

    private static void bar(Markup svg, double x1, double y1, double x2, double y2) {
        Draw.line(svg, x1, y1, x2, y2, 4, "");
    }

    private static double top(Electrode electrode) {
        if (electrode.rod() != null) {
            return PoleElevation.nominal(electrode.rod().topDepth(), 0);
        }
        if (electrode.rodsInLine() != null) {
            return PoleElevation.nominal(electrode.rodsInLine().topDepth(), 0);
        }
        if (electrode.rodsInRing() != null) {
            return PoleElevation.nominal(electrode.rodsInRing().topDepth(), 0);
        }
        if (electrode.wire() != null) {
            return PoleElevation.nominal(electrode.wire().depth(), 0.5);
        }
        if (electrode.star() != null) {
            return PoleElevation.nominal(electrode.star().depth(), 0.5);
        }
        if (electrode.ring() != null) {
            return PoleElevation.nominal(electrode.ring().depth(), 0.5);
        }
        if (electrode.mat() != null) {
            return PoleElevation.nominal(electrode.mat().depth(), 0.1);
        }
        if (electrode.plate() != null) {
            return PoleElevation.nominal(electrode.plate().depth(), 1) - reach(electrode.plate());
        }
        return electrode.bars().stream()
                .mapToDouble(b -> Math.min(PoleElevation.nominal(b.depth1(), 0), PoleElevation.nominal(b.depth2(), 0)))
                .min()
                .orElse(0.3);
    }

    /** How far a plate reaches above and below its centre [m]. */
    private static double reach(PlateShape plate) {
        return plate.lie() == PlateLie.VERTICAL ? PoleElevation.nominal(plate.length(), 0.6) / 2 : 0;
    }

    private static double bottom(Electrode electrode) {
        double top = top(electrode);
        if (electrode.plate() != null) {
            return top + 2 * reach(electrode.plate());
        }
        if (electrode.rod() != null) {
            return top + PoleElevation.nominal(electrode.rod().length(), 1);
        }
        if (electrode.rodsInLine() != null) {
            return top + PoleElevation.nominal(electrode.rodsInLine().length(), 1);
        }
        if (electrode.rodsInRing() != null) {
            return top + PoleElevation.nominal(electrode.rodsInRing().length(), 1);
        }
        return electrode.bars().stream()
                .mapToDouble(b -> Math.max(PoleElevation.nominal(b.depth1(), 0), PoleElevation.nominal(b.depth2(), 0)))
                .max()
                .orElse(top);
    }
}
