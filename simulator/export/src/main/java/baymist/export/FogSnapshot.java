package baymist.export;

import baymist.airflow.AirField;
import baymist.run.RunMoment;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * Fog and air of a job at one time, copied out of the run.
 *
 * @param timeS job time, s
 * @param words what the time is, such as the end of a pass
 * @param fogKgPerM3 fog in each cell, all sizes together, kg/m³, [cells]
 * @param velocityMPerS air, m/s, [3 * cells]; see {@link #velocity}
 * @param eddyDiffusivityM2PerS turbulent mixing, m²/s, [cells]
 */
public record FogSnapshot(
        double timeS, String words, double[] fogKgPerM3, double[] velocityMPerS, double[] eddyDiffusivityM2PerS) {
    static FogSnapshot of(RunMoment moment, String words) {
        VoxelGrid grid = moment.grid();
        double[] fog = new double[grid.cellCount()];
        for (int c = 0; c < fog.length; c++) {
            fog[c] = moment.concentrationKgPerM3(c);
        }
        AirField air = moment.air();
        return new FogSnapshot(
                moment.endS(),
                words,
                fog,
                velocity(grid, air),
                air.eddyDiffusivityM2PerS().clone());
    }

    FogSnapshot called(String otherWords) {
        return new FogSnapshot(timeS, otherWords, fogKgPerM3, velocityMPerS, eddyDiffusivityM2PerS);
    }

    /**
     * Air velocity in the middle of each cell: along each axis the mean of the flows through the cell's two sides, over the area of a
     * voxel's side. A side in a sheet lets nothing through; a small hole counts with what flows through it, spread over the side.
     *
     * @return m/s, [3 * cells], x y z of each cell
     */
    static double[] velocity(VoxelGrid grid, AirField air) {
        double[] side = {
            grid.sizeM().y() * grid.sizeM().z(),
            grid.sizeM().z() * grid.sizeM().x(),
            grid.sizeM().x() * grid.sizeM().y()
        };
        FaceSet f = grid.faces();
        double[] v = new double[3 * grid.cellCount()];
        for (int i = 0; i < f.count(); i++) {
            int axis = f.axis()[i];
            double half = 0.5 * air.faceFluxM3PerS()[i] / side[axis];
            v[3 * f.low()[i] + axis] += half;
            v[3 * f.high()[i] + axis] += half;
        }
        for (int i = 0; i < f.vents(); i++) {
            int axis = f.ventAxis()[i];
            v[3 * f.ventCell()[i] + axis] += 0.5 * f.ventSign()[i] * air.ventFluxM3PerS()[i] / side[axis];
        }
        return v;
    }
}
