package earthing.report;

import earthing.compliance.Finding;
import earthing.site.ControlCable;
import earthing.site.Termination;
import earthing.study.Curve;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;

/** The line that the waveforms at the cable end must stay below. */
final class WaveformLimits {

    static final String CURVE = "surge.cable-end.waveforms";

    private WaveformLimits() {}

    /**
     * The open waveforms at the cubicle with what the cores bear there, where a check has a limit. Behind a protector the
     * limit is one of what is let through, which is another voltage.
     */
    static Curve added(Curve curve, ReportInput input) {
        double[] x = curve.traces().stream()
                .filter(trace -> trace.size() > 0)
                .flatMapToDouble(trace -> DoubleStream.of(trace.x(0), trace.x(trace.size() - 1)))
                .sorted()
                .toArray();
        List<Curve.Trace> traces = new ArrayList<>(curve.traces());
        ControlCable cable = input.site().controlCable();
        List<String> unguarded = cable == null
                ? List.of()
                : cable.cores().stream()
                        .filter(core -> core.cubicleProtector() == null && core.cubicleEnd() != Termination.PROTECTOR)
                        .map(core -> core.name() + ", cubicle end")
                        .toList();
        Set<Double> drawn = new HashSet<>();
        for (Finding finding : input.findings()) {
            boolean bears = finding.id().startsWith("surge.cable-end.")
                    && finding.id().endsWith(".cubicle")
                    && unguarded.contains(finding.subject())
                    && finding.unit().equals(curve.yUnit())
                    && finding.limit().isPresent();
            if (bears && x.length > 0 && drawn.add(finding.limit().getAsDouble())) {
                double limit = finding.limit().getAsDouble();
                traces.add(new Curve.Trace(
                        "limit, " + finding.subject(), new double[] {x[0], x[x.length - 1]}, new double[] {limit, limit
                        }));
            }
        }
        return new Curve(
                curve.id(), curve.title(), curve.xLabel(), curve.xUnit(), curve.yLabel(), curve.yUnit(), traces);
    }
}
