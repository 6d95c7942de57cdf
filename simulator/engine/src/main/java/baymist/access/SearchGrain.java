package baymist.access;

/**
 * How finely a search for curved paths looks.
 *
 * @param stepM length of a piece that is added at a time, m
 * @param cellM edge of a cell in which places count as one, m
 * @param facets directions are told apart on a cube of facets x facets fields a side
 * @param azimuths planes that an arc may lie in, evenly round the wand; 2 keeps the search in one plane
 * @param curvatures curvatures tried as shares of the largest, beside the straight
 * @param bendCostM length that a radian of bend counts for when ways are compared, m
 */
record SearchGrain(double stepM, double cellM, int facets, int azimuths, double[] curvatures, double bendCostM) {
    private static final double CELLS = 4000;

    SearchGrain {
        if (!(stepM > 0 && cellM > 0) || facets < 1 || azimuths < 1 || curvatures.length == 0) {
            throw new IllegalArgumentException("positive steps and at least one azimuth and curvature expected");
        }
        curvatures = curvatures.clone();
    }

    @Override
    public double[] curvatures() {
        return curvatures.clone();
    }

    /**
     * Grain for a wand in a space: the cell is a fraction of the bend radius, coarser where the space would hold too many cells, but never above the
     * radius. A step is longer than its cell, so that it leaves it.
     *
     * @param volumeM3 volume of the box round the space, m³
     */
    static SearchGrain of(double minBendM, double volumeM3) {
        double cell = Math.min(minBendM, Math.max(0.4 * minBendM, Math.cbrt(volumeM3 / CELLS)));
        return new SearchGrain(1.25 * cell, cell, 4, 8, new double[] {1, 0.5}, 0.25 * minBendM);
    }
}
