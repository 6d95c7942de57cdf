package baymist.fog;

/** Finds the kernel to use. */
final class FogKernels {
    private static final String VECTORS = "jdk.incubator.vector";

    private FogKernels() {}

    /**
     * The kernel with vectors where the Java platform was started with {@code --add-modules jdk.incubator.vector}, else the plain one. Both do the same
     * operations in the same order.
     */
    static FogKernel best() {
        if (ModuleLayer.boot().findModule(VECTORS).isEmpty()) {
            return new PlainKernel();
        }
        try {
            return (FogKernel) Class.forName("baymist.fog.VectorKernel")
                    .getDeclaredConstructor()
                    .newInstance();
        } catch (ReflectiveOperationException | LinkageError e) {
            // Built without it, or a later platform has changed it: the plain kernel gives the same results.
            return new PlainKernel();
        }
    }
}
