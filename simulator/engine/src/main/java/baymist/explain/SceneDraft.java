package baymist.explain;

import baymist.scene.AirSpec;
import baymist.scene.CavitySpec;
import baymist.scene.DropletSpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.VoxelSpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A copy of a scene with some of it changed; used by one thread, then thrown away. */
final class SceneDraft {
    private final Scene from;
    final List<OpeningSpec> cuts;
    final Map<String, PhaseStates> states;
    final Map<String, WandSpec> wands;
    final List<EntrySpec> entries;
    final List<PassSpec> passes;
    final List<ProtectedItem> items;
    CavitySpec cavity;
    SupplySpec supply;
    double hangS;
    VoxelSpec voxel;
    AirSpec air;
    int bins;
    int rays;
    double spacingM;

    SceneDraft(Scene from) {
        this.from = from;
        cuts = new ArrayList<>(from.cuts());
        states = new HashMap<>(from.states());
        wands = new HashMap<>(from.wands());
        entries = new ArrayList<>(from.entries());
        passes = new ArrayList<>(from.passes());
        items = new ArrayList<>(from.protectedItems());
        cavity = from.cavity();
        supply = from.supply();
        hangS = from.hangS();
        voxel = from.voxel();
        air = from.air();
        bins = from.sizeBins();
        rays = from.raysPerJet();
        spacingM = from.stationSpacingM();
    }

    Scene scene() {
        return new Scene(
                from.file(),
                from.hash(),
                from.title(),
                from.story(),
                cavity,
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
                bins,
                rays,
                spacingM,
                from.ambient(),
                items,
                from.obstacles(),
                from.bayLabels(),
                from.walls());
    }

    /** The supply with its liquid times a factor. */
    static SupplySpec richer(SupplySpec s, double by) {
        if (s instanceof SupplySpec.Pressure p) {
            List<SupplySpec.CatchCup> cups = p.cups().stream()
                    .map(c -> new SupplySpec.CatchCup(by * c.liquidKgPerS(), c.gaugePa(), c.lengthM(), c.boreM()))
                    .toList();
            return new SupplySpec.Pressure(
                    p.gaugePa(), p.dischargeCoefficient(), by * p.liquidKgPerS(), p.droplets(), p.feed(), cups);
        }
        SupplySpec.ExitSpeed e = (SupplySpec.ExitSpeed) s;
        return new SupplySpec.ExitSpeed(e.speedMPerS(), by * e.liquidKgPerS(), e.droplets());
    }

    /** The supply with its droplets times a factor. */
    static SupplySpec set(SupplySpec s, double setting) {
        DropletSpec d = s.droplets();
        DropletSpec inner = d instanceof DropletSpec.Adjusted a ? a.sizes() : d;
        double before = d instanceof DropletSpec.Adjusted a ? a.setting() : 1;
        DropletSpec moved = new DropletSpec.Adjusted(inner, before * setting, d.dv50Factor());
        if (s instanceof SupplySpec.Pressure p) {
            return new SupplySpec.Pressure(
                    p.gaugePa(), p.dischargeCoefficient(), p.liquidKgPerS(), moved, p.feed(), p.cups());
        }
        SupplySpec.ExitSpeed e = (SupplySpec.ExitSpeed) s;
        return new SupplySpec.ExitSpeed(e.speedMPerS(), e.liquidKgPerS(), moved);
    }
}
