package earthing.cli;

import earthing.report.ArrangementPage;
import earthing.study.SiteStudy;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the four ways to earth the cubicle side by side. */
@Command(
        name = "compare",
        header = "Compare the ways to earth the cubicle of a site.",
        description = {
            "",
            "One page tells what the site would be like with the cubicle teed to the main"
                    + " earth, on an electrode of its own, on both, and unearthed: what each arrangement buys, and what"
                    + " it pays with. The page compares and does not judge, so the exit code is 0 whenever it was printed.",
            ""
        },
        parameterListHeading = "Parameters:%n",
        optionListHeading = "Options:%n",
        footer = {"", "Example:", "  earthing compare site.yaml"},
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class)
final class CompareCommand implements Callable<Integer> {

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(paramLabel = "SITE", description = "The site file.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path site;

    @Override
    public Integer call() {
        String page = ArrangementPage.text(SiteStudy.of(Assessment.read(site).site()));
        spec.commandLine().getOut().print(page);
        return ExitCode.MET.code();
    }
}
