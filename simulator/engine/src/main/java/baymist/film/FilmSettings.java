package baymist.film;

/**
 * Choices of the running film.
 *
 * @param residualM film that never runs, m
 * @param growthTimes growth times 1/omega that a hanging drop needs before it falls
 * @param mostSubSteps most sub-steps in one call; the flux is limited where more would be needed
 */
public record FilmSettings(double residualM, double growthTimes, int mostSubSteps) {
    /**
     * ASSUMED: residual 5 µm, since protective oils are thixotropic and wet rough sheet (a Newtonian film would thin for ever);
     * 5 growth times, since a drop grows from ripples of some hundredth of the film's thickness (ln 100 = 4.6).
     */
    public static final FilmSettings DEFAULT = new FilmSettings(5e-6, 5, 400);

    public FilmSettings {
        if (!(residualM >= 0 && growthTimes > 0 && mostSubSteps > 0)) {
            throw new IllegalArgumentException(
                    "residual film " + residualM + " m, growth times " + growthTimes + ", sub-steps " + mostSubSteps);
        }
    }
}
