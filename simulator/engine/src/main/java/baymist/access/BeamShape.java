package baymist.access;

/**
 * A beam at rest. The arrays belong to the record and must not be written to.
 *
 * @param stationM places of the nodes along the beam, m, [nodes]
 * @param deflectionM deflection, m, positive down, [nodes]
 * @param slopeRad slope, rad, positive when the beam goes down ahead, [nodes]
 * @param reactionN force of the support on the beam, N, positive down, 0 where it hangs free, [nodes]
 * @param peakMomentNm largest bending moment, N m, without its sign
 * @param peakAtM where along the beam it acts, m
 * @param rounds how often the equations were solved
 */
record BeamShape(
        double[] stationM,
        double[] deflectionM,
        double[] slopeRad,
        double[] reactionN,
        double peakMomentNm,
        double peakAtM,
        int rounds) {
    double tipDropM() {
        return deflectionM[deflectionM.length - 1];
    }

    double tipSlopeRad() {
        return slopeRad[slopeRad.length - 1];
    }
}
