package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code surge.} to the room {@code earthing.surge}. */
final class SurgeModels {

    private SurgeModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
