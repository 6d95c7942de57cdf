package baymist.problem;

/** The numbers went wrong (not a number, negative mass, no convergence): says stage, place, step and time. */
public final class SimulationException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public SimulationException(String message) {
        super(message);
    }
}
