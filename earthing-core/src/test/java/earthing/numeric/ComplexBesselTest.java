package earthing.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class ComplexBesselTest {

    /** |z|; then real and imaginary parts of e^(-z) I0, e^(-z) I1, e^z K0, e^z K1 at 45 degrees. */
    private static final double[][] SCIPY = {
        {
            0.001,
            0.9992928935132589,
            -0.0007063570758143265,
            0.00035355316976819933,
            0.0003530536115641042,
            7.029209238601683,
            -0.7809815069605082,
            708.1041966435732,
            -707.108813574966
        },
        {
            0.1,
            0.9295661842151052,
            -0.06350486158141086,
            0.035148565142756764,
            0.030575940087934766,
            2.6502392492168476,
            -0.6481466111368118,
            7.97206607544235,
            -7.1248880443495075
        },
        {
            1,
            0.4489381801396039,
            -0.22176234471512613,
            0.24209126065771014,
            0.04987713167584365,
            1.0942362718997376,
            -0.3854676994465817,
            1.348527772005139,
            -0.8226368845584858
        },
        {
            5,
            0.166359318021762,
            -0.07281263007713215,
            0.1600515481843019,
            -0.055173786401181375,
            0.5120958586278663,
            -0.20286387875882936,
            0.5345996440934654,
            -0.2510998796004586
        },
        {
            39,
            0.05909631983992531,
            -0.024638462429999747,
            0.058786097830155606,
            -0.02387446146458773,
            0.1851647079339516,
            -0.07621527131120344,
            0.18615827533227455,
            -0.07856975472404346
        },
        {
            41,
            0.05763331375538816,
            -0.0240207546533694,
            0.05734535911368775,
            -0.023312304055029858,
            0.18060404522791648,
            -0.07436061322469628,
            0.18152542398391858,
            -0.07654594908181334
        },
        {
            300,
            0.021283330578134696,
            -0.008823208974343816,
            0.021268658537530228,
            -0.008787698476462784,
            0.06684047949991181,
            -0.027663218312266334,
            0.06688668845837423,
            -0.027774499283125656
        },
        {
            10000,
            0.003685765157664049,
            -0.001526732086213355,
            0.003685688826226643,
            -0.0015265477919985545,
            0.011579052836537328,
            -0.004796080828227174,
            0.011579292656806165,
            -0.004796659762156817
        }
    };

    private static void close(Complex found, Complex expected, double relative) {
        assertThat(found.subtract(expected).abs() / expected.abs()).isLessThan(relative);
    }

    @Test
    void agreesWithScipyAtFortyFiveDegrees() {
        for (double[] row : SCIPY) {
            Complex z = new Complex(row[0] * Math.sqrt(0.5), row[0] * Math.sqrt(0.5));
            close(ComplexBessel.scaledI(0, z), new Complex(row[1], row[2]), 1e-12);
            close(ComplexBessel.scaledI(1, z), new Complex(row[3], row[4]), 1e-11);
            close(ComplexBessel.scaledK(0, z), new Complex(row[5], row[6]), 1e-11);
            close(ComplexBessel.scaledK(1, z), new Complex(row[7], row[8]), 1e-11);
            close(ComplexBessel.ratioI1I0(z), new Complex(row[3], row[4]).divide(new Complex(row[1], row[2])), 1e-12);
        }
    }

    /** Abramowitz and Stegun 9.6.15 (from memory): I0 K1 + I1 K0 = 1/z. */
    @Property(seed = "20261125", tries = 200)
    void wronskianHolds(@ForAll @DoubleRange(min = -2, max = 3) double lg) {
        double size = Math.pow(10, lg) * Math.sqrt(0.5);
        Complex z = new Complex(size, size);
        Complex sum = ComplexBessel.scaledI(0, z)
                .multiply(ComplexBessel.scaledK(1, z))
                .add(ComplexBessel.scaledI(1, z).multiply(ComplexBessel.scaledK(0, z)));
        close(sum.multiply(z), Complex.ONE, 1e-11);
    }

    @Test
    void refusesTheLeftHalfPlane() {
        assertThatThrownBy(() -> ComplexBessel.ratioI1I0(new Complex(-1, 1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ComplexBessel.scaledK(2, Complex.ONE)).isInstanceOf(IllegalArgumentException.class);
    }
}
