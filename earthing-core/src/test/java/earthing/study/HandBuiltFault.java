package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import earthing.study.PowerCase.FaultShot;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A solved earth fault made by hand, so that touch and heating are tested without a fault solution. */
final class HandBuiltFault {

    private final Site site;
    private final Map<String, Double> electrodeCurrents = new LinkedHashMap<>();
    private final Map<String, Double> rise = new LinkedHashMap<>();
    private final Map<String, Double> memberCurrents = new LinkedHashMap<>();
    private Case circumstances = Case.NONE.with("fault", "maximum");
    private double xOverR;
    private double frequency = 50;
    private List<FaultShot> shots = List.of(new FaultShot(0.5, 0));

    HandBuiltFault(Site site) {
        this.site = site;
    }

    HandBuiltFault into(String electrode, double current) {
        electrodeCurrents.put(electrode, current);
        return this;
    }

    HandBuiltFault rise(String node, double volts) {
        rise.put(node, volts);
        return this;
    }

    HandBuiltFault through(String member, double current) {
        memberCurrents.put(member, current);
        return this;
    }

    HandBuiltFault in(Case other) {
        circumstances = other;
        return this;
    }

    HandBuiltFault xOverR(double ratio, double hertz) {
        xOverR = ratio;
        frequency = hertz;
        return this;
    }

    HandBuiltFault shots(FaultShot... each) {
        shots = List.of(each);
        return this;
    }

    SiteEarth earth() {
        try {
            return SiteEarth.of(site, Bound.NOMINAL, new Inputs(), new EarthCache());
        } catch (MissingInput missing) {
            throw new AssertionError(missing);
        }
    }

    PowerCase build() {
        double current =
                electrodeCurrents.values().stream().mapToDouble(Math::abs).sum();
        return new PowerCase(
                circumstances,
                "nominal",
                site,
                EarthPaths.of(site),
                earth(),
                current,
                electrodeCurrents,
                rise,
                memberCurrents,
                xOverR,
                frequency,
                shots);
    }
}
