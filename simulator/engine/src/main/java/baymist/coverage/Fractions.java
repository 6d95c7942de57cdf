package baymist.coverage;

/**
 * Area and its shares of one part, bay or the whole.
 *
 * @param reached share of area at or above haze; includes thin, protected and excess
 * @param protectedShare share at or above the target build; includes excess
 * @param thin reached but not protected
 * @param excess above the excess limit
 */
public record Fractions(
        String name,
        double areaM2,
        double reached,
        double protectedShare,
        double thin,
        double excess,
        double meanFilmM) {}
