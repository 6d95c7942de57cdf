package baymist.cli;

import baymist.card.CardMaker;
import baymist.card.CardOptions;
import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.inspect.InspectionResult;
import baymist.inspect.InspectionStudy;
import baymist.print.CardPage;
import baymist.print.CardUnits;
import baymist.report.AtomicFile;
import baymist.report.InspectionReport;
import baymist.report.KeptRun;
import baymist.scene.Inspection;
import baymist.scene.Scene;
import baymist.scene.io.FindingsReader;
import baymist.study.Planning;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code baymist findings}: what was seen on the structure, held against the prediction. */
@Command(
        name = "findings",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Inspection findings against the prediction: hits and misses, a better setting, a touch-up card.",
        description = {
            "",
            "Runs the scene (or takes up a kept run) and compares it with a findings file: wet, thin or dry at points or bare places."
                    + " Fits liquid rate and droplet size to the findings and seeks passes for what was found thin or dry.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist findings scenes/wing-box.yaml findings.yaml",
            "  baymist findings scenes/wing-box.yaml findings.yaml --result out/wing-box --card touch-up.pdf",
            "  baymist findings scenes/wing-box.yaml findings.yaml --json --quiet | jq .refit"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene, the findings or the call is wrong",
            "3:the computation failed, or a file could not be written",
            "4:done, but no card was written: nothing was found thin or dry, or no jet gets there"
        })
final class FindingsCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(index = "1", paramLabel = "FILE", description = "Findings file (YAML), see docs/formats/findings.md.")
    @SuppressWarnings("NullAway.Init")
    private Path findings;

    @Option(
            names = "--result",
            paramLabel = "DIR",
            description =
                    "Take up the run kept in this folder instead of running; it must be one of this scene as it stands.")
    private @Nullable Path result;

    @Option(names = "--card", paramLabel = "FILE", description = "Write a card for the touch-up as a PDF.")
    private @Nullable Path card;

    @Option(names = "--card-html", paramLabel = "FILE", description = "Write that card as an HTML page.")
    private @Nullable Path cardHtml;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            description = "A4 or letter; default ${DEFAULT-VALUE}.",
            defaultValue = "A4")
    private String paper = "A4";

    @Option(names = "--no-fit", description = "Do not fit liquid rate and droplet size.")
    private boolean noFit;

    @Option(names = "--no-touch-up", description = "Seek no passes for what was found thin or dry.")
    private boolean noTouchUp;

    FindingsCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        var sheet = CardCommand.paper(spec, paper);
        Inspection inspection = FindingsReader.read(findings);
        Scene scene = begin();
        CardMaker.requirePasses(scene);
        InspectionResult r;
        try (Progress progress = progress()) {
            CardSource source = result != null
                    ? KeptRun.read(scene, result, runOptions().threads())
                    : CardSource.of(stages().run(scene, runOptions(), progress));
            InspectionStudy.Options asked = new InspectionStudy.Options(!noFit, !noTouchUp, Planning.DEFAULT);
            r = InspectionStudy.of(source, inspection, asked, runOptions(), progress);
        }
        CardSource touched = r.touchUpSource();
        if (touched != null && (card != null || cardHtml != null)) {
            WorkCard touchUp = CardMaker.touchUp(touched, CardOptions.NONE, r.touchUpPlaces());
            CardUnits units = CardUnits.of(Files.readString(options().scene, StandardCharsets.UTF_8));
            CardPage page = new CardPage(touchUp, touched, units, sheet);
            if (card != null) {
                AtomicFile.writeBytes(card, page::writePdf);
            }
            if (cardHtml != null) {
                AtomicFile.writeText(cardHtml, w -> w.write(page.html()));
            }
        }
        tell(out -> out.print(InspectionReport.text(r)), out -> InspectionReport.json(r, out));
        if (touched == null && (card != null || cardHtml != null)) {
            console().err().println("No card was written: there is nothing that a touch-up would reach.");
            return Exit.NOT_ACCEPTABLE;
        }
        for (Path file : new Path[] {card, cardHtml}) {
            if (file != null) {
                written(file);
            }
        }
        return Exit.DONE;
    }
}
