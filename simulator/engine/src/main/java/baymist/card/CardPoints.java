package baymist.card;

import baymist.card.WorkCard.Doubt;
import baymist.card.WorkCard.Point;
import baymist.coverage.RegionWords;
import baymist.coverage.SeamCoverage;
import baymist.coverage.UnreachedRegion;
import baymist.coverage.Verdict;
import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntPredicate;

/** Finds where the film is least sure: bare places and seams, film near the limit, surfaces that no jet sees. */
final class CardPoints {
    /** Film within this factor of haze is not sure (ASSUMED: droplet sizes within 1.3 and ray sampling leave as much open). */
    static final double UNSURE = 2;

    /** Places of one kind on a card, at most: more is not looked at by anybody. */
    private static final int MOST = 4;

    private final CardSource source;
    private final SurfelSet surfels;
    private final double hazeM;
    private final double buildM;
    private final double spotM2;

    CardPoints(CardSource source) {
        this.source = source;
        this.surfels = source.grid().surfels();
        this.hazeM = source.scene().targets().hazeM();
        this.buildM = source.scene().targets().buildM();
        double spot = source.scene().targets().spotM();
        this.spotM2 = spot * spot;
    }

    /** Least sure first: bare, bare seams, near the limit, fog alone; each largest first. */
    List<Point> points(Map<String, String> reasons) {
        List<Point> all = new ArrayList<>();
        bare(all, reasons);
        seams(all);
        places(all, Doubt.NEAR_LIMIT, this::near);
        places(all, Doubt.FOG_ONLY, this::fogOnly);
        return all;
    }

    private boolean near(int s) {
        double film = source.filmM()[s];
        return film >= hazeM && film < UNSURE * hazeM;
    }

    /** Reached, but thin and by fog alone: what settles changes with draughts and droplets. */
    private boolean fogOnly(int s) {
        double film = source.filmM()[s];
        return film >= UNSURE * hazeM && film < buildM && source.directKg()[s] == 0;
    }

    private void bare(List<Point> all, Map<String, String> reasons) {
        source.coverage().unreached().stream()
                .filter(r -> !r.label().equals(UnreachedRegion.SPOTS))
                .limit(MOST)
                .forEach(r -> all.add(new Point(
                        all.size() + 1,
                        Doubt.BARE,
                        r.where(),
                        r.centroidM(),
                        r.areaM2(),
                        mean(r.surfels()),
                        r.label(),
                        reasons.getOrDefault(r.label(), ""))));
    }

    private void seams(List<Point> all) {
        source.coverage().seams().bySeam().stream()
                .filter(s -> s.bareM() >= source.scene().targets().spotM())
                .sorted(Comparator.comparingDouble(SeamCoverage.Seam::bareM).reversed())
                .limit(MOST)
                .forEach(s -> all.add(new Point(
                        all.size() + 1,
                        Doubt.SEAM_BARE,
                        "seam " + s.parts() + " in " + s.bay() + ", longest bare run "
                                + String.format(Locale.ROOT, "%.0f mm", 1e3 * s.barestRunM()),
                        s.barestM(),
                        s.bareM(),
                        0,
                        "",
                        "")));
    }

    private void places(List<Point> all, Doubt doubt, IntPredicate belongs) {
        List<int[]> found = joined(belongs);
        found.sort(Comparator.comparingDouble(this::area).reversed());
        for (int[] place : found.subList(0, Math.min(MOST, found.size()))) {
            if (area(place) >= spotM2) {
                all.add(new Point(
                        all.size() + 1,
                        doubt,
                        RegionWords.of(source.cavity(), source.grid(), place),
                        centroid(place),
                        area(place),
                        mean(place),
                        "",
                        ""));
            }
        }
    }

    /** Sets of structure surfels that hang together over their edges, each ascending. */
    private List<int[]> joined(IntPredicate belongs) {
        List<int[]> sets = new ArrayList<>();
        boolean[] seen = new boolean[surfels.count()];
        for (int first = 0; first < seen.length; first++) {
            if (seen[first] || !member(first, belongs)) {
                continue;
            }
            List<Integer> set = new ArrayList<>();
            ArrayDeque<Integer> open = new ArrayDeque<>(List.of(first));
            seen[first] = true;
            while (!open.isEmpty()) {
                int s = open.remove();
                set.add(s);
                for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                    int n = surfels.neighbour()[e];
                    if (!seen[n] && member(n, belongs)) {
                        seen[n] = true;
                        open.add(n);
                    }
                }
            }
            sets.add(set.stream().mapToInt(Integer::intValue).sorted().toArray());
        }
        return sets;
    }

    private boolean member(int s, IntPredicate belongs) {
        Verdict v = source.coverage().verdict()[s];
        return surfels.isStructure(s) && v != null && belongs.test(s);
    }

    private double area(int[] place) {
        return Arrays.stream(place).mapToDouble(s -> surfels.areaM2()[s]).sum();
    }

    private double mean(int[] place) {
        double film = Arrays.stream(place)
                .mapToDouble(s -> surfels.areaM2()[s] * source.filmM()[s])
                .sum();
        return film / Math.max(1e-300, area(place));
    }

    private Vec3 centroid(int[] place) {
        Vec3 sum = Vec3.ZERO;
        for (int s : place) {
            sum = sum.plus(
                    surfels.areaM2()[s], new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]));
        }
        return sum.times(1 / area(place));
    }
}
