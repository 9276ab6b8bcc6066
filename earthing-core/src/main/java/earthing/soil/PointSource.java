package earthing.soil;

import earthing.quantity.Source;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;

/**
 * Green's function of horizontally layered ground: potential of a point source anywhere, as images.
 *
 * <p>In the Hankel domain the source of strength ρ/(4π) in a layer is reflected by what lies above (coefficient Υ) and
 * below (Γ); between both it bounces with 1/(1 − ΥΓe^(−2λh)). For one and two layers these functions are geometric
 * series and the images are exact; blocks of far ones are gathered, with an error below 1e-8 of the leading term. For
 * three and more layers each function is fitted by exponentials at fixed, geometrically spaced depths; the integral of
 * the misfit bounds the error of the potential everywhere because |J0| ≤ 1. {@link ImageSet#bound} states it.
 */
public final class PointSource {

    /** Where the images of two-layer ground come from. */
    public static final Source SOURCE = Source.publication(
            "Tagg, Earth Resistances, 1964", "images of a source in two-layer ground", Source.Status.FROM_MEMORY);

    private final SoilModel soil;
    private final int layers;
    private final AtomicReferenceArray<ImageSet> pairs;
    private final AtomicReferenceArray<ImageSet> surface;
    private final AtomicReference<@Nullable ExponentialFit> fitted = new AtomicReference<>();

    private PointSource(SoilModel soil) {
        this.soil = soil;
        layers = soil.layerCount();
        if (Double.isInfinite(soil.resistivity(layers - 1))) {
            throw new IllegalArgumentException(
                    "over a lowest layer that does not conduct there is no remote earth: the potential of a source cannot be computed");
        }
        pairs = new AtomicReferenceArray<>(layers * layers);
        surface = new AtomicReferenceArray<>(layers);
    }

    /**
     * Prepares a model. The images of each pair of layers are found when first asked for.
     *
     * @param soil the ground; its lowest layer must conduct
     * @return its Green's function
     */
    public static PointSource of(SoilModel soil) {
        return new PointSource(soil);
    }

    /**
     * The ground.
     *
     * @return the model
     */
    public SoilModel soil() {
        return soil;
    }

    /**
     * Potential per ampere of a point source.
     *
     * @param r horizontal distance [m], ≥ 0
     * @param sourceDepth depth of the source [m], ≥ 0
     * @param depth depth of the point of observation [m], ≥ 0
     * @return potential to remote earth [V/A]
     */
    public double potential(double r, double sourceDepth, double depth) {
        int a = soil.layerAt(sourceDepth);
        int b = soil.layerAt(depth);
        return a <= b
                ? images(a, b).potential(r, sourceDepth, depth)
                : images(b, a).potential(r, depth, sourceDepth);
    }

    /**
     * Images between two layers.
     *
     * @param upper index of the upper layer
     * @param lower index of the lower layer, ≥ upper
     * @return the images
     */
    public ImageSet images(int upper, int lower) {
        if (upper > lower) {
            throw new IllegalArgumentException("the upper layer must be named first; have " + upper + ", " + lower);
        }
        int key = upper * layers + lower;
        ImageSet known = pairs.get(key);
        if (known == null) {
            known = upper == lower ? within(upper) : between(upper, lower);
            pairs.set(key, known);
        }
        return known;
    }

    /**
     * Images for a point on the surface, half as many: the upper depth of the set is 0.
     *
     * @param layer layer of the source
     * @return the images
     */
    public ImageSet surfaceImages(int layer) {
        ImageSet known = surface.get(layer);
        if (known == null) {
            known = fromSurface(layer);
            surface.set(layer, known);
        }
        return known;
    }

    private ExponentialFit fit() {
        ExponentialFit known = fitted.get();
        if (known == null) {
            known = ExponentialFit.of(soil);
            fitted.set(known);
        }
        return known;
    }

    private double strength(int layer) {
        return soil.resistivity(layer) / (4 * Math.PI);
    }

    private ImageSet within(int s) {
        ImageSet.Builder set = new ImageSet.Builder();
        double c = strength(s);
        set.add(c, 0, 1, -1);
        double top = soil.top(s);
        double bottom = top + soil.thickness(s);
        boolean last = s == layers - 1;
        if (layers == 1) {
            return set.add(c, 0, 1, 1).build();
        }
        if (layers == 2) {
            double k = reflection();
            double h = soil.thickness(0);
            List<GeometricImages.Term> series = GeometricImages.of(k, h);
            if (s == 0) {
                for (GeometricImages.Term term : series) {
                    double weight = c * term.coefficient();
                    set.add(weight, term.shift(), 1, 1);
                    set.add(k * weight, 2 * h + term.shift(), -1, -1);
                    set.add(k * weight, 2 * h + term.shift(), 1, -1);
                    set.add(k * weight, 2 * h + term.shift(), -1, 1);
                }
            } else {
                set.add(-k * c, -2 * h, 1, 1);
                for (GeometricImages.Term term : series) {
                    set.add((1 - k * k) * c * term.coefficient(), term.shift(), 1, 1);
                }
            }
            return set.bound(() -> 4 * c * GeometricImages.bound(k, h)).build();
        }
        ExponentialFit fit = fit();
        family(set, fit.terms(lambda -> fit.up(s, lambda) / fit.bounce(s, lambda)), c, -2 * top, 1, 1);
        if (!last) {
            family(set, fit.terms(lambda -> fit.down(s, lambda) / fit.bounce(s, lambda)), c, 2 * bottom, -1, -1);
            // One thickness stays in the offset, so that the distance of an image is never negative.
            double h = soil.thickness(s);
            ExponentialFit.Fitted both = fit.terms(
                    lambda -> fit.up(s, lambda) * fit.down(s, lambda) * Math.exp(-lambda * h) / fit.bounce(s, lambda));
            family(set, both, c, h, 1, -1);
            family(set, both, c, h, -1, 1);
        }
        return set.build();
    }

    private ImageSet between(int s, int o) {
        ImageSet.Builder set = new ImageSet.Builder();
        double c = strength(s);
        if (layers == 2) {
            double k = reflection();
            double h = soil.thickness(0);
            for (GeometricImages.Term term : GeometricImages.of(k, h)) {
                double weight = (1 + k) * c * term.coefficient();
                set.add(weight, term.shift(), -1, 1);
                set.add(weight, term.shift(), 1, 1);
            }
            return set.bound(() -> 2 * (1 + k) * c * GeometricImages.bound(k, h))
                    .build();
        }
        ExponentialFit fit = fit();
        double top = soil.top(s);
        double bottom = soil.top(o) + soil.thickness(o);
        family(set, fit.terms(lambda -> fit.through(s, o, lambda)), c, 0, -1, 1);
        family(set, fit.terms(lambda -> fit.through(s, o, lambda) * fit.up(s, lambda)), c, -2 * top, 1, 1);
        if (o < layers - 1) {
            family(set, fit.terms(lambda -> fit.through(s, o, lambda) * fit.down(o, lambda)), c, 2 * bottom, -1, -1);
            family(
                    set,
                    fit.terms(lambda -> fit.through(s, o, lambda) * fit.up(s, lambda) * fit.down(o, lambda)),
                    c,
                    2 * bottom - 2 * top,
                    1,
                    -1);
        }
        return set.build();
    }

    private ImageSet fromSurface(int o) {
        ImageSet.Builder set = new ImageSet.Builder();
        double c = 2 * strength(0);
        if (layers == 1) {
            return set.add(c, 0, 1, 1).build();
        }
        if (layers == 2) {
            double k = reflection();
            double h = soil.thickness(0);
            for (GeometricImages.Term term : GeometricImages.of(k, h)) {
                double weight = c * term.coefficient();
                if (o == 0) {
                    set.add(weight, term.shift(), 1, 1);
                    set.add(k * weight, 2 * h + term.shift(), -1, -1);
                } else {
                    set.add((1 + k) * weight, term.shift(), 1, 1);
                }
            }
            return set.bound(() -> 2 * c * GeometricImages.bound(k, h)).build();
        }
        ExponentialFit fit = fit();
        double bottom = soil.top(o) + soil.thickness(o);
        family(set, fit.terms(lambda -> fit.through(0, o, lambda)), c, 0, 1, 1);
        if (o < layers - 1) {
            family(set, fit.terms(lambda -> fit.through(0, o, lambda) * fit.down(o, lambda)), c, 2 * bottom, -1, -1);
        }
        return set.build();
    }

    private double reflection() {
        double above = soil.resistivity(0);
        double below = soil.resistivity(1);
        return (below - above) / (below + above);
    }

    private static void family(
            ImageSet.Builder set, ExponentialFit.Fitted fitted, double c, double offset, int upper, int lower) {
        for (GeometricImages.Term term : fitted.terms()) {
            set.add(c * term.coefficient(), offset + term.shift(), upper, lower);
        }
        set.bound(() -> c * fitted.bound().getAsDouble());
    }
}
