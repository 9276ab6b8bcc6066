package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code soil.} to the room {@code earthing.soil}. */
final class SoilModels {

    private SoilModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
