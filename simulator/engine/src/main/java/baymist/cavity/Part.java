package baymist.cavity;

/**
 * A named sheet of zero thickness with a gauge.
 *
 * @param name as a technician would say it, e.g. "upper skin", "rib 3"
 * @param gaugeM thickness, m
 */
public record Part(String name, PartKind kind, double gaugeM) {}
