package baymist.film;

import org.jspecify.annotations.Nullable;

/** What becomes of a film in the hours after the job, on a copy of it. */
public final class FilmAgeing {
    /** First stretch, s; each is twice the one before, since a draining film slows down in proportion to its age (Jeffreys 1930). */
    private static final double FIRST_S = 30;

    private FilmAgeing() {}

    /**
     * The film after a time at rest: it runs, drips, and creeps where the product does. Nothing is added: fog that still hangs is left out.
     *
     * @param film not changed
     * @param creep null where the product does not creep
     * @param openFraction open share of each opening meanwhile, [openings], 0..1
     * @param durationS s, 0 or more
     */
    public static FilmState after(
            FilmState film, FilmRuns runs, @Nullable FilmCreep creep, double[] openFraction, double durationS) {
        FilmState aged = film.copy();
        double left = durationS;
        double piece = FIRST_S;
        while (left > 0) {
            double length = left < 1.5 * piece ? left : piece;
            runs.advance(aged, openFraction, length);
            if (creep != null) {
                creep.advance(aged, length);
            }
            left -= length;
            piece *= 2;
        }
        return aged;
    }
}
