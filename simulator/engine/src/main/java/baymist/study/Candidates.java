package baymist.study;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.problem.SceneException;
import baymist.scene.CompareSpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Lists the candidates of a comparison: entries x wands x clock angles, and every extra hole as an entry of its own.
 *
 * <p>Clock angles that a straight wand's tip can't tell apart are one candidate: a ring of eight jets turned by 45 degrees is the
 * same ring.
 */
public final class Candidates {
    /** Clock angles closer than this are one, rad. */
    private static final double SAME_RAD = 1e-9;

    private final Scene scene;
    private final CompareSpec spec;
    private final Cavity cavity;
    private int alike;

    private Candidates(Scene scene) {
        this.scene = scene;
        this.spec = scene.studies().compare();
        this.cavity = CavityBuilder.build(scene);
    }

    /**
     * All candidates of a scene.
     *
     * @param alike clock angles left out because the tip looks the same at them
     */
    public record All(List<Candidate> list, int alike) {
        public All {
            list = List.copyOf(list);
        }
    }

    /**
     * The candidates in the order of entries, wands, clock angles; extra holes last.
     *
     * @throws SceneException CMP-001 if there is no entry, or no wand to go in
     */
    public static All of(Scene scene) {
        return new Candidates(scene).all();
    }

    private All all() {
        List<EntrySpec> entries = scene.entries().stream()
                .filter(e -> spec.entries().isEmpty() || spec.entries().contains(e.name()))
                .toList();
        List<WandSpec> wands = scene.wands().keySet().stream()
                .sorted()
                .filter(w -> spec.wands().isEmpty() || spec.wands().contains(w))
                .map(w -> scene.wands().get(w))
                .toList();
        if (wands.isEmpty() || (entries.isEmpty() && spec.holes().isEmpty())) {
            throw new SceneException(
                    "CMP-001",
                    spec.place(),
                    "there is nothing to compare: the scene has "
                            + (wands.isEmpty() ? "no wand" : "no entry and no hole that might be cut")
                            + "; at least one entry and one wand are wanted");
        }
        List<Candidate> list = new ArrayList<>();
        for (EntrySpec e : entries) {
            wands.forEach(w -> add(list, e, w, null));
        }
        for (OpeningSpec hole : spec.holes()) {
            EntrySpec entry = new EntrySpec(hole.name(), hole.name(), null, hole.place());
            wands.forEach(w -> add(list, entry, w, hole));
        }
        return new All(list, alike);
    }

    private void add(List<Candidate> list, EntrySpec entry, WandSpec wand, @Nullable OpeningSpec hole) {
        List<Double> stated = spec.clocksRad().isEmpty()
                ? IntStream.range(0, CompareSpec.CLOCKS)
                        .mapToObj(k -> 2 * Math.PI * k / CompareSpec.CLOCKS)
                        .toList()
                : spec.clocksRad().stream().map(ChangeWords::turned).toList();
        double period = wand.kind() == WandSpec.Kind.STRAIGHT ? periodRad(wand.tip()) : 2 * Math.PI;
        List<Double> kept = new ArrayList<>();
        for (double clock : stated) {
            if (kept.stream().anyMatch(k -> same(clock - k, period))) {
                alike++;
            } else {
                kept.add(clock);
                list.add(candidate(list.size() + 1, entry, wand, clock, hole));
            }
        }
    }

    private Candidate candidate(int number, EntrySpec entry, WandSpec wand, double clock, @Nullable OpeningSpec hole) {
        PassSpec pass = new PassSpec(
                "pass",
                entry.name(),
                wand.name(),
                Math.min(spec.fromDepthM(), Double.isInfinite(spec.fromDepthM()) ? spec.fromDepthM() : wand.lengthM()),
                Math.min(spec.toDepthM(), wand.lengthM()),
                spec.drawBackMPerS(),
                clock,
                spec.holdS(),
                0,
                spec.place());
        SceneEdit edit = SceneEdit.of(scene).passes(List.of(pass));
        List<String> panels = new ArrayList<>();
        if (hole != null) {
            edit.cut(hole).entry(entry);
        } else {
            int opening = cavity.openingIndex(entry.opening());
            PhaseStates states =
                    opening < 0 ? null : cavity.openings().get(opening).states();
            if (states != null && states.pass() != OpeningState.OPEN) {
                panels.add(entry.opening());
                edit.state(entry.opening(), states.with(PhaseStates.Phase.PASS, OpeningState.OPEN));
            }
        }
        return new Candidate(
                number,
                entry.name(),
                wand.name(),
                clock,
                hole == null ? List.of() : List.of(hole),
                panels,
                edit.done());
    }

    /** Smallest turn that brings a tip onto itself, rad; 2 pi where only a whole turn does. */
    static double periodRad(TipSpec tip) {
        for (int n = tip.jets().size(); n > 1; n--) {
            double turn = 2 * Math.PI / n;
            if (tip.jets().stream().allMatch(j -> has(tip, j, turn))) {
                return turn;
            }
        }
        boolean onAxis = tip.jets().stream().allMatch(j -> j.offAxisRad() == 0);
        return onAxis ? SAME_RAD : 2 * Math.PI;
    }

    private static boolean has(TipSpec tip, TipSpec.Jet jet, double turn) {
        return tip.jets().stream()
                .anyMatch(o -> same(o.clockRad() - jet.clockRad() - turn, 2 * Math.PI)
                        && Math.abs(o.offAxisRad() - jet.offAxisRad()) < SAME_RAD
                        && o.orificeM() == jet.orificeM()
                        && Math.abs(o.airShare() - jet.airShare()) < SAME_RAD
                        && Math.abs(o.liquidShare() - jet.liquidShare()) < SAME_RAD);
    }

    private static boolean same(double turnRad, double periodRad) {
        double rest = Math.abs(turnRad / periodRad - Math.rint(turnRad / periodRad)) * periodRad;
        return rest < SAME_RAD || periodRad <= SAME_RAD;
    }
}
