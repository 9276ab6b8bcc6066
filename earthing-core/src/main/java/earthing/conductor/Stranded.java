package earthing.conductor;

import java.util.ArrayList;
import java.util.List;

/**
 * A stranded conductor of equal round wires in concentric layers, not compacted.
 *
 * @param strands number of wires: 7, 19, 37, 61 or 91
 * @param strandRadius radius of one wire [m], &gt; 0
 */
public record Stranded(int strands, double strandRadius) implements Shape {

    /**
     * Refuses numbers of wires that do not close a layer.
     *
     * @param strands number of wires: 7, 19, 37, 61 or 91
     * @param strandRadius radius of one wire [m], &gt; 0
     */
    public Stranded {
        if (layers(strands) < 0) {
            throw new IllegalArgumentException("a concentric conductor has 7, 19, 37, 61 or 91 wires; have " + strands);
        }
        if (!(strandRadius > 0 && strandRadius < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("strand radius must be > 0 m; have " + strandRadius);
        }
    }

    /**
     * The stranded conductor of a given area of metal.
     *
     * @param strands number of wires: 7, 19, 37, 61 or 91
     * @param area area of all wires together [m²], &gt; 0
     * @return the conductor
     */
    public static Stranded ofArea(int strands, double area) {
        return new Stranded(strands, Math.sqrt(area / (strands * Math.PI)));
    }

    @Override
    public double area() {
        return strands * Math.PI * strandRadius * strandRadius;
    }

    @Override
    public double equivalentRadius() {
        return (2 * layers(strands) + 1) * strandRadius;
    }

    @Override
    public double geometricMeanRadius() {
        List<double[]> centres = centres();
        double sum = strands * Math.log(strandRadius * Math.exp(-0.25));
        for (int i = 0; i < strands; i++) {
            for (int k = 0; k < i; k++) {
                double[] a = centres.get(i);
                double[] b = centres.get(k);
                sum += 2 * Math.log(Math.hypot(a[0] - b[0], a[1] - b[1]));
            }
        }
        return Math.exp(sum / ((double) strands * strands));
    }

    @Override
    public double perimeter() {
        return 2 * Math.PI * equivalentRadius();
    }

    private List<double[]> centres() {
        List<double[]> centres = new ArrayList<>();
        centres.add(new double[] {0, 0});
        for (int layer = 1; layer <= layers(strands); layer++) {
            // Layers are laid on circles, not in a honeycomb: the wires of a layer all lie at the same radius.
            double ring = 2 * layer * strandRadius;
            for (int i = 0; i < 6 * layer; i++) {
                double angle = Math.PI * i / (3.0 * layer);
                centres.add(new double[] {ring * Math.cos(angle), ring * Math.sin(angle)});
            }
        }
        return centres;
    }

    private static int layers(int strands) {
        return switch (strands) {
            case 7 -> 1;
            case 19 -> 2;
            case 37 -> 3;
            case 61 -> 4;
            case 91 -> 5;
            default -> -1;
        };
    }
}
