package baymist.cli;

import baymist.field.FieldOptions;
import baymist.field.ReachField;
import baymist.field.RegionChoice;
import baymist.geom.Vec3;
import baymist.picture.FieldDrawing;
import baymist.report.FieldReport;
import baymist.scene.Scene;
import baymist.study.Planning;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist field}: where would the tip have to be? */
@Command(
        name = "field",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Where would the tip have to be for oil to end on a bare place?",
        description = {
            "",
            "Runs the scene, takes one of the places that stay bare (or a spot or a part), and says for every place in the"
                    + " cavity which share of what a tip releases there ends on it: straight from a jet, and as fog that"
                    + " settles. Then the best pose that the scene's wands reach, tried in a forward run.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist field scenes/wing-box.yaml                                 the largest bare place",
            "  baymist field scenes/wing-box.yaml --region 3 --picture field.png",
            "  baymist field scenes/wing-box.yaml --at \"400 mm, 900 mm, 60 mm\"     the sheet round a point",
            "  baymist field scenes/wing-box.yaml --part \"rib 3\" --json | jq .poses[0]"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong, or there is no such place",
            "3:the computation failed, or the picture could not be written"
        })
final class FieldCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PlaceOptions place;

    @Option(names = "--within", paramLabel = "LENGTH", description = "How far round --at; default \"60 mm\".")
    private @Nullable String within;

    @Option(names = "--part", paramLabel = "NAME", description = "Instead: the whole inside of a part.")
    private @Nullable String part;

    @Option(names = "--full", description = "At the scene's own resolution; takes some ten times as long.")
    private boolean full;

    @Option(names = "--no-run", description = "Do not try the best pose in a forward run.")
    private boolean noRun;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Also draw both fields in sections through the best pose as a PNG file.")
    private @Nullable Path picture;

    FieldCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        RegionChoice choice = choice();
        Scene scene = begin();
        ReachField field;
        try (Progress progress = progress()) {
            field = stages().field(scene, new FieldOptions(choice, !noRun, planning()), runOptions(), progress);
        }
        tell(out -> out.print(FieldReport.text(field)), out -> FieldReport.json(field, out));
        if (picture != null) {
            FieldDrawing.write(field, picture);
            written(picture);
        }
        return Exit.DONE;
    }

    private Planning planning() {
        Planning coarse = FieldOptions.COARSE;
        return full
                ? Planning.FULL
                : options().voxel == null ? coarse : new Planning(1, coarse.sizeBins(), coarse.raysPerJet(), 1);
    }

    private RegionChoice choice() {
        place.judge();
        Vec3 point = place.pointM(options());
        if (part != null && place.isStated()) {
            throw wrong("--part names a whole part and --region or --at a place; state one of them");
        }
        if (within != null && point == null) {
            throw wrong("--within belongs to --at");
        }
        if (part != null) {
            return new RegionChoice.OfPart(part);
        }
        if (point != null) {
            double m = within == null ? RegionChoice.At.WITHIN_M : options().lengthM("--within", within);
            return new RegionChoice.At(point, m);
        }
        return new RegionChoice.Bare(place.region().isEmpty() ? "1" : place.region());
    }

    private ParameterException wrong(String words) {
        return new ParameterException(spec.commandLine(), words);
    }
}
