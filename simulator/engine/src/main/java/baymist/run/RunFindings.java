package baymist.run;

import baymist.access.PassPlan;
import baymist.cavity.Cavity;
import baymist.fog.FogStepper;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a run has to say besides its numbers: each remark with the figure that caused it. */
final class RunFindings {
    /** A tenth of the lower flammable limit of oil mist, about 50 g/m³ (IACS figure): 29 CFR 1910.146 calls it hazardous. */
    static final double TENTH_OF_FLAMMABLE_KG_PER_M3 = 5e-3;

    /** Lower flammable limit of oil mist, kg/m³ (IACS 50 mg/L). */
    static final double FLAMMABLE_KG_PER_M3 = 50e-3;

    private final List<Finding> findings = new ArrayList<>();
    private final SourcePlace place;

    private RunFindings(Scene scene) {
        this.place = SourcePlace.of(scene.file());
    }

    /** Remarks on the geometry alone. */
    static List<Finding> geometry(Scene scene, Cavity cavity, VoxelGrid grid) {
        RunFindings f = new RunFindings(scene);
        f.addGeometry(cavity, grid);
        return f.findings;
    }

    static List<Finding> of(
            Scene scene,
            Cavity cavity,
            VoxelGrid grid,
            PassPlan plan,
            MassLedger ledger,
            FilmKeeper film,
            FogStepper fog,
            double peakAirborneKg,
            Airing airing) {
        RunFindings f = new RunFindings(scene);
        f.findings.addAll(plan.findings());
        f.addGeometry(cavity, grid);
        f.addMist(grid, fog, peakAirborneKg);
        f.addPressure(scene, airing);
        f.addJets(film, ledger);
        return f.findings;
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
        double area = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            area += grid.surfels().closure()[s] < 0 ? grid.surfels().areaM2()[s] : 0;
        }
        double share = grid.unresolvedAreaM2() / (area + grid.unresolvedAreaM2());
        if (share > 0.02) {
            add(
                    "GEO-003",
                    Severity.WARNING,
                    String.format(
                            Locale.ROOT,
                            "%.1f %% of the inside surface is finer than the voxels and not judged; a smaller voxel would show it",
                            100 * share));
        }
    }

    private void addMist(VoxelGrid grid, FogStepper fog, double peakAirborneKg) {
        double peak = 0;
        for (double c : fog.peakConcentrationKgPerM3()) {
            peak = Math.max(peak, c);
        }
        double mean = peakAirborneKg / grid.totalVolumeM3();
        if (mean > FLAMMABLE_KG_PER_M3) {
            add(
                    "MIST-002",
                    Severity.WARNING,
                    String.format(
                            Locale.ROOT,
                            "the mist inside reaches %.0f g/m³ on average (%.0f g/m³ at its densest), above the lower flammable limit of oil mist (about 50 g/m³):"
                                    + " no ignition source in or near the structure, bond wand and structure",
                            1e3 * mean,
                            1e3 * peak));
        } else if (mean > TENTH_OF_FLAMMABLE_KG_PER_M3) {
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
