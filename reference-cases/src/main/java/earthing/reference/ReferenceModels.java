package earthing.reference;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/** All model names that case files may use, gathered from one class a room. */
public final class ReferenceModels {

    private ReferenceModels() {}

    /**
     * The bound models.
     *
     * @return model name to function, in alphabetical order
     * @throws IllegalStateException if two rooms bind the same name
     */
    public static Map<String, ReferenceModel> all() {
        Map<String, ReferenceModel> models = new OnceOnly();
        SoilModels.register(models);
        InversionModels.register(models);
        ElectrodeModels.register(models);
        FaultModels.register(models);
        SafetyModels.register(models);
        ConductorModels.register(models);
        InductanceModels.register(models);
        NetworkModels.register(models);
        CircuitModels.register(models);
        SurgeModels.register(models);
        LineEndModels.register(models);
        EarthTesterModels.register(models);
        ImpulseModels.register(models);
        DeckModels.register(models);
        WorkedExampleModels.register(models);
        return Collections.unmodifiableMap(models);
    }

    private static final class OnceOnly extends TreeMap<String, ReferenceModel> {
        private static final long serialVersionUID = 1L;

        @Override
        public ReferenceModel put(String name, ReferenceModel model) {
            if (containsKey(name)) {
                throw new IllegalStateException("two models are bound to the name " + name);
            }
            super.put(name, model);
            return model;
        }
    }
}
