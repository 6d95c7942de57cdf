/**
 * One job as immutable records in SI units: structure, openings, wands, product, supply, passes, targets.
 *
 * <p>{@link baymist.scene.Scene} is the whole; {@link baymist.scene.CavitySpec} the structure, by family;
 * {@link baymist.scene.WandSpec} and {@link baymist.scene.TipSpec} a wand and its jets; {@link baymist.scene.SupplySpec} and
 * {@link baymist.scene.DropletSpec} what drives and what leaves the tip; {@link baymist.scene.PassSpec} what is done.
 *
 * <p>Scenes come from files by {@link baymist.scene.io.SceneReader}, which validates them: a record that came through it satisfies what
 * its documentation says. Records made by hand (in tests) are trusted.
 *
 * <p>Axes: x aft, y right, z up. Clock angles: 0 = up, clockwise seen from outside looking in along the wand. Pressures are
 * gauge. Shares sum to 1. A name is unique among its kind.
 *
 * <p>Limits: one product and one supply a job; wands are straight and rigid; the product's properties are those at its one temperature of use.
 */
@NullMarked
package baymist.scene;

import org.jspecify.annotations.NullMarked;
