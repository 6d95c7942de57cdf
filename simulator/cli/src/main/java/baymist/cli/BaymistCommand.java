package baymist.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist} without a command: help. */
@Command(
        name = "baymist",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        header = "Where does the oil fog go? Spray reach in closed sheet-metal cavities.",
        description = {
            "",
            "A scene file says what the cavity is, through which openings a wand goes in, how it is drawn back and what"
                    + " it sprays. Baymist computes the film on every inner surface and says what stays bare.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist check scenes/wing-box.yaml             is the scene sound, does the wand go in?",
            "  baymist reach scenes/wing-box.yaml             how deep does each wand get, what stops it?",
            "  baymist run scenes/wing-box.yaml               film, coverage, bare places, picture",
            "  baymist explain scenes/wing-box.yaml           why is a corner missed, what would change it?",
            "  baymist field scenes/wing-box.yaml             where would the tip have to be for the worst of them?",
            "  baymist run scenes/wing-box.yaml --json | jq .coverage.reached",
            "  baymist run job.yaml --min-reached 95          exit code 4 if less is reached",
            "  baymist plan scenes/wing-box.yaml --output plan.yaml      which passes reach most?",
            "  baymist size scenes/size-spar-line.yaml        which wand to make, with a drawing",
            "  baymist schema > scene.schema.json             so that editors complete scene files",
            "",
            "'baymist COMMAND --help' tells more."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong; every problem is named with its place",
            "3:the computation failed, or a file could not be written",
            "4:done, but a limit that you set (--min-reached, --insist, verify) is not met"
        })
final class BaymistCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "a command is missing: "
                        + String.join(", ", spec.commandLine().getSubcommands().keySet()));
    }

    static String title() {
        return "Baymist " + Version.text();
    }
}
