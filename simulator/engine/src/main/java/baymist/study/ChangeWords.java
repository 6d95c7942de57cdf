package baymist.study;

import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.units.Quantities;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Words and edits that changes share. */
final class ChangeWords {
    private ChangeWords() {}

    /** The scene with one pass changed, or with all of them for a null name. */
    static Scene onPasses(Scene scene, @Nullable String pass, UnaryOperator<PassSpec> edit) {
        require(
                pass == null || scene.passes().stream().anyMatch(p -> p.name().equals(pass)),
                "pass",
                String.valueOf(pass));
        return SceneEdit.of(scene)
                .eachPass(p -> pass == null || p.name().equals(pass) ? edit.apply(p) : p)
                .done();
    }

    static void require(boolean there, String what, String name) {
        if (!there) {
            throw new IllegalArgumentException("the scene has no " + what + " '" + name + "'");
        }
    }

    static String in(@Nullable String pass) {
        return pass == null ? "" : " in pass '" + pass + "'";
    }

    /** A clock angle within a turn, rad, 0 or more, below 2 pi. */
    static double turned(double clockRad) {
        double rest = clockRad % (2 * Math.PI);
        return rest < 0 ? rest + 2 * Math.PI : rest;
    }

    static String round(double value) {
        return Quantities.number(value, 3);
    }

    static String length(double lengthM) {
        return Quantities.length(lengthM);
    }

    static String time(double seconds) {
        return seconds >= 120 && seconds % 60 == 0 ? round(seconds / 60) + " min" : round(seconds) + " s";
    }

    /** A clock angle with its way: 0 deg (up), 90 deg (right), seen from outside along the wand. */
    static String clock(double clockRad) {
        double deg = Math.toDegrees(clockRad);
        double turned = ((deg % 360) + 360) % 360;
        String text = round(turned) + " deg";
        return switch ((int) Math.round(turned)) {
            case 0, 360 -> text + " (up)";
            case 90 -> text + " (right)";
            case 180 -> text + " (down)";
            case 270 -> text + " (left)";
            default -> text;
        };
    }
}
