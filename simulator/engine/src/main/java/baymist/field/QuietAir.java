package baymist.field;

import baymist.airflow.AirField;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.List;

/** The air of a hanging time when the jets' motion has died: residual eddies alone, openings as while the fog hangs. */
final class QuietAir {
    private QuietAir() {}

    static AirField of(Scene scene, Cavity cavity, VoxelGrid grid) {
        double[] open = OpenFractions.hang(cavity.openings());
        double[] areas = OpenFractions.areasM2(cavity.openings());
        List<AirWindow> calm = List.of(AirWindow.quiet(0, 1, open));
        return AirStage.plan(AirSettings.of(scene, scene.ambient()), areas, grid, calm)
                .field(0);
    }
}
