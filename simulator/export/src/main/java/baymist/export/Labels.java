package baymist.export;

import baymist.cavity.Part;
import baymist.coverage.UnreachedRegion;
import baymist.coverage.Verdict;
import baymist.run.RunResult;
import baymist.voxel.Bay;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Names and numbers that several files share. */
final class Labels {
    /** Verdict of a surfel that is no structure. */
    static final int NO_STRUCTURE = -1;

    private Labels() {}

    /** Words of the verdicts by number, 0 first. */
    static List<String> verdicts() {
        List<String> words = new ArrayList<>();
        for (Verdict v : Verdict.values()) {
            words.add(word(v));
        }
        return words;
    }

    static String word(@Nullable Verdict v) {
        return v == null ? "no structure" : v.name().toLowerCase(java.util.Locale.ROOT);
    }

    /** Verdicts as numbers: 0 unreached, 1 thin, 2 protected, 3 excess, -1 no structure; [surfels]. */
    static int[] verdicts(RunResult r) {
        @Nullable Verdict[] verdict = r.coverage().verdict();
        List<Verdict> order = List.of(Verdict.values());
        int[] number = new int[verdict.length];
        for (int s = 0; s < number.length; s++) {
            Verdict v = verdict[s];
            number[s] = v == null ? NO_STRUCTURE : order.indexOf(v);
        }
        return number;
    }

    /** Number of the bare place that each surfel belongs to, 0 = none, [surfels]. */
    static int[] barePlaces(RunResult r) {
        int[] place = new int[r.filmM().length];
        for (UnreachedRegion region : r.coverage().unreached()) {
            for (int s : region.surfels()) {
                place[s] = region.id();
            }
        }
        return place;
    }

    static int[] bays(RunResult r) {
        int[] cell = r.grid().surfels().cell();
        int[] bay = new int[cell.length];
        for (int s = 0; s < bay.length; s++) {
            bay[s] = r.grid().bayOfCell(cell[s]);
        }
        return bay;
    }

    static List<String> partNames(RunResult r) {
        return r.cavity().parts().stream().map(Part::name).toList();
    }

    static List<String> bayNames(RunResult r) {
        return r.grid().bays().stream().map(Bay::name).toList();
    }

    /** What each VTK file says about where it comes from. */
    static List<VtkArray> origin(RunResult r) {
        return List.of(VtkArray.strings(
                "baymist",
                List.of(
                        "version " + r.record().engineVersion(),
                        r.scene().title(),
                        "scene " + r.scene().hash())));
    }

    static List<VtkArray> origin(RunResult r, VtkArray... more) {
        List<VtkArray> all = new ArrayList<>(origin(r));
        all.addAll(List.of(more));
        return all;
    }
}
