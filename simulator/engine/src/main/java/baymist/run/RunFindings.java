package baymist.run;

import baymist.access.PassPlan;
import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.coverage.ItemAssessor;
import baymist.fog.Exposure;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.voxel.Bay;
import baymist.voxel.FinerVoxels;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a run has to say besides its numbers: each remark with the figure that caused it. */
final class RunFindings {
    /** Share of unresolved surface that is told, and that is a warning (ASSUMED: what a reader would miss). */
    private static final double SHARE_TOLD = 2e-3;

    private static final double SHARE_WARNED = 0.02;

    /** Voxels across a bay below which its figures are called a draft (ASSUMED). */
    private static final double FEW_VOXELS = 4;

    private final List<Finding> findings = new ArrayList<>();
    private final SourcePlace place;

    private RunFindings(Scene scene) {
        this.place = SourcePlace.of(scene.file());
    }

    /** Remarks on the geometry alone. */
    static List<Finding> geometry(Scene scene, Cavity cavity, VoxelGrid grid) {
        RunFindings f = new RunFindings(scene);
        f.findings.addAll(sheets(scene, cavity, grid));
        f.findings.addAll(ItemFindings.of(
                ItemAssessor.assess(
                        scene, cavity, grid, new double[grid.surfels().count()]),
                f.place));
        return f.findings;
    }

    /** Remarks on sheets, openings and voxels, protected items left out. */
    static List<Finding> sheets(Scene scene, Cavity cavity, VoxelGrid grid) {
        RunFindings f = new RunFindings(scene);
        f.addGeometry(cavity, grid);
        return f.findings;
    }

    static List<Finding> of(
            Scene scene,
            Cavity cavity,
            Ground ground,
            PassPlan plan,
            MassLedger ledger,
            FilmKeeper film,
            FogStepper fog,
            double peakAirborneKg,
            Airing airing) {
        RunFindings f = new RunFindings(scene);
        f.findings.addAll(plan.findings());
        VoxelGrid grid = ground.grid();
        f.addGeometry(cavity, ground);
        f.findings.addAll(ItemFindings.of(ItemAssessor.assess(scene, cavity, grid, film.buildM()), f.place));
        f.addMist(grid, fog, peakAirborneKg);
        f.addPressure(scene, airing);
        f.addJets(film, ledger);
        return f.findings;
    }

    /** Remarks on the whole, its voxels at hand or not. */
    private void addGeometry(Cavity cavity, Ground ground) {
        List<Finding> known = ground.geometry();
        if (known == null) {
            addGeometry(cavity, ground.grid());
        } else {
            findings.addAll(known);
        }
    }

    private void addGeometry(Cavity cavity, VoxelGrid grid) {
        for (String remark : cavity.remarks()) {
            add("GEO-001", Severity.NOTE, remark);
        }
        grid.leaks()
                .forEach(l -> add(
                        "GEO-002",
                        Severity.WARNING,
                        String.format(
                                Locale.ROOT,
                                "outside air gets in at (%.0f, %.0f, %.0f) mm: %s",
                                1e3 * l.positionM().x(),
                                1e3 * l.positionM().y(),
                                1e3 * l.positionM().z(),
                                l.where())));
        addShallowBays(grid);
        double area = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            area += grid.surfels().isStructure(s) ? grid.surfels().areaM2()[s] : 0;
        }
        List<UnresolvedArea> hiddenPlaces = grid.unresolved().stream()
                .filter(u -> cavity.parts().get(u.part()).kind() != PartKind.PROTECTED)
                .toList();
        double hidden =
                hiddenPlaces.stream().mapToDouble(UnresolvedArea::areaM2).sum();
        double share = hidden / (area + hidden);
        if (share > SHARE_TOLD) {
            add(
                    "GEO-003",
                    share > SHARE_WARNED ? Severity.WARNING : Severity.NOTE,
                    String.format(
                            Locale.ROOT,
                            "%.1f %% of the inside surface is finer than the voxels and not judged, most of it on %s; %s",
                            100 * share,
                            mostHidden(cavity, hiddenPlaces),
                            finer(grid)));
        }
    }

    /** Bays that only a few voxels span: what is computed in them is a draft. */
    private void addShallowBays(VoxelGrid grid) {
        double[] size = {grid.sizeM().x(), grid.sizeM().y(), grid.sizeM().z()};
        Bay least = null;
        double fewest = FEW_VOXELS;
        int axis = 0;
        int shallow = 0;
        for (Bay bay : grid.bays()) {
            Vec3 extent = bay.bounds().max().minus(bay.bounds().min());
            double[] across = {extent.x() / size[0], extent.y() / size[1], extent.z() / size[2]};
            int thin = across[0] <= Math.min(across[1], across[2]) ? 0 : across[1] <= across[2] ? 1 : 2;
            shallow += across[thin] < FEW_VOXELS ? 1 : 0;
            if (across[thin] < fewest) {
                least = bay;
                fewest = across[thin];
                axis = thin;
            }
        }
        if (least != null) {
            add(
                    "GEO-005",
                    Severity.WARNING,
                    String.format(
                            Locale.ROOT,
                            "%s is only %.1f voxels across along %s%s: take the figures as a draft; `voxel` of %.2g mm along %s would make it %.0f",
                            least.name(),
                            fewest,
                            "xyz".charAt(axis),
                            shallow > 1
                                    ? " (and " + (shallow - 1) + " more have less than " + (int) FEW_VOXELS + ")"
                                    : "",
                            1e3 * size[axis] * fewest / FEW_VOXELS,
                            "xyz".charAt(axis),
                            FEW_VOXELS));
        }
    }

    private static String mostHidden(Cavity cavity, List<UnresolvedArea> places) {
        UnresolvedArea most = places.get(0);
        double[] byPart = new double[cavity.parts().size()];
        for (UnresolvedArea u : places) {
            byPart[u.part()] += u.areaM2();
            most = byPart[u.part()] > byPart[most.part()] ? u : most;
        }
        return String.format(
                Locale.ROOT,
                "'%s', as at (%.0f, %.0f, %.0f) mm",
                cavity.parts().get(most.part()).name(),
                1e3 * most.centroidM().x(),
                1e3 * most.centroidM().y(),
                1e3 * most.centroidM().z());
    }

    private static String finer(VoxelGrid grid) {
        FinerVoxels finer = FinerVoxels.of(grid, 0.9);
        return finer.share() <= 0
                ? "sheets that lie on each other hide it at any voxel size"
                : String.format(
                        Locale.ROOT,
                        "voxels of %.3g x %.3g x %.3g mm would show %.0f %% of it",
                        1e3 * finer.size().xM(),
                        1e3 * finer.size().yM(),
                        1e3 * finer.size().zM(),
                        100 * finer.share());
    }

    private void addMist(VoxelGrid grid, FogStepper fog, double peakAirborneKg) {
        double peak = 0;
        for (double c : fog.peakConcentrationKgPerM3()) {
            peak = Math.max(peak, c);
        }
        double mean = peakAirborneKg / grid.totalVolumeM3();
        if (mean > Exposure.FLAMMABLE_KG_PER_M3) {
            add(
                    "MIST-002",
                    Severity.WARNING,
                    String.format(
                            Locale.ROOT,
                            "the mist inside reaches %.0f g/m³ on average (%.0f g/m³ at its densest), above the lower flammable limit of oil mist (about 50 g/m³):"
                                    + " no ignition source in or near the structure, bond wand and structure",
                            1e3 * mean,
                            1e3 * peak));
        } else if (mean > Exposure.TENTH_OF_FLAMMABLE_KG_PER_M3) {
            add(
                    "MIST-001",
                    Severity.WARNING,
                    String.format(
                            Locale.ROOT,
                            "the mist inside reaches %.1f g/m³ on average (%.0f g/m³ at its densest), above a tenth of its lower flammable"
                                    + " limit (about 5 g/m³): treat it as a flammable atmosphere",
                            1e3 * mean,
                            1e3 * peak));
        }
    }

    private void addPressure(Scene scene, Airing airing) {
        if (airing.peakGaugePa() > 0.1 * scene.air().pressureLimitPa()) {
            add(
                    "AIR-001",
                    Severity.WARNING,
                    String.format(
                            Locale.ROOT,
                            "pressure in the cavity rises to %.2f kPa gauge at %.1f s (limit %.1f kPa): give the air a way out",
                            airing.peakGaugePa() / 1e3,
                            airing.peakTimeS(),
                            scene.air().pressureLimitPa() / 1e3));
        }
    }

    private void addJets(FilmKeeper film, MassLedger ledger) {
        if (film.beyondFreeJetKg() > 0) {
            add(
                    "SPR-001",
                    Severity.NOTE,
                    String.format(
                            Locale.ROOT,
                            "%.0f %% of the spray flies on beyond where a free jet's law holds (space too narrow); a confined-jet law carries it on",
                            100 * film.beyondFreeJetKg() / ledger.sprayedKg()));
        }
    }

    private void add(String id, Severity severity, String text) {
        findings.add(new Finding(id, severity, place, text));
    }
}
