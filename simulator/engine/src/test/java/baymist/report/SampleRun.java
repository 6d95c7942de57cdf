package baymist.report;

import baymist.access.Insertion;
import baymist.access.ReachShare;
import baymist.access.SagResult;
import baymist.access.Station;
import baymist.access.Surroundings;
import baymist.access.TipPose;
import baymist.access.WandPose;
import baymist.access.WandReach;
import baymist.access.WandStop;
import baymist.cavity.Opening;
import baymist.cavity.PartKind;
import baymist.coverage.Coverage;
import baymist.coverage.CoverageAssessor;
import baymist.coverage.LatticeCavity;
import baymist.coverage.SeamMap;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.run.CheckResult;
import baymist.run.Confidence;
import baymist.run.CoverageConvergence;
import baymist.run.Outlook;
import baymist.run.ReachLine;
import baymist.run.ReachResult;
import baymist.run.RunRecord;
import baymist.run.RunResult;
import baymist.run.TimePoint;
import baymist.run.VoxelStudy;
import baymist.scene.CavitySpec;
import baymist.scene.DropletSpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import baymist.scene.TargetSpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Made-up results on hand-made structures, to look at and to test what is made of a result. The film is drawn, not
 * computed: none of its numbers mean anything.
 */
public final class SampleRun {
    private static final double CHORD = 0.3;
    private static final double SPAN = 1.6;
    private static final double DEPTH = 0.09;

    private SampleRun() {}

    /** A control surface of four bays with lightening holes, a port in the root rib and one pass of a wand. */
    public static RunResult wedge() {
        return Made.WEDGE;
    }

    /** Results are immutable: each is made once. */
    private static final class Made {
        private static final RunResult WEDGE = makeWedge(Vec3.ZERO);
        private static final RunResult TANK = makeTank();
    }

    /** The same structure where the film is drawn somewhere else. */
    public static RunResult wedgeLater() {
        return makeWedge(new Vec3(0.02, 0.15, 0));
    }

    private static RunResult makeWedge(Vec3 shift) {
        LatticeCavity lattice = new LatticeCavity(30, 80, 9, new Vec3(0.01, 0.02, 0.01))
                .wedge()
                .blade(0, 17, "upper stringer 1", (j, k) -> k >= 7)
                .bent(p -> new Vec3(p.x(), p.y(), (p.z() - DEPTH / 2) * (1 - 0.97 * p.x() / CHORD)));
        int ribs = 3;
        for (int r = 0; r < ribs; r++) {
            lattice.wall(
                    1,
                    20 * (r + 1),
                    "rib " + (r + 2),
                    PartKind.RIB,
                    (i, k) -> (Math.hypot(i - 8, k - 4) < 2.5) || i > 27);
            lattice.opening(hole(lattice, "lightening hole " + (r + 2), "rib " + (r + 2), 0.4 * (r + 1)));
        }
        lattice.opening(port(lattice));
        return result(
                lattice.build(), "Control surface, one pass of a one-sided tip", "scenes/sample/surface.yaml", shift);
    }

    /** A plain tank, hardly wetted. */
    public static RunResult tank() {
        return Made.TANK;
    }

    private static RunResult makeTank() {
        return result(
                new LatticeCavity(20, 24, 16, new Vec3(0.02, 0.02, 0.02)).tank().build(),
                "Tank",
                "scenes/sample/tank.yaml");
    }

    /** The tank with a made-up study of its voxel size whose shares spread so far. */
    public static RunResult studied(double spread) {
        List<CoverageConvergence.Grid> grids = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double h = 0.02 * Math.pow(1.3, i - 1);
            grids.add(new CoverageConvergence.Grid(
                    new Vec3(h, h, h), 8000 >> i, 0.7 + spread * (4 * i - i * i) / 4, 0.5, 1e-5));
        }
        return VoxelStudy.studied(tank(), CoverageConvergence.of(grids));
    }

    /** The same structure as {@link #wedge}, before spraying. */
    public static CheckResult check() {
        RunResult r = wedge();
        return new CheckResult(r.scene(), r.cavity(), r.grid(), r.insertions(), r.findings());
    }

    /** Two wands in the root port of the same structure: one goes in and sags, one is too thick. */
    public static ReachResult reach() {
        RunResult r = wedge();
        EntrySpec entry = new EntrySpec(
                "root", "root port", null, SourcePlace.of(r.scene().file()));
        WandSpec thin = new WandSpec("thin wand", 0.9, 0.006, 0.003, new TipSpec("ring", List.of()));
        WandSpec thick = new WandSpec("thick wand", 0.9, 0.03, 0.003, new TipSpec("ring", List.of()));
        Vec3 from = new Vec3(0.085, 0, 0);
        Vec3 tip = new Vec3(0.085, 0.8, 0);
        WandPose pose = new WandPose(List.of(from, tip), 0.003, 0.8);
        WandStop rib = new WandStop("rib 3", tip, 0, "its nose meets rib 3");
        WandStop small = new WandStop("rib 1", from, -0.005, "'root port' is too small: it lacks 10.0 mm across");
        WandReach in = new WandReach("root", "thin wand", true, 0.001, 0.8, rib, List.of(pose), 0.002, true);
        WandReach out = new WandReach("root", "thick wand", false, 0, 0, small, List.of(), 0.002, true);
        SagResult sag = new SagResult(
                0.8,
                tip,
                tip.plus(0.012, new Vec3(0, 0, -1)),
                new Vec3(0, 1, 0),
                0.012,
                Math.PI,
                List.of(from, tip.plus(0.012, new Vec3(0, 0, -1))),
                List.of(new SagResult.Rest("edge of 'lightening hole 2'", 0.4, new Vec3(0.085, 0.4, -0.025), 0.3)),
                220e6,
                0,
                205e6,
                new SagResult.Catch("edge of 'lightening hole 3'", 0.8, 0.004));
        List<Vec3> places = List.of(tip, new Vec3(0.085, 0.4, 0), new Vec3(0.085, 0.1, 0));
        ReachShare share = new ReachShare(0.75, 0.8);
        List<ReachLine> lines = List.of(
                new ReachLine(entry, thin, 0, false, in, sag, places, share, List.of("bay 1", "bay 2")),
                new ReachLine(entry, thick, 0, false, out, null, List.of(), ReachShare.NONE, List.of()));
        boolean[] open = new boolean[r.cavity().openings().size()];
        java.util.Arrays.fill(open, true);
        return new ReachResult(
                r.scene(),
                r.cavity(),
                r.grid(),
                Surroundings.of(r.cavity(), open, List.of()),
                0.15,
                lines,
                share,
                List.of());
    }

    /** A scene around nothing in particular. */
    public static Scene scene(String title, String file) {
        CavitySpec.Block block = new CavitySpec.Block(
                "block", new Vec3(1, 1, 1), Vec3.ZERO, Vec3.ZERO, 0.001, List.of(), SourcePlace.of(file));
        SupplySpec supply = new SupplySpec.Pressure(550e3, 0.85, 0.5e-3, new DropletSpec.RosinRammler(30e-6, 2.4));
        return SceneEdit.of(SceneFixtures.bare(file, block, supply))
                .title(title, "A sample.")
                .numerics(10, 256, 0)
                .done();
    }

    private static Opening hole(LatticeCavity lattice, String name, String part, double y) {
        double middle = 0;
        return new Opening(
                name,
                lattice.part(part, PartKind.RIB),
                Opening.Kind.HOLE,
                PlacedOutline.of(new Outline.Circle(0.025), new Vec3(0.085, y, middle), Vec3.X, Vec3.Y),
                PhaseStates.ALWAYS_OPEN,
                false);
    }

    private static Opening port(LatticeCavity lattice) {
        return new Opening(
                "root port",
                lattice.part("rib 1", PartKind.RIB),
                Opening.Kind.PORT,
                PlacedOutline.of(new Outline.Slot(0.04, 0.02), new Vec3(0.085, 0, 0), Vec3.X, Vec3.Y),
                new PhaseStates(OpeningState.OPEN, OpeningState.TAPED, OpeningState.PLUGGED),
                true);
    }

    private static RunResult result(LatticeCavity.Built b, String title, String file) {
        return result(b, title, file, Vec3.ZERO);
    }

    private static RunResult result(LatticeCavity.Built b, String title, String file, Vec3 shift) {
        Scene scene = scene(title, file);
        SurfelSet s = b.grid().surfels();
        double[] film = new double[s.count()];
        for (int i = 0; i < film.length; i++) {
            film[i] = drawnFilm(new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]).minus(shift), s.normalZ()[i]);
        }
        SeamMap seams = SeamMap.of(b.cavity(), b.grid(), TargetSpec.SEAM_CREEP_M);
        Coverage coverage = CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT, seams);
        double filmKg = 0;
        double[] direct = new double[film.length];
        double[] fog = new double[film.length];
        for (int i = 0; i < film.length; i++) {
            direct[i] = 0.7 * film[i] * s.areaM2()[i] * 880;
            fog[i] = direct[i] * 3 / 7;
            filmKg += direct[i] + fog[i];
        }
        MassLedger ledger =
                new MassLedger(1.25 * filmKg, filmKg, 0.05 * filmKg, 0.14 * filmKg, 0.01 * filmKg, 0.05 * filmKg);
        Map<String, Double> seconds = new LinkedHashMap<>();
        seconds.put("cavity", 0.1);
        seconds.put("voxels", 0.4);
        seconds.put("fog", 12.5);
        RunRecord record =
                new RunRecord("0.1.0", scene.hash(), 2, seconds, Map.of("size bins", "10"), "0123456789abcdef");
        return new RunResult(
                scene,
                b.cavity(),
                b.grid(),
                ledger,
                coverage,
                film,
                direct,
                fog,
                findings(file),
                record,
                history(filmKg, coverage.total().reached()),
                insertions(b),
                stations(shift),
                Confidence.UNKNOWN,
                List.of(),
                outlook(b, film, coverage),
                null);
    }

    private static Outlook outlook(LatticeCavity.Built b, double[] film, Coverage coverage) {
        return new Outlook(
                List.of(
                        new Outlook.FilmAge("at close-up", 0, coverage.total(), coverage.total()),
                        new Outlook.FilmAge("after 24 h", 86400, coverage.total(), coverage.total())),
                1e-4,
                0.4,
                0.6,
                coverage.seams(),
                0.004,
                List.of(new Outlook.WandFill("six-foot wand", 5.7e-6)),
                0.01,
                new Outlook.Coagulating("bay 1", 0.01),
                List.of(new Outlook.Release("root port", 2e-4, 0.012)),
                1e-6,
                0.2,
                baymist.run.Consequences.NONE);
    }

    /** Thick along the wand, thinner away from it, none behind the outer ribs' webs and in the aft corners. */
    private static double drawnFilm(Vec3 p, double up) {
        double fromWand = Math.hypot(p.x() - 0.085, p.z());
        double alongSpan = p.y() / SPAN;
        double jet = 120e-6 * Math.exp(-fromWand / 0.06) * (alongSpan < 0.7 ? 1 : Math.exp(-20 * (alongSpan - 0.7)));
        double settled = up > 0.3 ? 4e-6 * (1.2 - alongSpan) : 0.3e-6;
        boolean corner = p.x() > 0.24 && p.y() > 0.1 && p.y() < 0.39 && up < -0.3;
        boolean stripe = p.x() < 0.02 && p.y() > 0.4 && p.y() < 0.8 && up > 0.3;
        if (corner || stripe) {
            return 0.2e-6;
        }
        double ripple = 1 + 0.3 * Math.sin(40 * p.y()) * Math.cos(25 * p.x());
        return (jet + settled) * ripple;
    }

    private static List<Finding> findings(String file) {
        return List.of(
                new Finding(
                        "RES-004",
                        Severity.WARNING,
                        new SourcePlace(file, 41, "passes[0]"),
                        "The tip points at the vent \"root port\" during the last 0.8 s of pass \"draw back\"; a third of"
                                + " the overspray leaves then, so releasing the trigger 60 mm earlier would save it."),
                new Finding("GEO-011", Severity.NOTE, SourcePlace.of(file), "Two duplicate triangles were left out."));
    }

    private static List<TimePoint> history(double filmKg, double reached) {
        List<TimePoint> points = new ArrayList<>();
        for (int t = 0; t <= 312; t += 2) {
            double sprayed = Math.min(1, t / 12.0) * 1.25 * filmKg;
            double airborne = t < 12 ? 0.3 * sprayed : 0.05 * filmKg + 0.325 * filmKg * Math.exp(-(t - 12) / 60.0);
            points.add(new TimePoint(
                    t,
                    airborne,
                    0.8 * (sprayed - airborne),
                    0.2 * (sprayed - airborne),
                    reached * (1 - Math.exp(-t / 8.0)),
                    t < 12 ? 40.0 * t : 480));
        }
        return points;
    }

    private static List<Insertion> insertions(LatticeCavity.Built b) {
        int opening = b.cavity().openingIndex("root port");
        if (opening < 0) {
            return List.of();
        }
        Vec3 origin = b.cavity().openings().get(opening).place().centreM();
        return List.of(new Insertion(
                "root",
                "six-foot wand",
                opening,
                origin,
                Vec3.Y,
                1.2,
                "rib 5",
                true,
                0.0068,
                baymist.access.WandPath.straight(origin, Vec3.Y, 3e-3, 1.2)));
    }

    private static List<Station> stations(Vec3 shift) {
        List<Station> stations = new ArrayList<>();
        for (int i = 0; i <= 12; i++) {
            double depth = 1.1 - 0.08 * i;
            TipPose pose = new TipPose(new Vec3(0.085, depth, 0).plus(shift), Vec3.Y, Vec3.X);
            stations.add(new Station(0, pose, i, 1, depth));
        }
        return stations;
    }
}
