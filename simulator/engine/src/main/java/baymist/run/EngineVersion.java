package baymist.run;

/** Version of the engine, written into every result. */
public final class EngineVersion {
    public static final String VERSION = "0.1.0";

    private EngineVersion() {}
}
