package baymist.access;

import java.util.List;

/**
 * What a search for flexible ways found.
 *
 * @param routes ways to the place that takes most wand, the one through the roomiest openings first, then ways elsewhere; each through openings of its
 *     own; empty if the wand does not go in
 * @param tips bodies to places all over what is reached, deepest first
 * @param refusal what keeps the wand out, if there are no routes; otherwise what ends the deepest
 * @param playM distance left between wand and hole at the entry, m, negative = does not pass
 * @param expanded places gone on from
 * @param tried pieces of centreline tried
 * @param distances exact distance searches
 * @param lookUps look-ups of distance bounds
 * @param exhausted whether everything was seen at this resolution; false = the budget ended the search
 * @param resolutionM edge of the cells in which places count as one, m
 */
public record FlexRoutes(
        List<FlexRoute> routes,
        List<WandPose> tips,
        WandStop refusal,
        double playM,
        int expanded,
        int tried,
        long distances,
        long lookUps,
        boolean exhausted,
        double resolutionM) {
    public FlexRoutes {
        routes = List.copyOf(routes);
        tips = List.copyOf(tips);
    }
}
