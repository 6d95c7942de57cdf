package baymist.export;

import baymist.run.RunResult;

/**
 * Where the film on each surfel comes from; shares 0..1, all 0 on a surfel without film.
 *
 * @param jets share that jets threw at the structure, here or where it ran from, [surfels]
 * @param fog share that settled out of fog, here or where it ran from, [surfels]; jets + fog = 1
 * @param ranIn share beyond what arrived on the surfel itself: it ran or crept in from beside, [surfels]
 */
record Origins(double[] jets, double[] fog, double[] ranIn) {
    /** @param arrivedKg what arrived on each surfel, kg, [surfels] */
    static Origins of(RunResult r, double[] arrivedKg) {
        int n = r.filmM().length;
        Origins o = new Origins(new double[n], new double[n], new double[n]);
        for (int s = 0; s < n; s++) {
            double kg = r.directKg()[s] + r.fogKg()[s];
            if (kg > 0) {
                o.jets[s] = r.directKg()[s] / kg;
                o.fog[s] = r.fogKg()[s] / kg;
                // what rounding leaves of film that never moved is no film that ran in
                double beyond = 1 - (s < arrivedKg.length ? arrivedKg[s] : 0) / kg;
                o.ranIn[s] = beyond > 1e-9 ? beyond : 0;
            }
        }
        return o;
    }
}
