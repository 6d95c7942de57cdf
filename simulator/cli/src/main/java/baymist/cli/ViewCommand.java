package baymist.cli;

import baymist.viewer.NoDisplayException;
import baymist.viewer.ViewRequest;
import baymist.viewer.fx.ViewProgram;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist view}: the window. No other command loads what it needs. */
@Command(
        name = "view",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Show a scene in a window: structure, the pass in time, film, and what stays bare.",
        description = {
            "",
            "Needs a display. Without a graphics card the processor draws.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {"  baymist view scenes/wing-box.yaml", "  baymist view scenes/tail-cone.yaml --dark --scale 125"},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong, or there is no display",
            "3:the computation failed, or a file could not be written"
        })
final class ViewCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SceneOptions scene;

    @Option(names = "--dark", description = "Light lettering on a dark ground.")
    private boolean dark;

    @Option(names = "--mils", description = "Film in mils instead of micrometres.")
    private boolean mils;

    @Option(
            names = "--scale",
            paramLabel = "PCT",
            description = "Size of lettering and controls, percent, 50 to 400; default ${DEFAULT-VALUE}.",
            defaultValue = "100")
    private double scalePct = 100;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private DebugOption debug;

    ViewCommand(Console console, Stages stages) {
        this.console = console;
        this.stages = stages;
    }

    @Override
    public boolean debug() {
        return debug.debug;
    }

    @Override
    public Integer call() throws InterruptedException {
        if (!(scalePct >= 50 && scalePct <= 400)) {
            throw new ParameterException(spec.commandLine(), "--scale " + scalePct + ": 50 to 400 expected");
        }
        scene.read(stages);
        ViewRequest.Look look = new ViewRequest.Look(dark, mils, scalePct / 100);
        try {
            ViewProgram.show(new ViewRequest(scene.scene, scene.voxelSize(), scene.threadCount(), look));
        } catch (NoDisplayException e) {
            console.err().println("baymist: " + e.getMessage());
            return Exit.BAD_INPUT;
        }
        return Exit.DONE;
    }
}
