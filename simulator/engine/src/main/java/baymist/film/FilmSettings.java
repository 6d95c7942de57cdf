package baymist.film;

import baymist.scene.ProductSpec;

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
    public static final FilmSettings DEFAULT = new FilmSettings(ProductSpec.RESIDUAL_FILM_M, 5, 400);

    /** The usual settings with the residual film of a product. */
    public static FilmSettings of(ProductSpec product) {
        return new FilmSettings(product.residualFilmM(), DEFAULT.growthTimes(), DEFAULT.mostSubSteps());
    }

    public FilmSettings {
        if (!(residualM >= 0 && growthTimes > 0 && mostSubSteps > 0)) {
            throw new IllegalArgumentException(
                    "residual film " + residualM + " m, growth times " + growthTimes + ", sub-steps " + mostSubSteps);
        }
    }
}
