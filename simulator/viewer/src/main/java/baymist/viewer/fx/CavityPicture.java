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
import baymist.viewer.draw.CutLines;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.FogDots;
import baymist.viewer.draw.Picker;
import baymist.viewer.model.SceneModel;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import javafx.scene.Group;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;

/** Everything that is drawn of one scene: structure, film, lines, wand, jets and fog. */
final class CavityPicture {
    /** Dots when the fog is densest. */
    private static final int DOTS = 12_000;

    private static final double LINE_PX = 0.9;
    private static final double BOLD_LINE_PX = 1.5;
    private static final double DOT_PX = 1.5;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final Theme theme;
    private final Box3 bounds;
    private Box3 drawn;
    private final StructureLayer structure;
    private final LineMesh seams;
    private final List<RegionLine> outlines = new ArrayList<>();
    private final Group outlineGroup = new Group();
    private final WandLayer wand;
    private final GhostLayer ghost;
    private final DotMesh dots;
    private final List<Overlay.Label> labels = new ArrayList<>();
    private @Nullable Recording recording;
    private @Nullable FogDots fog;
    private float[] seamLines = {};
    private boolean seamsShown;
    private double apart;
    /** What belongs to the cavity as it is built, and is not shown while bays are drawn apart. */
    private final List<Group> inAir = new ArrayList<>();

    private boolean fogShown = true;
    private double atS;
    private @Nullable Cut cut;

    private record RegionLine(int bay, int part, float[] segments, LineMesh mesh) {}

    CavityPicture(Cavity cavity, VoxelGrid grid, FilmPlaces scale, Theme theme, Names entries) {
        this(cavity, grid, scale, theme, entries, SurfaceOptions.DEFAULT);
    }

    /** @param fineness how finely the sheets are drawn; where sides stand is the picture's own business */
    CavityPicture(
            Cavity cavity, VoxelGrid grid, FilmPlaces scale, Theme theme, Names entries, SurfaceOptions fineness) {
        this.cavity = cavity;
        this.grid = grid;
        this.theme = theme;
        bounds = cavity.cutSheets().bounds();
        drawn = bounds;
        double size = bounds.size().length();
        Surface surface = Surface.of(cavity, grid, fineness.withStandOffM(StructureLayer.STAND_OFF * size));
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
                String text = entry == null
                        ? opening.name()
                        : opening.name().equals(entry) ? "entry: " + entry : "entry " + entry + ": " + opening.name();
                labels.add(new Overlay.Label(
                        text, opening.place().centreM(), bayNear(opening), entry != null, opening.name()));
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

    /** The structure as it is built. */
    Box3 bounds() {
        return bounds;
    }

    /** What is drawn, bays apart or not. */
    Box3 drawn() {
        return drawn;
    }

    /** Diagonal of what is drawn, bays apart or not, m. */
    double drawnSizeM() {
        return bounds.size().length() * (1.25 + apart);
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
        Group first = new Group(wand.solid(), dots.node());
        Group second = new Group(ghost.node(), wand.jets());
        inAir.clear();
        inAir.addAll(List.of(first, second));
        return List.of(structure.opaque(), seams.node(), outlineGroup, first, second, structure.seeThrough());
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
        seamLines = flat;
        seams.set(CutLines.of(flat, cut));
        seams.node().setVisible(seamsShown);
    }

    /** Outlines a bare region, in pieces by part and bay, so that they go where these are drawn. */
    private void outline(int[] surfels) {
        Map<List<Integer>, List<Integer>> pieces = new LinkedHashMap<>();
        for (int s : surfels) {
            int bay = grid.bayOfCell(grid.surfels().cell()[s]);
            pieces.computeIfAbsent(List.of(grid.surfels().part()[s], bay), k -> new ArrayList<>())
                    .add(s);
        }
        pieces.forEach((place, piece) -> {
            float[] segments = Contour.region(
                    structure.surface(),
                    piece.stream().mapToInt(Integer::intValue).toArray());
            LineMesh line = new LineMesh(theme.outline(), 1e-3 * bounds.size().length());
            line.set(CutLines.of(segments, cut));
            outlines.add(new RegionLine(place.get(1), place.get(0), segments, line));
            outlineGroup.getChildren().add(line.node());
        });
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
            dots.set(fogShown ? f.places(r.fogAt(timeS), cut) : new float[0]);
            atS = timeS;
        }
    }

    void showFog(boolean shown, double timeS) {
        fogShown = shown;
        at(timeS);
    }

    void showSeams(boolean shown) {
        seamsShown = shown;
        seams.node().setVisible(shown);
    }

    /** What the dots stand for, or "". */
    String fogSentence() {
        return fog == null ? "" : fog.sentence();
    }

    /** Shows parts, plane and bays as a model says. */
    void arrange(SceneModel model) {
        Cut plane = ShowPane.cutOf(model);
        if (!Objects.equals(plane, cut)) {
            cut = plane;
            structure.cut(plane);
            outlines.forEach(o -> o.mesh().set(CutLines.of(o.segments(), plane)));
            seams.set(CutLines.of(seamLines, plane));
            seams.node().setVisible(seamsShown);
            at(atS);
        }
        structure.arrange(model);
        apart = model.explode();
        drawn = Box3.EMPTY;
        for (int bay = 0; bay < grid.bays().size(); bay++) {
            Box3 box = grid.bays().get(bay).bounds();
            Vec3 off = model.offsetM(bay);
            drawn = drawn.including(box.min().plus(off)).including(box.max().plus(off));
        }
        drawn = apart > 0 ? drawn : bounds;
        for (RegionLine o : outlines) {
            Vec3 off = structure.offsetOfBay(o.bay());
            o.mesh().node().setTranslateX(off.x());
            o.mesh().node().setTranslateY(off.y());
            o.mesh().node().setTranslateZ(off.z());
            o.mesh().node().setVisible(model.shows(o.part()));
        }
        inAir.forEach(n -> n.setVisible(apart == 0));
    }

    /** Where a label's place is drawn now, or null where it is cut away. */
    @Nullable
    Vec3 placeOf(Overlay.Label label) {
        if (structure.cutAway(label.placeM())) {
            return null;
        }
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
