package baymist.airflow;

/**
 * Air motion that holds over a window of time.
 *
 * @param faceFluxM3PerS volume flux through each entry of the grid's FaceSet, positive from low to high, [faces]
 * @param ventFluxM3PerS volume flux through each vent entry, positive outwards, [vents]
 * @param sourceM3PerS air supplied to each cell, [cells]
 * @param expansionPerS relative rate at which every cell's air is compressed (dp/dt / p), 1/s
 * @param eddyDiffusivityM2PerS by cell, [cells]
 * @param frictionSpeedMPerS u* at each surfel, m/s, [surfels]
 * @param openFraction open share of each opening over this window, [openings], 0..1
 * @param residual largest |divergence| left, relative to the largest face flux of its cell
 */
public record AirField(
        double[] faceFluxM3PerS,
        double[] ventFluxM3PerS,
        double[] sourceM3PerS,
        double expansionPerS,
        double[] eddyDiffusivityM2PerS,
        double[] frictionSpeedMPerS,
        double[] openFraction,
        double residual) {}
