package earthing.study;

import earthing.electrode.wire.EnergisedElectrodes;
import earthing.site.Cubicle;
import earthing.site.CubicleEarth;
import earthing.site.OperatorMat;
import earthing.site.Site;
import java.util.Optional;

/** Where the operator stands, if a mat is laid and bonded there. */
final class OperatorPlace {

    /** Places looked at along each side of the mat. */
    private static final int PLACES = 9;

    private OperatorPlace() {}

    /** The electrode that the mat is bonded to through the cubicle's earth; empty without mat or without earth. */
    static Optional<String> bondedTo(Site site) {
        Cubicle cubicle = site.cubicle();
        if (cubicle == null || cubicle.operatorMat() == null || cubicle.earth() == CubicleEarth.UNEARTHED) {
            return Optional.empty();
        }
        String own = cubicle.electrode();
        boolean separate = cubicle.earth() == CubicleEarth.SEPARATE;
        return separate ? Optional.ofNullable(own) : EarthPaths.mainElectrode(site);
    }

    /** Largest voltage between a part and the ground anywhere on the mat [V]. */
    static double worstOn(OperatorMat mat, EnergisedElectrodes field, double potential, Inputs in) throws MissingInput {
        double x = in.need(mat.at().x(), "cubicle.operator-mat.at.x");
        double y = in.need(mat.at().y(), "cubicle.operator-mat.at.y");
        double width = in.need(mat.shape().width(), "cubicle.operator-mat.shape.width");
        double length = in.need(mat.shape().length(), "cubicle.operator-mat.shape.length");
        return field.worstTouchOn(x, y, width, length, PLACES, potential);
    }
}
