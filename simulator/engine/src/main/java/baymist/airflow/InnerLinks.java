package baymist.airflow;

/**
 * The links between two faces, laid out for {@link FlowKernel}: what a link needs stands at its own place in flat arrays. What lies behind a face is a place in the speeds as
 * {@link #lengthen} lays them out: a wall behind it is the face's own speed, its negative, or nothing. The rest of a grid's links are {@link EdgeLinks}. Immutable.
 */
final class InnerLinks {
    final int count;

    /** Faces on the low and the high side of each link, [2 * count]. */
    final int[] end;

    /** Place behind the low face as seen from the high one, and behind the high face, in the lengthened speeds, [2 * count]. */
    final int[] behind;

    /** Fluxes that carry, and their weights, [2 * count]. */
    final int[] via;

    final double[] weight;

    /** Half the area over distance, m: takes the sum of both faces' viscosities, [count]. */
    final double[] halfReachM;

    private final int faces;

    InnerLinks(FlowLinks links, int faces, boolean slip) {
        this.faces = faces;
        int n = 0;
        for (int l = 0; l < links.count; l++) {
            n += isInner(links, l) ? 1 : 0;
        }
        count = n;
        end = new int[2 * n];
        behind = new int[2 * n];
        via = new int[2 * n];
        weight = new double[2 * n];
        halfReachM = new double[n];
        int at = 0;
        for (int l = 0; l < links.count; l++) {
            if (isInner(links, l)) {
                place(links, l, at++, slip);
            }
        }
    }

    /** Whether a link runs between two faces. */
    static boolean isInner(FlowLinks links, int l) {
        return links.from[l] >= 0 && links.to[l] >= 0;
    }

    private void place(FlowLinks links, int l, int at, boolean slip) {
        int beforeLow = links.beside[6 * links.from[l] + 2 * links.along[l]];
        int afterHigh = links.beside[6 * links.to[l] + 2 * links.along[l] + 1];
        end[2 * at] = links.from[l];
        end[2 * at + 1] = links.to[l];
        behind[2 * at] = beforeLow >= 0 ? beforeLow : wall(links, l, links.from[l], slip);
        behind[2 * at + 1] = afterHigh >= 0 ? afterHigh : wall(links, l, links.to[l], slip);
        via[2 * at] = links.flux1[l];
        via[2 * at + 1] = links.flux2[l];
        weight[2 * at] = links.weight1[l];
        weight[2 * at + 1] = links.weight2[l];
        halfReachM[at] = 0.5 * links.reachM[l];
    }

    /** What a wall makes of a face's own speed: nothing square to it, else the same where it slips, its negative where it does not. */
    private int wall(FlowLinks links, int l, int face, boolean slip) {
        return links.axial[l] ? 2 * faces : slip ? face : faces + face;
    }

    /** Length of the lengthened speeds. */
    int length() {
        return 2 * faces + 1;
    }

    /** Speeds, their negatives, and nothing. */
    void lengthen(double[] u, double[] into) {
        for (int f = 0; f < faces; f++) {
            into[f] = u[f];
        }
        for (int f = 0; f < faces; f++) {
            into[faces + f] = -u[f];
        }
    }
}
