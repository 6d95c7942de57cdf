package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.model.RegionAnswer;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;

/** A tip that is not there: where it would do most good. */
final class GhostLayer {
    /** Opacity, so that it can't be taken for the wand that is there. */
    private static final double SEEN_THROUGH = 0.55;

    private final Group group = new Group();
    private final LineMesh body;
    private final DotMesh tip;
    private final double sizeM;

    GhostLayer(Theme theme, double sizeM) {
        this.sizeM = sizeM;
        Color pale = theme.lit().deriveColor(0, 1, 1, SEEN_THROUGH);
        body = new LineMesh(pale, 0.0035 * sizeM, 6);
        tip = new DotMesh(pale, 0.012 * sizeM);
        group.getChildren().addAll(body.node(), tip.node());
        group.setVisible(false);
    }

    Node node() {
        return group;
    }

    /** Shows a pose with its wand and a short stroke where its pin points, or nothing. */
    void show(RegionAnswer.@Nullable GhostPose pose) {
        group.setVisible(pose != null);
        if (pose == null) {
            return;
        }
        Vec3 p = pose.tip().positionM();
        List<Vec3> ends =
                new ArrayList<>(List.of(p, p.plus(0.06 * sizeM, pose.tip().pin())));
        for (int i = 1; i < pose.bodyM().size(); i++) {
            ends.add(pose.bodyM().get(i - 1));
            ends.add(pose.bodyM().get(i));
        }
        body.set(LineMesh.segments(ends));
        tip.set(LineMesh.segments(List.of(p)));
    }
}
