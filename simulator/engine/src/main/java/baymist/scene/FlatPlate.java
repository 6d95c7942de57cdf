package baymist.scene;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import java.util.List;

/**
 * A flat plate in space.
 *
 * @param corners in turn, at least three, m
 */
public record FlatPlate(String name, List<Vec3> corners, double gaugeM, SourcePlace place) {
    public FlatPlate {
        corners = List.copyOf(corners);
    }
}
