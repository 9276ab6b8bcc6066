package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code network.} to the room {@code earthing.network}. */
final class NetworkModels {

    private NetworkModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
