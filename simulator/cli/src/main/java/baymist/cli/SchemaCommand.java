package baymist.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code baymist schema}: the scene format for editors. */
@Command(
        name = "schema",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        header = "Print the JSON Schema of scene files.",
        description = {"", "Editors that know JSON Schema complete and check a scene file as you write it.", ""},
        footerHeading = "%nExample:%n",
        footer = {"  baymist schema > scene.schema.json"},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:done", "2:the call is wrong"})
final class SchemaCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private DebugOption debug;

    SchemaCommand(Console console, Stages stages) {
        this.console = console;
        this.stages = stages;
    }

    @Override
    public boolean debug() {
        return debug.debug;
    }

    @Override
    public Integer call() {
        console.out().println(stages.schema().stripTrailing());
        return Exit.DONE;
    }
}
