package earthing.fault;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * Ways back to the station that have been found before, for faults among which the sources differ and the conductors mostly do
 * not. A solution with it is the same as without. For one thread.
 */
public final class ReturnPaths {

    private record Key(
            Optional<ReturnConductor> first,
            Optional<SecondWire> second,
            Complex station,
            boolean bolted,
            Complex pole) {}

    private final Map<Key, ReturnPath> known = new HashMap<>();

    ReturnPath of(EarthFaultSystem system, PoleEarth earth) {
        Key key = new Key(
                system.returnConductor(),
                system.secondWire(),
                system.stationEarth(),
                earth.isBolted(),
                earth.isBolted() ? Complex.ZERO : earth.admittance());
        ReturnPath path = known.get(key);
        if (path == null) {
            path = ReturnPath.of(system, earth);
            known.put(key, path);
        }
        return path;
    }
}
