/**
 * From film to verdicts: what is reached, protected, thin, in excess, and which connected places stay bare.
 *
 * <p>In: the cavity, its grid with surfels, the film build on each surfel and the thresholds. Out: a
 * {@link baymist.coverage.Coverage} with one verdict a surfel, shares of true area for the whole, each part, each bay and
 * each facing, and the bare regions with their place in words. Theory: docs/theory/coverage.md.
 *
 * <ol>
 *   <li>{@link baymist.coverage.CoverageAssessor} compares each film with the thresholds and sums areas in surfel order;
 *   <li>{@link baymist.coverage.SeamMap} knows which surfels lie beside which stretch of seam, {@code SeamAssessor} sums lengths for a film;
 *   <li>{@code RegionGrouper} decides which bare surfels make one place: narrow film does not part them, narrow necks do not join them;
 *   <li>{@code RegionFinder} lists places largest first and gathers spots into one entry so that areas still add up; {@code RegionLabels} names
 *       each by its place, {@code EntryWays} measures how deep in it lies;
 *   <li>{@code RegionDescriber} picks the part that holds most of a region, its face and its bays;
 *   <li>{@code Ends} finds, through the surfels' shared edges, the members that bound that surface, and {@code Spans}
 *       measures where the region lies between them;
 *   <li>{@code Places} puts that into words with the directions of {@link baymist.coverage.Compass}.
 * </ol>
 *
 * <p>Assumptions: film is one number a surfel, so a pattern of dots counts as its mean build; the limits by which places
 * are worded are ours (marked ASSUMED where they stand). Limits: what the voxels can't resolve has no verdict and is
 * reported beside the coverage; closures (tape, plugs, covers) have no verdict. Everything
 * is summed in a fixed order, so results do not depend on threads.
 *
 * <p>Sources: the words reached, protected and thin are ours; film thickness in mils and micrometres by 1 mil = 25.4 µm
 * (international inch, 1959); thresholds of 1, 10 and 50 µm: common practice, no source.
 */
@NullMarked
package baymist.coverage;

import org.jspecify.annotations.NullMarked;
