package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code inductance.} to the room {@code earthing.conductor.inductance}. */
final class InductanceModels {

    private InductanceModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
