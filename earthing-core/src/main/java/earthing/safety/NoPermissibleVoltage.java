package earthing.safety;

import java.util.Objects;

/**
 * A curve has no value for these circumstances; none is invented.
 *
 * @param curve name and edition of the curve
 * @param reason why, and what the reader may do
 */
public record NoPermissibleVoltage(String curve, String reason) implements Permissible {

    /**
     * Checks that no part is missing.
     *
     * @param curve name and edition of the curve
     * @param reason why, and what the reader may do
     */
    public NoPermissibleVoltage {
        Objects.requireNonNull(curve);
        Objects.requireNonNull(reason);
    }
}
