package baymist.card;

import baymist.access.Insertion;
import baymist.card.WorkCard.Masks;
import baymist.card.WorkCard.Use;
import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.ProtectedItem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Says what each opening to the outside is for, and counts what is masked. */
final class CardOpenings {
    /** Openings of less than this stay out of the way: a rivet-sized hole lets liquid out, no hand and no wand in. */
    private static final double DRAIN_M2 = 2e-4;

    private final CardSource source;

    CardOpenings(CardSource source) {
        this.source = source;
    }

    /** Openings that lead outside, entries first, then vents, panels and drains. */
    List<WorkCard.Opening> openings() {
        Set<Integer> entries =
                source.insertions().stream().map(Insertion::openingIndex).collect(Collectors.toSet());
        List<WorkCard.Opening> all = new ArrayList<>();
        List<Opening> openings = source.cavity().openings();
        for (int o = 0; o < openings.size(); o++) {
            Opening opening = openings.get(o);
            if (entries.contains(o) || (opening.exterior() && opening.kind() != Opening.Kind.SHORT_MEMBER)) {
                all.add(opening(opening, entries.contains(o)));
            }
        }
        all.sort(java.util.Comparator.comparing(WorkCard.Opening::use));
        return all;
    }

    private WorkCard.Opening opening(Opening o, boolean entry) {
        Outline outline = o.place().outline();
        boolean round = outline instanceof Outline.Circle;
        double length = 2 * outline.reachM();
        double width = outline.areaM2() / length;
        if (outline instanceof Outline.Slot s) {
            length = s.lengthM();
            width = s.widthM();
        } else if (outline instanceof Outline.RoundedRectangle r) {
            length = r.lengthM();
            width = r.widthM();
        }
        PhaseStates s = o.states();
        return new WorkCard.Opening(
                o.name(),
                entry ? Use.ENTRY : use(o),
                source.cavity().parts().get(o.part()).name(),
                length,
                round ? length : width,
                round,
                o.place().centreM(),
                s.after(),
                s.pass(),
                s.hang(),
                s.after());
    }

    private Use use(Opening o) {
        PhaseStates s = o.states();
        boolean shut = s.pass() != OpeningState.OPEN && s.hang() != OpeningState.OPEN && s.after() != OpeningState.OPEN;
        if (shut) {
            return Use.PANEL;
        }
        boolean always = s.equals(PhaseStates.ALWAYS_OPEN);
        boolean named = o.name().toLowerCase(Locale.ROOT).contains("drain");
        boolean low = o.place().normal().dot(source.scene().gravity()) != 0
                && Math.abs(o.place().normal().dot(source.scene().gravity())) > 0.5
                && isLow(o.place().centreM());
        if (named || (always && low && o.areaM2() < DRAIN_M2)) {
            return Use.DRAIN;
        }
        return Use.VENT;
    }

    /** In the lower half of the structure. */
    private boolean isLow(Vec3 at) {
        Vec3 g = source.scene().gravity();
        return at.dot(g) > source.cavity().sheets().bounds().centre().dot(g);
    }

    static Masks masks(List<WorkCard.Opening> openings, List<ProtectedItem> items) {
        int tapes = 0;
        int plugs = 0;
        for (WorkCard.Opening o : openings) {
            boolean plug = o.pass() == OpeningState.PLUGGED || o.hang() == OpeningState.PLUGGED;
            plugs += plug ? 1 : 0;
            tapes += !plug && o.masked() ? 1 : 0;
        }
        int bags = (int) items.stream().filter(ProtectedItem::masked).count();
        return new Masks(tapes, plugs, bags);
    }
}
