package earthing.study;

import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.site.MainEarth;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.List;

/** What a broken earth path does while the line is live, and whether the break can be seen from the ground. */
final class PathBreaks {

    private PathBreaks() {}

    /** The members that are broken in turn. */
    static List<Member> members(EarthPaths paths) {
        return paths.members().stream()
                .filter(Member::intact)
                .filter(m -> m.role() == Role.MAIN_EARTH
                        || m.role() == Role.TEE
                        || m.role() == Role.OWN_LEAD
                        || m.name().equals(FaultSolver.LINE_NEUTRAL))
                .toList();
    }

    static Result consequence(SolvedFault solved, Member member) {
        PowerCase power = solved.power();
        return Result.of(
                "contingency.visible",
                power.circumstances(),
                power.at(),
                visible(power, member) ? 1 : 0,
                "",
                sentence(solved),
                FaultResults.CIRCUIT);
    }

    /** Visible where the whole member lies above the guard, or where there is no guard. */
    private static boolean visible(PowerCase power, Member member) {
        MainEarth main = power.site().mainEarth();
        Measure guard = main == null ? null : main.guardHeight();
        double height = guard != null && guard.isKnown() ? guard.at(Measure.Bound.HIGH) : 0;
        return height == 0 || Math.min(member.fromHeight(), member.toHeight()) >= height;
    }

    private static String sentence(SolvedFault solved) {
        PowerCase power = solved.power();
        double tank = Math.abs(power.rise().getOrDefault(EarthPaths.TANK, 0.0));
        boolean joined = metallic(power.paths());
        if (!solved.flows()) {
            return "an earth fault leaves " + (joined ? "tank and cubicle" : "the tank") + " at " + volts(tank)
                    + " with no way to earth and is not cleared";
        }
        StringBuilder text = new StringBuilder("an earth fault raises ");
        Double cubicle = power.rise().get(EarthPaths.CUBICLE);
        boolean hasCubicle = power.site().cubicle() != null;
        if (hasCubicle && joined && cubicle != null) {
            text.append("tank and cubicle to ").append(volts(Math.abs(cubicle)));
        } else {
            text.append("the tank to ").append(volts(tank));
            if (hasCubicle) {
                text.append(
                        cubicle == null
                                ? ", the cubicle is joined to no earth and floats"
                                : ", the cubicle to " + volts(Math.abs(cubicle)));
            }
        }
        for (Member screen : power.paths().withRole(Role.SCREEN)) {
            double current = power.memberCurrents().getOrDefault(screen.name(), 0.0);
            if (current >= 1) {
                text.append("; the cable screen carries ")
                        .append(Numbers.brief(current))
                        .append(" A of ")
                        .append(Numbers.brief(power.current()))
                        .append(" A");
            }
        }
        if (solved.ending().isEmpty()) {
            return text.append("; the protection is not described").toString();
        }
        return text.append(
                        power.neverCleared()
                                ? "; the protection does not clear it"
                                : "; it is cleared in "
                                        + Numbers.brief(power.shots().get(0).duration()) + " s")
                .toString();
    }

    /** Whether metal joins tank and cubicle. */
    private static boolean metallic(EarthPaths paths) {
        EarthPaths metal = new EarthPaths(paths.members().stream()
                .filter(m -> !m.from().equals(EarthPaths.EARTH) && !m.to().equals(EarthPaths.EARTH))
                .toList());
        return metal.connected(EarthPaths.TANK, EarthPaths.CUBICLE);
    }

    private static String volts(double value) {
        return value >= 1000 ? Numbers.brief(value / 1000) + " kV" : Numbers.brief(value) + " V";
    }
}
