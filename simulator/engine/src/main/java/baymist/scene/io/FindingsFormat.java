package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;

/** The format of a findings file: what was seen on the structure after a job. */
final class FindingsFormat {
    private FindingsFormat() {}

    private static final Group FINDING = Group.of(
                    "finding",
                    "one place that was looked at",
                    may("at", CavityFormat.POINT, "", "point on the surface, in the structure's axes"),
                    may("region", Text.NAME, "", "label of a bare place of the run, as on the card: `3.7c`"),
                    may("part", Text.NAME, "", "part that the point lies on; left out = the nearest"),
                    need(
                            "seen",
                            Choice.of("wet", "thin", "dry"),
                            "`wet` = slick and even, `thin` = dull or dotted, `dry` = bare metal"),
                    may(
                            "film",
                            Measure.of(Dimension.LENGTH, "(0 um .. 10 mm]"),
                            "",
                            "wet film measured there; left out = not measured"),
                    may(
                            "radius",
                            Measure.of(Dimension.LENGTH, "[1 mm .. 500 mm]"),
                            "15 mm",
                            "what round the point was looked at"))
            .oneOf("at", "region");

    static final Group FINDINGS = Group.of(
            "findings",
            "what was found after a job",
            need("baymist", new Count(1, 1), "version of the format"),
            may("title", Text.NAME, "", "what was inspected and when"),
            need("findings", new ListOf(FINDING, 1, 2000), "places in any order"));
}
