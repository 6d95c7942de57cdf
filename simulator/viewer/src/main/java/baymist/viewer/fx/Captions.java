package baymist.viewer.fx;

import baymist.recording.Curves;
import baymist.recording.Recording;
import baymist.recording.WandMoment;
import java.util.Locale;

/** What happens at a time, in a line. */
final class Captions {
    private Captions() {}

    static String of(Recording recording, double timeS) {
        WandMoment wand = recording.wandAt(timeS);
        Curves c = recording.curves();
        String doing = wand.spraying()
                ? "pass \""
                        + recording.result().scene().passes().get(wand.pass()).name() + "\", wand "
                        + String.format(Locale.ROOT, "%.0f mm in", 1000 * wand.depthM())
                : timeS >= recording.endS() ? "end of the job" : "fog hangs";
        return String.format(
                Locale.ROOT,
                "%.1f s: %s; %.1f %% of the surface reached, %.1f g of product used.",
                timeS,
                doing,
                100 * c.at(c.reached(), timeS),
                1000 * c.at(c.sprayedKg(), timeS));
    }
}
