package baymist.scene;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * A scene with some of its parts exchanged. The scene itself is not touched; {@link #done} makes the new one. Hash and file stay those of the
 * scene that was read: they say where it came from, {@link SceneContent#hash} says what it is.
 */
public final class SceneEdit {
    private final Scene from;
    private List<OpeningSpec> cuts;
    private Map<String, PhaseStates> states;
    private Map<String, WandSpec> wands;
    private SupplySpec supply;
    private List<EntrySpec> entries;
    private List<PassSpec> passes;
    private double hangS;
    private VoxelSpec voxel;
    private AirSpec air;
    private int sizeBins;
    private int raysPerJet;
    private double stationSpacingM;
    private List<ProtectedItem> protectedItems;
    private List<BayLabel> bayLabels;
    private Transport transport;
    private long raySeed;
    private String title;
    private String story;

    private SceneEdit(Scene from) {
        this.from = from;
        cuts = from.cuts();
        states = from.states();
        wands = from.wands();
        supply = from.supply();
        entries = from.entries();
        passes = from.passes();
        hangS = from.hangS();
        voxel = from.voxel();
        air = from.air();
        sizeBins = from.sizeBins();
        raysPerJet = from.raysPerJet();
        stationSpacingM = from.stationSpacingM();
        protectedItems = from.protectedItems();
        bayLabels = from.bayLabels();
        transport = from.transport();
        raySeed = from.raySeed();
        title = from.title();
        story = from.story();
    }

    public static SceneEdit of(Scene scene) {
        return new SceneEdit(scene);
    }

    public SceneEdit title(String newTitle, String newStory) {
        title = newTitle;
        story = newStory;
        return this;
    }

    public SceneEdit cuts(List<OpeningSpec> others) {
        cuts = others;
        return this;
    }

    /** Another opening cut into a part. */
    public SceneEdit cut(OpeningSpec opening) {
        return cuts(plus(cuts, opening));
    }

    /** Overrides the states of an opening of the model or of a cut. */
    public SceneEdit state(String opening, PhaseStates other) {
        Map<String, PhaseStates> all = new LinkedHashMap<>(states);
        all.put(opening, other);
        states = all;
        return this;
    }

    public SceneEdit wands(Map<String, WandSpec> others) {
        wands = others;
        return this;
    }

    /** Another wand at hand, or another one of the same name. */
    public SceneEdit wand(WandSpec wand) {
        Map<String, WandSpec> all = new LinkedHashMap<>(wands);
        all.put(wand.name(), wand);
        return wands(all);
    }

    public SceneEdit supply(SupplySpec other) {
        supply = other;
        return this;
    }

    public SceneEdit entries(List<EntrySpec> others) {
        entries = others;
        return this;
    }

    /** Another entry. */
    public SceneEdit entry(EntrySpec entry) {
        return entries(plus(entries, entry));
    }

    public SceneEdit passes(List<PassSpec> others) {
        passes = others;
        return this;
    }

    /** Every pass as the function makes it. */
    public SceneEdit eachPass(UnaryOperator<PassSpec> change) {
        return passes(passes.stream().map(change).toList());
    }

    public SceneEdit hangS(double other) {
        hangS = other;
        return this;
    }

    public SceneEdit voxel(VoxelSpec other) {
        voxel = other;
        return this;
    }

    public SceneEdit air(AirSpec other) {
        air = other;
        return this;
    }

    /** Size bins, rays a jet and largest spacing of stations, m (0 = chosen by the engine). */
    public SceneEdit numerics(int bins, int rays, double spacingM) {
        sizeBins = bins;
        raysPerJet = rays;
        stationSpacingM = spacingM;
        return this;
    }

    public SceneEdit protectedItems(List<ProtectedItem> others) {
        protectedItems = others;
        return this;
    }

    public SceneEdit bayLabels(List<BayLabel> others) {
        bayLabels = others;
        return this;
    }

    public SceneEdit transport(Transport other) {
        transport = other;
        return this;
    }

    public SceneEdit raySeed(long other) {
        raySeed = other;
        return this;
    }

    /** The new scene. */
    public Scene done() {
        return new Scene(
                from.file(),
                from.hash(),
                title,
                story,
                from.cavity(),
                cuts,
                states,
                wands,
                from.product(),
                supply,
                entries,
                passes,
                hangS,
                from.targets(),
                from.gravity(),
                from.gravityMPerS2(),
                voxel,
                air,
                from.initialFog(),
                sizeBins,
                raysPerJet,
                stationSpacingM,
                from.ambient(),
                protectedItems,
                from.obstacles(),
                bayLabels,
                from.walls(),
                transport,
                raySeed,
                from.hinge(),
                from.studies());
    }

    private static <T> List<T> plus(List<T> list, T more) {
        return java.util.stream.Stream.concat(list.stream(), java.util.stream.Stream.of(more))
                .toList();
    }
}
