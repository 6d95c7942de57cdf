package baymist.cli;

import baymist.run.PartRule;
import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code --part}: which bays are computed. */
final class PartOption {
    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--part",
            paramLabel = "RINGS",
            defaultValue = "auto",
            description =
                    "Which bays are computed: auto = all, or where they don't fit in memory the sprayed ones and their"
                            + " neighbours; whole = all or none; a number = the sprayed ones and so many rings of neighbours."
                            + " Default ${DEFAULT-VALUE}.")
    private String part = "auto";

    PartRule rule() {
        return switch (part.strip().toLowerCase(Locale.ROOT)) {
            case "auto" -> PartRule.BY_MEMORY;
            case "whole" -> PartRule.WHOLE;
            default -> rings();
        };
    }

    private PartRule rings() {
        try {
            return PartRule.rings(Integer.parseInt(part.strip()));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--part \"" + part + "\": auto, whole, or a number of rings from 1 to " + PartRule.MOST
                            + " expected",
                    e);
        }
    }
}
