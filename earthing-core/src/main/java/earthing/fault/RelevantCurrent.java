package earthing.fault;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.List;

/**
 * Which current belongs to which check, by how the neutral is earthed.
 *
 * @param network how the neutral is treated, in the words of the standard
 * @param place what stands at the place of the earthing system
 * @param heating current for the heating of electrodes and earthing conductors
 * @param rise current to earth for earth potential rise and touch voltage
 */
public record RelevantCurrent(Network network, Place place, Heating heating, Rise rise) {

    /** Where the assignment comes from. */
    public static final Source SOURCE = Source.standard(
            "EN 50522:2010", "table 1, relevant currents for the design of earthing systems", Status.FROM_MEMORY);

    /** Treatment of the neutral. */
    public enum Network {
        /** Isolated neutral. */
        ISOLATED,
        /** Resonant earthing. */
        RESONANT,
        /** Solid, resistor or reactor. */
        LOW_IMPEDANCE
    }

    /** What stands at the place. */
    public enum Place {
        /** Neither coil nor earthed neutral, as at every pole. */
        NO_NEUTRAL_EARTHING,
        /** The arc-suppression coil or the neutral earthing is at this place. */
        NEUTRAL_EARTHING_HERE
    }

    /** Current for heating. */
    public enum Heating {
        /** Double earth fault, I″kEE. */
        DOUBLE_EARTH_FAULT,
        /** Single-phase earth fault, I″k1. */
        SINGLE_EARTH_FAULT
    }

    /** Current for earth potential rise. */
    public enum Rise {
        /** Reduction factor times capacitive current, {@code r·I_C}. */
        CAPACITIVE,
        /** Reduction factor times residual current, {@code r·I_Res}. */
        RESIDUAL,
        /** Reduction factor times coil and residual current, {@code r·√(I_L² + I_Res²)}. */
        COIL_AND_RESIDUAL,
        /** Reduction factor times single-phase fault current, {@code r·I″k1}. */
        SINGLE_EARTH_FAULT,
        /** Reduction factor times what does not return to the local neutral, {@code r·(I″k1 − I_N)}. */
        SINGLE_EARTH_FAULT_LESS_NEUTRAL
    }

    /** All rows. */
    public static final List<RelevantCurrent> ROWS = List.of(
            new RelevantCurrent(
                    Network.ISOLATED, Place.NO_NEUTRAL_EARTHING, Heating.DOUBLE_EARTH_FAULT, Rise.CAPACITIVE),
            new RelevantCurrent(Network.RESONANT, Place.NO_NEUTRAL_EARTHING, Heating.DOUBLE_EARTH_FAULT, Rise.RESIDUAL),
            new RelevantCurrent(
                    Network.RESONANT, Place.NEUTRAL_EARTHING_HERE, Heating.DOUBLE_EARTH_FAULT, Rise.COIL_AND_RESIDUAL),
            new RelevantCurrent(
                    Network.LOW_IMPEDANCE,
                    Place.NO_NEUTRAL_EARTHING,
                    Heating.SINGLE_EARTH_FAULT,
                    Rise.SINGLE_EARTH_FAULT),
            new RelevantCurrent(
                    Network.LOW_IMPEDANCE,
                    Place.NEUTRAL_EARTHING_HERE,
                    Heating.SINGLE_EARTH_FAULT,
                    Rise.SINGLE_EARTH_FAULT_LESS_NEUTRAL));

    /**
     * The row for a pole, where the neutral is never earthed.
     *
     * @param method how the network's neutral is earthed
     * @return currents for heating and for earth potential rise
     */
    public static RelevantCurrent atPole(NeutralMethod method) {
        Network network = method instanceof NeutralMethod.Isolated
                ? Network.ISOLATED
                : method instanceof NeutralMethod.Resonant ? Network.RESONANT : Network.LOW_IMPEDANCE;
        return ROWS.stream()
                .filter(row -> row.network == network && row.place == Place.NO_NEUTRAL_EARTHING)
                .findFirst()
                .orElseThrow();
    }
}
