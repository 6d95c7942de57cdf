package baymist.airflow;

import java.util.Arrays;

/**
 * The links between two faces, laid out for the kernel of {@link FlowMomentum}: everything that a link needs stands at its own place, and what
 * lies behind a face is an index and a factor, so the loop asks nothing. Most links of a grid are of this kind; the rest stay in {@link
 * FlowLinks}. Immutable.
 */
final class InnerLinks {
    final int count;

    /** Faces on the low and the high side, [count]. */
    final int[] from;

    final int[] to;

    /** Face behind {@code from} as seen from {@code to}, and behind {@code to}; itself where there is none, [count]. */
    final int[] behindFrom;

    final int[] behindTo;

    /** Factor on the speed behind: 1, or what the wall there makes of the face's own speed (0 square to it, 1 or -1 along it), [count]. */
    final double[] factorFrom;

    final double[] factorTo;

    /** Fluxes that carry, and their weights, [count]. */
    final int[] flux1;

    final int[] flux2;
    final double[] weight1;
    final double[] weight2;

    /** Half the area over distance, m: takes the sum of both faces' viscosities, [count]. */
    final double[] halfReachM;

    /** Links of {@link FlowLinks} that lead to a wall or a vent. */
    final int[] edges;

    InnerLinks(FlowLinks links, boolean slip) {
        int n = 0;
        int[] edge = new int[links.count];
        int edgeCount = 0;
        for (int l = 0; l < links.count; l++) {
            if (links.from[l] >= 0 && links.to[l] >= 0) {
                n++;
            } else {
                edge[edgeCount++] = l;
            }
        }
        count = n;
        edges = Arrays.copyOf(edge, edgeCount);
        from = new int[n];
        to = new int[n];
        behindFrom = new int[n];
        behindTo = new int[n];
        factorFrom = new double[n];
        factorTo = new double[n];
        flux1 = new int[n];
        flux2 = new int[n];
        weight1 = new double[n];
        weight2 = new double[n];
        halfReachM = new double[n];
        int at = 0;
        for (int l = 0; l < links.count; l++) {
            if (links.from[l] >= 0 && links.to[l] >= 0) {
                place(links, l, at++, slip);
            }
        }
    }

    private void place(FlowLinks links, int l, int at, boolean slip) {
        double wall = links.axial[l] ? 0 : slip ? 1 : -1;
        from[at] = links.from[l];
        to[at] = links.to[l];
        int low = links.beside[6 * links.from[l] + 2 * links.along[l]];
        int high = links.beside[6 * links.to[l] + 2 * links.along[l] + 1];
        behindFrom[at] = low >= 0 ? low : links.from[l];
        behindTo[at] = high >= 0 ? high : links.to[l];
        factorFrom[at] = low >= 0 ? 1 : wall;
        factorTo[at] = high >= 0 ? 1 : wall;
        flux1[at] = links.flux1[l];
        flux2[at] = links.flux2[l];
        weight1[at] = links.weight1[l];
        weight2[at] = links.weight2[l];
        halfReachM[at] = 0.5 * links.reachM[l];
    }
}
