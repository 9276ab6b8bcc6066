package earthing.study;

import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.site.MainEarth;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.List;

/** What a broken earth path does while the line is live, and whether the break can be seen from the ground. */
final class PathBreaks {

    private PathBreaks() {}

    /** The members that are broken in turn. */
    static List<Member> members(EarthPaths paths) {
        return paths.members().stream()
                .filter(Member::intact)
                .filter(m -> m.role() != Role.ELECTRODE && m.role() != Role.UNINTENDED)
                .toList();
    }

    static List<Result> consequences(SolvedFault solved, Member member) {
        PowerCase power = solved.power();
        List<Result> results = new ArrayList<>();
        results.add(result("contingency.visible", power, visible(power, member) ? 1 : 0, "", sentence(solved)));
        solved.ending().ifPresent(ending -> {
            boolean cleared = !power.neverCleared();
            results.add(result(
                    "contingency.cleared",
                    power,
                    cleared ? 1 : 0,
                    "",
                    "1 if the protection clears an earth fault with this path broken, 0 if it never does"));
            if (cleared) {
                results.add(result(
                        "contingency.clearing-time",
                        power,
                        power.shots().get(0).duration(),
                        "s",
                        "first shot of an earth fault with this path broken"));
            }
        });
        return List.copyOf(results);
    }

    private static Result result(String id, PowerCase power, double value, String unit, String model) {
        return Result.of(id, power.circumstances(), power.at(), value, unit, model, FaultResults.CIRCUIT);
    }

    /**
     * Visible where the whole member lies above the guard, or where there is no guard. A guard covers leads only; a screen
     * and the bars of a concrete pole are out of sight wherever they break.
     */
    private static boolean visible(PowerCase power, Member member) {
        if (member.role() == Role.SCREEN || member.name().equals("pole reinforcement")) {
            return false;
        }
        if (member.role() == Role.PARALLEL && !member.name().equals("second lead")) {
            return true;
        }
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
