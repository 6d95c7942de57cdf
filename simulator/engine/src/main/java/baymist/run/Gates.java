package baymist.run;

import baymist.fog.Exposure;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.DropletSpec;
import baymist.scene.Scene;
import baymist.spray.Droplet;
import baymist.spray.SizeBins;
import baymist.spray.WallShear;
import baymist.voxel.Bay;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The numbers of a run that are held against limits, and what is said where one is exceeded. */
final class Gates {
    /** Share of the reached area in dots from which it is told (ASSUMED). */
    static final double DOTS_TOLD = 0.05;

    /** Share of the direct film above the splash limit from which it is told (ASSUMED). */
    static final double SPLASH_TOLD = 0.05;

    /** Slump number from which the fog's own weight moves it faster than its drops fall. */
    static final double SLUMP = 1;

    private final List<Gate> gates = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private final SourcePlace place;

    private Gates(Scene scene) {
        place = SourcePlace.of(scene.file());
    }

    /** Fog at the moment when most of it was in the air. */
    record Peak(double airborneKg, double settlingMPerS) {
        static final Peak NONE = new Peak(0, 0);

        /** The larger of this and the present fog. */
        Peak with(FogStepper fog, SizeBins bins, Scene scene) {
            double kg = fog.airborneKg();
            if (!(kg > airborneKg)) {
                return this;
            }
            double flux = 0;
            for (int b = 0; b < fog.bins(); b++) {
                flux += fog.airborneKg(b)
                        * Droplet.settlingSpeedMPerS(
                                bins.diameterM()[b],
                                scene.product().densityKgPerM3(),
                                scene.ambient(),
                                scene.gravityMPerS2());
            }
            return new Peak(kg, flux / kg);
        }
    }

    /** Everything that the gates look at. */
    record Sight(
            Scene scene,
            VoxelGrid grid,
            FilmKeeper film,
            FogStepper fog,
            double[] build,
            double[] fogByBinKg,
            SizeBins bins,
            Peak peak,
            double peakGaugePa,
            CourantWatch courant,
            boolean resolvedAir) {}

    static Gates of(Sight sight) {
        Gates g = new Gates(sight.scene());
        g.mist(sight);
        g.pressure(sight);
        g.jets(sight);
        g.film(sight);
        g.slump(sight);
        g.courant(sight);
        return g;
    }

    List<Gate> gates() {
        return List.copyOf(gates);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    private void mist(Sight s) {
        double mean = s.peak().airborneKg() / s.grid().totalVolumeM3();
        gate(
                "mean mist against a tenth of the flammable limit",
                mean,
                Exposure.TENTH_OF_FLAMMABLE_KG_PER_M3,
                "kg/m3",
                "MIST-001");
        gate("mean mist against the flammable limit", mean, Exposure.FLAMMABLE_KG_PER_M3, "kg/m3", "MIST-002");
    }

    private void pressure(Sight s) {
        gate(
                "pressure in the cavity against a tenth of its limit",
                s.peakGaugePa(),
                0.1 * s.scene().air().pressureLimitPa(),
                "Pa",
                "AIR-001");
    }

    private void jets(Sight s) {
        double sprayed = s.film().sprayedKg();
        gate(
                "spray beyond the free jet's law",
                sprayed > 0 ? s.film().beyondFreeJetKg() / sprayed : 0,
                0,
                "",
                "SPR-001");
        DropletSpec stated = s.scene().supply().droplets();
        DropletSpec inner = stated instanceof DropletSpec.Adjusted a ? a.sizes() : stated;
        List<Finding> nozzles = Nozzles.findings(s.scene());
        if (inner instanceof DropletSpec.Correlation) {
            boolean outside = nozzles.stream().anyMatch(f -> f.id().equals("SPR-004"));
            gate("droplet correlation beyond its range", outside ? 1 : 0, 0, "", "SPR-004");
        }
        findings.addAll(nozzles);
        double splash = s.film().trust().splashShare();
        if (gate("direct film above the splash limit", splash, SPLASH_TOLD, "", "SPR-005")
                .exceeded()) {
            tell(
                    "SPR-005",
                    Severity.NOTE,
                    "%.0f %% of the direct film strikes above the splash limit (K > 57.7); it is counted as staying, but up to about"
                            + " half of that may be thrown off again as finer fog: keep the tip farther off, or spray finer",
                    100 * splash);
        }
    }

    private void film(Sight s) {
        double dotted = new Dots(s.scene(), s.grid(), s.bins(), s.fogByBinKg()).inReached(s.build());
        if (gate("reached area in dots", dotted, DOTS_TOLD, "", "FILM-010").exceeded()) {
            tell(
                    "FILM-010",
                    Severity.NOTE,
                    "on %.0f %% of the reached area the film is a pattern of dots that leaves more than a tenth of the sheet bare between"
                            + " them: haze, not film",
                    100 * dotted);
        }
        shear(s, s.film().trust());
    }

    private void shear(Sight s, FilmTrust trust) {
        SurfelSet surfels = s.grid().surfels();
        double worst = 0;
        int at = -1;
        for (int i = 0; i < surfels.count(); i++) {
            if (surfels.isStructure(i)) {
                double most = WallShear.mostM(
                        trust.shearTimePaSPerM(i), s.scene().product().viscosityPaS());
                double over = s.build()[i] / most;
                at = over > worst ? i : at;
                worst = Math.max(worst, over);
            }
        }
        if (gate("film against what the jets' shear leaves", worst, 1, "", "SPR-006")
                .exceeded()) {
            tell(
                    "SPR-006",
                    Severity.NOTE,
                    "where a jet strikes squarely its air wipes the film: at (%.0f, %.0f, %.0f) mm about %.0f um can stay of the %.0f um"
                            + " that the result shows; what is wiped off lies around the spot",
                    1e3 * surfels.centreX()[at],
                    1e3 * surfels.centreY()[at],
                    1e3 * surfels.centreZ()[at],
                    1e6 * s.build()[at] / worst,
                    1e6 * s.build()[at]);
        }
    }

    /** Speed of the fog's own current over the settling speed of its drops: {@code √(g' H)/vs}, g' by the mean contrast. */
    private void slump(Sight s) {
        double mean = s.peak().airborneKg() / s.grid().totalVolumeM3();
        double density = s.scene().ambient().densityKgPerM3();
        double reduced = s.scene().gravityMPerS2()
                * mean
                * (1 - density / s.scene().product().densityKgPerM3())
                / density;
        double speed = Math.sqrt(Math.max(0, reduced) * tallestM(s));
        double number = s.peak().settlingMPerS() > 0 ? speed / s.peak().settlingMPerS() : 0;
        if (gate("slump number of the fog", number, SLUMP, "", "FOG-010").exceeded() && !s.resolvedAir()) {
            tell(
                    "FOG-010",
                    Severity.NOTE,
                    "the fog weighs enough to run of itself: %.2f m/s where a foggy bay meets a clear one, %.1f times the settling speed of"
                            + " its drops (slump number); it runs to low bays and low holes. Projected air does not see this weight",
                    speed,
                    number);
        }
    }

    /** Air that leaves a cell in the fog's smallest explicit step over what it holds. */
    private void courant(Sight s) {
        double number = s.courant().number(s.fog().stats().smallestStepS());
        if (gate("Courant number of the fog's smallest step", number, 1, "", "NUM-001")
                .exceeded()) {
            tell(
                    "NUM-001",
                    Severity.WARNING,
                    "in its smallest step the fog is carried across %.2f of a cell (Courant number; 1 at most): its spread there is not to be"
                            + " trusted",
                    number);
        }
    }

    private static double tallestM(Sight s) {
        Vec3 g = s.scene().gravity();
        double tallest = 0;
        for (Bay bay : s.grid().bays()) {
            Vec3 size = bay.bounds().size();
            tallest = Math.max(
                    tallest, Math.abs(g.x()) * size.x() + Math.abs(g.y()) * size.y() + Math.abs(g.z()) * size.z());
        }
        return tallest;
    }

    private Gate gate(String name, double value, double limit, String unit, String finding) {
        Gate gate = new Gate(name, value, limit, unit, finding);
        gates.add(gate);
        return gate;
    }

    private void tell(String id, Severity severity, String format, Object... values) {
        findings.add(new Finding(id, severity, place, String.format(Locale.ROOT, format, values)));
    }
}
