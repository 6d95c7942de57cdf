package baymist.coverage;

import java.util.List;

/** Film turned into verdicts. {@code verdict} has one entry a surfel, null for closures and protected items; {@code seams} goes by length. */
public record Coverage(
        Fractions total,
        List<Fractions> byPart,
        List<Fractions> byBay,
        List<Fractions> byFacing,
        List<UnreachedRegion> unreached,
        Verdict[] verdict,
        SeamCoverage seams) {}
