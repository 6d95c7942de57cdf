package baymist.export;

import baymist.run.RunResult;
import baymist.surface.Patch;
import baymist.surface.Surface;
import baymist.surface.SurfaceOptions;
import java.util.ArrayList;
import java.util.List;

/**
 * The sides of the sheets that face the air of the job, as triangles with the film on their corners.
 *
 * @param surface both sides of all sheets
 * @param patches those of its patches that face the air, vertices and triangles running on from one to the next
 * @param filmUm film at each vertex of the surface, µm, [surface vertices]; NaN on sides without air
 */
record FilmMesh(Surface surface, List<Patch> patches, float[] filmUm) {
    FilmMesh {
        patches = List.copyOf(patches);
    }

    static FilmMesh of(RunResult r, SurfaceOptions options) {
        Surface surface = Surface.of(r.cavity(), r.grid(), options);
        List<Patch> inside = new ArrayList<>();
        for (Patch p : surface.patches()) {
            if (p.side() == Patch.Side.CAVITY) {
                inside.add(p);
            }
        }
        return new FilmMesh(surface, inside, surface.onVertices(microns(r.filmM())));
    }

    private static double[] microns(double[] filmM) {
        double[] um = new double[filmM.length];
        for (int s = 0; s < um.length; s++) {
            um[s] = 1e6 * filmM[s];
        }
        return um;
    }

    int vertexCount() {
        return patches.stream().mapToInt(Patch::vertexCount).sum();
    }

    int triangleCount() {
        return patches.stream().mapToInt(Patch::triangleCount).sum();
    }

    /** A quantity of the surface's vertices, those of the patches alone, one patch after another. */
    float[] vertices(float[] ofSurface, int components) {
        float[] out = new float[components * vertexCount()];
        int at = 0;
        for (Patch p : patches) {
            System.arraycopy(ofSurface, components * p.firstVertex(), out, at, components * p.vertexCount());
            at += components * p.vertexCount();
        }
        return out;
    }

    /** Corners of the patches' triangles, numbered over the patches alone, [3 * triangles]. */
    int[] corners() {
        int[] out = new int[3 * triangleCount()];
        int at = 0;
        int vertex = 0;
        for (Patch p : patches) {
            for (int c = 0; c < 3 * p.triangleCount(); c++) {
                out[at++] = surface.corners()[3 * p.firstTriangle() + c] - p.firstVertex() + vertex;
            }
            vertex += p.vertexCount();
        }
        return out;
    }

    /** The surfel that each triangle shows, [triangles]. */
    int[] surfels() {
        int[] out = new int[triangleCount()];
        int at = 0;
        for (Patch p : patches) {
            for (int t = 0; t < p.triangleCount(); t++) {
                out[at++] = surface.surfel(p.firstTriangle() + t);
            }
        }
        return out;
    }

    /** A number of each patch repeated for its triangles, [triangles]. */
    int[] perTriangle(java.util.function.ToIntFunction<Patch> number) {
        int[] out = new int[triangleCount()];
        int at = 0;
        for (Patch p : patches) {
            java.util.Arrays.fill(out, at, at + p.triangleCount(), number.applyAsInt(p));
            at += p.triangleCount();
        }
        return out;
    }

    /** Film as a VTK file. */
    PolyFile vtk(RunResult r, Origins origins) {
        int[] surfels = surfels();
        int[] verdicts = Labels.verdicts(r);
        int[] places = Labels.barePlaces(r);
        int[] verdict = new int[surfels.length];
        int[] place = new int[surfels.length];
        int[] ends = new int[surfels.length];
        double[] onSurfel = new double[surfels.length];
        for (int t = 0; t < surfels.length; t++) {
            ends[t] = 3 * (t + 1);
            int s = surfels[t];
            verdict[t] = s < 0 ? Labels.NO_STRUCTURE : verdicts[s];
            place[t] = s < 0 ? 0 : places[s];
            onSurfel[t] = s < 0 ? Double.NaN : 1e6 * r.filmM()[s];
        }
        float[] xyz = vertices(surface.xyz(), 3);
        double[] points = new double[xyz.length];
        for (int i = 0; i < xyz.length; i++) {
            points[i] = xyz[i];
        }
        return new PolyFile(
                PolyFile.Kind.POLYS,
                points,
                corners(),
                ends,
                Labels.origin(
                        r,
                        VtkArray.strings("part_names", Labels.partNames(r)),
                        VtkArray.strings("bay_names", Labels.bayNames(r)),
                        VtkArray.strings("verdict_names", Labels.verdicts()),
                        VtkArray.strings("detail", List.of(surface.detail().sentence()))),
                List.of(
                        VtkArray.floats("film_um", 1, vertices(filmUm, 1)),
                        VtkArray.floats("normal", 3, vertices(surface.normals(), 3)),
                        VtkArray.floats("jets_share", 1, vertices(surface.onVertices(origins.jets()), 1)),
                        VtkArray.floats("fog_share", 1, vertices(surface.onVertices(origins.fog()), 1)),
                        VtkArray.floats("ran_in_share", 1, vertices(surface.onVertices(origins.ranIn()), 1))),
                List.of(
                        VtkArray.ints("verdict", verdict),
                        VtkArray.ints("bare_place", place),
                        VtkArray.ints("surfel", surfels),
                        VtkArray.floats("surfel_film_um", 1, onSurfel),
                        VtkArray.ints("part", perTriangle(Patch::part)),
                        VtkArray.ints("bay", perTriangle(Patch::bay))),
                "film_um",
                "verdict");
    }
}
