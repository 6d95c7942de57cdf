package baymist.scene;

/**
 * A straight rigid wand.
 *
 * @param lengthM usable length from the tip, m
 * @param outerM outside diameter, m
 * @param boreM liquid bore, m, smaller than the outside
 * @param tip the spray tip at its end; its jets leave from the wand's axis at the tip
 */
public record WandSpec(String name, double lengthM, double outerM, double boreM, TipSpec tip) {}
