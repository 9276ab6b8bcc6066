package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code safety.} to the room {@code earthing.safety}. */
final class SafetyModels {

    private SafetyModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
