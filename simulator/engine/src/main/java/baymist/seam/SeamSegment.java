package baymist.seam;

import baymist.geom.Vec3;
import java.util.List;

/**
 * A straight piece of seam.
 *
 * @param partA,partB indices of the parts, lower one first
 * @param from,to its ends, m
 * @param wedges sides of the seam that are air of the cavity, one or more
 */
public record SeamSegment(int partA, int partB, SeamKind kind, Vec3 from, Vec3 to, List<SeamWedge> wedges) {
    public SeamSegment {
        wedges = List.copyOf(wedges);
    }

    /** Length of the line, m; a side of the seam is as long. */
    public double lengthM() {
        return from.distance(to);
    }
}
