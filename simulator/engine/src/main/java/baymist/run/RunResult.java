package baymist.run;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.cavity.Cavity;
import baymist.coverage.Coverage;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything that a run found. Read-only: the arrays belong to the result and must not be written to.
 *
 * @param filmM wet film build on each surfel, m, [surfels]
 * @param directKg product that arrived straight from the jets on each surfel, kg, [surfels]
 * @param fogKg product that arrived as fog on each surfel, kg, [surfels]
 * @param findings warnings and notes about the scene, the geometry and the result
 * @param history the job in time, ascending
 * @param insertions one for each wand and entry that the passes use
 * @param stations tip poses of all passes, ascending in time
 * @param confidence how far the shares of area could be off by droplet sizes and by ray sampling
 * @param gates numbers held against limits, met or not
 * @param outlook what becomes of film and fog, and what people near by breathe
 * @param convergence the coverage at other voxel sizes, or null where none were tried
 */
public record RunResult(
        Scene scene,
        Cavity cavity,
        VoxelGrid grid,
        MassLedger ledger,
        Coverage coverage,
        double[] filmM,
        double[] directKg,
        double[] fogKg,
        List<Finding> findings,
        RunRecord record,
        List<TimePoint> history,
        List<Insertion> insertions,
        List<Station> stations,
        Confidence confidence,
        List<Gate> gates,
        Outlook outlook,
        @Nullable CoverageConvergence convergence) {
    public RunResult {
        findings = List.copyOf(findings);
        history = List.copyOf(history);
        insertions = List.copyOf(insertions);
        stations = List.copyOf(stations);
        gates = List.copyOf(gates);
    }

    /** The same result with the study of its voxel size and what that has to say. */
    RunResult with(CoverageConvergence study, List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return new RunResult(
                scene,
                cavity,
                grid,
                ledger,
                coverage,
                filmM,
                directKg,
                fogKg,
                all,
                record,
                history,
                insertions,
                stations,
                confidence,
                gates,
                outlook,
                study);
    }
}
