package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code conductor.} to the room {@code earthing.conductor}. */
final class ConductorModels {

    private ConductorModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
