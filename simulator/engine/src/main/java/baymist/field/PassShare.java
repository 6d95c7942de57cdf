package baymist.field;

import baymist.scene.PassSpec;

/**
 * A draw-back pass for a region.
 *
 * @param pass what to do
 * @param wetted share of the region's area that its jets film to haze by the field, 0..1; fog comes on top
 * @param fogM mean film that its fog leaves on the region by the field, m
 */
public record PassShare(PassSpec pass, double wetted, double fogM) {}
