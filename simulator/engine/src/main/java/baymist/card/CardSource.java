package baymist.card;

import baymist.access.Insertion;
import baymist.access.PassPlan;
import baymist.access.Stations;
import baymist.cavity.Cavity;
import baymist.coverage.Coverage;
import baymist.problem.Finding;
import baymist.run.Approach;
import baymist.run.Confidence;
import baymist.run.RunRecord;
import baymist.run.RunResult;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a card is made from: a scene and what its run found.
 *
 * @param insertions way of the wand of each pass, in the scene's order
 * @param plan the passes in time
 * @param filmM wet build on each surfel, m, [surfels]
 * @param directKg product that jets threw on each surfel, kg, [surfels]
 * @param figures sums of the run
 * @param record version, hashes and settings of the run
 * @param findings what the run had to remark
 */
public record CardSource(
        Scene scene,
        Cavity cavity,
        VoxelGrid grid,
        List<Insertion> insertions,
        PassPlan plan,
        Coverage coverage,
        double[] filmM,
        double[] directKg,
        Figures figures,
        RunRecord record,
        List<Finding> findings) {
    public CardSource {
        insertions = List.copyOf(insertions);
        findings = List.copyOf(findings);
    }

    /**
     * Sums of a run.
     *
     * @param sprayedKg product that left the tip
     * @param oversprayKg fog and spray that left through openings
     * @param drippedKg what dripped and drained until close-up
     * @param drippedLaterKg what does so within a day after it
     * @param peakFogKgPerM3 highest mean concentration of fog in the cavity
     * @param closedShare share of area with a closed film, 0..1
     * @param fogOutKg fog that left by opening, kg, openings that let any out
     * @param oilKg oil left a day after close-up
     * @param hingeArmM its centre aft of the hinge line, m; NaN without a hinge line
     * @param hingeMomentNm its moment about the hinge line, N·m; NaN without one
     */
    public record Figures(
            double sprayedKg,
            double oversprayKg,
            double drippedKg,
            double drippedLaterKg,
            double peakFogKgPerM3,
            double closedShare,
            Map<String, Double> fogOutKg,
            double oilKg,
            double hingeArmM,
            double hingeMomentNm,
            Confidence confidence) {
        public Figures {
            fogOutKg = Map.copyOf(fogOutKg);
        }
    }

    /** The source of a run just made. */
    public static CardSource of(RunResult r) {
        List<Insertion> ways = Approach.ways(r.scene(), r.cavity()).insertions();
        var outlook = r.outlook();
        Map<String, Double> fog = new TreeMap<>();
        outlook.releases().forEach(x -> fog.merge(x.opening(), x.fogKg(), Double::sum));
        var oil = outlook.consequences().oil();
        var hinge = outlook.consequences().hinge();
        double volume = r.grid().totalVolumeM3();
        double peak =
                r.history().stream().mapToDouble(p -> p.airborneKg()).max().orElse(0);
        Figures figures = new Figures(
                r.ledger().sprayedKg() - startKg(r),
                r.ledger().oversprayKg(),
                r.ledger().drippedKg(),
                outlook.drippedLaterKg(),
                volume > 0 ? peak / volume : 0,
                outlook.closedShare(),
                fog,
                oil.isEmpty() ? 0 : oil.get(oil.size() - 1).massKg(),
                hinge == null ? Double.NaN : hinge.armM(),
                hinge == null ? Double.NaN : hinge.momentNm(),
                r.confidence());
        return new CardSource(
                r.scene(),
                r.cavity(),
                r.grid(),
                ways,
                Stations.plan(r.scene(), ways),
                r.coverage(),
                r.filmM(),
                r.directKg(),
                figures,
                r.record(),
                r.findings());
    }

    /** Fog that the scene starts with, kg: nobody has to bring it. */
    private static double startKg(RunResult r) {
        InitialFog fog = r.scene().initialFog();
        if (fog == null) {
            return 0;
        }
        return fog.pointM() != null
                ? fog.pointMassKg()
                : fog.concentrationKgPerM3() * r.grid().totalVolumeM3();
    }
}
