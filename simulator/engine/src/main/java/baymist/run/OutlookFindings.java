package baymist.run;

import baymist.fog.Exposure;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is to be said about the outlook: each remark with the figure that caused it. */
final class OutlookFindings {
    /** ASSUMED: from this growth of the mean diameter on (settling a fifth faster) coagulation is told. */
    static final double GROWTH_TOLD = 1.1;

    /** Points of the protected share that are told when a day takes them (ASSUMED: what a reader would miss). */
    private static final double LOSS_TOLD = 0.05;

    private OutlookFindings() {}

    static List<Finding> of(Scene scene, Outlook o) {
        List<Finding> findings = new ArrayList<>();
        SourcePlace place = SourcePlace.of(scene.file());
        if (o.coagulating().growth() > GROWTH_TOLD) {
            findings.add(new Finding(
                    "FOG-001",
                    Severity.WARNING,
                    place,
                    String.format(
                            Locale.ROOT,
                            "droplets in %s meet so often that their mean diameter would grow %.2f times; the fog is computed with constant"
                                    + " sizes, so it really falls out sooner and reaches less far (monodisperse estimate)",
                            o.coagulating().bay(),
                            o.coagulating().growth())));
        }
        double share = Exposure.shareOfDay(o.escapedKg());
        if (share > 1) {
            findings.add(new Finding(
                    "FOG-002",
                    Severity.WARNING,
                    place,
                    String.format(
                            Locale.ROOT,
                            "%.2g g of mist leave; who stands within a metre in still room air takes in %.1f times a day's limit of"
                                    + " oil mist: extract at the openings, wear a respirator, stand off",
                            1e3 * o.escapedKg(),
                            share)));
        }
        if (o.wallForceOverThrust() > 1) {
            findings.add(new Finding(
                    "FOG-003",
                    Severity.WARNING,
                    place,
                    String.format(
                            Locale.ROOT,
                            "friction of the air along the walls adds up to %.1f times the jets' thrust, which can't be: deposition on"
                                    + " upright walls while spraying is overstated",
                            o.wallForceOverThrust())));
        }
        double now = o.ages().get(0).wet().protectedShare();
        double later = o.ages().get(o.ages().size() - 1).wet().protectedShare();
        if (now - later > LOSS_TOLD) {
            findings.add(new Finding(
                    "FILM-001",
                    Severity.NOTE,
                    place,
                    String.format(
                            Locale.ROOT,
                            "the film runs: %.0f %% of the surface is protected at close-up, %.0f %% after 24 h",
                            100 * now,
                            100 * later)));
        }
        return findings;
    }
}
