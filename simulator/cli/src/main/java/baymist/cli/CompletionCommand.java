package baymist.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code baymist completion}: a script that lets bash and zsh complete commands, options and files. */
@Command(
        name = "completion",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        header = "Print a script that lets bash or zsh complete commands and options.",
        description = {
            "",
            "The installed package brings this script along. Beside a jar, define 'baymist' as an alias or a small script"
                    + " of that name first.",
            ""
        },
        footerHeading = "%nExample:%n",
        footer = {"  source <(baymist completion)"},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:done", "2:the call is wrong"})
final class CompletionCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    CompletionCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        console.out()
                .println(AutoComplete.bash("baymist", spec.root().commandLine()).stripTrailing());
        return Exit.DONE;
    }
}
