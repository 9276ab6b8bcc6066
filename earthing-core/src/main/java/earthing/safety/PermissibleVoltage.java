package earthing.safety;

import earthing.quantity.Numbers;
import earthing.quantity.Source;
import java.util.List;
import java.util.Objects;

/**
 * A permissible voltage with everything that it rests on.
 *
 * @param value prospective r.m.s. voltage between the two places touched [V], &gt; 0
 * @param contact between which parts of the body
 * @param duration duration of the exposure [s]; infinite where it is never cleared
 * @param sustained whether the value is the curve's value for sustained faults
 * @param curve name of the curve
 * @param edition edition of the standard, or the owner's reference
 * @param footwear what is credited on the feet
 * @param surface what is under the feet
 * @param additionalResistance resistance credited in series with the body [Ω], ≥ 0
 * @param rule how the value was found between the printed points
 * @param remarks what the reader has to know, such as use outside the table
 * @param source where the curve stands
 */
public record PermissibleVoltage(
        double value,
        Contact contact,
        double duration,
        boolean sustained,
        String curve,
        String edition,
        String footwear,
        String surface,
        double additionalResistance,
        String rule,
        List<String> remarks,
        Source source)
        implements Permissible {

    /**
     * Refuses a value that is not positive and keeps a copy of the list.
     *
     * @param value prospective r.m.s. voltage between the two places touched [V], &gt; 0
     * @param contact between which parts of the body
     * @param duration duration of the exposure [s]; infinite where it is never cleared
     * @param sustained whether the value is the curve's value for sustained faults
     * @param curve name of the curve
     * @param edition edition of the standard, or the owner's reference
     * @param footwear what is credited on the feet
     * @param surface what is under the feet
     * @param additionalResistance resistance credited in series with the body [Ω], ≥ 0
     * @param rule how the value was found between the printed points
     * @param remarks what the reader has to know, such as use outside the table
     * @param source where the curve stands
     */
    public PermissibleVoltage {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("permissible voltage must be > 0 V; have " + value);
        }
        Objects.requireNonNull(contact);
        Objects.requireNonNull(source);
        remarks = List.copyOf(remarks);
    }

    /**
     * The basis in one line.
     *
     * @return curve, contact, duration, footwear, surface, rule and remarks
     */
    public String basis() {
        StringBuilder text = new StringBuilder(curve)
                .append(", ")
                .append(contact.label())
                .append(", ")
                .append(
                        Double.isInfinite(duration)
                                ? "never cleared"
                                : "exposure " + Numbers.significant(duration, 3) + " s")
                .append("; footwear: ")
                .append(footwear)
                .append("; surface: ")
                .append(surface)
                .append("; ")
                .append(rule);
        for (String remark : remarks) {
            text.append("; ").append(remark);
        }
        return text.toString();
    }
}
