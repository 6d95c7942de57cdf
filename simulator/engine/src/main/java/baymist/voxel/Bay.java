package baymist.voxel;

import baymist.geom.Box3;

/** A compartment that appears when every opening is closed. */
public record Bay(String name, double volumeM3, double areaM2, Box3 bounds, int cells) {
    Bay named(String other) {
        return new Bay(other, volumeM3, areaM2, bounds, cells);
    }
}
