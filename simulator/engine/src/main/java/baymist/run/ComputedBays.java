package baymist.run;

import baymist.voxel.Bay;
import baymist.voxel.PartOfWhole;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/**
 * Which bays a result holds, in words and numbers.
 *
 * @param names of the computed bays
 * @param leftOut names of the others
 */
public record ComputedBays(List<String> names, List<String> leftOut) {
    /** Bays or runs of bays that are told one by one. */
    private static final int TOLD = 6;

    public ComputedBays {
        names = List.copyOf(names);
        leftOut = List.copyOf(leftOut);
    }

    /** Of a grid; nothing is left out of a whole one. */
    public static ComputedBays of(VoxelGrid grid) {
        List<String> names = grid.bays().stream().map(Bay::name).toList();
        List<String> rest = new ArrayList<>();
        PartOfWhole part = grid.part();
        if (part != null) {
            for (int b = 0; b < part.bays().size(); b++) {
                if (!part.holds(b)) {
                    rest.add(part.bays().get(b).name());
                }
            }
        }
        return new ComputedBays(names, rest);
    }

    /** Of some bays. */
    static ComputedBays of(List<Bay> bays, boolean[] kept) {
        List<String> names = new ArrayList<>();
        List<String> rest = new ArrayList<>();
        for (int b = 0; b < kept.length; b++) {
            (kept[b] ? names : rest).add(bays.get(b).name());
        }
        return new ComputedBays(names, rest);
    }

    public boolean isWhole() {
        return leftOut.isEmpty();
    }

    /** "bays 3 to 5 of 36", or names of the structure's own. */
    public String words() {
        int all = names.size() + leftOut.size();
        String list = row(names);
        return list + " of " + all + (list.startsWith("bay") ? "" : " bays");
    }

    /** One sentence: what was computed and what not. */
    public String sentence() {
        return isWhole()
                ? "all bays are computed"
                : words() + " computed; nothing is said about the other " + leftOut.size();
    }

    /** Numbered bays in runs, others by name. */
    private static String row(List<String> names) {
        boolean numbered = names.stream().allMatch(n -> number(n) > 0);
        List<String> runs = new ArrayList<>();
        int from = 0;
        while (from < names.size()) {
            int first = numbered ? number(names.get(from)) : 0;
            int to = from + 1;
            while (first > 0 && to < names.size() && number(names.get(to)) == first + to - from) {
                to++;
            }
            runs.add(
                    to - from == 1
                            ? first > 0 ? String.valueOf(first) : names.get(from)
                            : first + (to - from == 2 ? " and " : " to ") + (first + to - from - 1));
            from = to;
        }
        return (numbered ? names.size() == 1 ? "bay " : "bays " : "")
                + (runs.size() <= TOLD
                        ? String.join(", ", runs)
                        : String.join(", ", runs.subList(0, TOLD - 1)) + " ... " + runs.get(runs.size() - 1));
    }

    /** N of "bay N", or 0. */
    private static int number(String name) {
        return name.matches("bay [1-9][0-9]{0,5}") ? Integer.parseInt(name.substring(4)) : 0;
    }
}
