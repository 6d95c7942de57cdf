package baymist.inspect;

import baymist.scene.DropletSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.SupplySpec;

/**
 * Liquid rate and droplet sizes over those that a scene states.
 *
 * @param liquid factor on the liquid rate, above 0
 * @param size factor on every droplet diameter, above 0
 */
public record Setting(double liquid, double size) {
    /** As the scene states them. */
    public static final Setting STATED = new Setting(1, 1);

    public Setting {
        if (!(liquid > 0 && size > 0)) {
            throw new IllegalArgumentException("liquid x " + liquid + ", size x " + size);
        }
    }

    /** The scene at this setting. */
    public Scene of(Scene scene) {
        SupplySpec supply = scene.supply();
        DropletSpec stated = supply.droplets();
        DropletSpec sizes = stated instanceof DropletSpec.Adjusted a ? a.sizes() : stated;
        double already = stated instanceof DropletSpec.Adjusted a ? a.setting() : 1;
        DropletSpec moved = sizes instanceof DropletSpec.Tracer || size == 1
                ? stated
                : new DropletSpec.Adjusted(sizes, already * size, stated.dv50Factor());
        SupplySpec other = supply.withDroplets(moved);
        return SceneEdit.of(scene)
                .supply(liquid == 1 ? other : other.withLiquidTimes(liquid))
                .done();
    }
}
