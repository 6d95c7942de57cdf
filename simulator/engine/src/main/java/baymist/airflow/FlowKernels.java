package baymist.airflow;

/** Finds the kernel to use. */
final class FlowKernels {
    private static final String VECTORS = "jdk.incubator.vector";

    private FlowKernels() {}

    /**
     * The kernel with vectors where the Java platform was started with {@code --add-modules jdk.incubator.vector}, else the plain one. Both do the same operations in the same order.
     */
    static FlowKernel best() {
        if (ModuleLayer.boot().findModule(VECTORS).isEmpty()) {
            return new PlainFlowKernel();
        }
        try {
            return Class.forName("baymist.airflow.VectorFlowKernel")
                    .asSubclass(FlowKernel.class)
                    .getDeclaredConstructor()
                    .newInstance();
        } catch (ReflectiveOperationException | LinkageError e) {
            // Built without it, or a later platform has changed it: the plain kernel gives the same results.
            return new PlainFlowKernel();
        }
    }
}
