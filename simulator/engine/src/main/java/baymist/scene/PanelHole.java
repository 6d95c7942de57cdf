package baymist.scene;

import baymist.geom.Outline;
import baymist.problem.SourcePlace;

/**
 * A hole in a flat panel of a family, placed by two distances in the panel.
 *
 * @param name "" = named by the family
 * @param alongM distance of its centre along the panel's length, m; what that is says the family
 * @param acrossM the same across, m
 * @param turnRad turn of the outline's length from the panel's, rad
 */
public record PanelHole(
        String name,
        Outline outline,
        double alongM,
        double acrossM,
        double turnRad,
        PhaseStates states,
        SourcePlace place) {}
