package baymist.viewer.fx;

import baymist.access.Station;
import baymist.geom.Vec3;
import baymist.recording.WandMoment;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;

/** The wand, the way of its tip, and its jets. */
final class WandLayer {
    private final Group solid = new Group();
    private final LineMesh body;
    private final LineMesh tip;
    private final LineMesh way;
    private final JetCone jets;
    private final double sizeM;

    /** @param sizeM diagonal of the structure, m */
    WandLayer(Theme theme, double sizeM) {
        this.sizeM = sizeM;
        body = new LineMesh(theme.wand(), 0.002 * sizeM, 10);
        tip = new LineMesh(theme.lit(), 0.003 * sizeM, 10);
        way = new LineMesh(theme.lit(), 7e-4 * sizeM);
        jets = new JetCone(theme.jet());
        solid.getChildren().addAll(way.node(), body.node(), tip.node());
        solid.getChildren().forEach(n -> n.setVisible(false));
    }

    Node solid() {
        return solid;
    }

    /** Drawn after what is solid and before the sheets. */
    Node jets() {
        return jets.node();
    }

    /** The way of the tip over all passes. */
    void way(List<Station> stations) {
        List<Vec3> ends = new ArrayList<>();
        for (int s = 1; s < stations.size(); s++) {
            if (stations.get(s).pass() == stations.get(s - 1).pass()) {
                ends.add(stations.get(s - 1).pose().positionM());
                ends.add(stations.get(s).pose().positionM());
            }
        }
        way.set(LineMesh.segments(ends));
    }

    void show(WandMoment moment) {
        List<Vec3> line = moment.bodyM();
        if (line.size() < 2) {
            body.set(new float[0]);
            tip.set(new float[0]);
            jets.set(List.of());
            return;
        }
        List<Vec3> ends = new ArrayList<>();
        Vec3 first = line.get(0);
        Vec3 back = first.minus(line.get(1)).unit();
        ends.add(first.plus(0.06 * sizeM, back));
        ends.add(first);
        for (int i = 1; i < line.size(); i++) {
            ends.add(line.get(i - 1));
            ends.add(line.get(i));
        }
        double radius = Math.max(moment.radiusM(), 0.0012 * sizeM);
        body.radius(radius);
        body.set(LineMesh.segments(ends));
        if (moment.tip() != null) {
            Vec3 end = moment.tip().positionM();
            tip.radius(1.35 * radius);
            tip.set(LineMesh.segments(
                    List.of(end.plus(-0.012 * sizeM, moment.tip().axis()), end)));
        }
        jets.set(moment.jets());
    }
}
