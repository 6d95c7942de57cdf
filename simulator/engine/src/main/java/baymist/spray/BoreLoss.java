package baymist.spray;

/**
 * Pressure that the liquid loses along the wand's bore, for a wand that mixes at its tip: Hagen-Poiseuille below Re 2300, above
 * it Blasius (1913), {@code f = 0.3164 Re^-0.25} (Darcy, Re to 1e5). The step between the two laws at 2300 is real: the flow
 * there is one or the other.
 *
 * @param pressurePa lost, Pa
 * @param reynolds of the bore
 * @param turbulent whether Blasius was used
 */
public record BoreLoss(double pressurePa, double reynolds, boolean turbulent) {
    /** Reynolds number at which a bore goes over to turbulent flow. */
    public static final double TRANSITION = 2300;

    /**
     * Loss over a straight bore.
     *
     * @param massKgPerS liquid flow, kg/s, not negative
     */
    public static BoreLoss of(
            double lengthM, double boreM, double massKgPerS, double densityKgPerM3, double viscosityPaS) {
        double area = Math.PI / 4 * boreM * boreM;
        double speed = massKgPerS / densityKgPerM3 / area;
        double re = densityKgPerM3 * speed * boreM / viscosityPaS;
        if (re <= TRANSITION) {
            double loss = 128 * viscosityPaS * lengthM * (massKgPerS / densityKgPerM3) / (Math.PI * Math.pow(boreM, 4));
            return new BoreLoss(loss, re, false);
        }
        double f = 0.3164 * Math.pow(re, -0.25);
        return new BoreLoss(f * lengthM / boreM * 0.5 * densityKgPerM3 * speed * speed, re, true);
    }
}
