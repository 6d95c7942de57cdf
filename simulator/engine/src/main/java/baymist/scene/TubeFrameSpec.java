package baymist.scene;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Measures of a frame of round tubes. Lengths m.
 *
 * <p>Each tube is cut to fit every tube that is listed before it: those that run through are listed first.
 *
 * @param segments flats round each tube
 * @param gussets plates let into the tubes
 */
public record TubeFrameSpec(List<Node> nodes, List<Tube> tubes, int segments, List<Gusset> gussets) {
    public TubeFrameSpec {
        nodes = List.copyOf(nodes);
        tubes = List.copyOf(tubes);
        gussets = List.copyOf(gussets);
    }

    /** A frame without gussets. */
    public TubeFrameSpec(List<Node> nodes, List<Tube> tubes, int segments) {
        this(nodes, tubes, segments, List.of());
    }

    /** A point where axes meet. */
    public record Node(String name, Vec3 atM) {}

    /**
     * A straight tube from axis point to axis point.
     *
     * @param name its name as a part; null = "tube 3" and so on
     * @param from, to indices into the nodes
     * @param outerM outside diameter
     * @param wallM thickness of its wall
     * @param fromHoleM, toHoleM diameter of the joint hole at either end, in the wall of the tube that it lands on; 0 = none
     */
    public record Tube(
            @Nullable String name,
            int from,
            int to,
            double outerM,
            double wallM,
            double fromHoleM,
            double toHoleM,
            SourcePlace place) {
        public double innerRadiusM() {
            return outerM / 2 - wallM;
        }
    }

    /**
     * A flat plate let into two tubes at a node, in the plane of their axes; it stands across both bores.
     *
     * @param name its name as a part; null = "gusset 1" and so on
     * @param node index of the node
     * @param first, second indices of the two tubes
     * @param reachM how far it runs along each tube from the node
     * @param gaugeM its thickness
     */
    public record Gusset(
            @Nullable String name, int node, int first, int second, double reachM, double gaugeM, SourcePlace place) {}
}
