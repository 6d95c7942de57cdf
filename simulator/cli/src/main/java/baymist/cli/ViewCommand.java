package baymist.cli;

import baymist.recording.Recorder;
import baymist.recording.Recording;
import baymist.recording.RecordingOptions;
import baymist.run.RunOptions;
import baymist.scene.Scene;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import baymist.viewer.NoDisplayException;
import baymist.viewer.ViewRequest;
import baymist.viewer.draw.View;
import baymist.viewer.fx.PictureProgram;
import baymist.viewer.fx.ViewProgram;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
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
            "Needs a display, also for --picture; xvfb-run gives one where there is no screen. Without a graphics card the"
                    + " processor draws.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist view scenes/wing-box.yaml",
            "  baymist view scenes/tail-cone.yaml --dark --scale 125",
            "  baymist view scenes/wing-box.yaml --picture bay.png --from top --at \"12 s\""
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong, or there is no display",
            "3:the computation failed, or a file could not be written"
        })
final class ViewCommand implements Callable<Integer>, DebugOption.Holder {
    private static final Pattern PIXELS = Pattern.compile("(\\d{3,4})x(\\d{3,4})");

    private final Console console;
    private final Stages stages;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SceneOptions scene;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "No window to work with: run the scene, write one picture as a PNG file and end.")
    private @Nullable Path picture;

    @Option(
            names = "--from",
            paramLabel = "SIDE",
            description = "With --picture: iso, top, side or front; default ${DEFAULT-VALUE}.",
            defaultValue = "iso")
    private String from = "iso";

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "With --picture: job time such as \"12 s\"; default the end of the job.")
    private @Nullable String at;

    @Option(
            names = "--size",
            paramLabel = "WxH",
            description = "With --picture: pixels; default ${DEFAULT-VALUE}.",
            defaultValue = "1280x800")
    private String size = "1280x800";

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
    public Integer call() throws InterruptedException, IOException {
        if (!(scalePct >= 50 && scalePct <= 400)) {
            throw new ParameterException(spec.commandLine(), "--scale " + scalePct + ": 50 to 400 expected");
        }
        ViewRequest.Look look = new ViewRequest.Look(dark, mils, scalePct / 100);
        ViewRequest request = new ViewRequest(scene.scene, scene.voxelSize(), scene.threadCount(), look);
        try {
            if (picture == null) {
                return show(request);
            }
            return draw(request, picture);
        } catch (NoDisplayException e) {
            console.err().println("baymist: " + e.getMessage());
            return Exit.BAD_INPUT;
        }
    }

    private int show(ViewRequest request) throws InterruptedException {
        if (at != null) {
            throw new ParameterException(spec.commandLine(), "--at belongs to --picture");
        }
        ViewProgram.show(request);
        return Exit.DONE;
    }

    private int draw(ViewRequest request, Path file) throws InterruptedException, IOException {
        View view = view();
        double asked = at == null ? Double.POSITIVE_INFINITY : seconds(at);
        int[] pixels = pixels();
        Scene job = scene.read(stages);
        PictureProgram.needDisplay();
        Recording recording;
        try (Progress progress = Progress.of(console, false)) {
            recording = Recorder.run(job, new RunOptions(request.threads()), RecordingOptions.DEFAULT, progress);
        }
        double timeS = Math.min(asked, recording.endS());
        PictureProgram.draw(recording, view, timeS, request.look(), pixels[0], pixels[1])
                .write(file);
        console.out().println("Written to " + file);
        return Exit.DONE;
    }

    private View view() {
        for (View v : View.values()) {
            if (v.word().equals(from)) {
                return v;
            }
        }
        throw new ParameterException(spec.commandLine(), "--from \"" + from + "\": iso, top, side or front expected");
    }

    private double seconds(String text) {
        try {
            double s = Quantities.parse(text, Dimension.TIME);
            if (s >= 0) {
                return s;
            }
        } catch (QuantityException e) {
            throw new ParameterException(spec.commandLine(), "--at: " + e.getMessage(), e);
        }
        throw new ParameterException(spec.commandLine(), "--at \"" + text + "\": 0 s or later expected");
    }

    private int[] pixels() {
        Matcher m = PIXELS.matcher(size);
        if (m.matches()) {
            int[] wh = {Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2))};
            if (wh[0] >= 320 && wh[1] >= 240 && wh[0] <= 4096 && wh[1] <= 4096) {
                return wh;
            }
        }
        throw new ParameterException(
                spec.commandLine(), "--size \"" + size + "\": pixels such as 1280x800 expected, 320x240 to 4096x4096");
    }
}
