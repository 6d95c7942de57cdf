package baymist.run;

import baymist.coverage.Fractions;
import baymist.coverage.SeamCoverage;
import baymist.fog.Coagulation;
import java.util.List;

/**
 * What becomes of film and fog, beside the coverage at close-up.
 *
 * @param ages the film at close-up and later
 * @param drippedLaterKg what drips and drains between close-up and the last of {@code ages}, kg
 * @param closedShare share of area with a closed film, the rest is bare or carries dots, 0..1
 * @param wettedShare share of area that is wet under a lens: closed film and the dots themselves, 0..1
 * @param seams coverage by length of seam at close-up
 * @param seamDepthM how far product gets into a lap of {@link #LAP_GAP_M} beside a reached seam within a day, mean, m
 * @param wands liquid left in the bore of each wand used
 * @param neededKg product of the target build on all of the surface, kg
 * @param coagulating where droplets met most often
 * @param releases fog and air that left by each opening to the outside that let any out
 * @param escapedSprayKg spray that flew straight out, kg
 * @param wallForceOverThrust largest force of the air along the walls over the jets' thrust
 * @param consequences what arrives on protected items, and the weight of the oil left
 */
public record Outlook(
        List<FilmAge> ages,
        double drippedLaterKg,
        double closedShare,
        double wettedShare,
        SeamCoverage seams,
        double seamDepthM,
        List<WandFill> wands,
        double neededKg,
        Coagulating coagulating,
        List<Release> releases,
        double escapedSprayKg,
        double wallForceOverThrust,
        Consequences consequences) {
    /** Time after close-up at which the film is looked at again, s. */
    public static final double LATER_S = 24 * 3600;

    /** Gap of a riveted lap, m: ASSUMED, a feeler gauge's thousandth of an inch. */
    public static final double LAP_GAP_M = 25e-6;

    public Outlook {
        ages = List.copyOf(ages);
        wands = List.copyOf(wands);
        releases = List.copyOf(releases);
    }

    /**
     * The film at one time.
     *
     * @param when in words
     * @param afterS time since close-up, s
     * @param wet shares by wet build
     * @param dry shares by the build that stays when all volatiles have left
     */
    public record FilmAge(String when, double afterS, Fractions wet, Fractions dry) {}

    /** Liquid in the bore of a wand, which was never sprayed, m³. */
    public record WandFill(String wand, double volumeM3) {}

    /**
     * How often droplets have met in a bay.
     *
     * @param meetings integral of K N over time
     */
    public record Coagulating(String bay, double meetings) {
        /** Mean diameter over that without meetings. */
        public double growth() {
            return Coagulation.growth(meetings);
        }
    }

    /** What left by one opening: fog, kg, and air, m³. */
    public record Release(String opening, double fogKg, double airM3) {}

    /** Fog and spray that left, kg. */
    public double escapedKg() {
        return escapedSprayKg + releases.stream().mapToDouble(Release::fogKg).sum();
    }
}
