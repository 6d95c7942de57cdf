package baymist.spray;

import baymist.geom.Vec3;

/**
 * One jet at the tip in structure axes.
 *
 * @param originM nozzle position, m
 * @param direction unit vector
 * @param momentumN thrust J, N
 * @param airKgPerS air mass flow, kg/s
 * @param liquidKgPerS liquid mass flow, kg/s
 * @param exitSpeedMPerS speed at which the core leaves (cap of the decay law), m/s
 */
public record JetSource(
        Vec3 originM, Vec3 direction, double momentumN, double airKgPerS, double liquidKgPerS, double exitSpeedMPerS) {}
