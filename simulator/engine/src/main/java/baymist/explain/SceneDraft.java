package baymist.explain;

import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A copy of a scene with some of it changed; used by one thread, then thrown away. */
final class SceneDraft {
    private final Scene from;
    final List<OpeningSpec> cuts;
    final Map<String, PhaseStates> states;
    final Map<String, WandSpec> wands;
    final List<EntrySpec> entries;
    final List<PassSpec> passes;
    final List<ProtectedItem> items;
    SupplySpec supply;
    double hangS;

    SceneDraft(Scene from) {
        this.from = from;
        cuts = new ArrayList<>(from.cuts());
        states = new TreeMap<>(from.states());
        wands = new TreeMap<>(from.wands());
        entries = new ArrayList<>(from.entries());
        passes = new ArrayList<>(from.passes());
        items = new ArrayList<>(from.protectedItems());
        supply = from.supply();
        hangS = from.hangS();
    }

    Scene scene() {
        SceneEdit edit = SceneEdit.of(from);
        states.forEach(edit::state);
        return edit.cuts(cuts)
                .wands(wands)
                .entries(entries)
                .passes(passes)
                .protectedItems(items)
                .supply(supply)
                .hangS(hangS)
                .done();
    }
}
