package baymist.cli;

import baymist.card.CardMaker;
import baymist.card.CardOptions;
import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.coverage.UnreachedRegion;
import baymist.explain.ExplainOptions;
import baymist.geom.Vec3;
import baymist.print.CardPage;
import baymist.print.CardUnits;
import baymist.print.Paper;
import baymist.problem.SceneException;
import baymist.report.AtomicFile;
import baymist.report.CardJson;
import baymist.report.CardText;
import baymist.report.KeptRun;
import baymist.scene.CardSpec;
import baymist.scene.Scene;
import baymist.voxel.SurfelSet;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Period;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist card}: a work card for the hangar, as PDF and as HTML. */
@Command(
        name = "card",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Work card of a job: cautions, set-up, passes with pictures, inspection points, as PDF and HTML.",
        description = {
            "",
            "Runs the scene (or takes up a kept run), puts its passes low before high and writes what a technician does, in order."
                    + " Without --output and --html the PDF goes to out/<scene name>/card.pdf. A file is written whole or not at all.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist card scenes/wing-box.yaml",
            "  baymist card scenes/wing-box.yaml --paper letter --output card.pdf --html card.html",
            "  baymist run scenes/tail-cone.yaml --out out/tail && baymist card scenes/tail-cone.yaml --result out/tail",
            "  baymist card scenes/wing-box.yaml --interval \"24 months\" --date 2026-12-01",
            "  baymist card scenes/wing-box.yaml --json --quiet | jq .passes"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong, or the kept run is not one of this scene",
            "3:the computation failed, or a file could not be written"
        })
final class CardCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            description = "A4 or letter; default ${DEFAULT-VALUE}.",
            defaultValue = "A4")
    private String paper = "A4";

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PartOption part;

    @Option(names = "--output", paramLabel = "FILE", description = "Where the PDF goes.")
    private @Nullable Path output;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the card as one HTML page, too.")
    private @Nullable Path html;

    @Option(
            names = "--interval",
            paramLabel = "TIME",
            description =
                    "Time until the treatment is due again, such as \"24 months\"; default the scene's, else a blank.")
    private @Nullable String interval;

    @Option(
            names = "--date",
            paramLabel = "DATE",
            description = "Day of the work, such as 2026-12-01; default a blank to fill in.")
    private @Nullable String date;

    @Option(
            names = "--result",
            paramLabel = "DIR",
            description =
                    "Take up the run kept in this folder instead of running; it must be one of this scene as it stands.")
    private @Nullable Path result;

    @Option(
            names = "--explain",
            paramLabel = "N",
            description =
                    "Say why the N largest bare places are missed (0 to 4); each takes about as long as `baymist explain`."
                            + " Default ${DEFAULT-VALUE}.",
            defaultValue = "0")
    private int explain;

    CardCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        Paper sheet = paper(spec, paper);
        CardOptions options = new CardOptions(interval(), date(), Map.of());
        if (explain < 0 || explain > 4) {
            throw new ParameterException(spec.commandLine(), "--explain " + explain + ": 0 to 4 expected");
        }
        Scene scene = begin();
        CardMaker.requirePasses(scene);
        CardSource source = source(scene);
        WorkCard card = CardMaker.of(source, reasons(source, options));
        CardUnits units = CardUnits.of(Files.readString(options().scene, StandardCharsets.UTF_8));
        CardPage page = new CardPage(card, source, units, sheet);
        Path pdf = output != null
                ? output
                : html != null ? null : Path.of("out", RunCommand.sceneName(options().scene), "card.pdf");
        if (pdf != null) {
            AtomicFile.writeBytes(pdf, page::writePdf);
        }
        if (html != null) {
            AtomicFile.writeText(html, w -> w.write(page.html()));
        }
        tell(out -> out.print(CardText.of(card)), out -> CardJson.write(card, out));
        for (Path file : new Path[] {pdf, html}) {
            if (file != null) {
                written(file);
            }
        }
        return Exit.DONE;
    }

    private CardSource source(Scene scene) {
        if (result != null) {
            return KeptRun.read(scene, result, runOptions().threads());
        }
        try (Progress progress = progress()) {
            return CardSource.of(stages().run(scene, runOptions().withPart(part.rule()), progress));
        }
    }

    private CardOptions reasons(CardSource source, CardOptions options) {
        Map<String, String> reasons = new LinkedHashMap<>();
        List<UnreachedRegion> bare = source.coverage().unreached();
        for (UnreachedRegion r : bare.subList(0, Math.min(explain, bare.size()))) {
            if (!r.label().equals(UnreachedRegion.SPOTS)) {
                reasons.put(r.label(), reason(source, r));
            }
        }
        return new CardOptions(options.interval(), options.workDate(), reasons);
    }

    /**
     * Why a region is missed. It is asked for by a point on it: the planning runs of an explanation are coarser than the run of the card, and their
     * regions may have other labels.
     */
    private String reason(CardSource source, UnreachedRegion region) {
        try (Progress progress = progress()) {
            ExplainOptions asked =
                    ExplainOptions.DEFAULT.about(onRegion(source.grid().surfels(), region));
            return stages().explain(source.scene(), asked, runOptions(), progress)
                    .cause()
                    .sentence();
        } catch (SceneException e) {
            if (e.findings().stream().allMatch(f -> f.id().startsWith("EXP-"))) {
                return "Not explained: at planning resolution this place is not told from its surroundings.";
            }
            throw e;
        }
    }

    /** The middle of the region's surfel nearest its centroid, m. */
    private static Vec3 onRegion(SurfelSet q, UnreachedRegion region) {
        Vec3 nearest = region.centroidM();
        double least = Double.POSITIVE_INFINITY;
        for (int s : region.surfels()) {
            Vec3 at = new Vec3(q.centreX()[s], q.centreY()[s], q.centreZ()[s]);
            if (at.distance(region.centroidM()) < least) {
                least = at.distance(region.centroidM());
                nearest = at;
            }
        }
        return nearest;
    }

    /** The paper by its name. */
    static Paper paper(CommandSpec spec, String paper) {
        for (Paper p : Paper.values()) {
            if (p.name().equalsIgnoreCase(paper)) {
                return p;
            }
        }
        throw new ParameterException(spec.commandLine(), "--paper " + paper + ": A4 or letter expected");
    }

    private @Nullable Period interval() {
        if (interval == null) {
            return null;
        }
        Period p = CardSpec.interval(interval);
        if (p == null) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--interval \"" + interval
                            + "\": a number of days, weeks, months or years expected, such as \"24 months\"");
        }
        return p;
    }

    private @Nullable LocalDate date() {
        try {
            return date == null ? null : LocalDate.parse(date);
        } catch (DateTimeParseException e) {
            throw new ParameterException(
                    spec.commandLine(), "--date " + date + ": a day such as 2026-12-01 expected", e);
        }
    }
}
