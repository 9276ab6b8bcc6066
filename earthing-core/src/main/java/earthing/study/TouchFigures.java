package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the touch study shows of the ground: its potential along a line, and its plan. */
final class TouchFigures {

    private static final double PROFILE_LENGTH = 15;
    private static final int PROFILE_POINTS = 121;

    private TouchFigures() {}

    /** Potential of the ground and touch voltage along a line from the lead, {@code lead} [m] beside the pole. */
    static Curve profile(PowerCase fault, UnitFields.Unit field, TouchStudy.Basis basis, double lead) {
        double rise = fault.rise().getOrDefault(EarthPaths.CUBICLE, fault.rise().getOrDefault(EarthPaths.TANK, 0.0));
        List<Double> surface = field.profile(lead, PROFILE_LENGTH, PROFILE_POINTS);
        double[] x = new double[PROFILE_POINTS];
        double[] ground = new double[PROFILE_POINTS];
        double[] touch = new double[PROFILE_POINTS];
        double[] limit = new double[PROFILE_POINTS];
        Optional<Double> permissible = basis.permissibleTouch();
        for (int i = 0; i < PROFILE_POINTS; i++) {
            x[i] = PROFILE_LENGTH * i / (PROFILE_POINTS - 1);
            ground[i] = surface.get(i);
            touch[i] = Math.abs(rise - surface.get(i));
            limit[i] = permissible.orElse(0.0);
        }
        List<Curve.Trace> traces = new ArrayList<>(List.of(
                new Curve.Trace("potential of the ground", x, ground), new Curve.Trace("cubicle to ground", x, touch)));
        if (permissible.isPresent()) {
            traces.add(new Curve.Trace("permissible touch voltage", x, limit));
        }
        return new Curve(
                "touch.profile",
                "Potential of the ground along the line of the electrode",
                "distance from the main earth",
                "m",
                "voltage",
                "V",
                traces);
    }

    /** Plan of the ground around the pole. */
    static Curve plan(
            PowerCase fault,
            UnitFields.Unit field,
            TouchStudy.Basis basis,
            Site site,
            List<Bar> bars,
            double lead,
            double reach) {
        boolean cubicle = fault.rise().containsKey(EarthPaths.CUBICLE);
        return SurfacePlan.of(
                (x, y) -> field.scale() * field.field().potential(x, y, 0),
                bars,
                fault.rise().getOrDefault(cubicle ? EarthPaths.CUBICLE : EarthPaths.TANK, 0.0),
                basis.permissibleTouch(),
                new SurfacePlan.Nearby(cubicle ? "cubicle" : "down-lead", lead),
                reach,
                SurfacePlan.nearby(site));
    }
}
