package earthing.cli;

import picocli.CommandLine.Command;

/** What the help of every command has alike: {@code --help}, {@code --version} and the headings of its lists. */
@Command(
        parameterListHeading = "Parameters:%n",
        optionListHeading = "Options:%n",
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class)
final class HelpLayout {}
