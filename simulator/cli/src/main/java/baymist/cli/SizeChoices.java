package baymist.cli;

import baymist.scene.Scene;
import baymist.scene.WandMaterial;
import baymist.size.Hook;
import baymist.size.Pattern;
import baymist.size.SizeRequest;
import baymist.size.Tube;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Reads what {@code baymist size} is asked to choose among. */
final class SizeChoices {
    private final CommandLine line;
    private final SceneOptions options;

    SizeChoices(CommandLine line, SceneOptions options) {
        this.line = line;
        this.options = options;
    }

    SizeRequest request(
            Scene scene,
            Stages stages,
            double reached,
            double seams,
            @Nullable String mark,
            @Nullable String longest,
            List<String> outers,
            List<Path> tips,
            List<String> orifices,
            List<String> bends,
            @Nullable String material) {
        double markM = mark == null ? SizeRequest.MARK_M : options.lengthM("--mark", mark);
        double mostM = longest == null ? SizeRequest.MOST_M : options.lengthM("--longest", longest);
        if (markM < 0.005 || markM > mostM || mostM > 10) {
            throw refuse("--mark and --longest: marks of 5 mm or more and wands of one mark to 10 m expected");
        }
        List<Tube> tubes = outers.isEmpty() ? Tube.USUAL : outers.stream().map(this::tube).toList();
        List<Pattern> patterns = tips.isEmpty()
                ? SizeRequest.patternsOf(scene)
                : tips.stream().map(f -> Pattern.of(stages.readWand(f))).toList();
        boolean none = bends.size() == 1 && bends.get(0).strip().equals("none");
        List<Hook> hooks = bends.isEmpty() ? Hook.USUAL : none ? List.of() : bends.stream().map(this::hook).toList();
        return new SizeRequest(
                reached,
                seams,
                markM,
                mostM,
                tubes,
                withOrifices(patterns, orifices),
                hooks,
                !bends.isEmpty() && !none,
                material == null ? SizeRequest.materialOf(scene) : material(material));
    }

    /** The patterns as they are, then each with every other orifice. */
    private List<Pattern> withOrifices(List<Pattern> patterns, List<String> orifices) {
        List<Pattern> all = new ArrayList<>(patterns);
        for (String text : orifices) {
            double orifice = options.lengthM("--orifice", text);
            if (orifice > 0.02) {
                throw refuse("--orifice \"" + text + "\": at most 20 mm expected");
            }
            for (Pattern p : patterns) {
                if (p.tip().jets().stream().anyMatch(j -> j.orificeM() != orifice)) {
                    all.add(p.withOrificeM(orifice));
                }
            }
        }
        return all;
    }

    private Tube tube(String text) {
        String[] parts = parts(text);
        if (parts.length > 2) {
            throw refuse("--outer \"" + text + "\": an outside, or outside / bore expected, such as \"6 mm / 3 mm\"");
        }
        double outer = options.lengthM("--outer", parts[0]);
        if (outer > 0.1) {
            throw refuse("--outer \"" + text + "\": at most 100 mm expected");
        }
        if (parts.length == 1) {
            return Tube.usual(outer);
        }
        double bore = options.lengthM("--outer", parts[1]);
        if (bore >= outer) {
            throw refuse("--outer \"" + text + "\": the bore leaves no wall; a bore smaller than the outside expected");
        }
        return new Tube(outer, bore);
    }

    private Hook hook(String text) {
        String[] parts = parts(text);
        if (parts.length != 3) {
            throw refuse("--bend \"" + text
                    + "\": angle / radius / leg expected, such as \"90 deg / 25 mm / 40 mm\", or \"none\" alone");
        }
        double angle;
        try {
            angle = Quantities.parse(parts[0], Dimension.ANGLE);
        } catch (QuantityException e) {
            throw new ParameterException(line, "--bend: " + e.getMessage(), e);
        }
        if (!(angle > 0 && angle <= Math.PI)) {
            throw refuse("--bend \"" + text + "\": an angle above 0 up to 180 deg expected");
        }
        return new Hook(angle, options.lengthM("--bend", parts[1]), options.lengthM("--bend", parts[2]));
    }

    /** Parts between slashes that stand between blanks: "1/4 in / 3 mm" has two. */
    private static String[] parts(String text) {
        return text.strip().split("\\s+/\\s+", -1);
    }

    private WandMaterial material(String name) {
        WandMaterial m = WandMaterial.named(name.strip().toLowerCase(Locale.ROOT));
        if (m == null) {
            String known = WandMaterial.table().stream().map(WandMaterial::name).collect(Collectors.joining(", "));
            throw refuse("--material \"" + name + "\": one of " + known + " expected");
        }
        return m;
    }

    /** Refuses a drawing of an unknown kind before anything is computed. */
    void drawing(@Nullable Path file) {
        String name = file == null ? ".svg" : file.toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(".svg") && !name.endsWith(".pdf")) {
            throw refuse("--drawing " + file + ": a file name that ends with .svg or .pdf expected");
        }
    }

    private ParameterException refuse(String why) {
        return new ParameterException(line, why);
    }
}
