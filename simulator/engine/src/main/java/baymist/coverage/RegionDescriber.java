package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.voxel.Bay;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Says where a set of surfels is, in words by which a technician finds it on the structure: the part that holds most of
 * it, the face, the bays, the place on that surface between the members that bound it, its extent, and other parts that
 * it runs on to. How each word is chosen: docs/theory/coverage.md, section 3.
 */
final class RegionDescriber {
    /** A bay or part with less than this share of a region is not named. ASSUMED. */
    private static final double NAMED_SHARE = 0.05;
    /** Above this share of a bay's surfaces a region is told as the bay, not as a place in it. ASSUMED. */
    private static final double ALL_OF_BAY = 0.85;

    private static final double MOST_OF_BAY = 0.6;
    /** Share of a region on the smaller of two skins from which it is told as the edge where they meet. ASSUMED. */
    private static final double SECOND_SKIN = 0.15;
    /** Widest strip that is told as lying along an edge, as a share of the way across. ASSUMED. */
    private static final double EDGE_STRIP = 0.5;
    /** Share of a region on the other face of a sheet from which both faces are named. ASSUMED. */
    private static final double SECOND_FACE = 0.2;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final SurfelSet surfels;
    private final PartShape[] shapes;
    private final double[] areaOfBay;
    private final BaySurfels ofBays;
    private final Ends ends;
    private final Spans spans;
    private final Places places;
    private final Compass compass;

    RegionDescriber(Cavity cavity, VoxelGrid grid) {
        this.cavity = cavity;
        this.grid = grid;
        this.surfels = grid.surfels();
        shapes = new PartShape[cavity.parts().size()];
        Arrays.setAll(shapes, p -> new PartShape());
        areaOfBay = new double[grid.bays().size()];
        ofBays = new BaySurfels(grid);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < surfels.count(); s++) {
            low = Math.min(low, surfels.centreY()[s]);
            high = Math.max(high, surfels.centreY()[s]);
            if (surfels.isStructure(s)) {
                shapes[surfels.part()[s]].add(surfels, s);
                areaOfBay[bay(s)] += surfels.areaM2()[s];
            }
        }
        ends = new Ends(cavity, surfels);
        spans = new Spans(grid, ends);
        compass = Compass.of(cavity, low, high);
        places = new Places(compass);
    }

    /** Words for one connected region. */
    String describe(int[] region) {
        Map<Integer, Double> byPart = areaBy(region, s -> surfels.part()[s]);
        Map<Integer, Double> byBay = areaBy(region, this::bay);
        double area = byPart.values().stream().mapToDouble(Double::doubleValue).sum();
        List<Integer> bays = byBay.entrySet().stream()
                .filter(e -> e.getValue() >= NAMED_SHARE * area)
                .map(Map.Entry::getKey)
                .toList();
        double baysM2 = bays.stream().mapToDouble(b -> areaOfBay[b]).sum();
        if (area >= MOST_OF_BAY * baysM2 && byPart.size() > 2) {
            boolean all = area >= ALL_OF_BAY * baysM2;
            return baysOrCavity(bays) + (all ? ", nearly all surfaces" : ", most surfaces");
        }
        int main = largest(byPart);
        int[] on = select(region, s -> surfels.part()[s] == main);
        if (shapes[main].isFlat()) {
            return onFlatPart(on, main, byPart, bays, area);
        }
        Span[] all = spans.along(on, onSameBays(main, bays, null), main, 0, 1, 2);
        String place = places.curved(List.of(all), spans.filled(on, onSameBays(main, bays, null), all));
        String where = name(main) + bayWords(bays) + ", " + place;
        return where + extent(all) + also(byPart, main, -1, area);
    }

    /** Words for spots too small to be told one by one. */
    String describeScattered(int[] all, int places) {
        Map<Integer, Double> byPart = areaBy(all, s -> surfels.part()[s]);
        double area = byPart.values().stream().mapToDouble(Double::doubleValue).sum();
        List<String> names = byPart.entrySet().stream()
                .sorted(Map.Entry.<Integer, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .filter(e -> e.getValue() >= NAMED_SHARE * area)
                .limit(3)
                .map(e -> Places.withArticle(name(e.getKey())))
                .toList();
        return CoverageAssessor.SCATTERED + " in " + places + " places, mostly on " + BayNames.list(names);
    }

    private String onFlatPart(int[] on, int main, Map<Integer, Double> byPart, List<Integer> bays, double area) {
        int normalAxis = shapes[main].axis();
        boolean twoFaced = shapes[main].hasBothFaces();
        double upShare = upShare(on, normalAxis);
        boolean onBoth = twoFaced && Math.min(upShare, 1 - upShare) >= SECOND_FACE;
        boolean onOne = twoFaced && !onBoth;
        Boolean up = onOne ? upShare > 0.5 : null;
        int[] face = up == null ? on : select(on, s -> looks(s, normalAxis) == up);
        int[] surface = onSameBays(main, bays, up);
        int acrossAxis = normalAxis == 2 ? 0 : 2;
        int lengthwiseAxis = normalAxis == 1 ? 0 : 1;
        Span[] two = spans.along(face, surface, main, acrossAxis, lengthwiseAxis);
        int second = skinAcrossTheEdge(byPart, main, area);
        String edge = second < 0 ? null : edgeOf(two[0]);
        if (edge != null) {
            byPart.keySet().removeIf(p -> name(p).equals(edge));
            return edge + bayWords(bays) + ", " + edgeRun(two[1], bays) + extent(two)
                    + also(byPart, main, second, area);
        }
        double filled = spans.filled(face, surface, two);
        String place = places.flat(two[0], two[1], filled, edgeName(main, two[0]));
        String faceWords = onBoth ? ", both faces" : up == null ? "" : ", " + compass.word(normalAxis, up) + " face";
        String bayWords = up != null && cavity.parts().get(main).kind() == PartKind.RIB ? "" : bayWords(bays);
        String where = name(main) + faceWords + bayWords + ", " + place;
        boolean everywhere = two[0].place() == Span.Place.FULL && two[1].place() == Span.Place.FULL;
        return where + (everywhere ? "" : stringers(face, two[0])) + extent(two) + also(byPart, main, -1, area);
    }

    /** Name of the edge that a strip over two skins lies along, or null where a member such as a spar ends them. */
    private @Nullable String edgeOf(Span across) {
        if (across.axis() != 0 || !across.isAtEnd() || across.extent() > EDGE_STRIP) {
            return null;
        }
        Ends.Member end = across.isHigh() ? across.highEnd() : across.lowEnd();
        if (end == null) {
            return across.isHigh() ? "trailing edge" : "leading edge";
        }
        return end.name().endsWith("edge") ? end.name() : null;
    }

    /** The other skin if the region lies on two that face each other, else -1. */
    private int skinAcrossTheEdge(Map<Integer, Double> byPart, int main, double area) {
        if (cavity.parts().get(main).kind() != PartKind.SKIN) {
            return -1;
        }
        for (Map.Entry<Integer, Double> e : byPart.entrySet()) {
            boolean skin = cavity.parts().get(e.getKey()).kind() == PartKind.SKIN;
            if (e.getKey() != main && skin && e.getValue() >= SECOND_SKIN * area) {
                return e.getKey();
            }
        }
        return -1;
    }

    private String edgeRun(Span lengthwise, List<Integer> bays) {
        if (lengthwise.place() == Span.Place.FULL) {
            return bays.size() == grid.bays().size() && grid.part() == null
                    ? "whole length"
                    : places.fromTo(lengthwise);
        }
        return lengthwise.place() == Span.Place.MIDDLE
                ? "middle part"
                : compass.word(lengthwise.axis(), lengthwise.isHigh()) + " part";
    }

    /** What a skin's end is called where no spar closes it. */
    private @Nullable String edgeName(int part, Span across) {
        boolean skin = cavity.parts().get(part).kind() == PartKind.SKIN;
        boolean winged = cavity.parts().stream().anyMatch(p -> p.kind() == PartKind.SPAR);
        if (!skin || !winged || across.axis() != 0 || !across.isAtEnd()) {
            return null;
        }
        return across.isHigh() ? "trailing edge" : "leading edge";
    }

    /** Stringers on the region's own surface that it comes up to or runs across; at most two are named. */
    private String stringers(int[] face, Span across) {
        Map<Integer, double[]> touched = new TreeMap<>(); // stringer -> {edges, sum of positions}
        for (int s : face) {
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                int p = surfels.part()[n];
                if (cavity.parts().get(p).kind() == PartKind.STRINGER && p != surfels.part()[s]) {
                    double[] tally = touched.computeIfAbsent(p, k -> new double[2]);
                    tally[0]++;
                    tally[1] += spans.coordinate(n, across.axis());
                }
            }
        }
        if (touched.isEmpty() || touched.size() > 2) {
            return "";
        }
        List<String> names =
                touched.keySet().stream().map(p -> Places.withArticle(name(p))).toList();
        double cell = grid.sizeM().get(across.axis());
        boolean crosses = false;
        int below = 0;
        for (double[] tally : touched.values()) {
            double at = tally[1] / tally[0];
            crosses |= at > across.lowM() + cell && at < across.highM() - cell;
            below += at < 0.5 * (across.lowM() + across.highM()) ? 1 : 0;
        }
        String word = crosses ? ", across " : names.size() == 2 && below == 1 ? ", between " : ", beside ";
        return word + BayNames.list(names);
    }

    private String also(Map<Integer, Double> byPart, int main, int second, double area) {
        List<String> names = byPart.entrySet().stream()
                .filter(e -> e.getKey() != main && e.getKey() != second && e.getValue() >= NAMED_SHARE * area)
                .sorted(Map.Entry.<Integer, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(4)
                .map(e -> Places.withArticle(name(e.getKey())))
                .toList();
        return names.isEmpty() ? "" : "; runs on to " + BayNames.list(names);
    }

    private String bayWords(List<Integer> bays) {
        return oneRoom() || bays.isEmpty() ? "" : ", " + baysOrCavity(bays);
    }

    private boolean oneRoom() {
        return grid.bays().size() <= 1 && grid.part() == null;
    }

    private String baysOrCavity(List<Integer> bays) {
        if (oneRoom()) {
            return "the whole cavity";
        }
        return BayNames.join(
                bays.stream().map(b -> grid.bays().get(b)).map(Bay::name).toList());
    }

    private static String extent(Span[] spans) {
        StringBuilder words = new StringBuilder(" (");
        for (int i = 0; i < spans.length; i++) {
            double mm = 1000 * (spans[i].highM() - spans[i].lowM());
            long rounded = mm < 50 ? Math.round(mm) : 5 * Math.round(mm / 5);
            words.append(String.format(
                    Locale.ROOT, "%s%d mm %s", i == 0 ? "" : " x ", rounded, Compass.along(spans[i].axis())));
        }
        return words.append(")").toString();
    }

    /** Share of these surfels' area that looks towards larger coordinates. */
    private double upShare(int[] on, int axis) {
        double up = 0;
        double area = 0;
        for (int s : on) {
            up += looks(s, axis) ? surfels.areaM2()[s] : 0;
            area += surfels.areaM2()[s];
        }
        return area > 0 ? up / area : 1;
    }

    private boolean looks(int s, int axis) {
        return spans.normal(s, axis) > 0;
    }

    /** All surfels of a part's face (null = any) in some bays. */
    private int[] onSameBays(int part, List<Integer> bays, @Nullable Boolean up) {
        int axis = shapes[part].axis();
        IntStream.Builder found = IntStream.builder();
        for (int bay : bays) {
            for (int i = ofBays.start(bay); i < ofBays.end(bay); i++) {
                int s = ofBays.at(i);
                if (surfels.part()[s] == part && (up == null || looks(s, axis) == up)) {
                    found.add(s);
                }
            }
        }
        return found.build().sorted().toArray();
    }

    private int bay(int s) {
        return grid.bayOfCell(surfels.cell()[s]);
    }

    private String name(int part) {
        return cavity.parts().get(part).name();
    }

    private Map<Integer, Double> areaBy(int[] region, java.util.function.IntUnaryOperator key) {
        Map<Integer, Double> sums = new TreeMap<>();
        for (int s : region) {
            sums.merge(key.applyAsInt(s), surfels.areaM2()[s], Double::sum);
        }
        return sums;
    }

    private static int largest(Map<Integer, Double> areas) {
        int best = -1;
        double most = -1;
        for (Map.Entry<Integer, Double> e : areas.entrySet()) {
            if (e.getValue() > most) {
                best = e.getKey();
                most = e.getValue();
            }
        }
        return best;
    }

    private static int[] select(int[] of, java.util.function.IntPredicate keep) {
        return Arrays.stream(of).filter(keep).toArray();
    }
}
