package baymist.viewer.fx;

import baymist.access.TipPose;
import baymist.geom.Vec3;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;

/** A tip that is not there: where it would do most good. */
final class GhostLayer {
    private final Group group = new Group();
    private final LineMesh body;
    private final DotMesh tip;
    private final double sizeM;

    GhostLayer(Theme theme, double sizeM) {
        this.sizeM = sizeM;
        body = new LineMesh(theme.lit(), 0.002 * sizeM, 6);
        tip = new DotMesh(theme.lit(), 0.012 * sizeM);
        group.getChildren().addAll(body.node(), tip.node());
        group.setVisible(false);
    }

    Node node() {
        return group;
    }

    /** Shows a pose with the wand behind it and a short stroke where its pin points, or nothing. */
    void show(@Nullable TipPose pose) {
        group.setVisible(pose != null);
        if (pose == null) {
            return;
        }
        Vec3 p = pose.positionM();
        Vec3 back = p.plus(-0.16 * sizeM, pose.axis());
        Vec3 pin = p.plus(0.06 * sizeM, pose.pin());
        body.set(LineMesh.segments(List.of(back, p, p, pin)));
        tip.set(LineMesh.segments(List.of(p)));
    }
}
