package baymist.cli;

import baymist.geom.Vec3;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Which place is asked about: a bare region or the surface at a point. Mixed into commands that look at one place. */
final class PlaceOptions {
    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--region",
            paramLabel = "N",
            description = "The bare region by its number (1 = largest) or its label (such as 3.7c); default 1.")
    private @Nullable String region;

    @Option(
            names = "--at",
            paramLabel = "X,Y,Z",
            description =
                    "The surface at this point instead: three lengths with their units (\"400 mm, 1.5 m, 60 mm\").")
    private @Nullable String at;

    /** Refuses two places at once. */
    void judge() {
        if (region != null && at != null) {
            throw wrong("--region and --at both name the place; state one of them");
        }
        if (region != null && region.matches("[-+]?\\d+") && Integer.parseInt(region) < 1) {
            throw wrong("--region " + region + ": 1 or more expected");
        }
    }

    /** Number or label as stated, "" where none is. */
    String region() {
        return region == null ? "" : region;
    }

    boolean isStated() {
        return region != null || at != null;
    }

    /** The point, m, or null where none is stated. */
    @Nullable
    Vec3 pointM(SceneOptions options) {
        if (at == null) {
            return null;
        }
        String[] parts = at.split(",", -1);
        if (parts.length != 3) {
            throw wrong("--at \"" + at + "\": three lengths expected, such as \"400 mm, 1.5 m, 60 mm\"");
        }
        return new Vec3(
                options.coordinateM("--at", parts[0]),
                options.coordinateM("--at", parts[1]),
                options.coordinateM("--at", parts[2]));
    }

    private ParameterException wrong(String words) {
        return new ParameterException(spec.commandLine(), words);
    }
}
