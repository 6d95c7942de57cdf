package baymist.cli;

import baymist.scene.io.SceneSchema;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baymist schema}: the formats of scene and findings files for editors. */
@Command(
        name = "schema",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        header = "Print the JSON Schema of scene files, or of findings files.",
        description = {"", "Editors that know JSON Schema complete and check a file as you write it.", ""},
        footerHeading = "%nExamples:%n",
        footer = {"  baymist schema > scene.schema.json", "  baymist schema --findings > findings.schema.json"},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:done", "2:the call is wrong"})
final class SchemaCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Option(names = "--findings", description = "The schema of findings files, as `baymist findings` reads them.")
    private boolean findings;

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
        String schema = findings ? SceneSchema.json("findings") : stages.schema();
        console.out().println(schema.stripTrailing());
        return Exit.DONE;
    }
}
