package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.PanelHole;
import baymist.scene.io.Shape.Field;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.Text;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.List;

/** Holes in flat panels that are placed by two distances; families differ in what the distances are called. */
record PanelHoles(String name, String doc, Field along, Field across) {
    Group group() {
        return Group.of(
                name,
                doc,
                may("name", Text.NAME, "", "name; left out = named by its panel and number"),
                need("shape", CavityFormat.OUTLINE, "its outline"),
                along,
                across,
                may("turn", CavityFormat.TURN, "0 deg", "turn of the outline's length from the panel's"),
                may("state", CavityFormat.STATE, "open", "state, one word or one for each phase"));
    }

    /** The holes of a list; distances that are left out take the fallbacks. */
    List<PanelHole> holes(List<Fields> list, double alongFallbackM, double acrossFallbackM, OpeningAssembler openings) {
        List<PanelHole> holes = new ArrayList<>();
        for (Fields f : list) {
            if (f.has("name")) {
                openings.claim(f.text("name"), f.at("name"));
            }
            holes.add(new PanelHole(
                    f.text("name"),
                    openings.outline(f.fields("shape")),
                    f.si(along.key(), alongFallbackM),
                    f.si(across.key(), acrossFallbackM),
                    f.si("turn"),
                    openings.states(f.get("state")),
                    f.place()));
        }
        return List.copyOf(holes);
    }
}
