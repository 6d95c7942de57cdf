package baymist.size;

import baymist.scene.Scene;
import baymist.scene.WandMaterial;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What is looked for, and among what.
 *
 * @param reached share of the inside surface that must be reached, 0 to 1
 * @param seamsReached share of the length of seams that must be reached as well, 0 = none asked for
 * @param markM distance of the insertion marks, m: lengths and stops are whole numbers of it
 * @param mostM longest wand, m
 * @param hooks bends that are tried
 * @param hooksFirst whether hooks are tried at once; false = only where no straight wand meets the goal
 */
public record SizeRequest(
        double reached,
        double seamsReached,
        double markM,
        double mostM,
        List<Tube> tubes,
        List<Pattern> patterns,
        List<Hook> hooks,
        boolean hooksFirst,
        WandMaterial material) {
    /** Share reached that is asked for where nothing else is (ASSUMED: a usual aim, not a rule). */
    public static final double REACHED = 0.95;

    /** 50 mm: marks that an eye tells apart on a wand (ASSUMED). */
    public static final double MARK_M = 0.05;

    /** Longest wand where nothing else is asked for, m: what stock tube comes in and a hand still guides (ASSUMED). */
    public static final double MOST_M = 3;

    public SizeRequest {
        tubes = List.copyOf(tubes);
        patterns = List.copyOf(patterns);
        hooks = List.copyOf(hooks);
        if (!(reached > 0 && reached <= 1) || !(seamsReached >= 0 && seamsReached <= 1)) {
            throw new IllegalArgumentException("goals of " + reached + " and " + seamsReached);
        }
        if (!(markM >= 0.001 && markM <= mostM && mostM <= 10)) {
            throw new IllegalArgumentException("marks of " + markM + " m on wands up to " + mostM + " m");
        }
        if (tubes.isEmpty() || patterns.isEmpty()) {
            throw new IllegalArgumentException("no tubes or no tips to choose from");
        }
    }

    /** The usual choice for a scene: its own wands' tips and material, usual tubes, bends where they are needed. */
    public static SizeRequest of(Scene scene) {
        return new SizeRequest(
                REACHED,
                0,
                MARK_M,
                MOST_M,
                Tube.USUAL,
                patternsOf(scene),
                Hook.USUAL,
                false,
                materialOf(scene));
    }

    /** Tips of the wands that the scene names, then the usual ones that differ from them. */
    public static List<Pattern> patternsOf(Scene scene) {
        List<Pattern> all = new ArrayList<>();
        for (WandSpec w : sorted(scene)) {
            add(all, Pattern.of(w));
        }
        Pattern.usual().forEach(p -> add(all, p));
        return List.copyOf(all);
    }

    private static void add(List<Pattern> all, Pattern p) {
        if (!p.tip().jets().isEmpty()
                && all.stream().noneMatch(q -> q.tip().jets().equals(p.tip().jets())
                        && q.tipOuterM() == p.tipOuterM())) {
            all.add(p);
        }
    }

    /** Material of the scene's first rigid wand that states one, else stainless; it counts as stated, so that wands sag. */
    public static WandMaterial materialOf(Scene scene) {
        return sorted(scene).stream()
                .filter(w -> w.kind() != WandSpec.Kind.FLEXIBLE && !w.material().isAssumed())
                .map(WandSpec::material)
                .findFirst()
                .orElse(WandMaterial.STAINLESS);
    }

    private static List<WandSpec> sorted(Scene scene) {
        return scene.wands().values().stream()
                .sorted(Comparator.comparing(WandSpec::name))
                .toList();
    }

    /** Every straight design, thinnest first, or every hooked one. */
    List<Design> designs(boolean hooked) {
        List<Design> all = new ArrayList<>();
        List<Tube> thinFirst = tubes.stream()
                .sorted(Comparator.comparingDouble(Tube::outerM).thenComparingDouble(Tube::boreM))
                .toList();
        for (Tube t : thinFirst) {
            for (Pattern p : patterns) {
                if (hooked) {
                    hooks.forEach(h -> all.add(new Design(t, h, p, material)));
                } else {
                    all.add(new Design(t, null, p, material));
                }
            }
        }
        return all;
    }
}
