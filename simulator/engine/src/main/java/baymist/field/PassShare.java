package baymist.field;

import baymist.scene.PassSpec;

/**
 * A draw-back pass for a region.
 *
 * @param pass what to do
 * @param wetted share of the region's area that it films to haze by the field, 0..1: jets where they strike, its fog spread as an even fog would settle
 */
public record PassShare(PassSpec pass, double wetted) {}
