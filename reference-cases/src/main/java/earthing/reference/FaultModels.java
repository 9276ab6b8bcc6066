package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code fault.} to the room {@code earthing.fault}. */
final class FaultModels {

    private FaultModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
