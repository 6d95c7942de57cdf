package baymist.cli;

import baymist.run.RunOptions;
import baymist.scene.Scene;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What every command over a scene shares: which scene, text or JSON, how much it talks. */
abstract class SceneCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SceneOptions sceneOptions;

    @Option(names = "--json", description = "Print JSON instead of text; nothing else on standard output.")
    private boolean json;

    @Option(names = "--quiet", description = "No title and no progress: the result and problems alone.")
    private boolean quiet;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private DebugOption debug;

    SceneCommand(Console console, Stages stages) {
        this.console = console;
        this.stages = stages;
    }

    /** Writes a result's text or JSON. */
    @FunctionalInterface
    interface Printing {
        void to(PrintWriter out) throws IOException;
    }

    @Override
    public final boolean debug() {
        return debug.debug;
    }

    final Console console() {
        return console;
    }

    final Stages stages() {
        return stages;
    }

    final SceneOptions options() {
        return sceneOptions;
    }

    /** Judges the options, says what is going to happen, and reads the scene. */
    final Scene begin() {
        runOptions();
        say(BaymistCommand.title() + ": " + sceneOptions.scene);
        return sceneOptions.read(stages);
    }

    RunOptions runOptions() {
        return new RunOptions(sceneOptions.threadCount());
    }

    final Progress progress() {
        return Progress.of(console, quiet);
    }

    /** Prints the result on standard output, as text or as JSON. */
    final void tell(Printing text, Printing asJson) throws IOException {
        if (json) {
            asJson.to(console.out());
        } else {
            console.out().println();
            text.to(console.out());
        }
        console.out().flush();
    }

    /** Says where files went. */
    final void written(Object where) {
        say("");
        say("Written to " + where);
    }

    /** A line beside the result; on standard error where standard output belongs to JSON. */
    private void say(String line) {
        if (!quiet) {
            (json ? console.err() : console.out()).println(line);
        }
    }
}
