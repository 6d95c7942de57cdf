package baymist.airflow;

import baymist.scene.AirSpec;
import baymist.spray.SprayHits;
import baymist.voxel.Bay;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/** Eddy diffusivity of every bay over the whole timeline, and the friction speed of the residual convection. */
final class MixingHistory {
    private final VoxelGrid grid;
    private final AirSettings settings;
    private final List<double[]> diffusivityOfBay = new ArrayList<>();
    private final List<double[]> kOfBay = new ArrayList<>();
    private final List<double[]> floorOfBay = new ArrayList<>();
    private final double[] quietFriction;
    private final double totalVolumeM3;

    private MixingHistory(VoxelGrid grid, AirSettings settings) {
        this.grid = grid;
        this.settings = settings;
        this.quietFriction = new double[grid.surfels().count()];
        this.totalVolumeM3 = grid.totalVolumeM3();
    }

    static MixingHistory of(VoxelGrid grid, AirSettings settings, List<AirWindow> windows, PressureHistory pressures) {
        MixingHistory history = new MixingHistory(grid, settings);
        history.fillQuietFriction();
        double[] k = new double[grid.bays().size()];
        for (int w = 0; w < windows.size(); w++) {
            history.advance(windows.get(w), pressures.window(w), k);
        }
        return history;
    }

    private void fillQuietFriction() {
        if (!settings.residualConvection()) {
            return;
        }
        double[] ofBay = new double[grid.bays().size()];
        for (int b = 0; b < ofBay.length; b++) {
            double height = ResidualConvection.heightM(grid.bays().get(b), settings.gravity());
            ofBay[b] = ResidualConvection.frictionSpeedMPerS(
                    settings.gravityMPerS2(),
                    settings.air().temperatureK(),
                    height,
                    settings.air().kinematicViscosityM2PerS());
        }
        for (int s = 0; s < quietFriction.length; s++) {
            quietFriction[s] = ofBay[grid.bayOfCell(grid.surfels().cell()[s])];
        }
    }

    private void advance(AirWindow window, PressureWindow pressure, double[] k) {
        SprayHits hits = window.hits();
        double[] diffusivity = new double[k.length];
        double[] floor = new double[k.length];
        for (int b = 0; b < k.length; b++) {
            Bay bay = grid.bays().get(b);
            double power = hits != null && hits.powerBay() == b ? hits.turbulentPowerW() : 0;
            double perMass = power / (settings.air().densityKgPerM3() * bay.volumeM3());
            double length = BulkTurbulence.lengthM(bay);
            BulkTurbulence.State state = BulkTurbulence.advance(k[b], perMass, length, window.durationS());
            k[b] = state.endM2PerS2();
            double turbulent =
                    BulkTurbulence.VISCOSITY_FACTOR * state.meanRootMPerS() * length / BulkTurbulence.SCHMIDT;
            diffusivity[b] = chosen(bay, hits != null, turbulent, pressure);
            floor[b] = chosen(bay, hits != null, 0, pressure);
        }
        floorOfBay.add(floor);
        diffusivityOfBay.add(diffusivity);
        kOfBay.add(k.clone());
    }

    private double chosen(Bay bay, boolean spraying, double turbulent, PressureWindow pressure) {
        AirSpec spec = settings.spec();
        double stated = spraying ? spec.sprayDiffusivityM2PerS() : spec.quietDiffusivityM2PerS();
        if (stated >= 0) {
            return stated;
        }
        if (spec.mode() == AirSpec.Mode.STILL) {
            return 0;
        }
        if (!settings.residualConvection()) {
            return turbulent;
        }
        double height = ResidualConvection.heightM(bay, settings.gravity());
        double floor = ResidualConvection.diffusivityM2PerS(
                settings.gravityMPerS2(), settings.air().temperatureK(), height);
        if (!spraying) {
            double changes = 3600 * Math.abs(pressure.ventOutflowM3PerS()) / totalVolumeM3;
            floor = Math.max(floor, ResidualConvection.roomDiffusivityM2PerS(bay.volumeM3(), changes));
        }
        return turbulent + floor;
    }

    /** Mixing of a window, spread over the cells. */
    Mixing window(int w) {
        return spread(diffusivityOfBay.get(w));
    }

    /** What mixes besides the turbulence that the resolved air carries itself: stated values, or the residual convection. */
    Mixing floor(int w) {
        return spread(floorOfBay.get(w));
    }

    private Mixing spread(double[] ofBay) {
        double[] cells = new double[grid.cellCount()];
        for (int c = 0; c < cells.length; c++) {
            cells[c] = ofBay[grid.bayOfCell(c)];
        }
        return new Mixing(cells, quietFriction, settings.air().kinematicViscosityM2PerS());
    }

    /** k of a bay at the end of a window, m²/s². */
    double k(int w, int bay) {
        return kOfBay.get(w)[bay];
    }
}
