package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.run.RunResult;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FogSnapshotTest {
    private static AirField air(VoxelGrid g, double[] faceFlux) {
        int cells = g.cellCount();
        return new AirField(
                faceFlux,
                new double[g.faces().vents()],
                new double[cells],
                0,
                new double[cells],
                new double[g.surfels().count()],
                new double[0],
                0);
    }

    /** Plug flow: through each face speed times area; the velocity in cells without a sheet on either side is that speed. */
    @Test
    void plugFlowHasItsSpeedInEveryCellBetweenTwoOthers() {
        VoxelGrid g = QuickRun.get().result().grid();
        FaceSet f = g.faces();
        double speed = 0.37;
        double[] flux = new double[f.count()];
        for (int i = 0; i < flux.length; i++) {
            flux[i] = f.axis()[i] == 1 ? -speed * f.areaM2()[i] : 0;
        }
        double[] v = FogSnapshot.velocity(g, air(g, flux));
        int inner = 0;
        for (int c = 0; c < g.cellCount(); c++) {
            boolean between = g.neighbour(c, 2) >= 0 && g.neighbour(c, 3) >= 0;
            if (between) {
                assertEquals(-speed, v[3 * c + 1], 1e-12);
            }
            assertEquals(0, v[3 * c], 0);
            assertEquals(0, v[3 * c + 2], 0);
            inner += between ? 1 : 0;
        }
        assertTrue(inner > 500, inner + " cells");
    }

    @Test
    void theEndOfEachPassAndOfTheJobIsKept() {
        RunResult r = QuickRun.get().result();
        List<FogSnapshot> kept = QuickRun.get().watch().snapshots();
        List<String> words = kept.stream().map(FogSnapshot::words).toList();
        assertEquals(
                List.of("end of pass \"trailing edge, far half\"", "end of pass \"near half\"", "end of the job"),
                words);
        List<Double> ends = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {
            ends.add(VtkFiles.stations(r, pass).stream()
                    .mapToDouble(s -> s.startS() + s.durationS())
                    .max()
                    .orElseThrow());
        }
        ends.add(r.history().get(r.history().size() - 1).timeS());
        for (int i = 0; i < 3; i++) {
            assertEquals(ends.get(i), kept.get(i).timeS(), 1e-9);
        }
    }

    /** What hits and settles is what the film is made of: nothing but masks and what dripped out is missing from it. */
    @Test
    void whatArrivedIsWhatTheFilmHolds() {
        RunResult r = QuickRun.get().result();
        double arrived = 0;
        for (double kg : QuickRun.get().watch().arrivedKg()) {
            arrived += kg;
        }
        double kept = r.ledger().filmKg() + r.ledger().maskedKg() + r.ledger().drippedKg();
        assertEquals(kept, arrived, 1e-9 * kept);
    }

    @Test
    void filmThatRanInIsFoundWhereLessArrivedThanLiesThere() {
        RunResult r = QuickRun.get().result();
        double[] arrived = new double[r.filmM().length];
        for (int s = 0; s < arrived.length; s++) {
            arrived[s] = (s % 2 == 0 ? 0.25 : 2) * (r.directKg()[s] + r.fogKg()[s]);
        }
        Origins o = Origins.of(r, arrived);
        for (int s = 0; s < arrived.length; s++) {
            if (r.filmM()[s] > 0) {
                assertEquals(s % 2 == 0 ? 0.75 : 0, o.ranIn()[s], 1e-12);
                assertEquals(r.directKg()[s] / (r.directKg()[s] + r.fogKg()[s]), o.jets()[s], 1e-9);
                assertEquals(1, o.jets()[s] + o.fog()[s], 1e-9);
            }
        }
    }
}
