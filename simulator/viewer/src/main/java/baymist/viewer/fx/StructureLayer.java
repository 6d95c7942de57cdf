package baymist.viewer.fx;

import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.surface.Patch;
import baymist.surface.Surface;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.Cut;
import baymist.viewer.draw.CutLines;
import baymist.viewer.draw.DifferencePlaces;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.Picker;
import baymist.viewer.draw.Piece;
import baymist.viewer.draw.Pieces;
import baymist.viewer.draw.StructureLines;
import baymist.viewer.model.SceneModel;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import org.jspecify.annotations.Nullable;

/** The sheets: film on the sides that face the cavity's air, see-through on the others, lines where they end or bend. */
final class StructureLayer implements Picker.Showing {
    private static final int TRIANGLES_A_PIECE = 800;

    private final Surface surface;
    private final FilmPlaces scale;
    private final Theme theme;
    private final Box3 box;
    private final List<Place> groups = new ArrayList<>();
    private final boolean[] partShown;
    private final Vec3[] offsetOfBay;
    private final PhongMaterial filmPaint = new PhongMaterial(Color.WHITE);
    private final WritableImage filmStrip;
    private final List<PieceMesh> film = new ArrayList<>();
    private final List<PieceMesh> sheets = new ArrayList<>();
    private final List<LineMesh> lines = new ArrayList<>();
    private final List<StructureLines.Lines> lineSegments;
    private final SheetView seeThrough;
    private final Group opaque = new Group();
    private @Nullable Cut cut;
    private boolean sheetsShown = true;
    private int lit = -1;

    /** What pieces of one group have in common. */
    private record Place(int part, int bay) {}

    StructureLayer(Surface surface, Cavity cavity, VoxelGrid grid, FilmPlaces scale, Theme theme) {
        this.surface = surface;
        this.scale = scale;
        this.theme = theme;
        box = cavity.cutSheets().bounds();
        partShown = new boolean[cavity.parts().size()];
        Arrays.fill(partShown, true);
        offsetOfBay = new Vec3[grid.bays().size()];
        Arrays.fill(offsetOfBay, Vec3.ZERO);
        filmStrip = image(FilmPlaces.line(rgb(theme.bare())));
        filmPaint.setDiffuseMap(filmStrip);
        Pieces pieces = new Pieces(surface.xyz(), surface.corners(), TRIANGLES_A_PIECE);
        OutsideBays outside = new OutsideBays(surface, grid);
        for (Patch patch : surface.patches()) {
            if (patch.side() == Patch.Side.CAVITY) {
                int group = group(patch.part(), patch.bay());
                for (Piece piece : pieces.of(group, patch.firstTriangle(), patch.triangleCount())) {
                    film.add(new PieceMesh(piece, surface.xyz(), surface.corners(), filmPaint));
                }
                continue;
            }
            outside.parted(patch).forEach((bay, triangles) -> {
                for (Piece piece : pieces.of(group(patch.part(), bay), triangles)) {
                    sheets.add(new PieceMesh(piece, surface.xyz(), surface.corners(), Materials.plain(theme.sheet())));
                }
            });
        }
        seeThrough = new SheetView(sheets, surface.xyz(), surface.corners());
        lineSegments = StructureLines.of(cavity, grid);
        for (StructureLines.Lines l : lineSegments) {
            LineMesh line = new LineMesh(theme.edge(), thinnestM());
            line.set(l.segments());
            lines.add(line);
        }
        film.forEach(m -> opaque.getChildren().add(m.view()));
        lines.forEach(l -> opaque.getChildren().add(l.node()));
        film(new float[surface.surfelCount()]);
    }

    /** Lines thinner than this would drown in the film, which lies off its sheet. */
    private double thinnestM() {
        return 1.3 * STAND_OFF * box.size().length();
    }

    /** Film lies off its sheet by this share of the structure's diagonal, so that sides of one sheet never fight for a pixel. */
    static final double STAND_OFF = 3e-4;

    private int group(int part, int bay) {
        groups.add(new Place(part, bay));
        return groups.size() - 1;
    }

    private static int rgb(Color c) {
        return (int) Math.round(255 * c.getRed()) << 16
                | (int) Math.round(255 * c.getGreen()) << 8
                | (int) Math.round(255 * c.getBlue());
    }

    private static WritableImage image(int[] line) {
        int[] argb = IntStream.of(line).map(c -> 0xFF000000 | c).toArray();
        WritableImage strip = new WritableImage(line.length, 1);
        strip.getPixelWriter().setPixels(0, 0, line.length, 1, PixelFormat.getIntArgbInstance(), argb, 0, line.length);
        return strip;
    }

    Surface surface() {
        return surface;
    }

    /** Drawn first. */
    Node opaque() {
        return opaque;
    }

    /** Drawn last. */
    Node seeThrough() {
        return seeThrough.node();
    }

    /** Shows film, m, [surfels]. */
    void film(float[] filmM) {
        if (filmPaint.getDiffuseMap() != filmStrip) {
            filmPaint.setDiffuseMap(filmStrip);
        }
        float[] places = scale.places(surface.onVertices(filmM));
        film.forEach(m -> m.colour(places));
    }

    /** Shows parts and bays as a model says; the plane is set by {@link #cut}. */
    void arrange(SceneModel model) {
        for (int p = 0; p < partShown.length; p++) {
            partShown[p] = model.shows(p);
        }
        for (int b = 0; b < offsetOfBay.length; b++) {
            offsetOfBay[b] = model.offsetM(b);
        }
        arrange();
    }

    /** Shows what another set-up gains and loses, m, [surfels], largest change at the ends of the scale. */
    void difference(float[] changeM, DifferencePlaces places) {
        filmPaint.setDiffuseMap(image(places.line(rgb(theme.bare()))));
        float[] at = places.places(surface.onVertices(changeM));
        film.forEach(m -> m.colour(at));
    }

    /** Whether the see-through sides are drawn. */
    void showSheets(boolean shown) {
        sheetsShown = shown;
        arrange();
    }

    void cut(@Nullable Cut plane) {
        cut = plane;
        film.forEach(m -> m.cut(plane));
        sheets.forEach(m -> m.cut(plane));
        for (int p = 0; p < lines.size(); p++) {
            lines.get(p).set(CutLines.of(lineSegments.get(p).segments(), plane));
        }
        arrange();
    }

    Vec3 offsetOfBay(int bay) {
        return bay < 0 ? Vec3.ZERO : offsetOfBay[bay];
    }

    /** Points out a part, or none (-1). */
    void light(int part) {
        lit = part;
        for (PieceMesh m : sheets) {
            boolean on = groups.get(m.piece().group()).part() == lit;
            m.view().setMaterial(Materials.plain(on ? alpha(theme.lit(), 0.45) : theme.sheet()));
        }
        for (int p = 0; p < lines.size(); p++) {
            lines.get(p).colour(lineSegments.get(p).part() == lit ? theme.lit() : theme.edge());
        }
    }

    private static Color alpha(Color c, double a) {
        return Color.color(c.getRed(), c.getGreen(), c.getBlue(), a);
    }

    private void arrange() {
        film.forEach(m -> arrange(m, true));
        sheets.forEach(m -> arrange(m, sheetsShown));
        for (int p = 0; p < lines.size(); p++) {
            StructureLines.Lines l = lineSegments.get(p);
            arrange(lines.get(p).node(), new Place(l.part(), l.bay()), true);
        }
    }

    private void arrange(PieceMesh m, boolean wanted) {
        Place place = groups.get(m.piece().group());
        arrange(m.view(), place, wanted);
        m.wanted(wanted && partShown[place.part()]);
    }

    private void arrange(Node node, Place place, boolean wanted) {
        node.setVisible(wanted && partShown[place.part()]);
        Vec3 off = offsetOfBay(place.bay());
        node.setTranslateX(off.x());
        node.setTranslateY(off.y());
        node.setTranslateZ(off.z());
    }

    /** Brings the drawing order up to date; returns how many pieces still wait. */
    int sort(Camera camera) {
        Vec3 eye = camera.eye();
        film.forEach(m -> m.look(eye));
        return seeThrough.sort(camera);
    }

    void lineRadius(double radiusM) {
        lines.forEach(l -> l.radius(Math.max(radiusM, thinnestM())));
    }

    @Override
    public boolean shown(int patch) {
        return partShown[surface.patches().get(patch).part()];
    }

    @Override
    public Vec3 offset(int patch) {
        return offsetOfBay(surface.patches().get(patch).bay());
    }

    @Override
    public boolean cutAway(Vec3 p) {
        return cut != null && cut.beyondM(p.x(), p.y(), p.z()) > 0;
    }
}
