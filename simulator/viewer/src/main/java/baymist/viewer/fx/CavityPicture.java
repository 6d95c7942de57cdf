package baymist.viewer.fx;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.coverage.SeamCoverage;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.recording.Recording;

import baymist.surface.Contour;
import baymist.surface.Surface;
import baymist.surface.SurfaceOptions;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.Cut;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.FogDots;
import baymist.viewer.draw.Picker;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;

/** Everything that is drawn of one scene: structure, film, lines, wand, jets and fog. */
final class CavityPicture {
    /** Dots when the fog is densest. */
    private static final int DOTS = 12_000;
    private static final double LINE_PX = 0.75;
    private static final double BOLD_LINE_PX = 1.5;
    private static final double DOT_PX = 1.5;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final Theme theme;
    private final Box3 bounds;
    private final StructureLayer structure;
    private final LineMesh seams;
    private final List<RegionLine> outlines = new ArrayList<>();
    private final javafx.scene.Group outlineGroup = new javafx.scene.Group();
    private final WandLayer wand;
    private final GhostLayer ghost;
    private final DotMesh dots;
    private final List<Overlay.Label> labels = new ArrayList<>();
    private @Nullable Recording recording;
    private @Nullable FogDots fog;
    private double explode;
    private boolean fogShown = true;
    private @Nullable Cut cut;

    private record RegionLine(int bay, float[] segments, LineMesh mesh) {}

    CavityPicture(Cavity cavity, VoxelGrid grid, FilmPlaces scale, Theme theme, Names entries) {
        this.cavity = cavity;
        this.grid = grid;
        this.theme = theme;
        bounds = cavity.cutSheets().bounds();
        double size = bounds.size().length();
        Surface surface = Surface.of(cavity, grid, SurfaceOptions.DEFAULT.withStandOffM(StructureLayer.STAND_OFF * size));
        structure = new StructureLayer(surface, cavity, grid, scale, theme);
        seams = new LineMesh(theme.seam(), 8e-4 * size);
        seams.node().setVisible(false);
        wand = new WandLayer(theme, size);
        ghost = new GhostLayer(theme, size);
        dots = new DotMesh(theme.fog(), 1.2e-3 * size);
        for (int o = 0; o < cavity.openings().size(); o++) {
            Opening opening = cavity.openings().get(o);
            String entry = entries.entryAt(opening.name());
            if (entry != null || opening.exterior()) {
                String text = entry == null ? opening.name() : opening.name().equals(entry) ? "entry: " + entry : "entry " + entry + ": " + opening.name();
                labels.add(new Overlay.Label(text, opening.place().centreM(), bayNear(opening), entry != null));
            }
        }
        labels.sort((a, b) -> Boolean.compare(b.strong(), a.strong()));
    }

    /** Which openings wands go in by. */
    interface Names {
        /** Name of the entry at an opening, or null. */
        @Nullable
        String entryAt(String opening);
    }

    private int bayNear(Opening opening) {
        Vec3 middle = opening.place().centreM();
        double h = grid.sizeM().length();
        for (int s = 0; s < 12; s++) {
            Vec3 way = new Vec3(s / 2 == 0 ? 1 : s / 2 == 3 ? 1 : 0, s / 2 == 1 ? 1 : 0, s / 2 == 2 ? 1 : 0);
            int cell = grid.cellHolding(middle.plus((s % 2 == 0 ? 0.7 : -0.7) * h, way));
            if (cell >= 0) {
                return grid.bayOfCell(cell);
            }
        }
        return -1;
    }

    Box3 bounds() {
        return bounds;
    }

    /** Diagonal of what is drawn, bays apart or not, m. */
    double drawnSizeM() {
        return bounds.size().length() * (1.25 + explode);
    }

    Cavity cavity() {
        return cavity;
    }

    StructureLayer structure() {
        return structure;
    }

    GhostLayer ghost() {
        return ghost;
    }

    List<Overlay.Label> labels() {
        return labels;
    }

    /** In the order in which they are to be drawn. */
    List<Node> layers() {
        return List.of(
                structure.opaque(),
                seams.node(),
                outlineGroup,
                wand.solid(),
                ghost.node(),
                dots.node(),
                wand.jets(),
                structure.seeThrough());
    }

    /** Takes a run's film, fog and bare regions. */
    void recorded(Recording newRecording) {
        recording = newRecording;
        double peak = DoubleStream.of(newRecording.curves().airborneKg()).max().orElse(0);
        fog = FogDots.of(newRecording.fog(), peak, DOTS);
        wand.way(newRecording.result().stations());
        outlines.clear();
        outlineGroup.getChildren().clear();
        for (var region : newRecording.result().coverage().unreached()) {
            outline(region.surfels());
        }
        List<Vec3> ends = new ArrayList<>();
        for (SeamCoverage.Line line : newRecording.result().coverage().seams().lines()) {
            for (int i = 1; i < line.pointsM().size(); i++) {
                ends.add(line.pointsM().get(i - 1));
                ends.add(line.pointsM().get(i));
            }
        }
        float[] flat = LineMesh.segments(ends);
        boolean shown = seams.node().isVisible();
        seams.set(flat);
        seams.node().setVisible(shown);
    }

    private void outline(int[] surfels) {
        float[] segments = Contour.region(structure.surface(), surfels);
        LineMesh line = new LineMesh(theme.outline(), 1e-3 * bounds.size().length());
        line.set(segments);
        int bay = surfels.length == 0 ? -1 : grid.bayOfCell(grid.surfels().cell()[surfels[0]]);
        outlines.add(new RegionLine(bay, segments, line));
        outlineGroup.getChildren().add(line.node());
    }

    /** Shows the state at a job time, s. */
    void at(double timeS) {
        Recording r = recording;
        if (r == null) {
            return;
        }
        structure.film(r.filmAt(timeS));
        wand.show(r.wandAt(timeS));
        outlineGroup.setVisible(timeS >= r.endS() - 1e-9);
        FogDots f = fog;
        if (f != null) {
            dots.set(fogShown ? f.places(r.fogAt(timeS)) : new float[0]);
        }
    }

    void showFog(boolean shown, double timeS) {
        fogShown = shown;
        at(timeS);
    }

    void showSeams(boolean shown) {
        seams.node().setVisible(shown);
    }

    /** What the dots stand for, or "". */
    String fogSentence() {
        return fog == null ? "" : fog.sentence();
    }

    void cut(@Nullable Cut plane) {
        cut = plane;
        structure.cut(plane);
        outlines.forEach(o -> o.mesh().set(baymist.viewer.draw.CutLines.of(o.segments(), plane)));
    }

    @Nullable
    Cut cut() {
        return cut;
    }

    void explode(double share) {
        explode = share;
        structure.explode(share);
        for (RegionLine o : outlines) {
            Vec3 off = structure.offsetOfBay(o.bay());
            o.mesh().node().setTranslateX(off.x());
            o.mesh().node().setTranslateY(off.y());
            o.mesh().node().setTranslateZ(off.z());
        }
        boolean together = share < 1e-6;
        dots.node().setOpacity(together ? 1 : 0);
        dots.node().setVisible(together && fogShown);
        wand.solid().setVisible(together);
        wand.jets().setOpacity(together ? 1 : 0);
    }

    /** Where a label's place is drawn now. */
    Vec3 placeOf(Overlay.Label label) {
        return label.placeM().plus(structure.offsetOfBay(label.bay()));
    }

    Picker.@Nullable Hit pick(Vec3 eye, Vec3 direction) {
        return Picker.first(structure.surface(), structure, eye, direction);
    }

    /** Brings order and line widths up to date; returns how many pieces still wait to be sorted. */
    int sort(Camera camera, double heightPx) {
        double px = camera.mPerPixel(heightPx);
        structure.lineRadius(LINE_PX * px);
        seams.radius(BOLD_LINE_PX * px);
        outlines.forEach(o -> o.mesh().radius(BOLD_LINE_PX * px));
        dots.radius(DOT_PX * px);
        return structure.sort(camera);
    }
}
