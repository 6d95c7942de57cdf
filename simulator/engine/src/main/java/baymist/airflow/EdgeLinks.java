package baymist.airflow;

import java.util.Arrays;

/**
 * The links from a face to a wall or a vent, gathered face by face. Most act on the face's own speed alone: what flows off towards a wall takes the face's speed along, what comes
 * from there brings none, and viscosity brakes. Those are coefficients of a face and a list of the fluxes that leave beside it. Immutable.
 */
final class EdgeLinks {
    /** Area over distance towards what is at rest, m: takes the face's viscosity, [faces]. */
    final double[] reachM;

    /** Open area times what is shut behind the face's high and low side, halved, m²: times the speed it is the flux that ends there, [faces]. */
    final double[] endHighM2;

    final double[] endLowM2;

    /** Entries of each face's list of fluxes beside it, [faces + 1]. */
    final int[] start;

    /** Flux and signed weight: positive = away from the face towards a wall, [entries]. */
    final int[] via;

    final double[] weight;

    /** Links to vents: face, vent, and outward flux from the face, which is two weighted fluxes, [vents' links]. */
    final int[] ventFace;

    final int[] vent;
    final int[] ventVia;
    final double[] ventWeight;

    EdgeLinks(FlowLinks links, FlowGrid grid, boolean slip) {
        reachM = new double[grid.faces];
        endHighM2 = new double[grid.faces];
        endLowM2 = new double[grid.faces];
        start = new int[grid.faces + 1];
        int toVents = 0;
        for (int l = 0; l < links.count; l++) {
            if (InnerLinks.isInner(links, l)) {
                continue;
            }
            if (FlowLinks.isVent(other(links, l))) {
                toVents++;
            } else if (!links.axial[l]) {
                start[face(links, l) + 1]++;
            }
        }
        for (int f = 0; f < grid.faces; f++) {
            start[f + 1] += start[f];
        }
        via = new int[start[grid.faces]];
        weight = new double[via.length];
        ventFace = new int[toVents];
        vent = new int[toVents];
        ventVia = new int[2 * toVents];
        ventWeight = new double[2 * toVents];
        fill(links, grid, slip);
    }

    private void fill(FlowLinks links, FlowGrid grid, boolean slip) {
        int[] at = Arrays.copyOf(start, start.length - 1);
        int v = 0;
        for (int l = 0; l < links.count; l++) {
            if (InnerLinks.isInner(links, l)) {
                continue;
            }
            int f = face(links, l);
            double sign = links.from[l] >= 0 ? 1 : -1;
            reachM[f] += slip && !links.axial[l] ? 0 : links.reachM[l];
            if (FlowLinks.isVent(other(links, l))) {
                ventFace[v] = f;
                vent[v] = FlowLinks.ventOf(other(links, l));
                ventVia[2 * v] = links.flux1[l];
                ventVia[2 * v + 1] = links.flux2[l];
                ventWeight[2 * v] = sign * links.weight1[l];
                ventWeight[2 * v + 1] = sign * links.weight2[l];
                v++;
            } else if (links.axial[l]) {
                // The flux is the face's own.
                double[] end = sign > 0 ? endHighM2 : endLowM2;
                end[f] += links.weight1[l] * grid.areaM2[f];
            } else {
                via[at[f]] = links.flux1[l];
                weight[at[f]++] = sign * links.weight1[l];
            }
        }
    }

    private static int face(FlowLinks links, int l) {
        return links.from[l] >= 0 ? links.from[l] : links.to[l];
    }

    private static int other(FlowLinks links, int l) {
        return links.from[l] >= 0 ? links.to[l] : links.from[l];
    }
}
