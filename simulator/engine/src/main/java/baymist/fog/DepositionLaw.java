package baymist.fog;

import baymist.scene.WallFinish;
import baymist.units.Air;

/**
 * Speed at which droplets of one size reach a wall of any inclination: docs/theory/fog.md, equations (5) to (8).
 *
 * <p>With s the settling speed towards the wall and R = I/u* the resistance of the turbulent layer, the flux through the
 * layer is constant when v_d = s / (1 - exp(-s R)). This is Lai and Nazaroff (2000), J. Aerosol Sci. 31, 463-476, for an
 * upward, upright and downward wall (s = v_s, 0, -v_s), and follows from their layer equation for any angle between.
 * Smooth walls, 0.01 to 10 µm, u* 0.003 to 0.03 m/s; upright bare steel was measured up to 100 times higher (Sippola and
 * Nazaroff 2004), so on gently driven walls it is a lower bound.
 *
 * <p>Where the dimensionless relaxation time is 0.1 or more, eddies throw droplets at the wall as well: the inertial term
 * of Wood (1981), J. Aerosol Sci. 12, 275, is added. Immutable.
 */
public final class DepositionLaw {
    /** Wood (1981): inertial v+ per square of the dimensionless relaxation time. */
    private static final double WOOD_COEFFICIENT = 4.5e-4;

    /** Wood (1981): largest v+. */
    private static final double WOOD_CAP = 0.13;

    /** ASSUMED: below it the inertial term is less than the diffusive one and left out, as the theory page argues. */
    private static final double INERTIA_FROM = 0.1;

    /** ASSUMED: least layer integral, reached only by droplets as thick as the layer itself (r+ near 30). */
    private static final double SMALLEST_INTEGRAL = 1;

    private static final double SQRT3 = Math.sqrt(3);

    private final boolean tracer;
    private final double settlingMPerS;
    private final double relaxationS;
    private final double kinematicViscosity;
    private final double radiusM;
    private final double schmidt;
    private final Layer layer;
    private final WallFinish finish;

    /**
     * @param diameterM droplet diameter, m; 0 = tracer, which never deposits
     * @param slip Cunningham factor
     * @param relaxationS relaxation time, s
     * @param settlingMPerS terminal speed, m/s, 0 or more
     */
    public DepositionLaw(double diameterM, double slip, double relaxationS, double settlingMPerS, Air air) {
        this(diameterM, slip, relaxationS, settlingMPerS, air, WallFinish.SMOOTH);
    }

    /** The same on walls of a finish: what was measured on them in place of the inertial term, and never less than the smooth layer gives. */
    public DepositionLaw(
            double diameterM, double slip, double relaxationS, double settlingMPerS, Air air, WallFinish finish) {
        this.finish = finish;
        this.tracer = diameterM == 0;
        this.settlingMPerS = settlingMPerS;
        this.relaxationS = relaxationS;
        this.kinematicViscosity = air.kinematicViscosityM2PerS();
        this.radiusM = diameterM / 2;
        this.schmidt = tracer ? 1 : kinematicViscosity / brownianDiffusivity(diameterM, slip, air);
        this.layer = new Layer(schmidt);
    }

    DepositionLaw(FogDroplet droplet, Air air) {
        this(droplet, air, WallFinish.SMOOTH);
    }

    DepositionLaw(FogDroplet droplet, Air air, WallFinish finish) {
        this(droplet.diameterM(), droplet.slip(), droplet.relaxationS(), droplet.settlingMPerS(), air, finish);
    }

    /**
     * Deposition speed, m/s, 0 or more.
     *
     * @param frictionSpeedMPerS u* at the wall, m/s, 0 or more
     * @param normalUp component of the wall's normal (into the air) against gravity: 1 floor, 0 upright, -1 ceiling
     */
    public double speedMPerS(double frictionSpeedMPerS, double normalUp) {
        if (tracer) {
            return 0;
        }
        double s = settlingMPerS * normalUp;
        if (!(frictionSpeedMPerS > 0)) {
            return Math.max(s, 0);
        }
        double resistance = layer.integral(plusRadius(frictionSpeedMPerS)) / frictionSpeedMPerS;
        double through = throughLayer(s, resistance);
        if (finish == WallFinish.SMOOTH) {
            return through + inertialMPerS(frictionSpeedMPerS);
        }
        // What was measured holds the throw of the eddies already, and on ceilings it is less than Wood's.
        double plus = MeasuredWalls.plusSpeed(finish, plusRelaxation(frictionSpeedMPerS), normalUp);
        return Math.max(through, Math.max(s, 0) + frictionSpeedMPerS * plus);
    }

    /** Schmidt number of the droplets, kinematic viscosity over Brownian diffusivity. */
    public double schmidt() {
        return schmidt;
    }

    /** Dimensionless relaxation time tau u*²/nu. */
    public double plusRelaxation(double frictionSpeedMPerS) {
        return relaxationS * frictionSpeedMPerS * frictionSpeedMPerS / kinematicViscosity;
    }

    /** Dimensionless droplet radius, r times u* over nu. */
    public double plusRadius(double frictionSpeedMPerS) {
        return radiusM * frictionSpeedMPerS / kinematicViscosity;
    }

    private double inertialMPerS(double frictionSpeedMPerS) {
        double plus = plusRelaxation(frictionSpeedMPerS);
        if (plus < INERTIA_FROM) {
            return 0;
        }
        return frictionSpeedMPerS * Math.min(WOOD_COEFFICIENT * plus * plus, WOOD_CAP);
    }

    /**
     * s / (1 - exp(-s R)): flux per concentration through a layer of resistance R against or with a drift s; 1/R at s = 0,
     * s for large s R, 0 for large negative s R. Safe for every finite argument.
     *
     * @param driftMPerS drift towards the wall, m/s
     * @param resistanceSPerM s/m, above 0
     */
    static double throughLayer(double driftMPerS, double resistanceSPerM) {
        double x = driftMPerS * resistanceSPerM;
        if (Math.abs(x) < 1e-9) {
            return (1 + x / 2) / resistanceSPerM;
        }
        return driftMPerS / -Math.expm1(-x);
    }

    /**
     * Integral over the layer, I(Sc, r+), Lai and Nazaroff (2000) table 2: the closed form for y+ from r+ to 4.3 plus 39
     * for 4.3 to 30.
     *
     * @param schmidt above 0
     * @param plusRadius r+, 0 or more
     */
    public static double layerIntegral(double schmidt, double plusRadius) {
        return new Layer(schmidt).integral(plusRadius);
    }

    /** The layer integral of one Schmidt number; what does not depend on the friction is worked out once. */
    private static final class Layer {
        private final double perSchmidt;
        private final double a;
        private final double outer;
        private final double factor;

        Layer(double schmidt) {
            double cbrt = Math.cbrt(schmidt);
            perSchmidt = 1 / schmidt;
            a = 10.92 / cbrt;
            outer = 0.5 * Math.log(cube(a + 4.3) / (perSchmidt + 0.0609)) + SQRT3 * Math.atan((8.6 - a) / (SQRT3 * a));
            factor = 3.64 * cbrt * cbrt;
        }

        double integral(double plusRadius) {
            double inner = 0.5 * Math.log(cube(a + plusRadius) / (perSchmidt + 7.669e-4 * cube(plusRadius)))
                    + SQRT3 * Math.atan((2 * plusRadius - a) / (SQRT3 * a));
            return Math.max(factor * (outer - inner) + 39, SMALLEST_INTEGRAL);
        }
    }

    /** Deposition speed over u* on an upright smooth wall, Wood (1981); 0.01 to 1000 in plusRelaxation, within a factor of 3. */
    public static double woodPlusSpeed(double schmidt, double plusRelaxation) {
        double diffusive = 0.057 * Math.pow(schmidt, -2.0 / 3);
        return Math.min(diffusive + WOOD_COEFFICIENT * plusRelaxation * plusRelaxation, WOOD_CAP);
    }

    /**
     * The same after McCoy and Hanratty (1977), with the break points of the FDS Technical Reference Guide; for comparison
     * only. The step at 22.9 is theirs.
     */
    public static double mcCoyHanrattyPlusSpeed(double schmidt, double plusRelaxation) {
        if (plusRelaxation < 0.2) {
            return 0.086 * Math.pow(schmidt, -0.7);
        }
        return plusRelaxation < 22.9 ? 3.5e-4 * plusRelaxation * plusRelaxation : 0.17;
    }

    /** Stokes-Einstein diffusivity with slip, m²/s. */
    static double brownianDiffusivity(double diameterM, double slip, Air air) {
        return Air.BOLTZMANN * air.temperatureK() * slip / (3 * Math.PI * air.viscosityPaS() * diameterM);
    }

    private static double cube(double x) {
        return x * x * x;
    }
}
