package baymist.export;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.coverage.SeamCoverage;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.seam.SeamKind;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What each VTK file of an export holds. Arrays and units: docs/formats/vtk.md. */
final class VtkFiles {
    /** The format's mark for a cell that is not to be shown (vtkDataSetAttributes, HIDDENCELL). */
    private static final byte HIDDEN = 32;

    private VtkFiles() {}

    /** Fog and air on the voxels. */
    static ImageFile fog(RunResult r, FogSnapshot at) {
        VoxelGrid g = r.grid();
        int n = g.nx() * g.ny() * g.nz();
        double[] fog = new double[n];
        double[] eddy = new double[n];
        double[] volume = new double[n];
        double[] velocity = new double[3 * n];
        int[] bay = new int[n];
        byte[] hidden = new byte[n];
        Arrays.fill(bay, -1);
        Arrays.fill(hidden, HIDDEN);
        for (int c = 0; c < g.cellCount(); c++) {
            int i = g.latticeOfCell(c);
            fog[i] = at.fogKgPerM3()[c];
            eddy[i] = at.eddyDiffusivityM2PerS()[c];
            volume[i] = g.volumeM3(c);
            bay[i] = g.bayOfCell(c);
            hidden[i] = 0;
            System.arraycopy(at.velocityMPerS(), 3 * c, velocity, 3 * i, 3);
        }
        return new ImageFile(
                new int[] {g.nx(), g.ny(), g.nz()},
                g.origin(),
                g.sizeM(),
                Labels.origin(
                        r,
                        VtkArray.doubles("TimeValue", 1, new double[] {at.timeS()}),
                        VtkArray.strings("time_words", List.of(at.words())),
                        VtkArray.strings("bay_names", Labels.bayNames(r))),
                List.of(
                        VtkArray.bytes("vtkGhostType", hidden),
                        VtkArray.floats("fog_kg_per_m3", 1, fog),
                        VtkArray.floats("air_velocity_m_per_s", 3, velocity),
                        VtkArray.floats("eddy_diffusivity_m2_per_s", 1, eddy),
                        VtkArray.floats("air_volume_m3", 1, volume),
                        VtkArray.ints("bay", bay)),
                "fog_kg_per_m3",
                "air_velocity_m_per_s");
    }

    /** Every surface element as a point with all that is known about it. */
    static PolyFile surfels(RunResult r, Origins origins) {
        SurfelSet q = r.grid().surfels();
        int n = q.count();
        double[] xyz = new double[3 * n];
        double[] normal = new double[3 * n];
        double[] filmUm = new double[n];
        int[] surface = new int[n];
        for (int s = 0; s < n; s++) {
            xyz[3 * s] = q.centreX()[s];
            xyz[3 * s + 1] = q.centreY()[s];
            xyz[3 * s + 2] = q.centreZ()[s];
            normal[3 * s] = q.normalX()[s];
            normal[3 * s + 1] = q.normalY()[s];
            normal[3 * s + 2] = q.normalZ()[s];
            filmUm[s] = 1e6 * r.filmM()[s];
            surface[s] = q.isStructure(s) ? 0 : q.isProtected(s) ? 2 : 1;
        }
        List<VtkArray> data = List.of(
                VtkArray.doubles("film_um", 1, filmUm),
                VtkArray.ints("verdict", Labels.verdicts(r)),
                VtkArray.doubles("jets_share", 1, origins.jets()),
                VtkArray.doubles("fog_share", 1, origins.fog()),
                VtkArray.doubles("ran_in_share", 1, origins.ranIn()),
                VtkArray.doubles("area_m2", 1, q.areaM2()),
                VtkArray.floats("normal", 3, normal),
                VtkArray.ints("part", q.part()),
                VtkArray.ints("bay", Labels.bays(r)),
                VtkArray.ints("bare_place", Labels.barePlaces(r)),
                VtkArray.ints("surface", surface));
        return PolyFile.points(
                xyz,
                Labels.origin(
                        r,
                        VtkArray.strings("part_names", Labels.partNames(r)),
                        VtkArray.strings("bay_names", Labels.bayNames(r)),
                        VtkArray.strings("verdict_names", Labels.verdicts()),
                        VtkArray.strings("surface_names", List.of("structure", "closed opening", "protected item"))),
                data,
                "film_um");
    }

    /** Seams as lines. */
    static PolyFile seams(RunResult r) {
        List<SeamCoverage.Line> lines = r.coverage().seams().lines();
        Lines shape = new Lines();
        int n = lines.size();
        double[] length = new double[n];
        double[] reached = new double[n];
        double[] protectedShare = new double[n];
        List<SeamKind> kinds = List.of(SeamKind.values());
        int[] kind = new int[n];
        int[] sides = new int[n];
        for (int i = 0; i < n; i++) {
            SeamCoverage.Line line = lines.get(i);
            shape.add(line.pointsM());
            length[i] = line.lengthM();
            reached[i] = line.reached();
            protectedShare[i] = line.protectedShare();
            kind[i] = kinds.indexOf(line.kind());
            sides[i] = line.bays().size();
        }
        return shape.file(
                Labels.origin(
                        r,
                        VtkArray.strings(
                                "seam_names",
                                lines.stream().map(SeamCoverage.Line::parts).toList()),
                        VtkArray.strings(
                                "kind_names", kinds.stream().map(SeamKind::word).toList())),
                List.of(
                        VtkArray.doubles("reached_share", 1, reached),
                        VtkArray.doubles("protected_share", 1, protectedShare),
                        VtkArray.doubles("length_m", 1, length),
                        VtkArray.ints("kind", kind),
                        VtkArray.ints("sides", sides)),
                "reached_share");
    }

    /** The wand of each pass at its deepest, and the way of its tip. */
    static PolyFile wand(RunResult r) {
        Lines shape = new Lines();
        List<Integer> pass = new ArrayList<>();
        List<Integer> what = new ArrayList<>();
        List<Double> diameter = new ArrayList<>();
        List<PassSpec> passes = r.scene().passes();
        for (int p = 0; p < passes.size(); p++) {
            List<Station> stations = stations(r, p);
            Insertion way = way(r, passes.get(p));
            double deepest =
                    stations.stream().mapToDouble(Station::depthM).max().orElse(0);
            if (way != null && deepest > 0) {
                var body = way.path().body(Math.min(deepest, way.path().maxDepthM()));
                shape.add(body.centrelineM());
                pass.add(p);
                what.add(0);
                diameter.add(2 * body.radiusM());
            }
            if (stations.size() > 1) {
                shape.add(stations.stream().map(s -> s.pose().positionM()).toList());
                pass.add(p);
                what.add(1);
                diameter.add(0.0);
            }
        }
        return shape.file(
                Labels.origin(
                        r,
                        VtkArray.strings(
                                "pass_names",
                                passes.stream().map(PassSpec::name).toList()),
                        VtkArray.strings("line_names", List.of("wand at its deepest", "way of the tip"))),
                List.of(
                        VtkArray.ints("pass", ints(pass)),
                        VtkArray.ints("line", ints(what)),
                        VtkArray.doubles(
                                "diameter_m",
                                1,
                                diameter.stream().mapToDouble(d -> d).toArray())),
                "pass");
    }

    /** Each place at which the tip sprays. */
    static PolyFile stations(RunResult r) {
        List<Station> stations = r.stations();
        int n = stations.size();
        double[] xyz = new double[3 * n];
        double[] axis = new double[3 * n];
        double[] pin = new double[3 * n];
        for (int i = 0; i < n; i++) {
            put(xyz, i, stations.get(i).pose().positionM());
            put(axis, i, stations.get(i).pose().axis());
            put(pin, i, stations.get(i).pose().pin());
        }
        return PolyFile.points(
                xyz,
                Labels.origin(
                        r,
                        VtkArray.strings(
                                "pass_names",
                                r.scene().passes().stream().map(PassSpec::name).toList())),
                List.of(
                        VtkArray.doubles(
                                "start_s",
                                1,
                                stations.stream().mapToDouble(Station::startS).toArray()),
                        VtkArray.doubles(
                                "duration_s",
                                1,
                                stations.stream()
                                        .mapToDouble(Station::durationS)
                                        .toArray()),
                        VtkArray.doubles(
                                "depth_m",
                                1,
                                stations.stream().mapToDouble(Station::depthM).toArray()),
                        VtkArray.ints(
                                "pass",
                                stations.stream().mapToInt(Station::pass).toArray()),
                        VtkArray.doubles("wand_axis", 3, axis),
                        VtkArray.doubles("pin_direction", 3, pin)),
                "start_s");
    }

    static List<Station> stations(RunResult r, int pass) {
        return r.stations().stream().filter(s -> s.pass() == pass).toList();
    }

    static @org.jspecify.annotations.Nullable Insertion way(RunResult r, PassSpec pass) {
        return r.insertions().stream()
                .filter(i -> i.feasible()
                        && i.entry().equals(pass.entry())
                        && i.wand().equals(pass.wand()))
                .findFirst()
                .orElse(null);
    }

    private static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(i -> i).toArray();
    }

    private static void put(double[] into, int at, Vec3 v) {
        into[3 * at] = v.x();
        into[3 * at + 1] = v.y();
        into[3 * at + 2] = v.z();
    }
}
