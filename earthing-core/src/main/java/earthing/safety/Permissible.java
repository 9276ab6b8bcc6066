package earthing.safety;

/** The answer of a curve: a voltage with its origin, or the reason why the curve has none. */
public sealed interface Permissible permits PermissibleVoltage, NoPermissibleVoltage {}
