package earthing.electrode.wire;

/**
 * Greatest touch or step voltage found, with its place.
 *
 * @param voltage prospective voltage, not negative [V]; without the resistance of body, footwear or covering
 * @param x1 east of the foot, for a step of the first foot [m]
 * @param y1 north of it [m]
 * @param x2 east of the touched part, for a step of the second foot [m]
 * @param y2 north of it [m]
 */
public record SurfaceVoltage(double voltage, double x1, double y1, double x2, double y2) {}
