package earthing.reference;

import java.util.Map;

/** Binds the model names that begin with {@code electrode.} to the room {@code earthing.electrode}. */
final class ElectrodeModels {

    private ElectrodeModels() {}

    static void register(Map<String, ReferenceModel> models) {}
}
