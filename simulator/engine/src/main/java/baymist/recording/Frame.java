package baymist.recording;

/**
 * The state of film and fog at one time. Arrays are shared and must not be written to.
 *
 * @param timeS job time, s
 * @param filmM wet film build, m, [surfels]; 24 bits of precision
 * @param fogKgPerM3 fog in each block of {@link FogCells}, kg/m³, [blocks]; 24 bits of precision
 */
public record Frame(double timeS, float[] filmM, float[] fogKgPerM3) {}
