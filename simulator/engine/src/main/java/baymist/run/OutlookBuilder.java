package baymist.run;

import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.coverage.CoverageAssessor;
import baymist.coverage.SeamCoverage;
import baymist.film.FilmFormulas;
import baymist.film.FilmState;
import baymist.fog.FogStepper;
import baymist.scene.PassSpec;
import baymist.scene.ProductSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/** Works out the outlook at the end of a job. */
final class OutlookBuilder {
    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final SizeBins bins;
    private final FilmKeeper film;
    private final FogStepper fog;
    private final Beyond beyond;

    OutlookBuilder(
            Scene scene, Cavity cavity, VoxelGrid grid, SizeBins bins, FilmKeeper film, FogStepper fog, Beyond beyond) {
        this.scene = scene;
        this.cavity = cavity;
        this.grid = grid;
        this.bins = bins;
        this.film = film;
        this.fog = fog;
        this.beyond = beyond;
    }

    Outlook build(CoagulationWatch watch, SeamCoverage seams) {
        FilmState later = film.after(Outlook.LATER_S, OpenFractions.after(cavity.openings()));
        double[] build = film.buildM();
        Dots.Shares dots = new Dots(scene, grid, bins, fog.depositedByBinKg()).ofAll(build);
        return new Outlook(
                List.of(age("at close-up", 0, film.state()), age("after 24 h", Outlook.LATER_S, later)),
                later.drippedKg() - film.state().drippedKg(),
                dots.closed(),
                dots.wetted(),
                seams,
                seamDepthM(seams),
                wands(),
                neededKg(),
                watch.worst(),
                releases(),
                film.escapedKg(),
                fog.wallForceOverThrust(scene.ambient().densityKgPerM3()),
                consequences(later));
    }

    private Consequences consequences(FilmState later) {
        List<Consequences.Oil> oil = OilLeft.of(grid, later, scene.targets().excessM());
        Consequences.Oil all = oil.get(oil.size() - 1);
        return new Consequences(
                film.arrivals(),
                oil,
                OilLeft.hinge(scene.hinge(), all, scene.gravity().times(scene.gravityMPerS2())));
    }

    private Outlook.FilmAge age(String when, double afterS, FilmState state) {
        double[] wet = new double[state.count()];
        double[] dry = new double[state.count()];
        for (int s = 0; s < wet.length; s++) {
            wet[s] = state.wetBuildM(s);
            dry[s] = state.dryBuildM(s);
        }
        return new Outlook.FilmAge(
                when,
                afterS,
                CoverageAssessor.total(when, grid, wet, scene.targets()),
                CoverageAssessor.total(when, grid, dry, scene.targets()));
    }

    /** Washburn's way into the lap within a day, but no more than the film beside it fills. */
    private double seamDepthM(SeamCoverage seams) {
        ProductSpec p = scene.product();
        double free = FilmFormulas.slotCreepM(
                Outlook.LAP_GAP_M, 0, Outlook.LATER_S, p.surfaceTensionNPerM(), p.viscosityPaS());
        return Math.min(free, seams.filmNearM2() / Outlook.LAP_GAP_M);
    }

    private List<Outlook.WandFill> wands() {
        List<Outlook.WandFill> fills = new ArrayList<>();
        for (String name :
                scene.passes().stream().map(PassSpec::wand).distinct().toList()) {
            WandSpec wand = scene.wands().get(name);
            if (wand != null) {
                fills.add(new Outlook.WandFill(name, Math.PI / 4 * wand.boreM() * wand.boreM() * wand.lengthM()));
            }
        }
        return fills;
    }

    private double neededKg() {
        double area = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            area += grid.surfels().isStructure(s) ? grid.surfels().areaM2()[s] : 0;
        }
        return FilmFormulas.productKg(
                scene.product().densityKgPerM3(), area, scene.targets().buildM());
    }

    private List<Outlook.Release> releases() {
        List<Outlook.Release> releases = new ArrayList<>();
        for (int o = 0; o < cavity.openings().size(); o++) {
            double kg = fog.oversprayKg(o);
            double air = fog.ventedAirM3(o);
            if (!beyond.leadsBeyond(o) && (kg > 0 || air > 0)) {
                releases.add(new Outlook.Release(cavity.openings().get(o).name(), kg, air));
            }
        }
        return releases;
    }
}
